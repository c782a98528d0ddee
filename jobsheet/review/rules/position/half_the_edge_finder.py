"""Asks whether the tip of an edge finder is known."""

from __future__ import annotations

import re
from collections.abc import Iterator

from jobsheet.model.job import Job, Operation, SetUp
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations.registry import roles
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.words import says, words_of
from jobsheet.review.rule import View, remark, rule

_TIP = re.compile(r"(\d[\d.,/]*\s*(?:mm|in)?)\s+tip\b|\btip\s+(\d[\d.,/]*\s*(?:mm|in)?)", re.IGNORECASE)


@rule("half-the-edge-finder", "Half the edge finder", "scrap")
def half_the_edge_finder(view: View) -> Iterator[Remark]:
    """A step that finds edges with an edge finder whose tip is written nowhere.

    Because: Half the tip goes into the zero: missed or counted twice, every hole is off by the same amount.
    Not so: find A and B with an edge finder
    So: find A and B with an edge finder, 10 mm tip
    From: common practice
    """
    for set_up, operation, _ in view.steps():
        if roles(operation).beside != "find" or operation.fields.tip is not None:
            continue
        if any(_TIP.search(word) for word in operation.fields.cutter.extra):
            continue
        if says("indicator|pin|stop|paper|half the tip", *words_of(operation), operation.fields.edges):
            continue
        tip = _known(view.job, set_up, operation)
        fix = Fix(f"Tip {tip}", set_field(operation.key, "tip", tip)) if tip else None
        yield remark(
            view, "half-the-edge-finder", "Enter the finder's tip: half of it goes into the zero", operation.key, fix=fix,
            set_up=set_up.key,
        )  # fmt: skip


def _known(job: Job, set_up: SetUp, operation: Operation) -> str:
    """The tip that the set-up or another finding step names."""
    texts = [set_up.zero.found]
    for _, other in job.operations():
        if roles(other).beside == "find" and other.key != operation.key:
            if other.fields.tip is not None:
                return str(other.fields.tip.text)
            texts += other.fields.cutter.extra
    for text in texts:
        match = _TIP.search(text)
        if match:
            return (match[1] or match[2]).strip()
    return ""
