"""Asks whether straps lie where the cutter goes."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.job import Operation
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations import written
from jobsheet.operations.registry import roles
from jobsheet.review.mending.fixes import added_before
from jobsheet.review.plan.words import says, words_of
from jobsheet.review.rule import View, remark, rule

_CHANGED = r"straps?|clamps?|screw\w*|bolts?"
_BESIDE = r"toe clamps?|side clamps?|edge clamps?|low clamps?|below the (?:face|top|surface)|on the (?:step|flange|ledge|lug)s?|in the (?:slot|step)s?|through (?:the |its )?(?:own )?holes?|clear of"
_ROUND = r"(?:all |both |four )+(?:four )?sides|all round|every side"


@rule("clamps-out-of-the-path", "Clamps out of the path", "hazard")
def clamps_out_of_the_path(view: View) -> Iterator[Remark]:
    """Straps on the upper face while that whole face is milled, or on all sides while a side is, and no step moves them before.

    Because: Cutter or holder runs into the clamp.
    Not so: straps on top, face the top
    So: straps, then a step that changes them one at a time, then the cut
    From: United States Army, TM 1-1500-204-23-8, page 2-3
    """
    for set_up in view.job.set_ups:
        holding = set_up.holding
        if not says("straps?|clamps?", holding.device) or says("vise|vice|jaws?", holding.device):
            continue
        words = (holding.device, holding.packing, holding.note, set_up.note)
        if says(_BESIDE, *words):
            continue
        changed = 0
        for operation in set_up.operations:
            if roles(operation).beside == "bench" and says(_CHANGED, *words_of(operation)):
                changed += 1 if _moves(operation) else 0
                continue
            if changed or not _in_the_way(operation, words):
                continue
            message = "A clamp is in the way of this cut: move it, or change clamps one at a time in a step before it"
            texts = {"what": "Move the clamps out of the path, one at a time", "with_what": "straps, spanner"}
            yield remark(
                view, "clamps-out-of-the-path", message, operation.key, set_up=set_up.key,
                fix=Fix(f"Add moving the clamps before {operation.number}", added_before(operation.key, written.BENCH, texts)),
            )  # fmt: skip
            break


def _moves(operation: Operation) -> bool:
    """Whether a bench step changes what holds the work, not only puts it on."""
    return says(r"mov\w*|change\w*|swap\w*|tak\w*|remov\w*|screw\w*|one at a time", *words_of(operation))


def _in_the_way(operation: Operation, words: tuple[str, ...]) -> bool:
    if roles(operation).mills == "flat":
        return True
    return (
        roles(operation).mills in ("wall", "edge")
        and getattr(operation.fields, "path", None) is None
        and says(_ROUND, *words)
    )
