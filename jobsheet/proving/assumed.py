"""What is assumed of every machine before its first trial, and what each outcome says of which limit.

Source of all spreads: demo scenario section 3a and design, Proving (estimates; nobody has published trials of
light machines). They are standard deviations of natural logarithms, so 0.25 is about a quarter either way.
"""

from __future__ import annotations

from jobsheet.limits import evidence

#: How far a machine is from its card's torque curve, or from the class value of its frame (estimate).
PRIOR_SPREAD = {"spindle-torque": 0.35, "chatter": 0.7}
#: The same of the frame, where it was measured: what stiffness alone explains of the
#: spread is gone (`limits.each.chatter`).
MEASURED_SPREAD = 0.56
#: How far one process with one kind of cutter is from its machine (estimate).
BIAS = 0.25
#: How far one trial is from its process: metal, edge, fluid and ear of the day (estimate).
NOISE = evidence.NOISE
#: How well a trial repeats in this workshop, with how likely that is before its own
#: trials say it (estimate about `NOISE`).
REPEATS = ((0.04, 0.15), (0.08, 0.25), (NOISE, 0.35), (0.20, 0.25))
#: Two cuts whose demands differ by no more, as a logarithm, are the same cut
#: made twice: a hundredth (estimate).
SAME_CUT = 0.01
#: So many outcomes of test cuts are noted wrongly, and of steps of ordinary work, where
#: nobody listened for it (estimates).
WRONG, WRONG_AT_WORK = 0.03, 0.06
#: And of those that seemed odd and were said to be so when asked (estimate).
WRONG_THOUGH_KEPT = 0.005
#: What the steps of one day's work have in common (estimate).
DAY = 0.10
#: What a mended or worn part changes at the machine: older trials fade by it
#: (estimate: half as much again, either way).
CHANGED = 0.40
#: A soft sign is near the capacity: within one rung, a factor of 1.25, on either side (ln 1.25; estimate).
NEAR = 0.2231435513142097
#: The workshop's chance that the next rung ends badly, and how far it may grow (design,
#: Proving; common practice, no source).
CHANCE, GROWTH = 0.10, 1.25
#: A finer ladder after the first sign: it begins where a ladder would, climbs by so much, and each rung
#: may end badly with three times the chance: on half of 400 drawn machines nine in ten then lie within
#: a factor of 1.4, by four more cuts.
FINER_GROWTH, FINER_CHANCES = 1.10, 3.0

#: What an outcome says of a limit: the capacity is `above` the demand, `below` it, or `near` it. What
#: is not listed says nothing: holding is never learned by slipping, a heavy handle is the hand's
#: limit, a broken cutter the cutter's; and a spindle that slowed had left the speed at which the frame
#: was asked. `slowed` counts as below: what is learned is the onset of slowing. A cut that rang was
#: carried by the spindle all the same.
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


def spread_of(limit: str, *, measured: bool) -> float:
    """How far a machine is from card, class or measured frame, before any trial."""
    return MEASURED_SPREAD if measured and limit == "chatter" else PRIOR_SPREAD[limit]


def says(outcome: str, limit: str) -> str:
    """`above`, `below`, `near`, or empty where that outcome says nothing of that limit."""
    return SAYS.get((outcome, limit), "")


def ends_badly(outcome: str, limit: str, asked: frozenset[str]) -> bool:
    """Whether it ends the ladder of that limit, and takes from an earlier good cut what it showed.

    Everything but `clean` ends a ladder. Where it speaks against another limit that the trial asked, it
    counts there alone: the spindle carried the cut that rang. `asked` are the limits that the trial asked.
    """
    if outcome == "clean":
        return False
    against = {one for one in asked if says(outcome, one) in ("below", "near")}
    return limit in against if against else True
