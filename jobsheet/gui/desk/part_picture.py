"""What the part shall be as a picture for the job's form: from its lines alone, whatever the steps do; made anew when they change."""

from __future__ import annotations

from typing import Any

from jobsheet.drawing.drawn import Drawing
from jobsheet.finished.finished_part import FinishedPart
from jobsheet.gui.desk.desk import Desk
from jobsheet.model.lying import Box, stock_box
from jobsheet.remembered import remembered

#: Its size [points of a drawing].
WIDTH, HEIGHT = 330.0, 190.0


def part_pictures(desk: Desk) -> tuple[Drawing, ...]:
    """The finished part with its sizes and features; nothing where no line of it can be read."""
    job = desk.job
    if not job.finished:
        return ()
    from jobsheet.finished.finished_part import finished_part

    part = finished_part(job)
    if part.shape is None and not part.features:
        return ()
    return (_drawn(part, stock_box(job), job.datums),)


@remembered(8)
def _drawn(part: FinishedPart, stock: Box, datums: Any) -> Drawing:
    from jobsheet.report.stage_view import finished_view
    from jobsheet.stages.as_drawn import part_box
    from jobsheet.stages.part_solid import part_solid
    from jobsheet.stages.solids import Stage

    solid = part_solid(part, part_box(stock, part))
    return finished_view([Stage(None, None, solid, None)], datums, WIDTH, HEIGHT, part)
