"""Asks whether the tools of one hole come in the order of their sizes."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import moved_before
from jobsheet.review.plan.hole_chains import SAME, SIZING, Chain, HoleStep, holes_of
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule


@rule("hole-steps-in-rising-order", "Rising order in one hole", "scrap")
def hole_steps_in_rising_order(view: View) -> Iterator[Remark]:
    """In one hole a drill, borer or reamer that is smaller than the tool before it, or a drill after the reamer.

    Steps of part depth are left alone: a hole may be wide above and narrow below.

    Because: The later tool cuts nothing, or the finishing tool does the rough work.
    Not so: ream 16, drill 15.7
    So: drill 15.7, ream 16
    From: MSC Industrial Supply, technical article 5976; common practice
    """
    told: set[tuple[str, str]] = set()
    for chain in holes_of(view.reckoned).chains:
        for step in chain.steps:
            wrong = _before_its_time(chain, step)
            if wrong is None or (wrong.key, step.key) in told:
                continue
            told.add((wrong.key, step.key))
            words = _words(step, view.job.units)
            message = f"{words[:1].upper()}{words[1:]} comes after {_words(wrong, view.job.units)}, which leaves it nothing to cut"
            if wrong.does == "ream":
                message = (
                    f"Nothing to ream yet: {_words(step, view.job.units)} of step {step.number} comes first"
                )
            fix = None
            if wrong.set_up == step.set_up:
                fix = Fix(f"Move {step.number} before {wrong.number}", moved_before(step.key, wrong.key))
            yield remark(
                view, "hole-steps-in-rising-order", message, step.key, wrong.key, fix=fix, set_up=step.set_up
            )
            break


def _before_its_time(chain: Chain, step: HoleStep) -> HoleStep | None:
    """The first step before this one that is larger and as deep, or the reamer before a drill."""
    if step.does not in SIZING:
        return None
    for hole_step in chain.before(step):
        if hole_step.does not in SIZING or not hole_step.as_deep_as(step):
            continue
        if hole_step.diameter > step.diameter + SAME or (hole_step.does == "ream" and step.does == "drill"):
            return hole_step
    return None


def _words(step: HoleStep, units: str) -> str:
    verb = {"ream": "the reamer", "bore": "the borer", "plunge": "the end mill"}.get(step.does, "drill")
    return f"{verb} {length(step.diameter, units)}"
