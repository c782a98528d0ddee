"""What the cut asks of the frame before it rings.

Until a trial on this machine it rests on what machines of its class carry: what nine of ten carry is
expected, what hardly one carries is beyond, and what lies between was not tried, with the size to begin at.
"""

from __future__ import annotations

import math

from jobsheet.cutting.stability import cutter_scale
from jobsheet.limits import evidence
from jobsheet.limits.as_depth import depth_of, said
from jobsheet.limits.first_cut import first_cut
from jobsheet.limits.verdict import NINE_IN_TEN, ONE_IN_TEN, TIGHT, chance_over, odds, word
from jobsheet.model.capacity import Capacity
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.machine import Machine
from jobsheet.model.setting import Setting

#: What of its setting it reads.
READS = frozenset({"machine", "material", "proof", "shop", "units"})
#: Where it stands among limits of one share.
ORDER = 200
#: Trials teach it: it is told which process is cut.
LEARNS = True

#: Supported cutting stiffness before any trial, by class [N/m] (cutting-data section 7: estimate).
CLASSES = {"bench": 6e6, "knee": 20e6}
#: Frames as machines of a class have them [N/m] (cutting-data section 7: estimate). What a
#: frame supports goes with its stiffness (section 1.9, closed form), so that one that was
#: measured brings its machine's own level.
FRAMES = {"bench": 5e6, "knee": 14e6}
#: Of machines about their class, 0.7, with that of a process about its machine, 0.25
#: (cutting-data section 1.9: estimate).
SPREAD = 0.743
#: The same where the frame was measured: 2 to 8 N/µm for nine bench mills in ten (section 7) is 0.42 of the
#: 0.7, and 0.56 is left; with a process about its machine 0.613.
MEASURED_SPREAD = 0.613
#: What hardly one machine of the class carries.
NINETEEN_IN_TWENTY = 0.95
#: The most that is said of what the class does not condemn.
_SOME_CARRY = NINETEEN_IN_TWENTY * (1 - 1e-9)
#: Cutters of which no class says anything: what they ask is far over all that is known of end mills.
NO_CLASS = ("T-slot cutter", "dovetail cutter", "slitting saw", "side and face cutter")


def limit(figures: Figures, setting: Setting, fields: object, process: str = "") -> Limit | None:
    """None where nothing is milled or the machine has no class.

    A kind of cutter that was tried is judged, in another process by the machine alone. One that was never
    tried is not condemned by what others did; but where the machine alone makes it as good as certain
    that it stays quiet, that is said.
    """
    demand = figures.value("cutting_stiffness")
    capacity = class_capacity(figures, setting.machine)
    if demand is None or capacity is None:
        return None
    known = evidence.learned(setting, "chatter", process, fields)
    if known is not None and setting.proof is not None:
        tried = setting.proof.tried("chatter", evidence.cutter_kind(fields))
        if tried or evidence.chance_over(known, demand / capacity) < TIGHT:
            return _judged(known, demand, capacity, fields, depth_of(figures), setting.units)
    if evidence.cutter_kind(fields) in NO_CLASS:
        return _of_no_class(demand, figures, setting)
    share = demand / capacity
    spread = class_spread(setting.machine)
    chance = chance_over(demand, capacity, spread)
    planned = known.planned if known is not None and known.planned > 0 else math.exp(-spread * ONE_IN_TEN)
    if known is not None and chance < NINETEEN_IN_TWENTY:
        chance = min(evidence.chance_over(known, share), _SOME_CARRY)
    return _by_class(
        figures, demand, capacity, chance,
        begin=first_cut(figures, setting, fields, process, min(planned / share, 1.0)) if chance >= TIGHT else "", units=setting.units,
        spread=spread,
    )  # fmt: skip


def is_measured(machine: Machine) -> bool:
    """Whether its frame was pushed and the indicator read: then its own level
    stands in place of its class's.
    """
    return (
        machine.frame is not None and machine.frame.mark == "measured" and machine.stiffness_class in CLASSES
    )


def class_spread(machine: Machine) -> float:
    """Standard deviation of ln of what it carries, before any trial."""
    return MEASURED_SPREAD if is_measured(machine) else SPREAD


def class_capacity(figures: Figures, machine: Machine) -> float | None:
    """What machines of its class, or of its measured frame, carry with this
    cutter [N/m]; None where the class is not said.
    """
    level = CLASSES.get(machine.stiffness_class)
    if level is None:
        return None
    cutter, frame = figures.value("cutter_stiffness"), machine.frame
    if frame is not None and is_measured(machine):
        level *= frame.value / FRAMES[machine.stiffness_class]
    return level * (cutter_scale(frame=frame.value, cutter=cutter) if cutter and frame else 1.0)


