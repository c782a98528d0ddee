"""How fast an edge may run in this metal: the top of what is published for this
cutter, with the fluid as it is given.
"""

from __future__ import annotations

from jobsheet.catalog.cuts.feeds import tap_speed
from jobsheet.catalog.cuts.fluids import drilling_speed, fluid_speed
from jobsheet.model.figure import EdgeSpeed
from jobsheet.model.quantity import Cutter
from jobsheet.model.setting import Setting
from jobsheet.operations.shared.common import start_speed

#: A range that ends nearer to the start speed than this says nothing: start speeds differ so
#: much between tables (common practice).
OVER_START = 1.3
#: One tooth on an arm: nothing that is published for end mills and face mills holds for it (common practice).
_ONE_TOOTH = ("fly cutter", "boring head")
#: Under this share of the lower end of what is published carbide rubs and chips in iron and
#: steel (common practice, no source).
_RUBS = 0.25
FERROUS = ("steel", "stainless", "iron")


def edge_speed(setting: Setting, cutter: Cutter, work: str, deep: float = 0.0) -> EdgeSpeed | None:
    """Where this cutter starts in this metal, and the fastest that it may
    run [m/s]; None where no speed is known.

    A countersink, a counterbore, a spot drill ask for `drill`: at their widest they
    may run as a drill does, no faster.
    """
    start = start_speed(setting, cutter, work, deep)
    if start is None:
        return None
    top, source = _published(setting, cutter, work, deep)
    least = None
    if cutter.material == "carbide" and work == "mill" and setting.material.family in FERROUS:
        slow = setting.material.speed("carbide mill")
        least = slow * _RUBS if slow is not None else None
    floor = start * OVER_START
    if top < floor:
        top, source = floor, ""
    return EdgeSpeed(start=start, top=top, source=source, work=work, least=least)


def _published(setting: Setting, cutter: Cutter, work: str, deep: float) -> tuple[float, str]:
    """The top of the published range with the fluid as it is given [m/s], and its
    source; nought where there is none.
    """
    material = setting.material
    if work == "tap":
        slow = tap_speed(material)
        return (slow.value, slow.source) if slow is not None else (0.0, "")
    if work == "ream":
        row = material.speed_source("ream")
        return (row.value, row.source) if row is not None else (0.0, "")
    if cutter.kind in _ONE_TOOTH:
        return 0.0, ""
    carbide = cutter.material == "carbide"
    published = material.fastest_of(f"carbide {work}" if carbide else work)
    if published is None and carbide:
        published = material.speed_source(f"carbide {work}")
    if published is None:
        return 0.0, ""
    if carbide:
        return published.value, published.source
    share = (
        drilling_speed(setting.fluid, deep, dry_by_nature=material.dry_by_nature)
        if work == "drill"
        else fluid_speed(setting.fluid, work, dry_by_nature=material.dry_by_nature)
    )
    return published.value * share.value, published.source
