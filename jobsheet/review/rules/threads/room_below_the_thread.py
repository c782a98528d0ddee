"""Asks whether a blind hole is deep enough for the tap that finishes it."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.hole_chains import HoleStep, holes_of
from jobsheet.review.plan.lengths import length, typed
from jobsheet.review.rule import View, remark, rule

#: Threads of lead of each tap (common practice): bottoming 2, second or plug 4,
#: taper 8; and one pitch to spare.
LEADS = {"bottoming": 2, "plug": 4, "second": 4, "taper": 8}
SPARE = 1


@rule("room-below-the-thread", "Room below the thread", "scrap")
def room_below_the_thread(view: View) -> Iterator[Remark]:
    """In a blind hole the last tap needs room for its lead and one pitch below the full thread.

    Because: A tap driven into the bottom breaks.
    Not so: drill 17 deep, M8 16 deep with a bottoming tap
    So: drill 20 deep, M8 16 deep with a bottoming tap
    From: common practice
    """
    told: set[str] = set()
    for chain in holes_of(view.reckoned).chains:
        for step in chain.steps:
            if step.does != "tap" or step.depth is None or step.key in told:
                continue
            name, lead = _last_tap(step)
            before = chain.hole_before(step)
            if not lead or before is None or before.depth is None:
                continue
            pitch = step.fields.thread.pitch
            needed = (lead + SPARE) * pitch
            has = before.depth - step.depth
            if has >= needed - 1e-7:
                continue
            told.add(step.key)
            deep = step.depth + needed
            left = (
                f"{length(abs(has), view.job.units)} below the thread"
                if has >= 0
                else f"The thread is {length(-has, view.job.units)} deeper than its hole"
            )
            message = (
                f"{left}, a {name} tap needs {length(needed, view.job.units)}{' below it' if has < 0 else ''}: drill {length(deep, view.job.units)} deep"
                + ("" if name == "bottoming" else ", or finish with a bottoming tap")
            )
            thick = view.reckoned.settings[before.key].thickness
            fix = None
            if before.does == "drill" and deep < thick - 1e-3:
                text = typed(deep, view.job.units)
                fix = Fix(f"Drill {text} deep", set_field(before.key, "depth", text), (before.key,))
            elif (
                name != "bottoming"
                and hasattr(step.fields, "taps")
                and (LEADS["bottoming"] + SPARE) * pitch <= has
            ):
                fix = Fix(
                    "Finish with a bottoming tap", set_field(step.key, "taps", "taper, plug, bottoming")
                )
            yield remark(
                view, "room-below-the-thread", message, step.key, before.key, fix=fix, set_up=step.set_up
            )


def _last_tap(step: HoleStep) -> tuple[str, int]:
    """The tap that finishes the thread, and the threads of its lead; nothing where it is not written."""
    words = step.fields.taps if hasattr(step.fields, "taps") else step.cutter.style
    found = [name for name in LEADS if name in words.casefold()]
    name = min(found, key=lambda one: LEADS[one]) if found else ""
    return name, LEADS.get(name, 0)
