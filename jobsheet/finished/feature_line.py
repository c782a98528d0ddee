"""One line a feature, as on a drawing: `[n x] what size [limits] [depth] [at places] [from face] [Ra]`.

    4 x M8 blind 16 at 20, 15; 60, 15; 60, 35; 20, 35
    16 H7 through at 40, 25
    6.6 cbore 11 x 6.5 at row of 3 from 10, 10, step 20
    6 x M6 through on PCD 60, first at 30
    slot 12 H9 x 6 deep from left edge, 40 long, at 25
    window 50 x 30 R5 at 60, 40
    step 20 x 12 right end
    cham 0.5 x 45 all edges

What has two readings is answered with both; nothing is guessed.
"""

from __future__ import annotations

import math
import re

from jobsheet.errors import QuantityError
from jobsheet.finished import clauses, places_clause
from jobsheet.finished.clauses import Said
from jobsheet.finished.runs import run, sides, whole_edges
from jobsheet.finished.scanned import LENGTH, SIZE, Scanned
from jobsheet.finished.settled import settle
from jobsheet.finished.threads_on_lines import take_thread, thread_class
from jobsheet.model.finished import Feature
from jobsheet.model.quantity import Size
from jobsheet.remembered import remembered
from jobsheet.units.lazily import pattern

EXAMPLES = "4 x M8 blind 16 at 20, 15; 60, 15, or 16 H7 through at 40, 25"
_COUNT = pattern(r"(?P<count>\d{1,3})\s*(?:(?P<by>x|×|X|\*)|off\b|no\.?\s|holes?\b)(?=\s*\S)")
_WORDS = pattern(
    r"(?P<word>T[\s-]?slot|dovetail|keyway|keyseat|slot|groove|pocket|window|recess|step|rebate|shoulder"
    r"|chamfer(?:ed)?|cham\b\.?|(?:break\s+)?(?:all\s+)?edges(?:\s+broken)?|holes?|drill(?:ed)?|ream(?:ed)?|bored?"
    r"|tap(?:ped)?(?:\s+hole)?|threaded|thread)\b\.?",
    re.IGNORECASE,
)
_BY = pattern(r"[x×X*]")
_DEGREES = pattern(r"(?P<angle>\d+(?:[.,]\d+)?)\s*(?:°|deg(?:rees?)?\b)?", re.IGNORECASE)
_DEGREES_ALONE = pattern(r"(?P<angle>\d+(?:[.,]\d+)?)\s*(?:°|deg(?:rees?)?\b)", re.IGNORECASE)
_FOR = pattern(r"for\b", re.IGNORECASE)
_WIDE = pattern(r"wide\b", re.IGNORECASE)
_RECESS = pattern(r"(?:recess|head)\b", re.IGNORECASE)
_WHOLE = re.compile(rf"^\s*{LENGTH}\s*[x×X*]\s*{LENGTH}\s*[x×X*]\s*{LENGTH}\s*$")
#: What may stand behind the size, in the order in which it is tried.
_HOLE = (
    clauses.through, clauses.mouth, clauses.depth, places_clause.on_circle, places_clause.places,
    thread_class, clauses.entered, clauses.finish, clauses.within, clauses.note,
)  # fmt: skip
_SLOT = (
    clauses.through, clauses.length, clauses.depth, clauses.shaft, run, places_clause.places, clauses.over_all,
    clauses.entered, clauses.finish, clauses.within, clauses.radius, clauses.note,
)  # fmt: skip
_POCKET = (
    clauses.through, clauses.radius, clauses.depth, places_clause.places, clauses.entered, clauses.finish,
    clauses.within, clauses.note,
)  # fmt: skip
_STEP = (clauses.depth, clauses.length, sides, clauses.entered, clauses.finish, clauses.note)
_CHAMFER = (whole_edges, clauses.note)


@remembered(512)
def read_feature(text: str, units: str, datums: tuple[tuple[str, str], ...] = ()) -> Feature:
    """What one line means.

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
        With a sentence that says what to write, and the part of the line that it is about;
        where two readings fit, with both.
    """
    return feature_of(Scanned(text, units, datums))


