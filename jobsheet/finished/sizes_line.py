"""The line of the whole: three sizes as on a drawing, and what is asked of the
faces, with semicolons between.

    80 ±0.1 x 50 x 30
    60 ±0.05 x 40 ±0.03 x 25 ±0.03; all square 0.03; opposite parallel 0.03
    80 x 50 as bought x 11.5 ±0.1; A square to B 0.03; top flat 0.02; top Ra 1.6
    length 80; height 11.5 ±0.1; bottom as bought

Length runs from left to right, width from front to rear, as of the stock.
"""

from __future__ import annotations

import re
from typing import Any

from jobsheet.errors import QuantityError
from jobsheet.finished.scanned import SIZE, Scanned
from jobsheet.model.finished import SIZES, FaceForm, Shape
from jobsheet.model.lying import OPPOSITE, beside
from jobsheet.model.quantity import Size
from jobsheet.model.stock import FACES
from jobsheet.remembered import remembered
from jobsheet.units.lazily import pattern

_BY = pattern(r"[x×X*]")
_AS_BOUGHT = pattern(r"(?:as bought|stays? as bought|raw|left raw)\b", re.IGNORECASE)
_NAMED = pattern(r"(?P<name>length|long|width|wide|height|high|thickness|thick)\b\s*[:=]?", re.IGNORECASE)
_FORM = pattern(
    r"(?P<form>square|squareness|parallel|parallelism|flat|flatness)\b(?:\s+(?P<to>to|with)\b)?",
    re.IGNORECASE,
)
_WITHIN = pattern(r"within\b", re.IGNORECASE)
_RA = pattern(r"Ra\b\s*(?P<ra>\d+(?:[.,]\d+)?)(?:\s?(?:µm|um))?(?![\d.,])", re.IGNORECASE)
_ALL = pattern(r"(?P<which>all|opposite)\b(?:\s+(?:faces|sides))?", re.IGNORECASE)
_BLOCK = pattern(r"(?:block|plate|size)\b:?", re.IGNORECASE)
_SAME = {
    "long": "length", "wide": "width", "high": "height", "thick": "height", "thickness": "height",
    "squareness": "square", "parallelism": "parallel", "flatness": "flat",
}  # fmt: skip
_PAIRS = {"length": ("left", "right"), "width": ("front", "rear"), "height": ("bottom", "top")}
EXAMPLE = "80 ±0.1 x 50 x 30; A square to B 0.03"


@remembered(64)
def read_shape(text: str, units: str, datums: tuple[tuple[str, str], ...] = ()) -> Shape:
    """What the line of sizes means.

    Parameters
    ----------
    text : str
        As it is typed
    units : str
        `mm` or `in`: the unit that a bare number takes
    datums : tuple
        Letter and face of each datum, as the job has them

    Raises
    ------
    QuantityError
        With a sentence that says what to write, and the part of the line that it is about.
    """
    return shape_of(Scanned(text, units, datums))


def shape_of(line: Scanned) -> Shape:
    """The same of a line that somebody else looks at afterwards."""
    found: dict[str, Any] = {"forms": [], "as_bought": [], "finishes": []}
    if line.done():
        raise QuantityError(f"Nothing is written here; write the sizes, such as {EXAMPLE}.")
    while not line.done():
        line.take(_BLOCK)
        _part(line, found)
    return Shape(
        text=line.text, length=found.get("length"), width=found.get("width"), height=found.get("height"),
        forms=tuple(found["forms"]), as_bought=tuple(dict.fromkeys(found["as_bought"])),
        finishes=tuple(dict(found["finishes"]).items()),
    )  # fmt: skip


