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
    if (part.shape is None and not part.features) or len(stages) < 2 or any(stage.failed for stage in stages):
        return []
    return alone(lambda: _pieces(stages, part), lambda why: [not_checked("", f"the finished part: {why}")])


def _pieces(stages: Sequence[Stage], part: FinishedPart) -> list[Fact]:
    if as_cut(stages, part):
        return []
    return [
        _fact(difference)
        for difference in differences(stages, part, within_limits=True)
        if difference.what in _KINDS
    ]


def _fact(difference: Difference) -> Fact:
    key = difference.steps[-1] if difference.steps else ""
    return Fact(
        kind=_KINDS[difference.what],
        key=key,
        found=difference.thick,
        against=difference.volume,
        lines=difference.lines,
        steps=difference.steps,
        size=tuple(high - low for low, high in difference.box),
    )