def feature_of(line: Scanned) -> Feature:
    """The same of a line that somebody else looks at afterwards."""
    if line.done():
        raise QuantityError(f"Nothing is written here; write, for example, {EXAMPLES}.")
    if _WHOLE.match(line.text):
        raise line.error("Three sizes are those of the whole part: write them in the line of the sizes.", 0)
    said: Said = {"what": ""}
    counted = line.take(_COUNT)
    if counted:
        said["count"] = int(counted["count"])
        said["count_by"] = counted["by"] is not None
    _head(line, said)
    while not line.done():
        if not any(clause(line, said) for clause in said["clauses"]):
            raise _left_over(line, said)
    return settle(line, said)


def _left_over(line: Scanned, said: Said) -> QuantityError:
    """What nobody could read."""
    if said.get("places") is not None and re.match(r"[+\-−]?\d[^;]*,\s", line.text[line.at :] + ", "):
        return line.error("Places are separated by semicolons, such as at 20, 15; 60, 15.")
    what = said["what"]
    return line.error(
        f"“{line.rest()}” is nothing that is known of a {what}; {_MAY_FOLLOW.get(what, _MAY_FOLLOW['hole'])}."
    )


_MAY_FOLLOW = {
    "hole": "write through or x deep, cbore, csk, at x, y, on PCD, from a face, Ra or within",
    "slot": "write how deep, from left edge, long, at, from a face, Ra or within",
    "step": "write how wide x how deep and on which side, such as step 20 x 12 right end",
    "chamfer": "write its size and which edges, such as cham 0.5 x 45 all edges",
    "pocket": "write its two sides, how deep, its corners such as R5, and at x, y",
}
_MAY_FOLLOW |= {"tapped hole": "write through or blind 16, at x, y, on PCD, from a face or within"}
_MAY_FOLLOW |= dict.fromkeys(("keyway", "T-slot", "dovetail"), _MAY_FOLLOW["slot"])
_MAY_FOLLOW |= {"window": _MAY_FOLLOW["pocket"]}


def _head(line: Scanned, said: Said) -> None:
    """What it is, and its size."""
    if take_thread(line, said):
        said["clauses"] = _HOLE
        return
    start = line.at
    word = line.take(_WORDS)
    if word is None:
        if line.take(SIZE) is None and not re.match(r"#\s*\d", line.text[line.at :]):
            raise line.error(f"“{line.rest()}” is no feature; write, for example, {EXAMPLES}.")
        line.at = start
        _hole(line, said)
        return
    name = " ".join(word["word"].casefold().split())
    if "count" in said and word:
        said["count_by"] = False
    for begins, make in _MAKERS:
        if re.match(begins, name):
            make(line, said)
            return
    raise line.error(f"“{word['word']}” is no feature; write, for example, {EXAMPLES}.", start)


def _hole(line: Scanned, said: Said) -> None:
    """A plain hole; where a thread follows, a tapped one."""
    if take_thread(line, said):
        said["clauses"] = _HOLE
        return
    said["what"], said["clauses"] = "hole", _HOLE
    named = re.match(r"[\s,]*#\s*\d{1,2}(?!\d|\s*-)", line.text[line.at :])
    if named is None:
        said["size"] = _size(line, "hole", "how large the hole is, such as 6.8 through")
        return
    from jobsheet.catalog.tools.drills import read_drill_size

    start, end = line.at, line.at + named.end()
    text = line.text[start:end].strip(" ,")
    try:
        value = read_drill_size(text, line.units)
    except QuantityError as error:
        raise line.error(str(error), start, end) from None
    line.at = end
    said["size"] = Size(value, value, value, text)


def _size(line: Scanned, what: str, how: str) -> Size:
    size = line.take_size(what)
    if size is None:
        raise line.error(f"Say {how}.")
    return size


def _tapped(line: Scanned, said: Said) -> None:
    if not take_thread(line, said):
        raise line.error("Say which thread, such as M8 blind 16 or 1/4-20 UNC through.")
    said["clauses"] = _HOLE


