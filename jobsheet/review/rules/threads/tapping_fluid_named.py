"""Asks whether the fluid for tapping is named."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.material import Material
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations.manners import DRY, OILED
from jobsheet.operations.registry import roles
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.held import how
from jobsheet.review.rule import View, remark, rule

#: What is tapped dry on purpose: iron, brass, plastics.
_DRY = ("iron", "plastic")


@rule("tapping-fluid-named", "Tapping fluid named", "scrap")
def tapping_fluid_named(view: View) -> Iterator[Remark]:
    """Steel, stainless, titanium, copper or aluminium is tapped, and no fluid is entered. Dry on purpose may be said.

    Because: Tapping asks more of the fluid than any other step; dry taps gall and break.
    Not so: tap M6 in stainless, the fluid left empty
    So: tap M6 in stainless, fluid brushed on; or dry, on purpose
    From: Industrial Press, Machinery's Handbook, 31st edition, page 1250; common practice
    """
    if view.job.fluid:
        return
    for set_up, operation, _ in view.steps():
        if roles(operation).hole != "tap":
            continue
        material = view.reckoned.settings[operation.key].material
        if material.family in _DRY or material.dry_by_nature or _brass(material):
            continue
        if how(operation, OILED, DRY):
            continue
        yield remark(
            view, "tapping-fluid-named", "Name the tapping fluid, or say that it is dry on purpose", operation.key, set_up=set_up.key,
            fix=Fix("Fluid: brushed", set_field("job", "fluid", "brushed")),
        )  # fmt: skip


def _brass(material: Material) -> bool:
    """Whether the catalogue calls it brass."""
    return any("brass" in name.casefold() for name in (material.title, *material.also))
