"""The pages that somebody wants of a job, in their order, each counted."""

from __future__ import annotations

from collections.abc import Callable

from msgspec.structs import replace

from jobsheet.errors import CommandError
from jobsheet.model.prints import PRINTS, Prints
from jobsheet.report.blocks import Page
from jobsheet.report.for_use.blank_form import blank_form
from jobsheet.report.for_use.route_list import route_list
from jobsheet.report.for_use.step_card import step_cards
from jobsheet.report.plan import Plan
from jobsheet.report.points import ON_THE_SHEET
from jobsheet.report.positions_card import positions_cards

NO_POINTS = "No set-up of this job goes to a point, so there is no positions card."


def chosen_pages(
    plan: Plan, wanted: Prints, whole: Callable[[Plan], list[Page]]
) -> tuple[list[Page], tuple[str, ...]]:
    """The pages, and a sentence for each kind of which this job has none.

    Raises
    ------
    CommandError
        If nothing is chosen, a step is named that the job does not have, or not one page comes of it.
    """
    if not wanted.pages:
        raise CommandError(f"No page is chosen; choose one of: {', '.join(PRINTS.values()).lower()}.")
    pages: list[Page] = []
    left_out: list[str] = []
    if "whole" in wanted.pages:
        pages += whole(plan)
    if "route" in wanted.pages:
        pages += route_list(plan)
    if "positions" in wanted.pages:
        # What the whole sheet has a card of already is not printed twice.
        printed = "whole" in wanted.pages
        cards = [
            page
            for course in plan.courses
            if not (printed and len(course.points) > ON_THE_SHEET)
            for page in positions_cards(plan, course, 1)
        ]
        if not any(course.points for course in plan.courses):
            left_out.append(NO_POINTS)
        pages += cards
    if "step" in wanted.pages:
        there = {operation.number for _, operation in plan.job.operations()}
        if missing := [number for number in wanted.steps if number not in there]:
            raise CommandError(
                f"There is no step {missing[0]} in this job; its steps are {', '.join(map(str, sorted(there))) or 'none'}."
            )
        cards = step_cards(plan, wanted.steps)
        if not cards:
            left_out.append("This job has no step yet, so there is no card for one.")
        pages += cards
    if "blank" in wanted.pages:
        pages += blank_form(plan.card, plan.fits, plan.job.workshop)
    if not pages:
        raise CommandError(" ".join(left_out))
    return pages, tuple(left_out)


def numbered(pages: list[Page]) -> tuple[Page, ...]:
    """Pages and cards each counted by themselves: a card says which of the cards it is."""
    found = []
    totals = {card: sum(_card(page) is card for page in pages) for card in (False, True)}
    at = dict.fromkeys(totals, 0)
    for page in pages:
        card = _card(page)
        at[card] += 1
        found.append(replace(page, number=at[card], total=totals[card]))
    return tuple(found)


def _card(page: Page) -> bool:
    return page.kind == "step card"
