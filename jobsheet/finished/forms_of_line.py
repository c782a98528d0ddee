"""Every form that a line of the finished part can have, with an example in either unit: for the list under
its field and the page of the help.

The sizes that a person types over first stand in braces. The examples are our
own; each of them is read by a test.
"""

from __future__ import annotations

from msgspec import Struct


class LineForm(Struct, frozen=True):
    """What it is called, and an example as it is typed where a bare number is in
    mm and where it is in inches.
    """

    title: str
    metric: str
    inch: str

    def marked(self, units: str) -> tuple[str, tuple[int, int]]:
        """The example in these units, and where the sizes to type over begin and end in it."""
        text = self.inch if units == "in" else self.metric
        start, end = text.index("{"), text.index("}") - 1
        return text.replace("{", "").replace("}", ""), (start, end)


FEATURES = (
    LineForm("Hole through", "{6.8} through at 20, 15", "{0.266} through at 0.8, 0.6"),
    LineForm("Holes through, several", "4 x {6.6} through at 10, 10; 90, 10; 90, 50; 10, 50",
             "4 x {0.266} through at 0.4, 0.4; 3.6, 0.4; 3.6, 2; 0.4, 2"),
    LineForm("Blind hole, at its full diameter so deep", "hole {10 x 25} at 20, 15", "hole {0.375 x 1} at 0.8, 0.6"),
    LineForm("Hole of a numbered or lettered drill", "{#7} through at 20, 15", "{#7} through at 0.8, 0.6"),
    LineForm("Close hole, reamed or bored", "{16 H7} through at 40, 25 within 0.05", "{0.625 H7} through at 1.6, 1 within 0.002"),
    LineForm("Tapped hole through", "{M10} through at 40, 25", "{3/8-16 UNC} through at 1.6, 1"),
    LineForm("Tapped hole, its thread so deep", "4 x {M8 blind 16} at 20, 15; 60, 15; 60, 35; 20, 35",
             "4 x {1/4-20 UNC blind 0.6} at 0.8, 0.6; 2.4, 0.6; 2.4, 1.4; 0.8, 1.4"),
    LineForm("Tapped hole, thread and hole so deep", "{M10 x 25/30} at 40, 25", "{M10 x 25 mm/30 mm} at 1.6, 1"),
    LineForm("Tapped hole, fine pitch", "{M10x1} through at 40, 25", "{3/8-24 UNF} through at 1.6, 1"),
    LineForm("Hole with a counterbore", "{6.6 through cbore 11 x 6.5} at 10, 10", "{0.266 through cbore 0.44 x 0.25} at 0.4, 0.4"),
    LineForm("Hole with a spot face, just cleaned up", "{6.6 through spot face 14} at 10, 10", "{0.266 through spot face 0.56} at 0.4, 0.4"),
    LineForm("Hole with a countersink", "{6.6 through csk 12.6 x 90} at 10, 10", "{0.266 through csk 0.5 x 82} at 0.4, 0.4"),
    LineForm("Holes in a row", "{5 through} at row of 5 from 10, 10, step 15", "{0.2 through} at row of 5 from 0.4, 0.4, step 0.6"),
    LineForm("Holes in a grid", "{5 through} at grid of 3 × 2 from 10, 10, step 20 × 15",
             "{0.2 through} at grid of 3 × 2 from 0.4, 0.4, step 0.8 × 0.6"),
    LineForm("Tapped holes on a pitch circle round the middle", "6 x {M6} through on PCD 60, first at 30", "6 x {1/4-20 UNC} through on PCD 2.4, first at 30"),
    LineForm("Tapped holes on a pitch circle elsewhere", "6 x {M6} through on PCD 40 around 50, 30, first at 0",
             "6 x {1/4-20 UNC} through on PCD 1.6 around 2, 1.2, first at 0"),
    LineForm("Slot through, closed at both ends", "slot {10 +0.05/0} through from 25, 30 to 75, 30", "slot {0.375 +0.002/0} through from 1, 1.2 to 3, 1.2"),
    LineForm("Slot from an edge, so long over all", "slot {12 H9 x 6} deep from left edge, 40 long over all, at 25",
             "slot {0.5 H9 x 0.25} deep from left edge, 1.6 long over all, at 1"),
    LineForm("Slot from an edge, to the centre of its end", "slot {12 H9 x 6} deep from left edge, 34 long between centres, at 25",
             "slot {0.5 H9 x 0.25} deep from left edge, 1.35 long between centres, at 1"),
    LineForm("Slot from edge to edge", "slot {12 x 6} deep left to right at 25", "slot {0.5 x 0.25} deep left to right at 1"),
    LineForm("Keyway of a shaft", "keyway {8 P9 x 4 +0.2}, 32 long, shaft 25", "keyway {0.25 P9 x 0.14 +0.008}, 1.25 long, shaft 1"),
    LineForm("Pocket", "pocket {30 x 20 x 6} deep R4 at 40, 25", "pocket {1.2 x 0.8 x 0.25} deep R0.16 at 1.6, 1"),
    LineForm("Window, a pocket that goes through", "window {50 x 30} R5 at 60, 40", "window {2 x 1.2} R0.2 at 2.4, 1.6"),
    LineForm("Step, so wide and so deep", "step {20 x 12} right end", "step {0.8 x 0.5} right end"),
    LineForm("T-slot for a bolt", "T-slot {12} for M10 x 22 deep left to right at 25", "T-slot {0.5} for M10 x 0.9 deep left to right at 1"),
    LineForm("T-slot with its recess", "T-slot {12 H12 recess 20 x 9 x 22} deep left to right at 25",
             "T-slot {0.5 H12 recess 0.8 x 0.35 x 0.9} deep left to right at 1"),
    LineForm("Dovetail, wide at its bottom, deep, angle", "dovetail {20 x 8 x 60} left to right at 25", "dovetail {0.8 x 0.3 x 60} left to right at 1"),
    LineForm("Chamfer round a face", "cham {1 x 45} top edges", "cham {0.04 x 45} top edges"),
    LineForm("Edges broken", "edges broken {0.3}", "edges broken {0.01}"),
    LineForm("In another face than the top", "{16 H7} through from front face at 40, 22", "{0.625 H7} through from front face at 1.6, 0.9"),
    LineForm("Places counted from other faces", "{6.8} through at 20 from right, 15 from rear", "{0.266} through at 0.8 from right, 0.6 from rear"),
    LineForm("With a finish, and a note of your own", "{16 H7} through at 40, 25 Ra 1.6 (for the pin)", "{0.625 H7} through at 1.6, 1 Ra 1.6 (for the pin)"),
)  # fmt: skip

