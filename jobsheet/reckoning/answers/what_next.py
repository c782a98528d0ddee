"""What a capability card rests on, row by row, and what to try next: where test cuts would say most."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from jobsheet.model.capacity import Capacity, Snapshot
from jobsheet.model.trials import ABOUT

#: A band of more than this, high over low, is worth a finer ladder (estimate: to
#: who plans by it a third is a third).
WIDE = 2.0
#: So many are proposed: an afternoon has no room for more.
MOST = 3


class Shown(Struct, frozen=True, kw_only=True):
    """What stands behind one row: how many cuts of that process and kind of cutter, the newest of them, and how wide the band is.

    `ratio` is high over low of nine in ten of the limit that such cuts are about; 0 where what stops the cut is not learned.
    """

    process: str
    cutter_kind: str
    cuts: int = 0
    newest: str = ""
    ratio: float = 0.0
    #: Whether it is done under power at all: what a hand turns is never proved.
    turns: bool = True

    def words(self) -> str:
        """`5 cuts, the newest 2026-11-12`, `never tried`."""
        if not self.cuts:
            return "never tried"
        return f"{'one cut' if self.cuts == 1 else f'{self.cuts} cuts'}, the newest {self.newest}"


def shown_by(
    proof: Snapshot | None, process: str, cutter_kind: str, known: Sequence[Capacity], *, learned: bool,
    turns: bool = True,
) -> Shown:  # fmt: skip
    """What stands behind an answer; `learned` says whether a limit that test cuts teach bounds it at all, `turns` whether it is done under power."""
    about = ABOUT.get(process, "spindle-torque")
    own = next(
        (
            capacity
            for capacity in (proof.capacities if proof is not None else ())
            if (capacity.limit, capacity.process, capacity.cutter_kind) == (about, process, cutter_kind)
        ),
        None,
    )
    band = next((capacity for capacity in known if capacity.limit == about), None)
    ratio = band.high / band.low if band is not None and learned else 0.0
    return Shown(
        process=process, cutter_kind=cutter_kind, cuts=own.spoke if own is not None else 0,
        newest=own.newest if own is not None else "", ratio=ratio, turns=turns,
    )  # fmt: skip


class Answered(Struct, frozen=True, kw_only=True):
    """A row of the card, as far as it matters to what is tried next: its name, sizes and what stands behind it."""

    name: str
    low: str
    high: str
    plan: str
    shown: Shown


def what_next(rows: Sequence[Answered]) -> tuple[str, ...]:
    """A sentence for each ladder that would say most, the most telling first: what was never tried before what is wide still."""
    open_ = [answered for answered in rows if answered.shown.ratio > (WIDE if answered.shown.cuts else 1.0)]
    found = sorted(open_, key=lambda answered: (bool(answered.shown.cuts), -answered.shown.ratio))
    return tuple(_sentence(answered) for answered in found[:MOST])


def _sentence(answered: Answered) -> str:
    name = f"{answered.name[:1].upper()}{answered.name[1:]}"
    band = f"nine in ten between {answered.low} and {answered.high}"
    if answered.shown.cuts:
        return f"{name}: {answered.shown.words()}, and still {band}. A finer ladder narrows it."
    return f"{name}: never tried, {band}. A ladder begins at about {answered.plan}."
