"""How a revision of a plan is called: by its number, or by letters where the
workshop says so. Files keep the number.

I, O, Q, S, X and Z are left out, for they are taken for 1, 0, 5, 2 or a blank (ASME Y14.35, as told by
fcsuper.com); AA comes after Y (from memory of the same standard).
"""

from __future__ import annotations

from jobsheet.errors import JobsheetError
from jobsheet.storage.shop_file import workshop

LETTERS = "ABCDEFGHJKLMNPRTUVWY"
#: With more than two letters nobody reads them any more: the number is said then.
MOST = len(LETTERS) * (len(LETTERS) + 1)


def plan_mark(number: int) -> str:
    """`3`, or `C` in a workshop that calls its plans by letters."""
    try:
        by_letters = workshop().plan_marks == "letters"
    except JobsheetError:  # what is wrong with the workshop's file is said where its numbers are asked
        by_letters = False
    return in_letters(number) if by_letters else str(number)


def in_letters(number: int) -> str:
    """1 A, 8 H, 9 J, 20 Y, 21 AA, 420 YY; a number that has no such letters stays one."""
    if not 1 <= number <= MOST:
        return str(number)
    first, last = divmod(number - 1, len(LETTERS))
    return (LETTERS[first - 1] if first else "") + LETTERS[last]
