"""Asks whether the reamer turns slower than the drill before it."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.machine.spindle import neighbours
from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.hole_chains import holes_of
from jobsheet.review.rule import Needs, View, remark, rule


@rule("reamer-slower-than-the-drill", "Reamer slower than the drill", "scrap", needs=Needs.FIGURES)
def reamer_slower_than_the_drill(view: View) -> Iterator[Remark]:
    """A reamer that turns faster than the last drill in its hole. How much slower it should be is a workshop setting.

    Because: Hot, fast reamers cut big and lose their edge.
    Not so: drill 15.7 at 300 rpm, ream 16 at 500
    So: drill 15.7 at 300 rpm, ream 16 at 190
    From: United States War Department, TM 1-420, page 62; common practice
    """
    told: set[str] = set()
    for chain in holes_of(view.reckoned).chains:
        for step in chain.steps:
            drill = next(
                (hole_step for hole_step in reversed(chain.before(step)) if hole_step.does == "drill"), None
            )
            if step.does != "ream" or drill is None or step.key in told:
                continue
            turns, drilled = (_speed(view, hole_step.key) for hole_step in (step, drill))
            if turns is None or drilled is None or turns <= drilled * (1 + 1e-6):
                continue
            told.add(step.key)
            machine = view.reckoned.settings[step.key].machine
            share = 1.0 if view.reckoned.shop.reamer_speed == "near drilling speed" else 0.5
            below = (
                neighbours(machine, drilled * share * (1 + 1e-6))[0]
                or neighbours(machine, drilled * (1 + 1e-6))[0]
            )
            marked = f"{below.speed * 60:.0f} rpm" if below is not None else f"{drilled * share * 60:.0f} rpm"
            message = f"The reamer turns at {turns * 60:.0f} rpm and the drill before it at {drilled * 60:.0f}: slow the reamer down"
            yield remark(
                view, "reamer-slower-than-the-drill", message, step.key, drill.key, set_up=step.set_up,
                fix=Fix(f"Ream at {marked}", set_field(step.key, "spindle", marked)),
            )  # fmt: skip


def _speed(view: View, key: str) -> float | None:
    figures = view.reckoned.operations[key].figures
    return figures.value("spindle_speed") if figures is not None else None
