"""The route list: every set-up and step with what, cutter, minutes and a box, on one
page, for whoever hands the work on.
"""

from __future__ import annotations

from bisect import bisect_left

from msgspec.structs import replace

from jobsheet.catalog.tools.cutters import short_name
from jobsheet.model.job import Operation
from jobsheet.model.quantity import Cutter
from jobsheet.report.blocks import Cell, Column, Columns, Gap, Heading, Page, Rule, Signature, Table, Words
from jobsheet.report.cover import face_up, minutes
from jobsheet.report.heed.stops import band
from jobsheet.report.plan import Course, Plan
from jobsheet.report.titles import printed_code_of, title
from jobsheet.report.wording import FOOT

#: Letters of a step's words and of its cutter in two columns, and where there is room for all of them.
SHORT, LONG = (60, 30), (240, 90)


def route_list(plan: Plan) -> list[Page]:
    """The list on one page where it has the room: in one column, else in two; what is
    still more goes on from page to page.
    """
    for parted in (False, True):
        page = _page(plan, _body(plan, plan.courses, parted=parted))
        if plan.fits(page):
            return [page]
    return _over_pages(plan)


def _page(plan: Plan, blocks: tuple[object, ...], text: str = "Route list") -> Page:
    made = Page(
        kind="route", about="cover", title=title(plan, "Sheet", text), blocks=blocks, foot=(FOOT,), band=band(plan, ()),
        code=plan.mark,
    )  # fmt: skip
    return replace(made, printed=printed_code_of(plan))


def _body(plan: Plan, some: tuple[Course, ...], *, parted: bool) -> tuple[object, ...]:
    whole = [
        sum(parts) for parts in zip(*(minutes(plan, course.set_up) for course in plan.courses), strict=True)
    ]
    about = f"Minutes set + by hand + in the cut: {_sum(tuple(whole))}" if some and any(whole) else ""
    said = (Words(about, "label bold"),) if about else ()
    end = (Gap(3), Rule(), Signature("Handed over; what was changed on the way stands on the set-up sheets.", ("from", "to", "date")))  # fmt: skip
    if not parted:
        return (*(one for course in some for one in _set_up(plan, course, LONG)), *said, *end)
    left, right = _halves(plan, some)
    return (Columns(parts=(left, right), shares=(0.5, 0.5), ruled=(1,)), *said, *end)


def _halves(plan: Plan, some: tuple[Course, ...]) -> tuple[tuple[object, ...], tuple[object, ...]]:
    """Two columns of about as many rows each, the second one beginning with a set-up or going on with one."""
    rows = [(course, operation) for course in some for operation in course.set_up.operations]
    half = (len(rows) + len(some) + 1) // 2 - len(some) // 2
    sides: list[list[object]] = [[], []]
    for side, part in zip(sides, (rows[:half], rows[half:]), strict=True):
        for course in some:
            own = [operation for other, operation in part if other is course]
            if own or (side is sides[0] and not course.set_up.operations):
                first = not course.set_up.operations or own[0] is course.set_up.operations[0]
                side.extend(_set_up(plan, course, SHORT, tuple(own), again=not first))
    return tuple(sides[0]), tuple(sides[1])


def _over_pages(plan: Plan) -> list[Page]:
    """So many set-ups as a page has room for; a set-up that none holds is cut
    after as many steps as it does.
    """
    pages: list[Page] = []
    rest = [(course, course.set_up.operations) for course in plan.courses]
    while rest:
        blocks: list[object] = []
        taken = 0
        while rest:
            course, operations = rest[0]
            again = bool(operations) and operations[0] is not course.set_up.operations[0]
            count = _rows_that_fit(plan, tuple(blocks), course, operations, again=again)
            if not count and (operations or taken):
                if taken:
                    break
                count = 1  # a row that no page holds stands alone; the page is then as high as it is
            blocks += _set_up(plan, course, LONG, operations[:count], again=again)
            taken += 1
            if count < len(operations):
                rest[0] = (course, operations[count:])
                break
            rest.pop(0)
        pages.append(_page(plan, tuple(blocks), f"Route list, sheet {len(pages) + 1}"))
    return pages or [_page(plan, _body(plan, (), parted=False))]


def _rows_that_fit(
    plan: Plan, before: tuple[object, ...], course: Course, operations: tuple[Operation, ...], *, again: bool
) -> int:
    """How many of these steps a page has room for behind what it holds already: each more takes more room."""

    def has_none(count: int) -> bool:
        return not plan.fits(
            _page(plan, (*before, *_set_up(plan, course, LONG, operations[:count], again=again)))
        )

    return bisect_left(range(1, len(operations) + 1), True, key=has_none)


def _set_up(
    plan: Plan, course: Course, lengths: tuple[int, int], operations: tuple[Operation, ...] | None = None, *, again: bool = False
) -> tuple[object, ...]:  # fmt: skip
    """The head of a set-up and a row for each step."""
    set_up = course.set_up
    name = plan.short(face_up(set_up), 60, f"set-up {set_up.number}, title")
    beside = "continued" if again else f"{_sum(minutes(plan, set_up))} min"
    rows = tuple(
        _row(plan, operation, lengths)
        for operation in (set_up.operations if operations is None else operations)
    )
    columns = (
        Column(caption="", tick=True),
        Column(caption="", style="number", align="right"),
        Column(caption="", style="body", wide=True),
        Column(caption="", style="label"),
    )
    head = Heading(f"Set-up {set_up.number} · {name}", beside)
    return (head, Table(columns=columns, rows=rows), Gap(2)) if rows else (head, Gap(2))


def _row(plan: Plan, operation: Operation, lengths: tuple[int, int]) -> tuple[Cell, ...]:
    outcome = plan.reckoned.operations[operation.key]
    where = f"step {operation.number}"
    do = next((row.do for row in outcome.rows), outcome.title)
    cutter = getattr(operation.fields, "cutter", None)
    kept = (
        ", ".join(part for part in (short_name(cutter), cutter.place) if part)
        if isinstance(cutter, Cutter)
        else ""
    )
    return (
        Cell(),
        Cell(str(operation.number)),
        Cell(plan.short(do, lengths[0], f"{where}, what")),
        Cell(plan.short(kept, lengths[1], f"{where}, cutter")),
    )


def _sum(parts: tuple[float, ...]) -> str:
    return " + ".join(f"{part:.0f}" for part in parts)
