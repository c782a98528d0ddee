"""Scale or a cast skin on the stock: which faces still have it, and what a
step makes first of one of them.
"""

from __future__ import annotations

from jobsheet.model.job import Operation, SetUp
from jobsheet.model.lying import lying
from jobsheet.model.shop import Shop
from jobsheet.model.stock import BLACK, BRIGHT, CAST, FACES, SAWN, SHEARED, Stock
from jobsheet.operations.registry import roles
from jobsheet.remembered import remembered

#: Nothing lies flat on a face that comes like this: scale, a casting's face, what a saw
#: leaves (sequencing rules, raw faces).
UNTRUE = frozenset({BLACK, CAST, SAWN, SHEARED})
_SIDES = {"left": "left", "right": "right", "front": "near", "rear": "far"}


def skin_of(stock: Stock, face: str, shop: Shop) -> tuple[float, str]:
    """How thick the skin of a face is [m] and what it is; nought where it has none."""
    surface = stock.surface(face)
    if surface == CAST:
        return (stock.skin.value if stock.skin is not None else shop.casting_skin), "a cast skin"
    return (shop.scale_skin, "scale") if surface == BLACK else (0.0, "")


@remembered(8)
def skins(stock: Stock, shop: Shop) -> tuple[tuple[str, float], ...]:
    """The faces of the stock that have a skin, with how thick it is [m]."""
    found = ((face, skin_of(stock, face, shop)[0]) for face in FACES)
    return tuple((face, thick) for face, thick in found if thick)


def is_untrue(stock: Stock, face: str) -> bool:
    """Whether nothing lies flat on a face as it was bought."""
    return stock.surface(face) in UNTRUE


def is_cast(stock: Stock, face: str) -> bool:
    """Whether a face is a casting's."""
    return stock.surface(face) == CAST


def may_bow(stock: Stock) -> bool:
    """Whether it was drawn or rolled cold, and not relieved since."""
    return not stock.relieved and any(stock.surface(face) == BRIGHT for face in FACES)


def made_first(operation: Operation, set_up: SetUp) -> str:
    """The face of the stock that a step makes: that which is up, or a side; empty for anything else."""
    mills = roles(operation).mills
    if mills == "flat":
        return set_up.up
    if mills == "wall" and operation.fields.path is None:
        lies = lying(set_up, ((0.0, 1.0), (0.0, 1.0), (0.0, 1.0)))
        return str(getattr(lies, _SIDES.get(operation.fields.side, "up")))
    return ""
