"""A job of one set-up and few steps on two pages: what to fetch, how it is held and the
zero; then steps and what to heed.
"""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.report.blocks import (
    Blanks,
    Columns,
    Gap,
    Heading,
    NoteLines,
    Page,
    Rule,
    Signature,
    Steps,
    Ticks,
)
from jobsheet.report.cover import CHANGE, FETCH, fetch_blocks, open_box, open_lines, pictures, why_blocks
from jobsheet.report.fetch import fetched
from jobsheet.report.heed.revisions import hazards_aside, revision_blocks
from jobsheet.report.heed.safety import MOST, rest
from jobsheet.report.heed.set_up_ticks import before, once
from jobsheet.report.heed.stops import band
from jobsheet.report.photograph_pages import with_photograph
from jobsheet.report.plan import Course, Plan
from jobsheet.report.points import ON_THE_SHEET
from jobsheet.report.set_up_head import full_pictures, positions_on
from jobsheet.report.set_up_sheet import STEPS, Part, after, cut_numbers, foot, legend, rows_of
from jobsheet.report.titles import printed_code_of, short_title, title
from jobsheet.report.wording import CHECKED, FOOT, TRAINEE_JOB

#: Notes of the whole job stand beside the steps or under the positions: at least so many,
#: else they want a page of their own.
LEAST = 3
COUNTS = (*range(MOST, LEAST, -2), LEAST)
#: Texts in letters, and heights of the two rows of pictures [points], from roomy to narrow; a
#: row of height 0 is left out: with one set-up the finished part is what it leaves, and the
#: sizes of the stock are in the title block.
TRIES = (
    ((900, 500), 118.0, 118.0), ((900, 500), 98.0, 98.0), ((900, 500), 84.0, 84.0), ((900, 500), 66.0, 80.0),
    ((900, 500), 0.0, 118.0), ((900, 500), 0.0, 98.0), ((900, 500), 0.0, 84.0), ((400, 300), 0.0, 84.0), ((400, 300), 0.0, 74.0),
)  # fmt: skip


def compact(plan: Plan) -> tuple[list[Page], bool]:
    """As `_compact`; what happened the last time is left out where the two pages have no room for it."""
    found = _compact(plan, last=True)
    return found if found[0] or not plan.last_times else _compact(plan, last=False)


def _compact(plan: Plan, *, last: bool) -> tuple[list[Page], bool]:
    """The two pages, and whether what is to be heeded stands on them; no page where the job has
    more set-ups or steps, or no room.

    The notes of the whole job stand below the steps; where these need their page, below the positions; else
    they are left to a page of their own.
    """
    if len(plan.courses) != 1 or not plan.measured:
        return [], False
    course = plan.courses[0]
    rows = tuple(step for some in rows_of(plan, course) for step in some)
    if (
        not 0 < len(rows) <= STEPS
        or len(course.points) > ON_THE_SHEET
        or len(fetched(plan)) > FETCH
        or len(open_lines(plan)) > FETCH
    ):
        return [], False
    part = Part(course=course, steps=rows)
    fitting = filter(None, (_fitting(plan, part, sizes) for sizes in TRIES))
    first = next(fitting, None)
    if first is None:
        return [], False
    for short in (False, True):
        rows = tuple(step for some in rows_of(plan, course, short=short) for step in some)
        part = replace(part, steps=rows)
        for most in COUNTS:
            second = _second(plan, part, first, most, last=last)
            if plan.fits(second):
                return [first, second], True
    second = _second(plan, part, first, 0, last=last)
    if not plan.fits(second):
        return [], False
    for roomy in (first, *fitting):
        for most in COUNTS:
            noted = _noted(plan, roomy, second, most)
            if plan.fits(noted):
                return [noted, second], True
    return [first, second], False


def _fitting(plan: Plan, part: Part, sizes: tuple[tuple[int, int], float, float]) -> Page | None:
    """The first page with pictures and texts of those sizes; None where it has no room for them.

    No drawing is made smaller for a photograph: it then has a page of its own.
    """
    first = _first(plan, part, *sizes)
    if plan.fits(first):
        return first
    if plan.shots and plan.shown:
        plan.shown = False
        without = _first(plan, part, *sizes)
        if plan.fits(without):
            return without
        plan.shown = True
    return None


def _noted(plan: Plan, first: Page, second: Page, most: int) -> Page:
    """The first page with the notes of the whole job at its end, over the line that is signed."""
    *above, change, signature = first.blocks
    return replace(
        first, blocks=(*above, Rule("frame"), *rest(plan, (first, second), most), Rule(), change, signature)
    )


def _first(plan: Plan, part: Part, lengths: tuple[int, int], high: float, held: float) -> Page:
    course = part.course
    left = (*fetch_blocks(plan, fetched(plan), lengths[1]),)
    ticks = (*once(plan), *before(plan, course.set_up))
    before_cutting: tuple[object, ...] = (Heading("Before cutting"), Ticks(ticks))
    places = positions_on(plan, course)
    # Beside the points a photograph takes no room of its own.
    if places:
        places = (places[0], *with_photograph(plan, course.set_up, places[1:-1]), places[-1])
    else:
        before_cutting = with_photograph(plan, course.set_up, before_cutting)
    right = (*before_cutting, *why_blocks(plan, lengths))
    lines = open_lines(plan)
    aside = hazards_aside(plan)
    return Page(
        kind="cover",
        about=f"cover {course.set_up.key}",
        title=title(plan, "Sheet", "Cover and set-up"),
        blocks=(
            *open_box(lines),
            *((NoteLines(aside, "label"),) if aside else ()),
            *((plan.once(pictures, high), Rule()) if high else ()),
            Columns(parts=(left, right), shares=(0.48, 0.52)),
            Rule(),
            *plan.once(full_pictures, course, held),
            Rule(),
            *places,
            Blanks((CHANGE,)),
            Signature(TRAINEE_JOB if plan.job.trainee else CHECKED),
        ),
        legend=legend(plan, (Part(course=course, steps=()),)),
        foot=(*plan.of_the_print, FOOT),
        band=band(plan),
        printed=printed_code_of(plan),
        code=plan.mark,
    )


def _second(plan: Plan, part: Part, first: Page, most: int, *, last: bool) -> Page:
    course: Course = part.course
    steps = Steps(part.steps)
    made = Page(kind="set-up", title=(), blocks=(steps,))
    notes = (Gap(2), Rule("frame"), *rest(plan, (first, made), most)) if most else ()
    return Page(
        kind="set-up",
        about=course.set_up.key,
        title=short_title(plan, "Sheet", "Steps and safety" if most else "Steps"),
        blocks=(
            steps,
            Rule(),
            *after(plan, course, short=True, last=last),
            *notes,
            *revision_blocks(plan),
        ),
        legend=legend(plan, (part,)),
        foot=foot(plan, key=bool(cut_numbers(plan, course))),
        band=band(plan, (course.set_up.key,)),
        code=plan.mark,
    )
