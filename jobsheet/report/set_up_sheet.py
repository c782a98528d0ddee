"""The sheets of all set-ups: short ones share a page, a long one goes on over
several, a hole's chain stays together.
"""

from __future__ import annotations

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.model.job import Operation, SetUp
from jobsheet.model.trials import OUTCOMES
from jobsheet.reckoning.runs_kept import steps_that_cut
from jobsheet.report.blocks import (
    Blanks,
    Columns,
    Gap,
    Heading,
    Outcomes,
    Page,
    Rule,
    Step,
    Steps,
    Ticks,
    Words,
    Writing,
)
from jobsheet.report.cover import face_up
from jobsheet.report.heed.set_up_ticks import at_the_end
from jobsheet.report.heed.stops import band
from jobsheet.report.holding_view import signs
from jobsheet.report.pictured.cutter_begins import first_cut
from jobsheet.report.pictured.zero_there import zero_there
from jobsheet.report.plan import Course, Plan
from jobsheet.report.points import ON_THE_SHEET, places_of
from jobsheet.report.rows.step_rows import TIGHT, steps_of
from jobsheet.report.set_up_head import FIRST, LARGER, SHORT_LARGER, head
from jobsheet.report.titles import short_title
from jobsheet.report.wording import CALCULATED, FOOT, TRAINEE

#: So many rows of steps stand on a page, and so many a set-up has that may share one with others.
STEPS, FEW = 10, 4
#: Less than one more block takes from its neighbour, so that a trial is never too strict [points].
BETWEEN = 1.4
#: A last sheet has at least so many rows, where the one before it can spare them.
LEAST = 3
VERDICTS = ("cut before", "expected", "not tried", "tight", "beyond")
#: What happened, in the order in which it is typed in afterwards: how each step
#: went, what would be changed, minutes.
DIGITS = " · ".join((*(f"{digit} {word}" for digit, word in enumerate(OUTCOMES, 1)), "0 not cut"))
CHANGED = "would change: nothing, lighter, slower, other cutter, hold deeper, other order"
MINUTES = ("min to set", "min to cut")
#: Letters of what happened the last time: two lines of its column.
LAST_TIME = 130
KEY = f"How a step went: {DIGITS}."


class Part(Struct, frozen=True, kw_only=True):
    """What of a set-up stands on one page: its rows, which sheet of how many,
    and after which step it continues.
    """

    course: Course
    steps: tuple[Step, ...]
    index: int = 0
    count: int = 1
    before: str | None = None
    positions: bool = True
    small: bool = False
    last: bool = True
    #: Height of its drawings [points]; 0 for the usual one.
    high: float = 0.0


def set_up_pages(plan: Plan, parts: list[tuple[Part, ...]]) -> list[Page]:
    """All pages of all set-ups."""
    return [_page(plan, some) for some in parts]


def larger(plan: Plan, parts: tuple[Part, ...], page: Page) -> Page:
    """The same page, whatever was added at its end, with the drawings as large as it has room for."""
    short = all(part.small for part in parts)
    if not plan.measured or (len(parts) > 1 and not short):
        return page
    added = page.blocks[len(_page(plan, parts).blocks) :]
    for high in SHORT_LARGER if short else LARGER:
        # Three pictures side by side take so much more and nothing else changes:
        # what has no room is not drawn first.
        more = Gap(high - FIRST - BETWEEN)
        if (
            not short
            and parts[0].before is None
            and not plan.fits(replace(page, blocks=(*page.blocks, more)))
        ):
            continue
        made = _page(plan, tuple(replace(part, high=high) for part in parts))
        grown = replace(page, blocks=(*made.blocks, *added))
        if plan.fits(grown):
            return grown
    return page


def set_up_parts(plan: Plan) -> list[tuple[Part, ...]]:
    """What stands on each page of the set-ups."""
    pages: list[tuple[Part, ...]] = []
    for course in plan.courses:
        rows = rows_of(plan, course)
        shared = _shared(plan, pages[-1], course, rows) if pages else None
        if shared is not None:
            pages[-1] = shared
        else:
            pages += [(part,) for part in _parts(plan, course, rows)]
    # The last page shares with the notes of the whole job what it has left.
    return [_roomier(plan, parts) if parts is not pages[-1] else parts for parts in pages]


