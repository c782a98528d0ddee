"""What the words of a stock say where its file says no surface and no shape:
`black hot-rolled flat, sawn` is black, its ends sawn.

Files of format 1, and the first of format 2, have all this in one line. What becomes a fact
stays in the line too, so that nothing is lost and such a file is written as it was; `left`
names the pieces that no fact came of.
"""

from __future__ import annotations

import re

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.catalog.trade.surfaces import read_surfaces
from jobsheet.errors import QuantityError
from jobsheet.model.stock import ALONG, FACES, Faces, Stock, Surfaces
from jobsheet.stock.all_shapes import sized

#: Each surface and the words by which it is known, the first that fits a piece.
_KNOWN = (
    ("pickled", r"pickled|descaled|(?:sand)?blasted"),
    ("cast", r"castings?|cast(?: skin)?"),
    ("black", r"black|scale|hot[- ]rolled|forg(?:ed|ings?)|flame[- ]cut"),
    ("bright", r"bright|cold[- ](?:drawn|rolled|finished)|drawn"),
    ("finished", r"milled|machined|ground|turned|faced|filed|squared|polished|fly[- ]cut"),
    ("sawn", r"sawn|cut off"),
    ("sheared", r"sheared|guillotined"),
    ("raw", r"raw|rough|unmachined"),
)
_PLACES = (
    ("bottom", "underside|bottom"), ("top", "top|upper face"), ("left", "left"), ("right", "right"), ("front", "front"),
    ("rear", "rear|back"),
)  # fmt: skip
_EDGES, _ENDS = r"(?:four |long )?edges", r"(?:both )?ends?"
_OVER = r"all over|on all (?:sides|faces)|all faces"
_ALL = rf"{_OVER}|all round"
#: A bar is round; what is sawn all round need not be.
_ROUND = r"(?<!all )round|shafts?|rods?|turned|diameter|dia"
_RELIEVED = r"stress[- ]relieved|annealed|normali[sz]ed"


class Said(Struct, frozen=True, kw_only=True):
    """What words say: surfaces as they would be typed, whether it is round, whether it is
    relieved, and what became no fact.
    """

    surfaces: str = ""
    round: bool = False
    relieved: bool = False
    left: tuple[str, ...] = ()


def said_by(condition: str) -> Said:
    """What the words of a stock say of it."""
    base, sawn, sheared = "", False, False
    beside: list[str] = []
    left: list[str] = []
    every_one_sawn, round_it, over = False, False, ""
    for piece in (part.strip() for part in re.split(r"[,;]", condition)):
        if not piece:
            continue
        surface = next((one for one, words in _KNOWN if _says(words, piece)), "")
        over = next((one for one, words in _KNOWN if _says(rf"(?:{words}) (?:{_OVER})", piece)), over)
        places = [] if _says(_ALL, piece) else _places(piece)
        if not surface or (surface == "raw" and places):
            if not _says(f"{_ROUND}|{_RELIEVED}", piece):
                left.append(piece)
        elif places:
            beside += [f"{place} {surface}" for place in places]
        elif surface == "sheared":
            sheared = True  # of sheet: its edges
        elif surface in ("sawn", "raw"):
            sawn = sawn or surface == "sawn"
            every_one_sawn = every_one_sawn or _says(rf"raw|rough|unmachined|{_ALL}", piece)
            round_it = round_it or (surface == "sawn" and _says("all round", piece))
        else:
            base = _together(base, surface)
            # `hot-rolled square bar, sawn` and `sawn bright bar` have sawn ends.
            sawn = sawn or _says("sawn|cut off", piece)
    if over and over not in ("raw", "sheared"):
        base = over  # bright bar that is sawn all over has no bright face left
    if not base and every_one_sawn:
        base = "sawn"
    elif round_it and base != "sawn":
        beside.insert(0, "edges sawn")  # a plate is sawn round its outline
    elif sawn and base not in ("cast", "sawn") and not any(one.startswith("ends ") for one in beside):
        beside.insert(0, "ends sawn")
    if sheared:
        beside.insert(0, "edges sheared")
    return Said(
        surfaces=", ".join(one for one in (base, *(one for one in beside if not base or one.split()[1] != base)) if one),
        round="⌀" in condition or "ø" in condition.casefold() or _says(_ROUND, condition),
        relieved=_says(_RELIEVED, condition), left=tuple(left),
    )  # fmt: skip


