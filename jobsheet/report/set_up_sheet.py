"""The sheets of a set-up, from the top as the hands work: hold, zero, before cutting, positions, steps, measure."""

from __future__ import annotations

from jobsheet.holdings.all_holdings import rests_of, words_of
from jobsheet.holdings.of_stock import at_odds
from jobsheet.holdings.placed import in_jaws
from jobsheet.holdings.to_say import to_say, unasked
from jobsheet.machine.handles import scale_text
from jobsheet.model.job import SetUp
from jobsheet.report.blocks import (
    Blanks,
    Cell,
    Column,
    Columns,
    Facts,
    Gap,
    Heading,
    Measures,
    Page,
    Picture,
    Rule,
    Step,
    Steps,
    Table,
    Words,
    Writing,
)
from jobsheet.report.cover import face_up
from jobsheet.report.dial_words import approach, backlash
from jobsheet.report.held_in_words import changes, gone_by, sits_words, tight_words
from jobsheet.report.holding_view import holding_picture, jaw_words, signs
from jobsheet.report.measured import measures_of
from jobsheet.report.plan import Course, Plan
from jobsheet.report.points import ON_THE_SHEET, Point, dial_place, places_of
from jobsheet.report.safety import set_up_stops, stop_box, ticks
from jobsheet.report.stage_view import after_picture, from_above, shown
from jobsheet.report.step_rows import TIGHT, steps_of
from jobsheet.report.titles import title
from jobsheet.report.wording import CALCULATED, FOOT, STAMP, TRAINEE
from jobsheet.report.zero_view import beside_the_work, zero_picture

#: So many rows of steps stand on a page.
STEPS = 10
#: Height of the drawings of the holding: on the first sheet, on one that continues, and where that has little room.
FIRST, SMALL, SMALLEST = 114.0, 104.0, 88.0
VERDICTS = ("cut before", "expected", "not tried", "tight", "beyond")


def set_up_sheets(plan: Plan, course: Course) -> list[Page]:
    """All sheets of one set-up: notes in full where that takes no further sheet, else their first sentences."""
    best: list[Page] = []
    least = (0, 0)
    for short, high in ((False, SMALL), (True, SMALL), (True, SMALLEST)):
        found = _sheets(plan, course, short=short, high=high)
        over = (sum(not plan.fits(page) for page in found), len(found))
        if not best or over < least:
            best, least = found, over
        if least == (0, 1):
            break
    return best


def _sheets(plan: Plan, course: Course, *, short: bool, high: float) -> list[Page]:
    operations = course.set_up.operations
    rows = [steps_of(plan, course, operation, short=short) for operation in operations]
    parts: list[tuple[Step, ...]] = []
    start = 0
    while start < len(rows) or not parts:
        end = _end(plan, course, rows, start, high, first=not parts)
        if end == start and start < len(rows):
            # Not even one step has room: its texts are cut shorter, and stand in full at the end.
            rows[start] = steps_of(plan, course, operations[start], short=True, lengths=TIGHT)
            end = max(_end(plan, course, rows, start, high, first=not parts), start + 1)
        parts.append(tuple(step for operation in rows[start:end] for step in operation))
        start = end
    pages = []
    for index, part in enumerate(parts):
        page = _page(plan, course, part, index, len(parts), parts, high=high)
        if short:
            whole = _page(plan, course, _in_full(plan, course, part), index, len(parts), parts, high=high)
            page = whole if plan.fits(whole) else page
        pages.append(page)
    return pages


def _in_full(plan: Plan, course: Course, part: tuple[Step, ...]) -> tuple[Step, ...]:
    """The same steps with their notes in full, for a sheet that turns out to have the room."""
    numbers = {step.number for step in part}
    return tuple(
        step
        for operation in course.set_up.operations
        if str(operation.number) in numbers
        for step in steps_of(plan, course, operation, short=False)
    )


