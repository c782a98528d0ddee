"""What a learner takes away: the result with its reasons, and the work as it stands where
the first step cannot be done yet.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from msgspec.structs import replace

from jobsheet.drawing.drawn import Drawing
from jobsheet.lessons.marked_sheet import Result
from jobsheet.lessons.needed_order import Needed
from jobsheet.lessons.work_so_far import placed_so_far
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.blocks import Document, Gap, Heading, Page, Picture, Rule, Words
from jobsheet.report.for_use.chosen_pages import numbered
from jobsheet.report.lesson.exercise_page import FOOT, Head, title

#: Width and height of the picture [points].
WIDE, HIGH = 300.0, 220.0


def first_undoable(
    needed: Needed, answer: Mapping[str, Sequence[str]]
) -> tuple[str, tuple[str, ...], str] | None:
    """The set-up, the steps that are done there, and the first step for which something is
    not done yet; None where all can be.
    """
    for set_up, keys in answer.items():
        here: list[str] = []
        for key in keys:
            if any(needed.steps.before(other, key) for other in keys if other not in here and other != key):
                return set_up, tuple(here), key
            here.append(key)
    return None


def result_document(
    head: Head,
    result: Result,
    needed: Needed | None = None,
    answer: Mapping[str, Sequence[str]] | None = None,
    words: Mapping[str, str] | None = None,
) -> Document:
    """One page: the lines of the result, and of an order that is not right the
    picture; `words` name its steps.
    """
    first, *rest = result.lines
    blocks: list[object] = [Heading(first), Gap(3), *(Words(line, "body") for line in rest)]
    stuck = first_undoable(needed, answer) if needed is not None and answer is not None else None
    if needed is not None and words is not None and stuck is not None:
        set_up, here, key = stuck
        told = words[key]
        blocks += [
            Gap(4), Rule(), Heading("The work where it goes wrong", f"after {len(here)} of your steps; next in your order: {told}"),
            Picture("", _work(needed, set_up, here)),
        ]  # fmt: skip
    page = Page(
        kind="exercise",
        about="cover",
        title=title(replace(head, called="Result")),
        blocks=tuple(blocks),
        foot=(FOOT,),
    )
    return Document(
        name=f"result {head.sheet}", title=f"{head.exercise}, result of sheet {head.sheet}", pages=numbered([page]), source=b"",
        subject="An exercise, not for the machine",
    )  # fmt: skip


def _work(needed: Needed, set_up: str, here: Sequence[str]) -> Drawing:
    from jobsheet.report.stage_view import stages_of
    from jobsheet.stages.pictures import picture

    reckoned = Reckoner().reckon(placed_so_far(needed.job, set_up, here))
    stages = stages_of(reckoned.job, reckoned.settings)
    return picture(stages[-1], "iso", WIDE, HIGH, now=False, margin=(14, 14, 14, 14))
