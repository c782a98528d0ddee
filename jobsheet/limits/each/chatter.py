"""What the cut asks of the frame before it rings. Until a trial on this machine it is not known, and never judged."""

from __future__ import annotations

import math
from typing import Any

from jobsheet.cutting.stability import cutter_scale
from jobsheet.limits import evidence
from jobsheet.limits.as_depth import depth_of, said
from jobsheet.limits.verdict import NINE_IN_TEN, TIGHT, odds, word
from jobsheet.model.capacity import Capacity
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.setting import Setting

#: What of its setting it reads.
READS = frozenset({"machine", "proof", "units"})

#: Supported cutting stiffness before any trial, by class [N/m] (cutting-data section 7: estimate, spread of ln 0.7).
CLASSES = {"bench": 6e6, "knee": 20e6}
SPREAD = 0.7


def limit(figures: Figures, setting: Setting, fields: Any, process: str = "") -> Limit | None:
    """None where nothing is milled or the machine has no class; else `unknown` until something was tried.

    A kind of cutter that was tried is judged, in another process by the machine alone. One that was never tried
    is not condemned by what others did; but where the machine alone makes it as good as certain that it stays
    quiet, that is said.
    """
    demand = figures.value("cutting_stiffness")
    level = CLASSES.get(setting.machine.stiffness_class)
    if demand is None or level is None:
        return None
    cutter, frame = figures.value("cutter_stiffness"), setting.machine.frame
    scale = cutter_scale(frame=frame.value, cutter=cutter) if cutter and frame else 1.0
    capacity = level * scale
    known = evidence.learned(setting, "chatter", process, fields)
    if known is not None and setting.proof is not None:
        tried = setting.proof.tried("chatter", evidence.cutter_kind(fields))
        if tried or evidence.chance_over(known, demand / capacity) < TIGHT:
            return _judged(known, demand, capacity, fields, depth_of(figures), setting.units)
    factor = math.exp(SPREAD * NINE_IN_TEN)
    depth = depth_of(figures)
    shown = f"{said(depth, setting.units)} deep" if depth else f"{demand / 1e6:.2f} N/µm"
    class_depth = f", {said(depth * capacity / demand, setting.units)} deep in this cut" if depth else ""
    return Limit(
        name="chatter", title="Chatter", demand=demand, capacity=capacity, unit="N/m", share=demand / capacity,
        verdict="unknown", low=capacity / factor, high=capacity * factor,
        shown=shown, sentence="not known on this machine: try a lighter cut first",
        working=f"depth × teeth in cut × Kt; the class supports about {capacity / 1e6:.1f} N/µm with this cutter{class_depth}",
    )  # fmt: skip


def _judged(
    known: Capacity, demand: float, level: float, fields: Any, depth: float | None, units: str
) -> Limit:
    """By what was learned; `level` is what the class carries with this cutter [N/m], `depth` the layer's own [m]."""
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
            sentence = f"it {words} at {at} ({evidence.told(end)})"
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
