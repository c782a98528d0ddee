"""What was learned said in sizes of a cut that the machine made: shares of card or
class are nothing that a hand can set.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from jobsheet.errors import JobsheetError
from jobsheet.model.capacity import Capacity
from jobsheet.model.trials import ABOUT, MILLING, Trial
from jobsheet.operations.written import PROVED
from jobsheet.reckoning.ladder.ladder_sizes import in_size, size_for
from jobsheet.reckoning.ladder.ladders import plan
from jobsheet.reckoning.ladder.rung import Ladder

#: Fields of a cut that stay as they are while its depth is looked for.
_KEPT = ("width", "feed_per_tooth", "feed", "spindle", "way")


class InSizes(Struct, frozen=True, kw_only=True):
    """A capacity as depths of the newest such cut, or as drills and threads; `cut` says which cut that was.

    `middle`, `low` and `high` are about so much, `planned` is rounded down;
    empty where no such cut asks so little.
    """

    cut: str
    middle: str
    low: str
    high: str
    planned: str

    def words(self) -> str:
        """`end mill 12 mm, 4 teeth, 6 mm wide in S235: about 2.3 mm deep, nine in ten
        2 mm to 2.7 mm; plan to 1.75 mm deep`.
        """
        lead = "" if self.middle.startswith("more") else "about "
        said = f"{lead}{self.middle}, nine in ten {self.low or 'less'} to {self.high}" if self.middle else ""
        plan_to = f"plan to {self.planned}" if self.planned else "no such cut is so light"
        return f"{self.cut}: {'; '.join(part for part in (said, plan_to) if part)}"


def in_sizes(capacity: Capacity, trials: Sequence[Trial]) -> InSizes | None:
    """What was learned as sizes of the newest of these trials that asked that limit in
    that way; None where there is none.

    Parameters
    ----------
    trials : sequence of Trial
        Those that count, in the order of time
    """
    like = [
        trial
        for trial in trials
        if (trial.process, trial.cutter_kind) == (capacity.process, capacity.cutter_kind)
        and trial.of(capacity.limit) is not None
    ]
    if not like or like[-1].process not in PROVED:
        return None
    if ABOUT.get(capacity.process, "spindle-torque") != capacity.limit:
        return None  # a depth at which another limit gives out long before says nothing
    newest = like[-1]
    try:
        ladder = _such(newest)
    except JobsheetError:
        return None  # its cutter or metal can no longer be read, its card is gone
    shares = (capacity.median, capacity.low, capacity.high, capacity.planned)
    if newest.process not in MILLING:
        middle, low, high, planned = (size_for(ladder, capacity.limit, share) for share in shares)
        return InSizes(cut=_called(newest), middle=middle, low=low, high=high, planned=planned)
    sizes = [in_size(ladder, capacity.limit, share) if share > 0 else None for share in shares]
    middle, low, high = (
        "" if size is None else f"more than {size.about}" if size.capped else size.about for size in sizes[:3]
    )
    planned = sizes[3].words if sizes[3] is not None else ""
    return InSizes(
        cut=_called(newest), middle=f"{middle} deep" if middle else "", low=low, high=high, planned=planned
    )


def _such(trial: Trial) -> Ladder:
    """The ladder of such cuts without a rung: its cut is all that is asked. Raises JobsheetError."""
    typed = trial.one_cut()
    texts = {name: typed[name] for name in _KEPT if typed.get(name)} if trial.process in MILLING else {}
    if trial.process == "slot":
        texts = {name: text for name, text in texts.items() if name not in ("width", "way")}
    if trial.process == "face":
        texts.pop("way", None)
    return plan(
        trial.machine, cutter=trial.cutter, material=trial.material, kind=trial.process, units=trial.units, texts=texts,
        trials=(), most=0,
    )  # fmt: skip


def _called(trial: Trial) -> str:
    """What was cut with what, without its place: `end mill 12 mm, 4 teeth, 6 mm wide in S235`."""
    parts = [part.strip() for part in trial.cutter.split(",")]
    wide = trial.one_cut().get("width", "") if trial.process in ("face", "side") else ""
    said = [*parts[:2], f"{wide} wide" if wide else ""]
    return f"{', '.join(part for part in said if part)} in {trial.material}"
