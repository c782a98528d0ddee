"""Photographs on paper: one beside the ticks of its set-up, the others on pages of their own; one
that is gone is said in its place.
"""

from __future__ import annotations

from jobsheet.model.job import SetUp
from jobsheet.report.blocks import Columns, Gap, Heading, Page, Photograph, Words
from jobsheet.report.heed.stops import band
from jobsheet.report.plan import Plan
from jobsheet.report.titles import short_title
from jobsheet.report.wording import FOOT
from jobsheet.storage.photos.kept_photographs import TOGETHER, Shot, owner_words, problem_words

#: Heights on a set-up's page (32 mm) and on a page of photographs [points]; so
#: many of them stand there, two and two.
BESIDE, LARGE, EACH = 90.7, 190.0, 6
#: Letters of what a photograph shows.
SHOWS = 160


def with_photograph(plan: Plan, set_up: SetUp, blocks: tuple[object, ...]) -> tuple[object, ...]:
    """The blocks with the set-up's first photograph at their right, and what is said
    of those that are gone below them.
    """
    shots = _of(plan, set_up)
    if not shots:
        return blocks
    gone = tuple(Words(problem_words(plan.job, shot), "note bold") for shot in shots if shot.problem)
    first = _first(plan, set_up)
    if first is None:
        return (*blocks, *gone)
    picture = _block(plan, first, BESIDE)
    return (Columns(parts=(blocks, (Gap(1), picture)), shares=(0.7, 0.3), ruled=(1,)), *gone)


def photograph_pages(plan: Plan) -> list[Page]:
    """Every photograph that has no place on the page of its set-up, and what is said
    of those of no set-up that are gone.
    """
    placed = {id(shot) for set_up in plan.job.set_ups for shot in [_first(plan, set_up)] if shot is not None}
    owned = {id(shot) for set_up in plan.job.set_ups for shot in _of(plan, set_up)}
    shown = [shot for shot in plan.shots if not shot.problem and id(shot) not in placed]
    gone = [
        Words(problem_words(plan.job, shot), "note bold")
        for shot in plan.shots
        if shot.problem and id(shot) not in owned
    ]
    pages: list[Page] = []
    while shown or gone:
        count = min(EACH, len(shown))
        while count > 1 and not plan.fits(_page(plan, shown[:count], gone)):
            count -= 1
        pages.append(_page(plan, shown[:count], gone))
        shown, gone = shown[count:], []
    return pages


def attached(shots: tuple[Shot, ...]) -> tuple[tuple[tuple[str, bytes], ...], tuple[str, ...]]:
    """Name and bytes of what is carried inside, and a sentence where there is
    too much of it to be read back.
    """
    found: dict[str, bytes] = {}
    left = 0
    for shot in shots:
        if shot.problem or shot.name in found:
            continue
        if sum(map(len, found.values())) + len(shot.raw) > TOGETHER:
            left += 1
            continue
        found[shot.name] = shot.raw
    said = f"{left} photographs are printed and not carried inside: together they have more than {TOGETHER // 10**6} MB."
    return tuple(found.items()), (said,) if left else ()


def _of(plan: Plan, set_up: SetUp) -> list[Shot]:
    """Photographs of a set-up or of one of its steps."""
    keys = {set_up.key, *(operation.key for operation in set_up.operations)}
    return [shot for shot in plan.shots if shot.photograph.about in keys]


def _first(plan: Plan, set_up: SetUp) -> Shot | None:
    """The one that stands on the page of its set-up; none where pages are made without."""
    if not plan.shown:
        return None
    return next((shot for shot in _of(plan, set_up) if not shot.problem), None)


def _block(plan: Plan, shot: Shot, high: float) -> Photograph:
    return Photograph(
        content=shot.photograph.content,
        wide=shot.width,
        high=shot.height,
        words=plan.short(
            shot.photograph.shows, SHOWS, f"photograph of {owner_words(plan.job, shot.photograph)}"
        ),
        most=high,
    )


def _page(plan: Plan, shots: list[Shot], gone: list[Words]) -> Page:
    blocks: list[object] = list(gone)
    for at in range(0, len(shots), 2):
        parts = tuple(
            (Heading(_headed(plan, shot)), _block(plan, shot, LARGE)) for shot in shots[at : at + 2]
        )
        blocks += [Gap(4), Columns(parts=(*parts, *(((),) * (2 - len(parts)))), shares=(0.5, 0.5))]
    return Page(
        kind="photographs", about="", title=short_title(plan, "Sheet", "Photographs"), blocks=tuple(blocks), foot=(FOOT,),
        band=band(plan, ()), code=plan.mark,
    )  # fmt: skip


def _headed(plan: Plan, shot: Shot) -> str:
    words = owner_words(plan.job, shot.photograph)
    return f"{words[:1].upper()}{words[1:]}"
