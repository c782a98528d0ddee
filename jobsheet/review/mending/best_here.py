"""The best cut of a step here as a fix: the adviser is asked for the whole changed step, and
only when the fix is tried or pressed.
"""

from __future__ import annotations

from collections.abc import Callable

from jobsheet.model.job import Job, Operation
from jobsheet.model.remark import Fix
from jobsheet.model.setting import Setting
from jobsheet.reckoning.adviser.advised import Advised
from jobsheet.reckoning.adviser.best_cut import advice_on, best_cut
from jobsheet.review.mending.fixes import NotMended, in_turn, set_field

LABEL = "Take the best cut here"


def best_here(operation: Operation, setting: Setting, skin: float = 0.0) -> Fix:
    """Speed, feed, layer, width and pecks as the adviser would have them;
    `NotMended` where that is no other cut.

    Parameters
    ----------
    skin : float
        How thick the skin is that this step cuts through [m]
    """

    def mend(job: Job) -> Job:
        changed = advice_on(operation, setting, skin)
        if changed is None:
            raise NotMended("no feed is known for this tool in this metal")
        if not changed.values:
            raise NotMended("no speed, feed, layer or width is better here")
        return in_turn(*(set_field(operation.key, name, text) for name, text in changed.edits))(job)

    return Fix(LABEL, mend)


def no_cut_goes(operation: Operation, setting: Setting, skin: float = 0.0) -> Callable[[], str]:
    """What to say where no cut of this kind goes: the limit that stays, in
    its own words, and the other way.
    """

    def words() -> str:
        advised = best_cut(operation, setting, skin)
        return (
            _stays(advised)
            if advised is not None
            else "choose another tool, or another speed of this machine"
        )

    return words


def _stays(advised: Advised) -> str:
    if advised.clears or not advised.stays:
        said = ", ".join(
            f"{advice.name.replace('_', ' ')} {advice.text}" for advice in advised.values if advice.text
        )
        return f"the best cut of this kind is {said}"
    worst = max(advised.stays, key=lambda limit: limit.share)
    said = f", {worst.sentence}" if worst.sentence else ""
    other = (
        f"{advised.other_way[:1].lower()}{advised.other_way[1:]}"
        if advised.other_way
        else "another tool or another machine"
    )
    return f"{other}; with the best cut of this kind {worst.title.lower()} stays {worst.verdict}{said}"