def _end(
    plan: Plan, course: Course, rows: list[tuple[Step, ...]], start: int, high: float, *, first: bool
) -> int:
    """Up to which operation a sheet goes that begins at one; where something is left, a hole's chain is not parted."""
    end, count = start, 0
    while end < len(rows) and (count + len(rows[end]) <= STEPS or end == start):
        count += len(rows[end])
        end += 1
    while end > start or not rows:
        part = tuple(step for operation in rows[start:end] for step in operation)
        # Two sheets are assumed while it is tried: `sheet 1 of 2` is what takes the room.
        last = end == len(rows)
        page = _page(
            plan,
            course,
            part,
            0 if first else 1,
            1 if first and last else 2 + (not last),
            [part],
            last=last,
            high=high,
        )
        if plan.fits(page) or not rows:
            break
        end -= 1
    if end == len(rows) or end == start:
        return end
    operations = course.set_up.operations
    # A chain is moved to the next sheet only where at least half of this one stays.
    for cut in range(end, start + (end - start + 1) // 2 - 1, -1):
        if not _same_chain(operations[cut - 1], operations[cut]):
            return cut
    return end


def _same_chain(one: object, other: object) -> bool:
    """Whether two operations work at the same places, as spot, drill and tap do."""
    first, second = places_of(one), places_of(other)  # type: ignore[arg-type]
    return bool(first) and first == second


def _page(
    plan: Plan,
    course: Course,
    steps: tuple[Step, ...],
    index: int,
    count: int,
    parts: list[tuple[Step, ...]],
    *,
    last: bool | None = None,
    high: float = SMALL,
) -> Page:
    set_up = course.set_up
    last = index == count - 1 if last is None else last
    name = plan.short(face_up(set_up), 60, f"set-up {set_up.number}, title")
    text = f"{set_up.number} of {len(plan.job.set_ups)} · {name}"
    if count > 1:
        text += f", sheet {index + 1} of {count}"
    before = parts[index - 1][-1].number if index and len(parts) > index - 1 and parts[index - 1] else ""
    held = (
        plan.once(_held, course, high, before)
        if index
        else plan.once(_held, course, FIRST if high > SMALLEST else SMALLEST, None)
    )
    blocks: list[object] = [*stop_box(plan, set_up_stops(plan, set_up)), *held, Rule()]
    at_points = any(_goes_to(course, step) for step in steps) or (count == 1 and index == 0)
    if index == 0:
        blocks += [plan.once(_before, course, at_points, high > SMALLEST), Rule()]
    elif at_points and course.points:
        blocks += [*plan.once(_positions, course), Rule()]
    if steps:
        blocks.append(Steps(steps))
    if last:
        blocks += [Rule(), *_after(plan, set_up)]
    else:
        blocks += [Rule(), Words(f"Go on to sheet {index + 2}: do not unclamp.", "number")]
    return Page(
        kind="set-up", about=set_up.key, title=title(plan, "Set-up", text), blocks=tuple(blocks),
        legend=_legend(plan, course, steps), foot=_foot(plan), stamp=STAMP if plan.open_stops else "",
    )  # fmt: skip


def _goes_to(course: Course, step: Step) -> bool:
    """Whether a step goes to any of the points."""
    return any(int(step.number) in point.steps for point in course.points)


def _foot(plan: Plan) -> tuple[str, ...]:
    training = (TRAINEE,) if plan.job.trainee else ()
    return (*training, *plan.chosen, CALCULATED, FOOT)


def _held(plan: Plan, course: Course, high: float, before: str | None) -> tuple[object, ...]:
    """How it is held, the zero from above, and both in words; on a sheet that continues, what one needs to look again."""
    job, set_up = plan.job, course.set_up
    datums = tuple((plan.short(letter, 4, "datum letter"), face) for letter, face in job.datums)
    facts = held_facts(plan, course)
    if before is not None:
        said = changes(set_up, int(before)) if before else ""
        again = f"step {before}: {said or 'same holding'}, same zero"
        facts = (("continues from", again), *(fact for fact in facts if fact[0] in _AGAIN))
    if before is None and high > SMALLEST:
        return _held_first(plan, course, datums, facts, high)
    gone = gone_by(set_up, int(before)) if before else frozenset()
    hold = holding_picture(set_up, course.lie, datums, 150, high, plan.card, gone)
    points = course.points if len(course.points) <= ON_THE_SHEET else ()
    return (
        Columns(
            parts=(
                (Picture("Hold", hold),),
                (_zero(plan, course, points, datums, 200, high, gone),),
                (Gap(1), Facts(facts)),
            ),
            shares=(0.31, 0.4, 0.29),
            ruled=(2,),
        ),
    )


def _zero(
    plan: Plan,
    course: Course,
    points: tuple[Point, ...],
    datums: tuple[tuple[str, str], ...],
    width: float,
    high: float,
    gone: frozenset[str] = frozenset(),
) -> object:
    """The zero and the points from above, on the lines of the work as the set-up begins."""
    set_up, lie = course.set_up, course.lie
    return shown(
        "Zero, from above",
        lambda: zero_picture(
            set_up, lie, points, datums, width, high, from_above(plan.stages, set_up.key), plan.card, gone
        ),
        beside_the_work(set_up, lie, points),
    )


def _held_first(
    plan: Plan,
    course: Course,
    datums: tuple[tuple[str, str], ...],
    facts: tuple[tuple[str, str], ...],
    high: float,
) -> tuple[object, ...]:
    """The three pictures of a set-up's first sheet, and the holding in words under them in two columns."""
    set_up = course.set_up
    points = course.points if len(course.points) <= ON_THE_SHEET else ()
    hold = holding_picture(set_up, course.lie, datums, 148, high, plan.card)
    after = shown("After this set-up", lambda: after_picture(plan.stages, set_up.key, datums, 142, high))
    pictures: list[tuple[object, ...]] = [
        (Picture("Hold", hold),),
        (_zero(plan, course, points, datums, 190, high),),
    ]
    if after is not None:
        pictures.append((after,))
    shares = (0.3, 0.41, 0.29) if after is not None else (0.4, 0.6)
    half = (len(facts) + 1) // 2
    return (
        Columns(parts=tuple(pictures), shares=shares, ruled=(2,) if after is not None else ()),
        Columns(parts=((Facts(facts[:half]),), (Facts(facts[half:]),)), shares=(0.5, 0.5)),
    )


#: What a sheet that continues says again.
_AGAIN = ("held in", "fixed jaw", "on", "zero")


def held_facts(plan: Plan, course: Course) -> tuple[tuple[str, str], ...]:
    """Holding and zero in words; what was not said is left out."""
    set_up = course.set_up
    holding, zero = set_up.holding, set_up.zero
    where = f"set-up {set_up.number}"
    units = plan.job.units
    letters = {face: letter for letter, face in plan.job.datums}
    found = f", with {zero.found}" if zero.found else ""
    up = f"{set_up.up}{f' ({letters[set_up.up]})' if set_up.up in letters else ''}, {set_up.operator} to you"
    rows = (
        ("held in", ", ".join(part for part in (words_of(holding), tight_words(holding)) if part)),
        ("face up", up),
        ("fixed jaw", jaw_words(set_up, plan.job.datums) if in_jaws(set_up, course.lie) else ""),
        ("on", rests_of(holding)),
        ("sits", sits_words(holding, units)),
        ("not said", ", ".join(to_say(set_up, plan.job.stock))),
        ("does not agree", at_odds(set_up, plan.job.stock)),
        ("not checked", unasked(set_up)),
        ("zero", f"{zero.named or 'corner'}{found}"),
        ("note", "; ".join(text for text in (holding.note, set_up.note) if text)),
    )
    return tuple((caption, plan.short(text, 110, f"{where}, {caption}")) for caption, text in rows if text)


def _before(plan: Plan, course: Course, at_points: bool, roomy: bool) -> Columns:
    """The ticks, and beside them the points where this sheet's steps go to any."""
    said = " · ".join(row.text for row in plan.reminders.set_ups.get(course.set_up.key, ()) if roomy)
    left = (
        Heading("Before cutting"),
        ticks(plan, course.set_up, reminded=roomy),
        *((Words(f"{said}.", "note"),) if said else ()),
    )
    right = _positions(plan, course) if at_points else ()
    if not right:
        return Columns(parts=(left,), shares=(1.0,))
    return Columns(parts=(left, right), shares=(0.3, 0.7))


def _positions(plan: Plan, course: Course) -> tuple[object, ...]:
    """The table of points, or where to find it."""
    if not course.points:
        return ()
    if len(course.points) > ON_THE_SHEET:
        return (
            Heading("Positions"),
            Words(f"{len(course.points)} points: on the positions card of this set-up.", "number"),
            Words(approach(course.set_up)),
        )
    return (
        Heading("Positions", scales(plan)),
        positions_table(plan, course, course.points),
        Words(approach(course.set_up), "note"),
    )


def scales(plan: Plan) -> str:
    """What a turn and a line are on the two handles; once where they are alike."""
    x, y = plan.card.handle("x"), plan.card.handle("y")
    words = list(dict.fromkeys(scale_text(handle) for handle in (x, y) if handle is not None))
    dials = f"{plan.card.title} dials, "
    scale = (
        words[0]
        if len(words) == 1
        else "; ".join(f"{axis} {text}" for axis, text in zip("XY", words, strict=False))
    )
    return "; ".join(part for part in (dials + scale, backlash(plan.card)) if part)


def positions_table(
    plan: Plan, course: Course, points: tuple[Point, ...], passes: tuple[int, ...] = ()
) -> Table:
    """Turns and dial from the zero, running; beside them the line to stop at and how far off it is."""
    units = plan.job.units
    columns = [
        Column(caption="point", style="number"),
        Column(caption=units, align="right", style="label"),
        Column(caption="X turns + dial", style="dial"),
        Column(caption=units, align="right", style="label", ruled=True),
        Column(caption="Y turns + dial", style="dial"),
        *(Column(caption=str(number), tick=True) for number in passes),
    ]
    rows = [
        (
            Cell(str(point.number)), *_axis(plan, "x", point.x, point.x_text), *_axis(plan, "y", point.y, point.y_text),
            *(Cell(tick=number in point.steps) for number in passes),
        )
        for point in points
    ]  # fmt: skip
    return Table(columns=tuple(columns), rows=(_zero_row(plan, course, passes), *rows))


def _zero_row(plan: Plan, course: Course, passes: tuple[int, ...]) -> tuple[Cell, ...]:
    named = plan.short(course.set_up.zero.named, 16, f"set-up {course.set_up.number}, zero")
    return (
        Cell("0", (named,) if named else ()), *_axis(plan, "x", 0.0, "0"), *_axis(plan, "y", 0.0, "0"),
        *(Cell(tick=False) for _ in passes),
    )  # fmt: skip


def _axis(plan: Plan, axis: str, distance: float, text: str) -> tuple[Cell, Cell]:
    place = dial_place(plan.card.handle(axis), distance, plan.job.units)
    return Cell(plan.short(text, 14, "position")), Cell(
        place.dial or "no handle", (place.line, place.error) if place.dial else ()
    )


def _after(plan: Plan, set_up: SetUp) -> tuple[object, ...]:
    measures = measures_of(plan, set_up)
    happened: tuple[object, ...] = (
        Heading("What happened", "noise, chatter, finish, stall"), Writing(1), Blanks(("made by", "checked by", "time")),
    )  # fmt: skip
    if not measures:
        return happened
    return (
        Columns(parts=((Heading("Measure in this hold"), Measures(measures)), happened), shares=(0.5, 0.5)),
    )


def _legend(plan: Plan, course: Course, steps: tuple[Step, ...]) -> tuple[str, ...]:
    """Only the signs of this page, and the verdicts."""
    datums = {course.lie.side(face) for _, face in plan.job.datums}
    points = bool(course.points) and len(course.points) <= ON_THE_SHEET
    return (
        *signs(course.set_up, course.lie), "zero", *(("datum",) if datums else ()), *(("cut now",) if points else ()),
        *(("hazard",) if any(step.notes for step in steps) else ()), *VERDICTS,
    )  # fmt: skip