def beyond_surfaces(condition: str) -> str:
    """Words of a stock without the pieces that only say a surface: beside
    `bright, ends finished`, `flat, ends filed` says `flat`.

    Where no piece only says a surface, the words stay as they were typed.
    """
    kept = []
    pieces = [part.strip() for part in re.split(r"[,;]", condition)]
    for piece in pieces:
        rest = piece
        for words in (*(words for _, words in _KNOWN), *(words for _, words in _PLACES), _EDGES, _ENDS, _ALL):
            rest = re.sub(rf"(?<!\w)(?:{words})(?!\w)", "", rest, flags=re.IGNORECASE)
        if re.sub(r"\b(?:and|the|both|faces?|is|are)\b", "", rest, flags=re.IGNORECASE).strip():
            kept.append(piece)
    return condition.strip() if kept == pieces else ", ".join(kept)


def without_fact(stock: Stock) -> tuple[str, ...]:
    """What the words of a stock say beside its facts, where the facts come from
    these words: no rule reads it.
    """
    if not stock.condition or with_what_words_say(before_facts(stock)) != stock:
        return ()
    # Sharp edges bring a safety note.
    return tuple(piece for piece in said_by(stock.condition).left if not _says("sharp", piece))


def _together(base: str, surface: str) -> str:
    """One surface of two that are said of all faces: what takes a skin off counts, and
    bright bar that is ground stays bright.
    """
    if not base or surface == "pickled":
        return surface
    if surface == "finished":
        return base if base in ("bright", "pickled") else surface
    return "cast" if surface == "cast" else base


def _places(piece: str) -> list[str]:
    places = [place for place, words in _PLACES if _says(words, piece)]
    if places:
        return places
    if _says(_EDGES, piece):
        places.append("edges")
    if _says(_ENDS, piece):
        places.append("ends")
    return places


def with_what_words_say(stock: Stock) -> Stock:
    """The stock with the facts that its words say; for a file that says no
    surface, no shape and no relief.
    """
    words = said_by(stock.condition)
    surfaces = _surfaces(words.surfaces)
    made = replace(stock, surfaces=surfaces, relieved=True if words.relieved else None)
    return _round(made) if words.round and stock.condition.count("⌀") <= 1 else made


def _surfaces(text: str) -> Surfaces | None:
    try:
        return read_surfaces(text) if text else None
    except QuantityError:
        return None


def _round(stock: Stock) -> Stock:
    """Round bar, where two sizes of the box are the same; a box with others stays one."""
    sizes = (stock.length, stock.width, stock.height)
    for axis, (one, other) in enumerate(((1, 2), (0, 2), (0, 1))):
        if abs(sizes[one].value - sizes[other].value) < 1e-9 and sizes[one].text == sizes[other].text:
            return sized(
                replace(
                    stock, shape="round bar", along=ALONG[axis], bar_length=sizes[axis], diameter=sizes[one]
                )
            )
    return stock


def before_facts(stock: Stock) -> Stock:
    """The same as a file of that day has it: a box with its words."""
    return replace(
        stock, shape="box", along="length", bar_length=None, diameter=None, surfaces=None, relieved=None
    )


def faces_in(text: str) -> Faces | None:
    """The faces that free words name, such as
    `the top one stays, and both ends`; nothing where they name none.
    """
    found = [place for place, words in _PLACES if _says(words, text)]
    if _says("all|all faces|all round", text):
        found = list(FACES)
    if (_says("ends?", text) and not found) or (_says("both ends", text) and len(found) < len(FACES)):
        found.append("ends")  # `left end` names a face, and no other end
    return Faces(tuple(found), ", ".join(found)) if found else None


def _says(words: str, text: str) -> bool:
    return bool(text) and re.search(rf"(?<!\w)(?:{words})(?!\w)", text, re.IGNORECASE) is not None