def _part(line: Scanned, clauses: dict[str, Any]) -> None:
    """One part of the line: sizes, or what is asked of faces."""
    start = line.at
    if named := line.take(_NAMED):
        name = named["name"].casefold()
        _put(line, clauses, _SAME.get(name, name), start)
    elif line.take(SIZE):
        line.at = start
        _three(line, clauses)
    elif which := line.take(_ALL):
        _asked(line, clauses, FACES, which["which"].casefold())
    elif form := line.take(
        _FORM
    ):  # `square 0.05` alone, as a title block has it: asked of all that it can be asked of
        line.at = start
        _asked(line, clauses, FACES, "opposite" if form["form"].casefold().startswith("parallel") else "all")
    else:
        face = line.take_face()
        if face is None:
            raise line.error(f"“{line.rest()}” is no size and no face; write, for example, {EXAMPLE}.")
        _asked(line, clauses, (face[0],), "", end=face[1] == "end")


def _three(line: Scanned, found: dict[str, Any]) -> None:
    """Length, width and height with an x between them."""
    start = line.at
    for index, name in enumerate(SIZES):
        if index and not line.take(_BY):
            raise line.error(
                "Three sizes make the whole: length x width x height, such as 80 x 50 x 30;"
                " for one alone write its name, such as height 11.5 ±0.1.",
                start,
                line.at or None,
            )
        _put(line, found, name, line.at)
    if line.take(_BY):
        raise line.error("A fourth size follows; the whole has length x width x height.", line.at - 1)


def _put(line: Scanned, found: dict[str, Any], name: str, start: int) -> None:
    """One size, and whether its two faces stay as they are bought."""
    if name in found:
        raise line.error(f"The {name} is said already.", start, line.at or None)
    size: Size | None = line.take_size("length")
    if size is None:
        raise line.error(f"The {name} is missing here; write a size, such as 50 ±0.1.")
    found[name] = size
    if line.take(_AS_BOUGHT):
        found["as_bought"] += _PAIRS[name]


def _asked(
    line: Scanned, clauses: dict[str, Any], faces: tuple[str, ...], which: str, *, end: bool = False
) -> None:
    """What stands behind a face: its form, its finish, or that it stays as it is bought."""
    if line.take(_AS_BOUGHT):
        clauses["as_bought"] += faces
        return
    if ra := line.take(_RA):
        clauses["finishes"] += [(face, float(ra["ra"].replace(",", ".")) * 1e-6) for face in faces]
        return
    start = line.at
    form = line.take(_FORM)
    if form is None:
        raise line.error(
            "After a face say what is asked of it: square to B 0.03, parallel to A 0.03, flat 0.02, Ra 1.6 or as bought."
        )
    name = _SAME.get(form["form"].casefold(), form["form"].casefold())
    to = _to(line, form, name, faces, which, start, end=end)
    line.take(_WITHIN)
    within = line.take_length()
    if within is None or within.value <= 0:
        raise line.error(f"Say within how much it shall be {name}, such as 0.03.")
    # Said of two opposite faces at once it is one thing.
    for face in faces if name != "parallel" or len(faces) == 1 else ("top", "rear", "right"):
        others = to if which == "" else (beside(face) if name == "square" else (OPPOSITE[face],))
        others = others if name != "flat" else ()
        clauses["forms"].append(FaceForm(face=face, form=name, to=others, within=within.value))


def _to(
    line: Scanned, form: Any, name: str, faces: tuple[str, ...], which: str, start: int, *, end: bool
) -> tuple[str, ...]:
    """The faces that one is square or parallel to."""
    if name == "flat" or which:
        return ()
    if not form["to"]:
        if name == "square" and end:
            return beside(
                faces[0]
            )  # an end is square to the sides of its bar, as both ends are where nobody says to what
        example = "A square to B 0.03" if name == "square" else "top parallel to bottom 0.03"
        raise line.error(f"Say which face it is {name} to, such as {example}.", start)
    to: list[str] = []
    while (at := line.at) is not None and (face := line.take_face()) is not None:
        other = face[0]
        if name == "square" and other in (faces[0], OPPOSITE[faces[0]]):
            raise line.error(f"The {faces[0]} face cannot be square to the {other} face.", at)
        if name == "parallel" and other != OPPOSITE[faces[0]]:
            raise line.error(f"The {faces[0]} face is parallel to the {OPPOSITE[faces[0]]} face only.", at)
        to.append(other)
    if not to:
        raise line.error(f"Say which face it is {name} to.")
    return tuple(dict.fromkeys(to))
