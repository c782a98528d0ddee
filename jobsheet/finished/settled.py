"""What a whole line says, once it is read: what is missing is asked, and what has
two readings is answered with both.
"""

from __future__ import annotations

from collections.abc import Container
from typing import Any

from jobsheet.finished.clauses import Said
from jobsheet.finished.scanned import Scanned
from jobsheet.model.finished import Feature
from jobsheet.model.quantity import Pattern, Place, Places

#: The axes of a face in the order of its two numbers: 0 is left to right, 1 front to rear, 2 bottom to top.
AXES = {"top": (0, 1), "bottom": (0, 1), "front": (0, 2), "rear": (0, 2), "left": (1, 2), "right": (1, 2)}
#: The two faces of an axis; where nothing else is said numbers count from the first.
ENDS = (("left", "right"), ("front", "rear"), ("bottom", "top"))
AXIS = {face: axis for axis, pair in enumerate(ENDS) for face in pair}
_FIELDS = frozenset(Feature.__struct_fields__)
_NEEDS_DEPTH = ("hole", "tapped hole", "slot", "keyway", "pocket", "step")


def settle(line: Scanned, said: Said) -> Feature:
    """The feature of a line."""
    _pitch(line, said)
    _depth(line, said)
    _face(line, said)
    _count(line, said)
    _kind(line, said)
    _counted(line, said)
    values: dict[str, Any] = {
        name: value for name, value in said.items() if name in _FIELDS and value is not None
    }
    return Feature(text=line.text, **values)


def _pitch(line: Scanned, said: Said) -> None:
    """`M10x1`: with a depth beside it the 1 is the pitch, without one nobody knows."""
    if "pitch_or_depth" not in said or said.get("depth") or said.get("through"):
        return
    bare, pitched, number, start, end = said["pitch_or_depth"]
    raise line.error(
        f"“{line.text[start:end].strip()}” can be read in two ways: with a pitch of {number}, write {pitched} through or {pitched} blind"
        f" and how deep; {number} deep, write {bare} blind {number}.",
        start,
        end,
    )


def _depth(line: Scanned, said: Said) -> None:
    """Whether it is said how deep. A hole with a mouth goes through where
    nothing else is said, as does a window.
    """
    if said.get("depth") or said.get("through") or said["what"] not in (*_NEEDS_DEPTH, "window"):
        return
    if said["what"] == "window" or (said["what"] == "hole" and said.get("mouth")):
        said["through"] = True
        return
    _two_readings_of_x(line, said)
    if said["what"] == "step":
        raise line.error("Say how deep the step is too, such as step 20 x 12 right end.", 0)
    how = "blind 16" if said["what"] == "tapped hole" else "16 deep"
    raise line.error(
        f"Say how deep the {said['what']} is, such as {how}, or through.", len(line.text.rstrip()) - 1
    )


def _two_readings_of_x(line: Scanned, said: Said) -> None:
    """`6 x 25`: six holes of 25, or one of 6 that is 25 deep."""
    places = said.get("places")
    if (
        said["what"] != "hole"
        or not said.get("count_by")
        or (places is not None and len(places) == said["count"] > 1)
    ):
        return
    count, size = said["count"], said["size"].text
    raise line.error(
        f"“{count} x {size}” can be read in two ways: {count} holes of {size}, write {count} x {size} through or how deep;"
        f" one of {count}, {size} deep, write hole {count} x {size}.",
        0,
    )


def _face(line: Scanned, said: Said) -> None:
    """The face it is cut into; a face right behind the places may be one that they count from."""
    at = said.get("face_at")
    if at is None:
        return
    start, end, lead, part = at
    face = said["face"]
    if part == "face" or lead != "from" or face == "top":
        return
    if said["what"] in ("slot", "keyway", "T-slot", "dovetail") and not said.get("opens"):
        raise line.error(
            f"“from {face}” can be read in two ways: it runs in from that edge, write from {face} edge;"
            f" it is cut into that face, write from {face} face.",
            start,
            end,
        )
    last = said.get("places_end")
    behind = last is not None and last <= start and not line.text[last:start].strip()
    if behind and not said.get("counted"):
        raise line.error(
            f"“from {face}” behind the places can be read in two ways: cut into that face, write from {face} face;"
            f" counted from it, write it beside both numbers, such as at 40 from left, 22 from {face}.",
            start,
            end,
        )


def _count(line: Scanned, said: Said) -> None:
    """How many: as many as there are places, where both are said."""
    places, circle, count = said.get("places"), said.get("circle"), said.get("count")
    if count == 0:
        raise line.error("None of them needs no line; write how many.", 0)
    if circle is not None and (count is None or count < 2):
        raise line.error("Say how many lie on the circle, such as 6 x M6 through on PCD 60.", 0)
    if circle is not None and places is not None:
        raise line.error("The places are said twice; take one out.", 0)
    if places is None or said.get("two_ends"):
        return
    if count is not None and count != len(places):
        written = "1 place is" if len(places) == 1 else f"{len(places)} places are"
        raise line.error(f"{count} are said, but {written} written; make them the same.", 0)
    said["count"] = len(places)


