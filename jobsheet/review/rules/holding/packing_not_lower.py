"""Asks whether the packing of straps is as high as the work under them."""

from __future__ import annotations

import re
from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.lengths import length, millimetres
from jobsheet.review.plan.words import says
from jobsheet.review.rule import View, remark, rule

_HEEL = re.compile(r"(\d+(?:[.,]\d+)?)\s*mm\s+(?:packing|step blocks?|heel blocks?|heels?)\b", re.IGNORECASE)
_UNDER = re.compile(r"(\d+(?:[.,]\d+)?)\s*mm\s+(?:\w+\s+)?(?:backing|parallels?|plate)\b", re.IGNORECASE)
#: A difference that slopes nothing [m] (common practice).
LEVEL = 0.5e-3


@rule("packing-not-lower", "Packing not lower than the work", "hazard")
def packing_not_lower(view: View) -> Iterator[Remark]:
    """Straps whose packing is written with its height and is lower than the work under their noses.

    Because: A strap that slopes up to the work slides off it.
    Not so: strap clamps, 10 mm packing, work 20 high
    So: strap clamps, 20 mm packing, work 20 high
    From: common practice
    """
    for set_up in view.job.set_ups:
        holding = set_up.holding
        match = _HEEL.search(holding.packing) or _HEEL.search(holding.note)
        if match is None or not says("straps?|clamps?", holding.device) or not set_up.operations:
            continue
        high = view.reckoned.settings[set_up.operations[0].key].extent[2]
        under = _UNDER.search(holding.packing)
        top = high + (float(under[1].replace(",", ".")) * 1e-3 if under else 0.0)
        heel = float(match[1].replace(",", ".")) * 1e-3
        if heel >= top - LEVEL:
            continue
        wanted = millimetres(top)
        name = "packing" if match.re.search(holding.packing) else "note"
        text = getattr(holding, name)
        fix = Fix(
            f"Packing {wanted} mm",
            set_field(
                f"holding:{set_up.key}", name, text.replace(match[0], match[0].replace(match[1], wanted), 1)
            ),
        )
        message = f"Packing {length(heel, view.job.units)} under straps on work {length(top, view.job.units)} high: level with the work or a little higher"
        yield remark(view, "packing-not-lower", message, set_up.operations[0].key, fix=fix, set_up=set_up.key)
