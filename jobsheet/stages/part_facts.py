"""How the work after the last step differs from the finished part, as facts for the review."""

from __future__ import annotations

from collections.abc import Sequence

from jobsheet.finished.finished_part import FinishedPart
from jobsheet.model.not_checked import alone
from jobsheet.stages.checks import Fact, not_checked
from jobsheet.stages.part_solid import Difference, as_cut, differences
from jobsheet.stages.solids import Stage

_KINDS = {"left": "left-on", "cut away": "cut-away"}


def part_facts(stages: Sequence[Stage], part: FinishedPart) -> list[Fact]:
    """A fact for every piece that is left on or cut away, the thickest first; nothing
    where nothing of the part is said.
    """
    if (part.shape is None and not part.features) or len(stages) < 2 or any(one.failed for one in stages):
        return []
    return alone(lambda: _pieces(stages, part), lambda why: [not_checked("", f"the finished part: {why}")])


def _pieces(stages: Sequence[Stage], part: FinishedPart) -> list[Fact]:
    if as_cut(stages, part):
        return []
    return [_fact(one) for one in differences(stages, part, within_limits=True) if one.what in _KINDS]


def _fact(one: Difference) -> Fact:
    key = one.steps[-1] if one.steps else ""
    return Fact(
        kind=_KINDS[one.what],
        key=key,
        found=one.thick,
        against=one.volume,
        lines=one.lines,
        steps=one.steps,
        size=tuple(high - low for low, high in one.box),
    )