def _kind(line: Scanned, said: Said) -> None:
    """What each kind must say beside its size."""
    what = said["what"]
    if what in ("pocket", "window") and said.get("radius") is None:
        raise line.error(
            "Say the radius of its corners, such as R5: no turning cutter leaves a sharp one.",
            len(line.text.rstrip()) - 1,
        )
    if (
        what in ("pocket", "window")
        and 2 * said["radius"].nominal > min(said["size"].nominal, said["other"].nominal) + 1e-9
    ):
        raise line.error("Its corners are rounder than its sides are long; look at R again.", 0)
    if what == "step" and not said.get("opens"):
        raise line.error(
            "Say on which side the step lies, such as step 20 x 12 right end.", len(line.text.rstrip()) - 1
        )
    face = said.get("face", "top")
    for one in said.get("opens", ()):
        if AXIS[one] == AXIS[face]:
            raise line.error(f"What is cut into the {face} face has no edge at the {one}.", 0)
    if len(said.get("opens", ())) > 2 or (
        len(said.get("opens", ())) == 2
        and what == "slot"
        and AXIS[said["opens"][0]] != AXIS[said["opens"][1]]
    ):
        raise line.error("A slot runs from one edge to the opposite one.", 0)
    mouth, size = said.get("mouth"), said.get("size")
    if mouth is not None and size is not None and mouth.size.nominal <= size.nominal:
        raise line.error(f"The {mouth.what} must be wider than its hole.", 0)


def _counted(line: Scanned, said: Said) -> None:
    """The faces that the two numbers of a place count from, in the order of the face's axes."""
    axes = AXES[said.get("face", "top")]
    given = said.get("counted")
    if given is not None and {AXIS[face] for face in given} != set(axes):
        raise line.error(
            f"On the {said.get('face', 'top')} face places count from {_choices(axes)}; say the face it is cut into,"
            " such as from front, or count from others.",
            0,
        )
    if given is not None and AXIS[given[0]] != axes[0]:
        said["counted"] = given = (given[1], given[0])
        if said.get("places") is not None:
            said["places"] = _turned(line, said["places"])
    if said.get("across") is not None:
        said["counted"] = _across(line, said, axes)
    elif said.get("places") is not None or (said.get("circle") and said["circle"].middle):
        said["counted"] = given or tuple(_end(line, axis) for axis in axes)


def _choices(axes: tuple[int, int]) -> str:
    return " and ".join(" or ".join(ENDS[axis]) for axis in axes)


def _turned(line: Scanned, places: Places) -> Places:
    """Places whose first number is that of the second axis."""
    items: list[Place | Pattern] = []
    for item in places.items:
        if isinstance(item, Pattern):
            raise line.error(
                "A pattern in words counts along the first face first: turn the two faces round.", 0
            )
        items.append(Place(item.y, item.x))
    return Places(tuple(items))


def _across(line: Scanned, said: Said, axes: tuple[int, int]) -> tuple[str, ...]:
    """The two faces that a middle line is counted from: across the way it runs."""
    runs = AXIS[said["opens"][0]] if said.get("opens") else None
    if runs is None:
        raise line.error(
            "One number says how far in a slot runs that begins at an edge: write from left edge too, or both ends,"
            " such as from 25, 30 to 75, 30.",
            0,
        )
    across = next(axis for axis in axes if axis != runs)
    named = said.get("across_from")
    if named is not None and AXIS[named] != across:
        raise line.error(
            f"It runs along that face; its middle line counts from {' or '.join(ENDS[across])}.", 0
        )
    face = named or _end(line, across)
    return tuple(face if axis == across else _end(line, axis) for axis in axes)


def _end(line: Scanned, axis: int) -> str:
    """Where numbers on an axis count from if nobody says it: the datum there, else left, front or bottom."""
    with_letters = set(line.datums.values())
    if with_letters >= set(ENDS[axis]):
        one, two = ENDS[axis]
        raise line.error(
            f"Both the {one} and the {two} face are datums: say which one the places count from, such as at 40 from {one}, 22 from ….",
            0,
        )
    return datum_end(with_letters, axis) or ENDS[axis][0]


def datum_end(with_letters: Container[str], axis: int) -> str:
    """The face of an axis that is a datum, of faces with a letter; nothing where none is, or both are."""
    found = [face for face in ENDS[axis] if face in with_letters]
    return found[0] if len(found) == 1 else ""