SHAPES = (
    LineForm("Length x width x height", "{80 x 50 x 30}", "{3.25 x 2 x 1.25}"),
    LineForm("With limits of their own", "{80 ±0.1 x 50 +0.05/0 x 30 -0.2}", "{3.25 ±0.004 x 2 +0.002/0 x 1.25 -0.008}"),
    LineForm("One size alone", "height {11.5 ±0.1}", "height {0.45 ±0.004}"),
    LineForm("Sides that stay as bought", "{80 x 50} as bought x 11.5 ±0.1; bottom as bought", "{3.25 x 2} as bought x 0.45 ±0.004; bottom as bought"),
    LineForm("One face square to another", "{80 x 50 x 30}; front square to bottom 0.03", "{3.25 x 2 x 1.25}; front square to bottom 0.001"),
    LineForm("Parallel and flat", "{80 x 50 x 30}; top parallel to bottom 0.03; top flat 0.02",
             "{3.25 x 2 x 1.25}; top parallel to bottom 0.001; top flat 0.001"),
    LineForm("A block square all round", "{60 ±0.05 x 40 ±0.03 x 25 ±0.03}; all square 0.03; opposite parallel 0.03",
             "{2.5 ±0.002 x 1.5 ±0.001 x 1 ±0.001}; all square 0.001; opposite parallel 0.001"),
    LineForm("With the finish of a face", "{80 x 50 x 30}; top Ra 1.6", "{3.25 x 2 x 1.25}; top Ra 1.6"),
)  # fmt: skip
