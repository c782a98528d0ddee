"""The force at a handle's crank: stiff it is felt, very stiff a slide is locked or the cutter dull."""

from __future__ import annotations

import math

from msgspec.structs import replace

from jobsheet.cutting.hand import crank_force
from jobsheet.limits.in_units import put_in
from jobsheet.limits.verdict import by_chance, spread_between
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.setting import Setting

#: What of its setting it reads.
READS = frozenset({"machine", "shop", "units"})
#: Where it stands among limits of one share.
ORDER = 140

#: What a table screw passes on where the card does not say (cutting-data section 1.15: 0.2-0.4).
USUAL_EFFICIENCY = 0.3
#: What one arm keeps up, and for how long [W, s]: half of what untrained people did on two
#: cranks (holding-and-more-kinds C1).
TIRING, LASTS = 15.0, 180.0


def limit(figures: Figures, setting: Setting, fields: object) -> Limit | None:
    """None where no table is wound, or the card does not know crank and drag."""
    force = figures.value("feed_force")
    handle = setting.machine.handle(getattr(fields, "along", "x") or "x")
    if force is None or handle is None or handle.crank is None:
        return None
    drag = setting.machine.drag.value if setting.machine.drag else 0.0
    efficiency = handle.efficiency.value if handle.efficiency else USUAL_EFFICIENCY
    crank = crank_force(force=force + drag, lead=handle.travel, efficiency=efficiency, radius=handle.crank)
    shop = setting.shop
    push = by_chance(
        "table-push", "Push at the handle", demand=crank, capacity=shop.stuck_crank, unit="N",
        spread=spread_between(shop.stiff_crank, shop.stuck_crank), happens=("tires", "tire"),
        shown=f"{crank:.0f} of {shop.stuck_crank:.0f} N",
        when_tight="stiff: a lighter cut winds easier",
        when_beyond="more than an arm winds: look for a locked slide or a dull cutter, or cut lighter",
        working=f"(F + drag) s / (2 π η r) = ({force:.0f} + {drag:.0f}) N × {put_in(handle.travel, setting.units)}"
        f" / (2 π × {efficiency:g} × {put_in(handle.crank, setting.units)})",
    )  # fmt: skip
    work = crank * 2 * math.pi * handle.crank * figures.number("handle_pace")
    if push.verdict == "expected" and work > TIRING and figures.number("cutting_time") > LASTS:
        sentence = (
            f"{work:.0f} W for more than three minutes tires an arm: rest between passes, or a lighter cut"
        )
        return replace(push, verdict="tight", sentence=sentence)
    return push
