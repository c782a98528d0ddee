"""The kinds of step that the program itself writes: a mend into a plan, a ladder, an
answer. Their names stand here alone.

They are for making a step, never for asking what one is: that is what roles are for.
`tests/test_kind_names.py` holds both.
"""

from __future__ import annotations

#: Written by mends of the review.
BENCH = "bench-step"
BORE = "bore"
COUNTERBORE = "counterbore"
COUNTERSINK = "countersink"
DRILL = "drill"
ENLARGE = "enlarge"
FIND = "pick-up-edge"
PLUNGE = "plunge"
REAM = "ream"
SIDE = "side-mill"
SPOT = "spot-drill"
TRAM = "tram-check"
#: Written by answers and, on an empty sheet, by the window.
FACE = "face"
SAW = "saw-cut"
SLOT = "slot"
TAP = "tap"
#: Likely to come next, by the window where a step is put in.
CHAMFER = "edge-chamfer"
HAND_TAP = "hand-tap"
#: The kind by which each process of test cuts is made.
PROVED = {"face": FACE, "side": SIDE, "slot": SLOT, "drill": DRILL, "tap": TAP}


def process_of(name: str) -> str:
    """The process that is meant by its own name or by that of the kind which makes it;
    what is neither comes back as it is.
    """
    return next((process for process, kind in PROVED.items() if name == kind), name)
