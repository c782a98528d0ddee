"""Asks whether a slot is cut in layers."""

from __future__ import annotations

import math
from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.reckoning.adviser.layer_lines import layer_text
from jobsheet.review.mending.best_here import best_here
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.cuts import full_width, layer_of, soft, total_depth
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule


@rule("slot-in-layers", "Slots in layers", "scrap")
def slot_in_layers(view: View) -> Iterator[Remark]:
    """A layer of a full-width slot is deeper than half the cutter in hard metals, than the cutter in soft ones, than a quarter on a bench machine.

    Quiet for passes along a wall.

    Because: Chips pack and the cutter bends.
    Not so: a 10 mm slot in steel 8 deep at once
    So: two layers of 4
    From: common practice. The shares are the workshop's numbers
    """
    for step in plan_of(view).steps:
        diameter, layer, depth = full_width(step), layer_of(step), total_depth(step)
        if diameter is None or layer is None or depth is None:
            continue
        shop = step.setting.shop
        share = shop.slot_layer_soft if soft(step.setting) else shop.slot_layer
        if step.setting.machine.stiffness_class == "bench":
            share = min(share, shop.slot_layer_bench)
        most = share * diameter
        if layer <= most + 1e-6:
            continue
        count = math.ceil(depth / most - 1e-6)
        message = f"Take it in layers: {length(layer, view.job.units)} at once is {layer / diameter:.2f} of the cutter, up to {share:g} goes here"
        text = layer_text(depth, count, step.setting)
        even = Fix(f"{count} layers of {text}", set_field(step.key, "layer", text))
        yield remark(
            view, "slot-in-layers", message, step.key, set_up=step.set_up.key,
            fix=best_here(step.operation, step.setting), others=(even,) if text else (),
        )  # fmt: skip