def rows_of(
    plan: Plan, course: Course, *, short: bool = False, said: frozenset[str] = frozenset()
) -> list[tuple[Step, ...]]:
    """The rows of every operation of a set-up; `short` with the first sentence of each
    caution, but for those `said` above.
    """
    return [
        steps_of(plan, course, operation, short=short, said=said) for operation in course.set_up.operations
    ]


def _cautions(plan: Plan, page: tuple[Part, ...]) -> frozenset[str]:
    """Ids of the cautions that stand beside the steps of a page."""
    operations = [operation for part in page for operation in part.course.set_up.operations]
    return frozenset(note.id for operation in operations for note in plan.notes.steps.get(operation.key, ()))


def _shared(
    plan: Plan, page: tuple[Part, ...], course: Course, rows: list[tuple[Step, ...]]
) -> tuple[Part, ...] | None:
    """The same page with one more short set-up on it; None where it has no room for all of it."""
    steps = tuple(step for some in rows for step in some)
    if not 0 < len(steps) <= FEW or sum(len(part.steps) for part in page) + len(steps) > STEPS:
        return None
    whole = all(part.count == 1 for part in page)
    own = _small(plan, Part(course=course, steps=steps), _cautions(plan, page) if whole else frozenset())
    before = tuple(_small(plan, part, _cautions(plan, page[:at])) for at, part in enumerate(page))
    together = (*before, own)
    return together if plan.measured and plan.fits(_page(plan, together)) else None


def _small(plan: Plan, part: Part, said: frozenset[str] = frozenset()) -> Part:
    """A part with its short block and its notes by their first sentences,
    where it is a set-up of few steps.
    """
    if part.before is not None or part.count > 1 or len(part.steps) > FEW:
        return part
    rows = rows_of(plan, part.course, short=True, said=said)
    return replace(part, small=True, steps=tuple(step for some in rows for step in some))


def _roomier(plan: Plan, parts: tuple[Part, ...]) -> tuple[Part, ...]:
    """A set-up that stands alone has its large drawings back, where there is room for them."""
    if len(parts) > 1 or not parts[0].small:
        return parts
    rows = rows_of(plan, parts[0].course)
    large = (replace(parts[0], small=False, steps=tuple(step for some in rows for step in some)),)
    return large if plan.fits(_page(plan, large)) else parts


def _parts(plan: Plan, course: Course, rows: list[tuple[Step, ...]]) -> list[Part]:
    """A set-up over as many sheets as it needs: cautions by their first sentences where that saves one."""
    whole = Part(course=course, steps=tuple(step for some in rows for step in some))
    last = course is plan.courses[-1]
    for part in (_small(plan, whole), whole) if last else (whole, _small(plan, whole)):
        if len(part.steps) <= STEPS and plan.fits(_page(plan, (part,))):
            return [part]
    full = _split(plan, course, rows)
    first = _split(plan, course, rows_of(plan, course, short=True)) if plan.measured else full
    return first if len(first) < len(full) else full


def _split(plan: Plan, course: Course, rows: list[tuple[Step, ...]]) -> list[Part]:
    """A set-up that one sheet does not hold, from sheet to sheet."""
    ends: list[int] = []
    start = 0
    while start < len(rows) or not ends:
        end = _end(plan, course, rows, start)
        if end == start and start < len(rows):
            # Not even one step has room: its texts are cut shorter, and stand in full at the end.
            operation = course.set_up.operations[start]
            rows[start] = steps_of(plan, course, operation, short=True, lengths=TIGHT)
            end = max(_end(plan, course, rows, start), start + 1)
        ends.append(end)
        start = end
    starts = _evened(plan, course, rows, [0, *ends[:-1]])
    return [_part(course, rows, at, starts) for at in range(len(starts))]


