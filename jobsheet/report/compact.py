"""A job of one set-up and few steps on two pages: what to fetch, how it is held and the zero; then steps and what to heed."""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.report.blocks import Blanks, Columns, Gap, Heading, Page, Rule, Signature, Steps, Ticks
from jobsheet.report.cover import CHANGE, FETCH, fetch_blocks, open_box, open_lines, pictures, why_blocks
from jobsheet.report.fetch import fetched
from jobsheet.report.heed.revisions import revision_blocks
from jobsheet.report.heed.safety import MOST, rest
from jobsheet.report.heed.set_up_ticks import before, once
from jobsheet.report.heed.stops import band
from jobsheet.report.photograph_pages import with_photograph
from jobsheet.report.plan import Course, Plan
from jobsheet.report.points import ON_THE_SHEET
from jobsheet.report.set_up_head import full_pictures, positions_on
from jobsheet.report.set_up_sheet import STEPS, Part, after, foot, legend, rows_of
from jobsheet.report.titles import printed_code_of, short_title, title
from jobsheet.report.wording import CHECKED, FOOT, TRAINEE_JOB

#: Notes of the whole job stand beside the steps: at least so many, else they want a page of their own.
LEAST = 3
#: Texts in letters, and heights of the two rows of pictures [points], from roomy to narrow.
TRIES = (
    ((900, 500), 118.0, 118.0), ((900, 500), 98.0, 98.0), ((900, 500), 84.0, 84.0), ((900, 500), 66.0, 80.0),
    ((900, 500), 54.0, 74.0), ((400, 300), 54.0, 74.0),
)  # fmt: skip


def compact(plan: Plan) -> list[Page]:
    """The two pages; none where the job has more set-ups or steps, or where they have no room for it."""
    if len(plan.courses) != 1 or not plan.measured:
        return []
    course = plan.courses[0]
    rows = tuple(step for some in rows_of(plan, course) for step in some)
    things = fetched(plan)
    if (
        not 0 < len(rows) <= STEPS
        or len(course.points) > ON_THE_SHEET
        or len(things) > FETCH
        or len(open_lines(plan)) > FETCH
    ):
        return []
    part = Part(course=course, steps=rows)
    for lengths, high, held in TRIES:
        first = _first(plan, part, lengths, high, held)
        if plan.shots and plan.shown and not plan.fits(first):
            # No drawing is made smaller for a photograph: it then has a page of its own.
            plan.shown = False
            if not plan.fits(without := _first(plan, part, lengths, high, held)):
                plan.shown = True
            else:
                first = without
        if plan.fits(first):
            return _both(plan, part, first)
    return []


def _both(plan: Plan, part: Part, first: Page) -> list[Page]:
    """The first page with as many notes on the second as there is room for."""
    for short in (False, True):
        rows = rows_of(plan, part.course, short=short)
        steps = tuple(step for some in rows for step in some)
        for most in range(MOST, LEAST - 1, -2):
            second = _second(plan, replace(part, steps=steps), first, most)
            if plan.fits(second):
                return [first, second]
    return []


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
    return Page(
        kind="cover",
        about=f"cover {course.set_up.key}",
        title=title(plan, "Sheet", "Cover and set-up"),
        blocks=(
            *open_box(lines),
            plan.once(pictures, high),
            Rule(),
            Columns(parts=(left, right), shares=(0.48, 0.52)),
            Rule(),
            *plan.once(full_pictures, course, held),
            Rule(),
            *places,
            Blanks((CHANGE,)),
            Signature(TRAINEE_JOB if plan.job.trainee else CHECKED),
        ),
        legend=legend(plan, (Part(course=course, steps=()),)),
        foot=(*plan.chosen, FOOT),
        band=band(plan),
        printed=printed_code_of(plan),
        code=plan.mark,
    )


def _second(plan: Plan, part: Part, first: Page, most: int) -> Page:
    course: Course = part.course
    steps = Steps(part.steps)
    made = Page(kind="set-up", title=(), blocks=(steps,))
    return Page(
        kind="set-up",
        about=course.set_up.key,
        title=short_title(plan, "Sheet", "Steps and safety"),
        blocks=(
            steps,
            Rule(),
            *after(plan, course, short=True),
            Gap(2),
            Rule("frame"),
            *rest(plan, (first, made), most),
            *revision_blocks(plan),
        ),
        legend=legend(plan, (part,)),
        foot=foot(plan),
        band=band(plan, (course.set_up.key,)),
        code=plan.mark,
    )
