"""Scale or a cast skin on the stock: which faces still have it, and what a step makes first of one of them."""

from __future__ import annotations

from jobsheet.model.job import FACES, Operation, SetUp, Stock
from jobsheet.model.lying import lying
from jobsheet.model.shop import Shop
from jobsheet.operations.registry import roles
from jobsheet.remembered import remembered

#: What takes a skin off, or says that there is none; what has a cast one; what has scale.
CLEAN = ("pickled", "blasted", "sandblasted", "ground", "machined", "bright", "cold drawn", "descaled")
CAST = ("casting", "cast", "cast skin")
SCALE = ("black", "scale", "hot rolled", "forged", "forging")
RAW = ("raw", "rough", "flame cut", "unmachined")
SAWN = ("sawn", "cut off")
#: What may bow as one side of it comes off; what has no stress any more.
DRAWN = ("bright", "cold drawn", "cold rolled", "drawn")
REST = ("hot rolled", "stress relieved", "annealed", "normalised", "normalized")
ROUND = ("round", "shaft", "rod", "turned", "diameter", "dia")
_ENDS = (("left", "right"), ("front", "rear"), ("top", "bottom"))
_SIDES = {"left": "left", "right": "right", "front": "near", "rear": "far"}


def skin_of(condition: str, shop: Shop) -> tuple[float, str]:
    """How thick the skin is [m] and what has it; nought where there is none."""
    if _says(condition, CLEAN):
        return 0.0, ""
    if _says(condition, CAST):
        return shop.casting_skin, "a cast skin"
    if _says(condition, SCALE):
        return shop.scale_skin, "scale"
    return 0.0, ""


@remembered(64)
def _says(text: str, words: tuple[str, ...]) -> bool:
    """Whether one of these words stands in the text, also in the plural; a hyphen is a blank. No pattern: this runs at the start."""
    plain = " ".join("".join(sign if sign.isalnum() else " " for sign in text.casefold()).split())
    return any(f" {word}{end} " in f" {plain} " for word in words for end in ("", "s"))


def is_rough(stock: Stock) -> bool:
    """Whether nothing lies flat on the faces that it was bought with."""
    return not _says(stock.condition, CLEAN) and _says(stock.condition, (*CAST, *SCALE, *RAW))


def is_cast(stock: Stock) -> bool:
    """Whether it is a casting."""
    return _says(stock.condition, CAST)


def is_round(stock: Stock) -> bool:
    """Whether it is round bar."""
    return "⌀" in stock.condition or "ø" in stock.condition.casefold() or _says(stock.condition, ROUND)


def may_bow(stock: Stock) -> bool:
    """Whether it was drawn or rolled cold, and not relieved since."""
    return _says(stock.condition, DRAWN) and not _says(stock.condition, REST)


def kept_faces(stock: Stock) -> frozenset[str]:
    """Faces that the stock's words say stay as bought."""
    text = stock.as_bought
    found = {face for face in FACES if _says(text, (face,))}
    if _says(text, ("all", "all faces", "all round")):
        found.update(FACES)
    if _says(text, ("end",)):
        found.update(("left", "right"))
    return frozenset(found)


def raw_faces(stock: Stock) -> frozenset[str]:
    """The faces of the stock that have its skin, if it has one: sawn ends have none."""
    sizes = (stock.length.value, stock.width.value, stock.height.value)
    sawn = _ENDS[sizes.index(max(sizes))] if _says(stock.condition, SAWN) else ()
    return frozenset(FACES) - frozenset(sawn)


def made_first(operation: Operation, set_up: SetUp) -> str:
    """The face of the stock that a step makes: that which is up, or a side; empty for anything else."""
    mills = roles(operation).mills
    if mills == "flat":
        return set_up.up
    if mills == "wall" and operation.fields.path is None:
        lies = lying(set_up, ((0.0, 1.0), (0.0, 1.0), (0.0, 1.0)))
        return str(getattr(lies, _SIDES.get(operation.fields.side, "up")))
    return ""
