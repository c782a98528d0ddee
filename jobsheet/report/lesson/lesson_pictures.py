"""How the work comes and how it must leave, beside each other: metal only, as
the asked set-ups begin and end.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from jobsheet.drawing.drawn import Drawing
from jobsheet.finished.finished_part import finished_part
from jobsheet.lessons.order_exercise import OrderExercise
from jobsheet.model.lying import Lying
from jobsheet.reckoning.reckoner import Reckoned
from jobsheet.report.blocks import Columns
from jobsheet.report.isometric import datum_letters, sizes_beside
from jobsheet.report.stage_view import finished_view, shown, stages_of
from jobsheet.units.show import trimmed

if TYPE_CHECKING:
    from jobsheet.stages.solids import Stage

WIDE, HIGH = 245.0, 128.0


def before_and_after(exercise: OrderExercise, reckoned: Reckoned) -> Columns:
    """The two pictures for the steps that are asked."""
    job = reckoned.job
    asked = {key for keys in exercise.asked.steps.values() for key in keys}
    order = [operation.key for _, operation in job.operations()]
    places = [place for place, key in enumerate(order) if key in asked]
    stages: list[Stage] = stages_of(job, reckoned.settings)

    def comes() -> Drawing:
        return _picture(stages[places[0]], stages[places[0] + 1], job.datums, job.units, first=True)

    def leaves() -> Drawing:
        last = stages[places[-1] + 1]
        if places[-1] == len(order) - 1 and job.finished:
            return finished_view(
                stages, job.datums, WIDE, HIGH, finished_part(job), lambda text, most, _where: text[:most]
            )
        return _picture(last, last, job.datums, job.units, first=False)

    parts = ((shown("How it comes", comes),), (shown("How it must leave", leaves),))
    return Columns(parts=parts, shares=(0.5, 0.5), ruled=(1,))


def _picture(
    stage: Stage, held: Stage, datums: tuple[tuple[str, str], ...], units: str, *, first: bool
) -> Drawing:
    """The work of one stage as it lies in the step of another, with its three sizes and its datums."""
    from jobsheet.report.stage_view import held_parts
    from jobsheet.stages.pictures import fitted, stage_items

    assert held.cut is not None
    lie: Lying = held.cut.before if first else held.cut.after
    placed = fitted(lie.box, lie, "iso", WIDE, HIGH, (40, 16, 48, 26))
    view, work, letters = held_parts(placed, lie, datums)
    along, across, up = (_size(one, units) for one in lie.size)
    items = stage_items(stage, lie, "iso", placed, now=False)
    return Drawing(
        WIDE,
        HIGH,
        (
            *items,
            *sizes_beside(view, work, (along, across, up)),
            *datum_letters(view, work, letters, sized=True),
        ),
    )


def _size(value: float, units: str) -> str:
    return f"{value / 0.0254:.3f}" if units == "in" else trimmed(value * 1e3, 1)
