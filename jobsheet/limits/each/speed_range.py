"""The speeds that the machine has: a speed it cannot be set to is beyond it, and says what there is.

Whether its slowest is slow enough for a cutter is the cutting speed's to say.
"""

from __future__ import annotations

from jobsheet.machine.spindle import at_speed, highest, lowest, neighbours
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.setting import Setting

#: What of its setting it reads.
READS = frozenset({"machine"})
#: Where it stands among limits of one share.
ORDER = 180
#: It only has to fit: where it does, it governs nothing.
FITS = True


def limit(figures: Figures, setting: Setting, _fields: object = None) -> Limit | None:
    """None where no speed is set."""
    speed = figures.value("spindle_speed")
    if speed is None:
        return None
    machine = setting.machine
    top, bottom = highest(machine), lowest(machine)
    share, verdict, sentence = speed / top, "expected", ""
    asked = figures.missing_speed
    wanted = speed if asked is None else asked  # what stands there is the nearest that it has
    if asked is not None:
        below, above = neighbours(machine, asked)
        there = (
            " and ".join(step.marked for step in (below, above) if step)
            or f"{bottom * 60:.0f} to {top * 60:.0f}"
        )
        verdict, share = "beyond", max(1.0, asked / top)
        sentence = f"this machine has no {asked * 60:.0f} rpm; it has {there}"
    elif at_speed(machine, speed) is None:
        verdict, sentence = "beyond", "not a speed of this machine: set one that it has"
    slow = wanted < bottom
    shown = (
        f"{wanted * 60:.0f} rpm, at least {bottom * 60:.0f}"
        if slow
        else f"{wanted * 60:.0f} of {top * 60:.0f} rpm"
    )
    return Limit(
        name="speed-range", title="Speed range", demand=wanted, capacity=top, unit="rev/s", share=share,
        verdict=verdict, low=top, high=top, shown=shown, sentence=sentence,
    )  # fmt: skip