def _part(course: Course, rows: list[tuple[Step, ...]], at: int, starts: list[int]) -> Part:
    end = starts[at + 1] if at + 1 < len(starts) else len(rows)
    steps = tuple(step for some in rows[starts[at] : end] for step in some)
    before = str(course.set_up.operations[starts[at] - 1].number) if at else None
    return Part(
        course=course,
        steps=steps,
        index=at,
        count=len(starts),
        before=before,
        positions=_first_to_go(course, rows, starts[at], end),
        last=at == len(starts) - 1,
    )


def _first_to_go(course: Course, rows: list[tuple[Step, ...]], start: int, end: int) -> bool:
    """Whether the points stand on the sheet of these operations: once, where a step first goes to any."""
    going = [index for index, operation in enumerate(course.set_up.operations) if places_of(operation)]
    return bool(going) and start <= going[0] < end and bool(rows)


def _evened(plan: Plan, course: Course, rows: list[tuple[Step, ...]], starts: list[int]) -> list[int]:
    """Where sheets begin, with some steps moved to a last sheet that would have hardly any."""
    if len(starts) < 2:
        return starts
    count = sum(len(some) for some in rows[starts[-1] :])
    trial = starts[-1]
    while count < LEAST and trial - 1 > starts[-2] + LEAST:
        trial -= 1
        count += len(rows[trial])
    moved = [*starts[:-1], trial]
    return moved if plan.fits(_page(plan, (_part(course, rows, len(moved) - 1, moved),))) else starts


