"""Draws one stage of the work as it is held, and where its features lie on the drawing; no toolkit here."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from jobsheet.drawing.drawn import Drawing

if TYPE_CHECKING:
    from jobsheet.stages.course import Cut
    from jobsheet.stages.solids import Stage


#: Room of a small drawing of the strip and of the current one [points], as the cells have it at 100 %.
SMALL, LARGE = (66.0, 80.0), (200.0, 90.0)


def lie_of(stage: Stage) -> Any:
    """How the work is held at a stage, where anything is cut there."""
    return (stage.cut.before.near, stage.cut.before.up) if stage.cut is not None else None


def _margin(*, large: bool) -> tuple[float, float, float, float]:
    return (14.0, 6.0, 30.0, 4.0) if large else (2.0, 2.0, 2.0, 2.0)


def picture_of(stage: Stage, held: Cut | None, *, large: bool, units: str, now: bool) -> Drawing:
    """One stage as it is held, with its sizes where it is the large one and its step is shown."""
    from jobsheet.stages.pictures import fitted, picture, size_items, stage_items

    width, height = LARGE if large else SMALL
    margin = _margin(large=large)
    if held is None:
        return picture(stage, "iso", width, height, now=False, margin=margin)
    lie = held.before
    placed = fitted(lie.box, lie, "iso", width, height, margin)
    items = stage_items(stage, lie, "iso", placed, now=now)
    if large and now:
        items += size_items(stage, lie, placed, units)
    return Drawing(width, height, items)


def spots_of(stages: list[Stage], held: Cut) -> tuple[tuple[float, float, float, str], ...]:
    """Where the features lie on the large drawing of a step."""
    from jobsheet.stages.pictures import features, fitted

    lie = held.before
    placed = fitted(lie.box, lie, "iso", *LARGE, _margin(large=True))
    at = next(
        index for index, stage in enumerate(stages) if stage.cut is not None and stage.cut.key == held.key
    )
    return features(stages[: at + 1], lie, placed)
