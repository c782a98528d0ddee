"""What is assumed of every machine before its first trial, and what each outcome says of which limit.

Source of all spreads: demo scenario section 3a and design, Proving (estimates; nobody has published trials of
light machines). They are standard deviations of natural logarithms, so 0.25 is about a quarter either way.
"""

from __future__ import annotations

from jobsheet.limits import evidence

#: How far a machine is from its card's torque curve, or from the class value of its frame (estimate).
PRIOR_SPREAD = {"spindle-torque": 0.35, "chatter": 0.7}
#: How far one process with one kind of cutter is from its machine (estimate).
BIAS = 0.25
#: How far one trial is from its process: metal, edge, fluid and ear of the day (estimate).
NOISE = evidence.NOISE
#: So many outcomes are noted wrongly (estimate).
WRONG = 0.03
#: A soft sign is near the capacity: within one rung, a factor of 1.25, on either side (ln 1.25; estimate).
NEAR = 0.2231435513142097
#: The workshop's chance that the next rung ends badly, and how far it may grow (design, Proving; common practice, no source).
CHANCE, GROWTH = 0.10, 1.25

#: What an outcome says of a limit: the capacity is `above` the demand, `below` it, or `near` it. What is not listed
#: says nothing: holding is never learned by slipping, a heavy handle is the hand's limit, a broken cutter the
#: cutter's; and a spindle that slowed had left the speed at which the frame was asked. `slowed` counts as below:
#: what is learned is the onset of slowing. A cut that rang was carried by the spindle all the same.
SAYS = {
    ("clean", "spindle-torque"): "above",
    ("clean", "chatter"): "above",
    ("noisy", "spindle-torque"): "above",
    ("noisy", "chatter"): "near",
    ("chatter", "spindle-torque"): "above",
    ("chatter", "chatter"): "below",
    ("slowed", "spindle-torque"): "below",
    ("stalled", "spindle-torque"): "below",
}


def says(outcome: str, limit: str) -> str:
    """`above`, `below`, `near`, or empty where that outcome says nothing of that limit."""
    return SAYS.get((outcome, limit), "")


def ends_badly(outcome: str, limit: str, asked: frozenset[str]) -> bool:
    """Whether it ends the ladder of that limit, and takes from an earlier good cut what it showed.

    Everything but `clean` ends a ladder. Where it speaks against another limit that the trial asked, it counts
    there alone: the spindle carried the cut that rang. `asked` are the limits that the trial asked.
    """
    if outcome == "clean":
        return False
    against = {one for one in asked if says(outcome, one) in ("below", "near")}
    return limit in against if against else True