def _slot(line: Scanned, said: Said, what: str = "slot") -> None:
    said["what"], said["clauses"] = what, _SLOT
    said["size"] = _size(line, what, f"how wide the {what} is, such as {what} 12 H9 x 6 deep")
    line.take(_WIDE)


def _keyway(line: Scanned, said: Said) -> None:
    _slot(line, said, "keyway")


def _t_slot(line: Scanned, said: Said) -> None:
    _slot(line, said, "T-slot")
    if line.take(_FOR) and not take_thread(line, said, alone=True):
        raise line.error("Say for which bolt, such as T-slot 12 for M10.")
    if line.take(_RECESS):
        said["other"] = _size(line, "slot", "how wide the recess is, such as recess 20 x 9")
        if line.take(_BY):
            said["recess_depth"] = _size(line, "depth", "how high the recess is, such as recess 20 x 9")


def _dovetail(line: Scanned, said: Said) -> None:
    """`dovetail 20 x 8 x 60`, or with the angle first and a degree sign."""
    said["what"], said["clauses"] = "dovetail", _SLOT
    first = line.take(_DEGREES_ALONE)
    said["size"] = _size(line, "slot", "how wide the dovetail is at its bottom, such as dovetail 20 x 8 x 60")
    line.take(_WIDE)
    if line.take(_BY):
        said["depth"] = _size(line, "depth", "how deep the dovetail is, such as dovetail 20 x 8 x 60")
        line.take(pattern(r"deep\b"))
    if first is None and line.take(_BY):
        first = line.take(_DEGREES)
    if first is None:
        raise line.error("Say the angle of the dovetail, such as dovetail 20 x 8 x 60.")
    said["angle"] = math.radians(float(first["angle"].replace(",", ".")))


def _pocket(line: Scanned, said: Said, what: str = "pocket") -> None:
    said["what"], said["clauses"] = what, _POCKET
    example = f"{what} 50 x 30 R5" if what == "window" else "pocket 50 x 30 x 6 deep R5"
    said["size"] = _size(line, what, f"how long the {what} is along x, such as {example}")
    if not line.take(_BY):
        raise line.error(f"Say its other side too, such as {example}.")
    said["other"] = _size(line, what, f"its other side, such as {example}")


def _window(line: Scanned, said: Said) -> None:
    _pocket(line, said, "window")


def _step(line: Scanned, said: Said) -> None:
    said["what"], said["clauses"] = "step", _STEP
    said["size"] = _size(line, "step", "how wide the step is, such as step 20 x 12 right end")
    line.take(_WIDE)
    if line.take(_BY):
        said["depth"] = _size(line, "depth", "how deep the step is, such as step 20 x 12 right end")
        line.take(pattern(r"deep\b"))


def _chamfer(line: Scanned, said: Said) -> None:
    """`cham 0.5 x 45`; without an angle it is 45°, as everywhere."""
    said["what"], said["clauses"] = "chamfer", _CHAMFER
    said["size"] = _size(line, "chamfer", "how large the chamfer is, such as cham 0.5 x 45 all edges")
    said["angle"] = math.pi / 4
    if line.take(_BY):
        start = line.at
        angle = line.take(_DEGREES)
        if angle is None or not 1 < float(angle["angle"].replace(",", ".")) < 89:
            raise line.error("Say the angle of the chamfer in degrees, such as cham 0.5 x 45.", start)
        said["angle"] = math.radians(float(angle["angle"].replace(",", ".")))


def _edges(line: Scanned, said: Said) -> None:
    """`edges broken 0.3`."""
    _chamfer(line, said)
    said["edges"] = ("all",)


_MAKERS = (
    ("t[ -]?slot", _t_slot), ("dovetail", _dovetail), ("key", _keyway), ("slot|groove", _slot),
    ("pocket|recess", _pocket), ("window", _window), ("step|rebate|shoulder", _step), ("cham", _chamfer),
    (".*edges", _edges), ("hole|drill|ream|bore", _hole), ("tap|thread", _tapped),
)  # fmt: skip
