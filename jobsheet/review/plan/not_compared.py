"""Lines of the finished part that say nothing to the review: those that cannot be read, and those
whose shape or place is not compared.
"""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.finished.finished_part import finished_part
from jobsheet.model.not_checked import NotChecked
from jobsheet.review.plan.as_asked import as_asked, leaning
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.part_pieces import not_compared
from jobsheet.review.rule import View


def lines_not_compared(view: View) -> Iterator[NotChecked]:
    """Each such line once, with the reason."""
    if not view.job.finished:
        return
    for unread in finished_part(view.job).unread:
        yield NotChecked(what=_line(unread.line), why=unread.sentence.rstrip("."), line=unread.line)
    step = leaning(plan_of(view))
    if step is not None:
        yield NotChecked(what="Finished part", why="the work leans here", operation=step.key, line=0)
    asked = as_asked(view)
    for line, feature, why in not_compared(asked) if asked is not None else ():
        yield NotChecked(what=_line(line), why=f"{feature.text.strip()}: {why}", line=line)


def _line(number: int) -> str:
    return f"Line {number} of the finished part" if number else "Sizes of the finished part"
