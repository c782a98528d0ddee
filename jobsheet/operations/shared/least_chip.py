"""How thin a chip may be before the edge rubs instead of cutting."""

from __future__ import annotations

from jobsheet.model.quantity import Cutter

#: Least feed per tooth of HSS end mills and of insert mills [m] (sequencing rules,
#: chip-thick-enough: common practice).
HSS, INSERTS = 0.012e-3, 0.04e-3


def least_chip(cutter: Cutter) -> float | None:
    """The least feed per tooth [m]; None for a cutter of which nothing is said."""
    if cutter.kind == "face mill" and cutter.material == "carbide":
        return INSERTS
    if cutter.kind in ("end mill", "slot drill") and cutter.material != "carbide":
        return HSS
    return None
