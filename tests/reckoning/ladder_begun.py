"""The ladder of side cuts on B-1 that its tests begin with."""

from __future__ import annotations

B1 = {
    "cutter": "end mill 12 mm, 4 teeth, 30 mm out, drawer 1 no. 4", "material": "S235", "kind": "side",
    "texts": {"width": "6 mm", "feed_per_tooth": "0.04 mm", "spindle": "560 rpm"}, "trials": (),
}  # fmt: skip
