"""How fast the edge runs over the work, against the top of what is published for this cutter and metal.

Whether the speed was typed or chosen changes nothing. What is too fast costs the edge, not the machine: over
the published range it is tight, over half as much again beyond.
"""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.limits.verdict import by_factor
from jobsheet.machine.spindle import lowest
from jobsheet.model.figure import EdgeSpeed, Figures, Limit
from jobsheet.model.setting import Setting
from jobsheet.operations.names import show
from jobsheet.operations.shared.fastest import FERROUS

#: What of its setting it reads.
READS = frozenset({"machine", "material", "units"})
#: Where it stands among limits of one share.
ORDER = 190
#: It only has to fit: where it does, it governs nothing.
FITS = True

#: Over so much of the fastest it is beyond (design, Verdicts).
FAR_OVER = 1.5
_ROUNDING = 1 + 1e-9
#: Metals whose hot, thin chips burn.
BURN = ("titanium", "magnesium")
#: What an edge of high speed steel loses in iron and steel, from so many times its
#: start speed on (holding-and-more-kinds C2: Taylor's law with the published
#: exponents). Less than 1.3 times is never too fast.
_LIFE = (
    (2.0, "the edge may be gone in one pass"),
    (1.3, "the edge lasts minutes, not hours"),
)
#: An edge finder's tip runs true up to this [rev/s] (a school's sheet; its makers say 600 to 1000 rpm).
FINDER = 1000 / 60


def limit(figures: Figures, setting: Setting, fields: object = None) -> Limit | None:
    """None where nothing turns, or nobody says how fast such a cutter may run."""
    speed, cut = figures.value("spindle_speed"), figures.value("cutting_speed")
    cutter = getattr(fields, "cutter", None)
    if speed is None or cutter is None:
        return None
    if cutter.kind == "edge finder":
        over = f"its tip is thrown out of true: {FINDER * 60:.0f} rpm or less"
        return _judged(
            speed, FINDER, "rev/s", f"{speed * 60:.0f} of {FINDER * 60:.0f} rpm", over, "common practice"
        )
    edge = figures.edge
    if cut is None or edge is None:
        return None
    most = speed * edge.top / cut
    costs = _costs(cut, edge, cutter.material, setting.material.family)
    if speed <= lowest(setting.machine) * _ROUNDING:
        remedy = "the slowest speed of this machine is too fast for it: a smaller cutter, or a machine that turns slower"
    else:
        remedy = f"{most * 60:.0f} rpm or less"
    shown = f"{show('cutting_speed', cut, setting.units).split(' ')[0]} of {show('cutting_speed', edge.top, setting.units)}"
    found = _judged(cut, edge.top, "m/s", shown, f"{costs}: {remedy}", _working(edge, setting.units))
    if found.verdict == "expected" and edge.least is not None and cut < edge.least:
        return replace(
            found,
            sentence="far too slow for carbide, which rubs and chips: a faster speed, or a cutter of HSS",
        )
    return found


def _judged(demand: float, capacity: float, unit: str, shown: str, over: str, working: str) -> Limit:
    found = by_factor(
        "cutting-speed", "Cutting speed", demand=demand, capacity=capacity * FAR_OVER, unit=unit, shown=shown,
        tight=1 / FAR_OVER, when_tight=over, when_beyond=over, working=working, band=(capacity, capacity * FAR_OVER),
    )  # fmt: skip
    return replace(found, capacity=capacity, share=demand / capacity)


def _costs(cut: float, edge: EdgeSpeed, made_of: str, family: str) -> str:
    """What too fast costs here."""
    if family in BURN:
        return f"{family} chips catch fire when the edge runs so hot"
    if edge.work == "tap":
        return "a tap binds and breaks before anyone lets go"
    if edge.work == "ream":
        return "a hot, fast reamer cuts large and loses its edge"
    if family in FERROUS and made_of != "carbide":
        for times, words in _LIFE:
            if cut >= edge.start * times:
                return words
    return "more than is published for this cutter here"


def _working(edge: EdgeSpeed, units: str) -> str:
    begins = f"{edge.start * 60:.3g} m/min" if units == "mm" else show("cutting_speed", edge.start, units)
    start = f"it starts at {begins}"
    if not edge.source:
        return f"1.3 × its start speed, the least that counts as too fast; {start}; common practice"
    return f"the top of the published range with the fluid as it is given; {start}"