def _by_class(
    figures: Figures,
    demand: float,
    capacity: float,
    chance: float,
    *,
    begin: str,
    units: str,
    spread: float,
) -> Limit:
    """By what machines of the class carry, and where this one is known by other cutters by
    that; `begin` is the size to begin at.
    """
    depth, factor = depth_of(figures), math.exp(spread * NINE_IN_TEN)
    shown = f"{demand / 1e6:.2f} of {capacity / 1e6:.1f} N/µm"
    if depth:
        shown = f"{said(depth, units, name=False)} of {said(depth * capacity / demand, units)} deep"
    verdict, sentence, says = "expected", "", "from class"
    if chance >= NINETEEN_IN_TWENTY:
        verdict, sentence = "beyond", f"deeper than this kind of machine carries: begin at {begin}"
    elif chance >= TIGHT:
        # Beside the word there is little room: the size alone, what it is of stands in the sentence.
        says = f"begin at {begin.removesuffix(' deep').removesuffix(' wide')}"
        verdict, sentence = "not tried", f"not tried on this machine: begin at {begin}"
    return Limit(
        name="chatter", title="Chatter", demand=demand, capacity=capacity, unit="N/m", share=demand / capacity,
        verdict=verdict, low=capacity / factor, high=capacity * factor, chance=chance, odds=says, shown=shown,
        sentence=sentence, from_class=True, begin=begin,
        working=f"depth × teeth in cut × Kt; half of all machines of the class carry {capacity / 1e6:.1f} N/µm with this cutter",
    )  # fmt: skip


def _of_no_class(demand: float, figures: Figures, setting: Setting) -> Limit:
    """Nothing is known at all: there is no fence, and no share of one."""
    depth = depth_of(figures)
    shown = f"{said(depth, setting.units)} deep" if depth else f"{demand / 1e6:.2f} N/µm"
    begin = "the lowest feed"
    return Limit(
        name="chatter", title="Chatter", demand=demand, capacity=0.0, unit="N/m", share=0.0, verdict="not tried", low=0.0,
        high=0.0, odds="lowest feed first", shown=shown, sentence="not tried on this machine: lowest feed first",
        from_class=True, begin=begin, working="depth × teeth in cut × Kt; of such cutters no class of machines says anything",
    )  # fmt: skip


def _judged(
    known: Capacity, demand: float, level: float, fields: object, depth: float | None, units: str
) -> Limit:
    """By what was learned; `level` is what the class carries with this
    cutter [N/m], `depth` the layer's own [m].
    """
    share = demand / level
    chance = evidence.chance_over(known, share)
    verdict = word(chance, share / known.median)
    sentence = (
        "near what rings here: less depth, tool and holder short, slides locked" if verdict == "tight" else ""
    )
    before = evidence.cut_before(known, share, fields)
    if verdict == "beyond":
        sentence = "more than this machine is likely to carry quietly: try a lighter cut first"
        end = evidence.first_end(known, ("chatter", "noisy"))
        if end is not None:
            words = "chattered" if end.outcome == "chatter" else "was noisy"
            at = (
                f"what {said(depth * end.demand / demand, units)} asks"
                if depth
                else f"{end.demand / 1e6:.2f} N/µm"
            )
            sentence = f"it {words} at {at} ({evidence.told(end)}): less depth"
    elif before is not None:
        verdict, sentence = "cut before", f"cut before: {evidence.told(before)}"
    capacity = level * known.median
    shown = f"{demand / 1e6:.2f} of {capacity / 1e6:.2f} N/µm"
    low, high = (f"{level * end / 1e6:.2f}" for end in (known.low, known.high))
    span = f"{low} to {high} N/µm"
    if depth:
        most = depth * capacity / demand
        shown = f"{said(depth, units, name=False)} of {said(most, units)} deep"
        ends = [
            said(depth * level * end / demand, units, name=end == known.high)
            for end in (known.low, known.high)
        ]
        span += f", {ends[0]} to {ends[1]} deep in this cut,"
    return Limit(
        name="chatter", title="Chatter", demand=demand, capacity=capacity, unit="N/m", share=demand / capacity,
        verdict=verdict, low=level * known.low, high=level * known.high, chance=chance,
        odds=odds(chance, "chatters", "chatter"), learned=True,
        shown=shown, sentence=sentence,
        evidence=evidence.dots(known, 1 / known.median),
        working=f"depth × teeth in cut × Kt; {known.spoke} trials say it carries {span} with this cutter, newest {known.newest}",
    )  # fmt: skip