def _end(plan: Plan, course: Course, rows: list[tuple[Step, ...]], start: int) -> int:
    """Up to which operation a sheet goes that begins at one; where something is
    left, a hole's chain is not parted.
    """
    end, count = start, 0
    while end < len(rows) and (count + len(rows[end]) <= STEPS or end == start):
        count += len(rows[end])
        end += 1
    while end > start and not plan.fits(_page(plan, (_tried(course, rows, start, end),))):
        end -= 1
    if end in (len(rows), start):
        return end
    operations = course.set_up.operations
    # A chain is moved to the next sheet only where at least half of this one stays.
    for cut in range(end, start + (end - start + 1) // 2 - 1, -1):
        if not _same_chain(operations[cut - 1], operations[cut]):
            return cut
    return end


def _tried(course: Course, rows: list[tuple[Step, ...]], start: int, end: int) -> Part:
    """A sheet that is tried out, one of several: `sheet 1 of 2` is what takes the room."""
    starts = [0, start, end] if start else [0, end]
    return _part(course, rows, 1 if start else 0, starts if end < len(rows) else starts[:-1])


def _same_chain(operation: Operation, other: Operation) -> bool:
    """Whether two operations work at the same places, as spot, drill and tap do."""
    first, second = places_of(operation), places_of(other)
    return bool(first) and first == second


def _page(plan: Plan, parts: tuple[Part, ...]) -> Page:
    """One page of one set-up, or of several short ones under headings of their own.

    What the digits of what happened mean stands at its foot; where it has no room for that line, on the first
    line to write on. What happened the last time never makes a page of its own: without room it is left out.
    """
    ended = parts[-1].last and plan.measured
    keys = (True, False) if ended and not any(part.small for part in parts) else (True,)
    told = any(part.course.set_up.key in plan.last_times for part in parts)
    tries = [(key, last) for last in ((True, False) if ended and told else (True,)) for key in keys]
    page = _made(plan, parts, *tries[0])
    for key, last in tries[1:]:
        if plan.fits(page):
            break
        page = _made(plan, parts, key, last)
    return page


def _made(plan: Plan, parts: tuple[Part, ...], key: bool, last: bool) -> Page:
    """One of the ways to end it: with the digits at its foot, with what happened the last time."""
    blocks: list[object] = []
    for part in parts:
        if len(parts) > 1:
            blocks += [
                *((Gap(2), Rule("frame")) if blocks else ()),
                Heading(_named(plan, part), "hold, and the zero from above"),
            ]
        blocks += body(plan, part, captions=part is parts[0], key=key, last=last)
    about = tuple(part.course.set_up.key for part in parts)
    if len(parts) == 1:
        text = _named(plan, parts[0])
    else:
        numbers = [str(part.course.set_up.number) for part in parts]
        text = f"{', '.join(numbers[:-1])} and {numbers[-1]} of {len(plan.job.set_ups)}"
    return Page(
        kind="set-up", about=" ".join(about), title=short_title(plan, "Set-up" if len(parts) == 1 else "Set-ups", text),
        blocks=tuple(blocks), legend=legend(plan, parts), foot=foot(plan, key=key and any(part.last and cut_numbers(plan, part.course) for part in parts)), band=band(plan, about), code=plan.mark,
    )  # fmt: skip


def _named(plan: Plan, part: Part) -> str:
    set_up = part.course.set_up
    name = plan.short(face_up(set_up), 60, f"set-up {set_up.number}, title")
    text = f"{set_up.number} of {len(plan.job.set_ups)} · {name}"
    return f"{text}, sheet {part.index + 1} of {part.count}" if part.count > 1 else text


def body(
    plan: Plan, part: Part, *, captions: bool = True, key: bool = True, last: bool = True
) -> list[object]:
    """Head, steps and end of what of a set-up stands on a page."""
    blocks = [
        *head(
            plan, part.course, small=part.small, before=part.before, positions=part.positions, high=part.high
        )
    ]
    if part.steps:
        blocks.append(Steps(part.steps, captions))
    if part.last:
        return [*blocks, Rule(), *after(plan, part.course, short=part.small, key=key, last=last)]
    return [*blocks, Rule(), Words(f"Go on to sheet {part.index + 2}: do not unclamp.", "number")]


def after(
    plan: Plan, course: Course, *, short: bool, key: bool = True, last: bool = True
) -> tuple[object, ...]:
    """What is ticked before the work is taken out, and lines for what
    happened, which begin with last time's.
    """
    before = _last_time(plan, course.set_up) if last else ()
    ticks = at_the_end(plan, course.set_up)
    cuts = cut_numbers(plan, course)
    if short:
        return (
            *((Ticks(ticks),) if ticks else ()),
            *before,
            Outcomes(cuts, ("would change", *MINUTES, "made by")),
        )
    signed = Blanks((*MINUTES, "made by", "checked by"))
    happened = (*before, Outcomes(cuts, head="What happened"), Writing(1, CHANGED if key else DIGITS), signed)
    if not ticks:
        return happened
    return (Columns(parts=((Heading("Before unclamping"), Ticks(ticks)), happened), shares=(0.35, 0.65)),)


def _last_time(plan: Plan, set_up: SetUp) -> tuple[Words, ...]:
    """What happened the last time, where something is recorded."""
    said = plan.last_times.get(set_up.key, "")
    where = f"set-up {set_up.number}, last time"
    return (Words(plan.short(f"Last time: {said}", LAST_TIME, where), "label"),) if said else ()


def cut_numbers(plan: Plan, course: Course) -> tuple[str, ...]:
    """The steps of a set-up that cut: work by hand has no outcome of a cut."""
    return tuple(str(operation.number) for operation in steps_that_cut(course.set_up, plan.reckoned))


def foot(plan: Plan, *, key: bool) -> tuple[str, ...]:
    """The sentences at the foot of a page with steps; `key` where the digits of what happened are written."""
    training = (TRAINEE,) if plan.job.trainee else ()
    return (*training, *plan.of_the_print, *((KEY,) if key else ()), f"{CALCULATED} {FOOT}")


def legend(plan: Plan, parts: tuple[Part, ...]) -> tuple[str, ...]:
    """Only the signs and the verdicts of this page."""
    lines: list[str] = []
    for part in parts:
        course = part.course
        datums = {course.lie.side(face) for _, face in plan.job.datums}
        points = bool(course.points) and len(course.points) <= ON_THE_SHEET
        lines += [
            *signs(course.set_up, course.lie), *(("zero",) if zero_there(plan, course) else ()),
            *(("first cut",) if part.before is None and first_cut(plan, course) is not None else ()), *(("datum",) if datums else ()), *(("cut now",) if points else ()),
            *(("hazard",) if any(step.notes for step in part.steps) else ()),
        ]  # fmt: skip
    given = {step.verdict for part in parts for step in part.steps}
    given |= {"not tried" for part in parts for step in part.steps if step.untried}
    return (*dict.fromkeys(lines), *(verdict for verdict in VERDICTS if verdict in given))
