"""The stages as pictures for the pages: the work after a set-up as it is held, and
when all is done, with datum letters.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING

from msgspec import Struct

from jobsheet.drawing.drawn import Drawing, Item
from jobsheet.model.job import Job
from jobsheet.model.lying import Lying
from jobsheet.model.not_checked import alone
from jobsheet.model.setting import Setting
from jobsheet.report.blocks import Picture, Words
from jobsheet.report.isometric import View, datum_letters

if TYPE_CHECKING:
    from jobsheet.finished.finished_part import FinishedPart
    from jobsheet.stages.pictures import Placed
    from jobsheet.stages.solids import Stage

Spot3 = tuple[float, float, float]
#: Room for the datum letters round a picture: left, top, right, bottom [points].
LETTERS = (24.0, 14.0, 24.0, 14.0)


class Made(Struct, frozen=True, kw_only=True):
    """What a set-up makes: sizes along, across and up as they are printed, empty where it leaves one; names,
    each with its place in the frame of the work after it [m].
    """

    sizes: tuple[str, str, str] = ("", "", "")
    names: tuple[tuple[str, Spot3], ...] = ()


def shown(title: str, make: Callable[[], Drawing | None], caption: str = "") -> Picture | Words | None:
    """A picture with its head; where it cannot be drawn, words that say so stand
    in its place, and the page is whole.
    """

    def drawn() -> Picture | Words | None:
        drawing = make()
        return Picture(title, drawing, caption) if drawing is not None else None

    return alone(drawn, lambda why: Words(f"{title}: this picture could not be drawn: {why}", "note"))


def stages_of(job: Job, settings: Mapping[str, Setting]) -> list[Stage]:
    """Stock and the work after every step, in cutting order."""
    from jobsheet.stages.course import course_of
    from jobsheet.stages.solids import shared

    return shared().stages(course_of(job, settings))


def after_set_up(stages: list[Stage], set_up: str) -> tuple[Stage, Stage] | None:
    """The work before and after a set-up; None where it has no step."""
    own = [
        index for index, stage in enumerate(stages) if stage.cut is not None and stage.cut.set_up == set_up
    ]
    return (stages[own[0] - 1], stages[own[-1]]) if own else None


def after_picture(
    stages: list[Stage],
    set_up: str,
    datums: tuple[tuple[str, str], ...],
    width: float,
    height: float,
    made: Made | None = None,
) -> Drawing | None:
    """The work after a set-up as it is held in it; what the set-up cut is heavy, and what it made
    stands beside it by size and name.
    """
    from jobsheet.report.asked_sizes import named_items
    from jobsheet.report.isometric import sizes_beside
    from jobsheet.stages.pictures import fitted, stage_items

    found = after_set_up(stages, set_up)
    if found is None or found[1].cut is None:
        return None
    before, after = found
    lie = found[1].cut.after
    stage = after.since(before)
    sized = made is not None and any(made.sizes)
    below = any(lie.side(face) == "down" for _, face in datums)
    room = _room(made, below=below) if made is not None else LETTERS
    placed = fitted(lie.box, lie, "iso", width, height, room)
    items = stage_items(stage, lie, "iso", placed)
    view = _held_view(placed, lie)
    letters = datum_letters(view, _size(lie), _as_held(lie, datums), sized=sized)
    if made is None:
        return Drawing(width, height, (*items, *letters))
    names = [(name, view.at(at)) for name, at in made.names]
    said = (*sizes_beside(view, _size(lie), made.sizes), *named_items(names, width))
    return Drawing(width, height, (*items, *said, *letters))


def _room(made: Made, *, below: bool) -> tuple[float, float, float, float]:
    """Room for letters, and for the sizes of what a set-up made: left, top, right,
    bottom [points]; `below` with a letter there.

    Names stand in the corner that an isometric picture leaves empty.
    """
    from jobsheet.report.asked_sizes import HEIGHT_AT, LETTER

    left, top, right, bottom = LETTERS
    along, across, up = made.sizes
    if along:
        left = max(left, LETTER * len(along) - 4.0)
    if across:
        right = max(right, LETTER * len(across) - 4.0)
    if up:
        right = max(right, HEIGHT_AT + LETTER * len(up))
    if any(made.sizes):
        bottom = 30.0 if below else 22.0 if along or across else bottom
    return left, top, right, bottom


def from_above(stages: list[Stage], set_up: str) -> Callable[[float, float, float], tuple[Item, ...]] | None:
    """The lines of the work from above as a set-up begins, for a left lower
    corner and a scale [points a metre].
    """
    found = after_set_up(stages, set_up)
    if found is None or found[1].cut is None:
        return None
    first = next(stage.cut for stage in stages if stage.cut is not None and stage.cut.set_up == set_up)
    lie = first.before

    def seen(x0: float, y0: float, scale: float) -> tuple[Item, ...]:
        from jobsheet.stages.pictures import Placed, corner_on, stage_items

        left, low = corner_on(lie, "plan")
        one = scale / 1e3
        return stage_items(found[0], lie, "plan", Placed(one, x0 - left * one, y0 + low * one), now=False)

    return seen


def finished_view(
    stages: list[Stage],
    datums: tuple[tuple[str, str], ...],
    width: float,
    height: float,
    part: FinishedPart | None = None,
    short: Callable[[str, int, str], str] | None = None,
    changed: frozenset[str] = frozenset(),
) -> Drawing:
    """The work when all is done, as the drawing shows it, with its datum letters, and with
    sizes and features where they are said.

    What the steps of the keys `changed` cut is heavy.
    """
    from jobsheet.stages.pictures import fitted, stage_items

    last = stages[-1]
    box = last.cut.after.box if last.cut is not None else last.box
    lie = Lying(near="front", far="rear", left="left", right="right", up="top", down="bottom", box=box)
    if part is None:
        placed = fitted(box, lie, "iso", width, height, (34, 14, 34, 24))
        asked: list[Item] = []
    else:
        from jobsheet.report.asked_sizes import asked_items, room_for

        placed = fitted(box, lie, "iso", width, height, room_for(part))
        asked = asked_items(_held_view(placed, lie), part, box, width, short)
    items = stage_items(last.cut_by(changed) if changed else last, lie, "iso", placed, now=bool(changed))
    letters = datum_letters(_held_view(placed, lie), _size(lie), datums, sized=part is not None)
    return Drawing(width, height, (*items, *asked, *letters))


def _size(lie: Lying) -> tuple[tuple[float, float], tuple[float, float], tuple[float, float]]:
    along, across, up = lie.size
    return (0.0, along), (0.0, across), (0.0, up)


def held_parts(
    placed: Placed, lie: Lying, datums: tuple[tuple[str, str], ...]
) -> tuple[
    View, tuple[tuple[float, float], tuple[float, float], tuple[float, float]], tuple[tuple[str, str], ...]
]:
    """What sizes and letters beside work as it lies are drawn from: the view, its box, and
    its datums by the sides as they lie.
    """
    return _held_view(placed, lie), _size(lie), _as_held(lie, datums)


def _held_view(placed: Placed, lie: Lying) -> View:
    """The same picture for places counted from the left near lower corner of the work as it lies [m]."""
    from jobsheet.stages.pictures import SHORT, corner_on

    x, y = placed.at(*corner_on(lie, "iso"))
    return View(placed.scale * 1e3 * SHORT, x, y)


def _as_held(lie: Lying, datums: tuple[tuple[str, str], ...]) -> tuple[tuple[str, str], ...]:
    """Letters with the sides as they lie, under the names that the drawing's own sides have."""
    names = {"near": "front", "far": "rear", "left": "left", "right": "right", "up": "top", "down": "bottom"}
    return tuple((letter, names[lie.side(face)]) for letter, face in datums)
