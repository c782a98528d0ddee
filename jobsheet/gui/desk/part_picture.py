"""What the part shall be as a picture for the job's form: from its lines and the stock it
is cut from, whatever the steps do.

It is made anew when any of them changes: where no line says a size it is that of the stock, and
what a bar never had the part has not.
"""

from __future__ import annotations

from typing import Any

from jobsheet.drawing.drawn import Drawing
from jobsheet.finished.finished_part import FinishedPart
from jobsheet.gui.desk.desk import Desk
from jobsheet.model.lying import Box, stock_box
from jobsheet.model.stock import Outline
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
    from jobsheet.stock.all_shapes import shape_of

    return (_drawn(part, stock_box(job), shape_of(job.stock), job.datums),)


@remembered(8)
def _drawn(part: FinishedPart, stock: Box, outline: Outline | None, datums: Any) -> Drawing:
    from jobsheet.report.stage_view import finished_view
    from jobsheet.stages.as_drawn import part_box
    from jobsheet.stages.bodies import Body
    from jobsheet.stages.part_solid import part_solid
    from jobsheet.stages.solids import Stage, drawn_out

    solid = part_solid(part, part_box(stock, part))
    if outline is not None:
        solid = solid ^ drawn_out(outline)
    return finished_view([Stage(None, None, Body(solid), None)], datums, WIDTH, HEIGHT, part)
