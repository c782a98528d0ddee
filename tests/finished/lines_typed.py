"""Lines as people type them from a drawing, for the tests that read and write them."""

from __future__ import annotations

from jobsheet.finished.feature_line import read_feature

DATUMS = (("A", "bottom"), ("B", "front"), ("C", "left"))


#: Lines as the reference on planning from a drawing has them ("As typed"), and others of our own invention.
LINES = (
    "4 x M8 blind 16 at 20, 15; 60, 15; 60, 35; 20, 35",
    "4 × M8 x 16/20 at grid of 2 × 2 from 20, 15, step 40 × 20",
    "M10 x 25/30 at 20, 20",
    "16 H7 through at 40, 25",
    "16 H7 through at 40 ±0.05 from C, 22 ±0.05 from A from front",
    "hole 6.8 through at 20, 15",
    "hole 10 x 25",
    "6.6 cbore 11 x 6.5",
    "6.6 csk 12.6 x 90",
    "6.6 through spot face 14 at 10, 10",
    "6 x M6 through on PCD 60, first at 30",
    "6 x M6 through on PCD 60 around 50, 30, first at 15",
    "slot 12 H9 x 6 deep from left edge",
    "slot 12 H9 x 6 deep from left edge, 40 long, at 25 from B",
    "slot 10 +0.05/0 through from 25, 30 to 75, 30 within 0.05",
    "slot 12 x 6 deep left to right at 25",
    "keyway 8 P9 x 4 +0.2, 32 long, shaft 25",
    "window 50 x 30 R5 at 60, 40",
    "pocket 30 x 20 x 6 deep R4 at 40, 25 (for the plate)",
    "step 20 x 12 right end",
    "cham 0.5 x 45",
    "edges broken 0.3",
    "chamfer 1 x 30 top edges",
    "T-slot 12 for M10",
    "T-slot 12 H12 recess 20 x 9 x 22 deep left to right at 25",
    "dovetail 20 x 8 x 60 left to right at 25",
    "#7 through at 10, 10",
    "1/4-20 UNC x 12 deep at 10, 10",
    "M8x1.25 through",
    "16,5 through at 20, 15 Ra 1.6",
    "2 holes 0.266 in through at 1/2 in, 3/4 in; 1-1/4 in, 3/4 in",
)


SIZES = (
    "80 ±0.1 x 50 x 30; A square to B 0.03",
    "60 ±0.05 × 40 ±0.03 × 25 ±0.03; all square 0.03; opposite parallel 0.03",
    "80 x 50 as bought x 11.5 ±0.1; top flat 0.02; top Ra 1.6",
    "height 11.5 ±0.1; bottom as bought",
    "84 × 50 ±0.05 × 40 ±0.05; square 0.05; parallel 0.03; flat 0.02",
)


def read(text, units="mm"):
    return read_feature(text, units, DATUMS)
