"""The positions card: more than six points of a set-up, with a tick for every pass over each of them."""

from __future__ import annotations

from jobsheet.drawing.drawn import Drawing
from jobsheet.report.blocks import Columns, Gap, Heading, Page, Picture, Rule, Words
from jobsheet.report.cover import face_up
from jobsheet.report.dial_words import approach
from jobsheet.report.heed.stops import band
from jobsheet.report.plan import Course, Plan, letters_of
from jobsheet.report.points import ON_THE_SHEET, Point
from jobsheet.report.set_up_head import held_facts, positions_table, said, scales
from jobsheet.report.titles import short_title
from jobsheet.report.wording import FOOT
from jobsheet.report.zero_view import beside_the_work, zero_picture

#: Points on a page, and passes that have a column of ticks on one card.
POINTS, PASSES = 30, 8
#: Of more points than that a picture beside the holding is a thicket of numbers;
#: theirs is so wide and high [points].
MANY, WIDE = 24, (500.0, 300.0)


def positions_cards(plan: Plan, course: Course, least: int = ON_THE_SHEET + 1) -> list[Page]:
    """The cards of a set-up; none where it has fewer points than that, by default
    those that stand on the sheet itself.
    """
    if len(course.points) < least:
        return []
    numbers = tuple(dict.fromkeys(number for point in course.points for number in point.steps))
    passes = [numbers[at : at + PASSES] for at in range(0, len(numbers), PASSES)]
    pages: list[Page] = []
    for columns in passes:
        rest = course.points
        while rest:
            count = min(POINTS, len(rest))
            first = rest is course.points
            while count > 1 and not plan.fits(_card(plan, course, rest[:count], columns, first=first)):
                count -= 1
            pages.append(_card(plan, course, rest[:count], columns, first=first))
            rest = rest[count:]
    return pages


def _card(
    plan: Plan, course: Course, points: tuple[Point, ...], passes: tuple[int, ...], *, first: bool
) -> Page:
    set_up = course.set_up
    name = plan.short(face_up(set_up), 40, f"set-up {set_up.number}, title")
    last = "Last: go back to 0 + 0 and look whether both dials still say so."
    return Page(
        kind="positions", about=set_up.key,
        title=short_title(plan, "Positions card", f"{set_up.number} of {len(plan.job.set_ups)} · {name}"),
        blocks=(
            *_pictured(plan, course, first=first),
            Rule(),
            Heading("Positions", scales(plan)),
            positions_table(plan, course, points, passes),
            Words(last, "label bold"),
            Words(approach(set_up)),
        ),
        legend=("zero", *(("datum",) if plan.job.datums else ()), "cut now"), foot=(FOOT,), band=band(plan, (set_up.key,)), code=plan.mark,
    )  # fmt: skip


def _pictured(plan: Plan, course: Course, *, first: bool) -> tuple[object, ...]:
    """The points from above beside the holding in words; many of them over the whole width,
    once, so that each has its number.
    """
    beside = beside_the_work(course.set_up, course.lie, course.points)
    facts = said(held_facts(plan, course))
    if len(course.points) <= MANY:
        picture = plan.once(_from_above, course, 330.0, 120.0)
        parts = ((Picture("Zero, from above", picture, beside),), (Gap(1), *facts))
        return (Columns(parts=parts, shares=(0.66, 0.34), ruled=(1,)),)
    if not first:
        return (*facts, Words("The points with their numbers: on the first card of this set-up.", "label"))
    wide = Picture("Zero, from above", plan.once(_from_above, course, *WIDE), beside)
    return (Columns(parts=((wide,),), shares=(1.0,)), *facts)


def _from_above(plan: Plan, course: Course, width: float, height: float) -> Drawing:
    datums = letters_of(plan)
    return zero_picture(course.set_up, course.lie, course.points, datums, width, height, machine=plan.card)
