"""What could not be checked, and how a question is asked so that its failing
takes no other question with it.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TypeVar

from msgspec import Struct

from jobsheet.errors import JobsheetError

T = TypeVar("T")


class NotChecked(Struct, frozen=True, kw_only=True):
    """One question without an answer: what was asked, of which step (its key), and what failed.

    `what` is `solids`, or the title of a rule. It is no remark: nothing is known to
    be wrong, and nothing to be right.
    """

    what: str
    why: str
    operation: str = ""
    #: The line of the finished part that nobody compares; None for a question that failed.
    line: int | None = None

    def words(self, number: int | None = None) -> str:
        """As it is said everywhere; `number` is the step's."""
        step = f"step {number}: " if number is not None else ""
        return f"{self.what} not checked: {step}{self.why}"


def alone(question: Callable[[], T], failed: Callable[[str], T]) -> T:
    """The answer to a question, or what is said of it where it fails.

    The one place where any failure at all is caught: a slip in one question must not switch the others off.
    What failed is kept in words and goes wherever the answers go.
    """
    try:
        return question()
    except Exception as error:  # noqa: BLE001  whatever it is, the other questions are still asked
        return failed(why(error))


def why(error: Exception) -> str:
    """What failed: the sentence of a failure that was expected, else what broke
    and where, for whoever mends it.
    """
    if isinstance(error, JobsheetError):
        return " ".join(str(error).split())
    import traceback  # only where something failed: the start needs none of it

    where = traceback.extract_tb(error.__traceback__)
    place = f" ({Path(where[-1].filename).name}, line {where[-1].lineno})" if where else ""
    return f"the program failed here: {type(error).__name__}: {' '.join(str(error).split())[:200]}{place}"
