"""How the work of a set-up is held and where its zero is, as pictures for its
form: made anew when a fact is entered.
"""

from __future__ import annotations

from jobsheet.drawing.drawn import Drawing
from jobsheet.errors import JobsheetError
from jobsheet.gui.desk.desk import Desk
from jobsheet.model.lying import Lying, lying, stock_box
from jobsheet.model.machine import Machine
from jobsheet.stock.all_shapes import shape_of

#: Sizes of both pictures [points of a drawing].
HOLD, ZERO = (230.0, 150.0), (270.0, 150.0)


def holding_pictures(desk: Desk, key: str) -> tuple[Drawing, ...]:
    """The holding from the side, and it and the zero from above; nothing for a set-up that is gone."""
    from jobsheet.report.holding_view import holding_picture
    from jobsheet.report.zero_view import zero_picture

    set_up = desk.set_up(key)
    if set_up is None:
        return ()
    lie, datums, card = _lie(desk, key), desk.job.datums, _card(desk)
    return (
        holding_picture(set_up, lie, datums, *HOLD, card, units=desk.job.units),
        zero_picture(set_up, lie, (), datums, *ZERO, machine=card),
    )


def _lie(desk: Desk, key: str) -> Lying:
    """The work as this set-up finds it: what earlier ones took off is gone."""
    from jobsheet.stages.course import course_of

    set_up = desk.set_up(key)
    assert set_up is not None
    box = stock_box(desk.job)
    if desk.reckoned is not None:
        known = {other.key for other in desk.job.set_ups[: desk.job.set_ups.index(set_up)]}
        for cut in course_of(desk.reckoned.job, desk.reckoned.settings).cuts:
            if cut.set_up not in known:
                break
            box = cut.after.box
    return lying(set_up, box, shape_of(desk.job.stock))


def _card(desk: Desk) -> Machine | None:
    from jobsheet.storage.card_files import find_card

    try:
        return find_card(desk.job.machine)
    except JobsheetError:
        return None
