"""How a job went, in one word: the word of a verdict, for that is what the next plan is
read with; and what each word finds.

`cut before` every step was clean · `tight` finished, but a step gave trouble · `beyond` the run
was stopped · `no record` made, and of no step it is said how it went (look-2). A job that was
never made has the verdict of its plan.
"""

from __future__ import annotations

import re

from msgspec import Struct

from jobsheet.model.what_ran import NOT_CUT, Runs

CUT_BEFORE, TIGHT, BEYOND, NO_RECORD = "cut before", "tight", "beyond", "no record"
#: Of a plan that was never made: nobody has looked at it yet, its file cannot be
#: used, it says nothing to be judged.
NOT_YET, BROKEN, NOTHING = "not yet worked", "broken", "nothing to judge"
#: Of scans and photographs of a part that has no plan yet.
OLD_SHEET = "old sheet"
#: What a question may ask for, the longer words first.
WORDS = (NOT_YET, NOTHING, CUT_BEFORE, NO_RECORD, "not tried", "expected", TIGHT, BEYOND, BROKEN, OLD_SHEET)
_ASKED = re.compile(rf"\b(?:{'|'.join(WORDS)})\b", re.IGNORECASE)
#: The run was stopped (look-2).
_STOPPED = ("stalled", "slipped", "broke")


class Went(Struct, frozen=True, kw_only=True):
    """When it was made last, on how many days, how: in one word, in more, and by
    how much trouble, 3 the most.
    """

    made: str = ""
    times: int = 0
    how: str = ""
    words: str = ""
    trouble: int = 0


def went_of(runs: Runs) -> Went:
    """What the record of a job says; nothing where it was never made."""
    steps = [entry for entry in runs.standing if entry.about == "step" and entry.outcome != NOT_CUT]
    if not steps:
        days = runs.dates
        return Went(made=days[0], times=len(days), how=NO_RECORD, trouble=1) if days else Went()
    last = max(entry.date for entry in steps)
    here = [entry for entry in steps if entry.date == last]
    times = len({entry.date for entry in steps})
    stopped = next((entry for entry in here if entry.outcome in _STOPPED), None)
    rough = next((entry for entry in here if entry.outcome != "clean"), None)
    if stopped is not None:
        words = f"stopped at {stopped.number}: {stopped.outcome}"
        return Went(made=last, times=times, how=BEYOND, words=words, trouble=3)
    if rough is not None:
        words = f"trouble at {rough.number}: {rough.outcome}"
        return Went(made=last, times=times, how=TIGHT, words=words, trouble=2)
    return Went(made=last, times=times, how=CUT_BEFORE, words="clean")


def asked_how(text: str) -> tuple[tuple[str, ...], str]:
    """The words of this sort in a question, and the rest of it."""
    found = tuple(dict.fromkeys(match[0].casefold() for match in _ASKED.finditer(text)))
    return found, _ASKED.sub(" ", text)
