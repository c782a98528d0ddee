"""The line that says the surface of each face, `black, ends sawn`, and the one
that names faces, `top, bottom`.
"""

from __future__ import annotations

from jobsheet.errors import QuantityError
from jobsheet.model.stock import FACES, GROUPS, SURFACES, Faces, Surfaces
from jobsheet.units.grammar import nearest
from jobsheet.units.lazily import pattern

_PIECE = pattern(r"[^,;]+")
_WORD = pattern(r"[^\s,;]+")
#: Other words for the same; what they mean is shown under the field.
OTHER_WORDS = {
    "milled": "finished", "machined": "finished", "ground": "finished", "drawn": "bright", "blasted": "pickled",
    "hot-rolled": "black", "raw": "black", "scale": "black", "casting": "cast",
}  # fmt: skip
_PLACES = {"underside": "bottom", "end": "ends", "side": "sides", "edge": "edges"}
_BESIDE = ("and", "the", "both", "face", "faces", "all", "over", "round", "rest")


def read_surfaces(text: str) -> Surfaces:
    """Surfaces as they are typed: one word for all faces, then exceptions.

    Raises
    ------
    QuantityError
        With the piece that cannot be read and what to write.
    """
    surfaces: list[tuple[str, str]] = []
    waiting: list[str] = []
    start = 0
    for piece in _PIECE.finditer(text):
        start, end = piece.span()
        places, surface = _said(text, start, end)
        waiting += places
        if surface:
            surfaces += [(place, surface) for place in waiting] or [("", surface)]
            waiting = []
    if waiting:
        raise QuantityError(
            f"“{text[start:].strip()}” says no surface; write it behind, such as {waiting[-1]} sawn.",
            start,
            len(text),
        )
    if not surfaces:
        raise QuantityError("No surface is written here; write, for example, black, ends sawn.", 0, len(text))
    if len([where for where, _ in surfaces if not where]) > 1:
        raise QuantityError(
            "Two words are for all faces; write one for all, then the exceptions, such as black, ends sawn.",
            0,
            len(text),
        )
    # What is said of all comes first, wherever it stands.
    return Surfaces(tuple(sorted(surfaces, key=lambda surface: bool(surface[0]))), text)


def _said(text: str, start: int, end: int) -> tuple[list[str], str]:
    """The places and the surface of one piece of the line."""
    places: list[str] = []
    surface = ""
    for word in _WORD.finditer(text, start, end):
        plain = word[0].casefold()
        if plain in _BESIDE:
            continue
        named = OTHER_WORDS.get(plain, plain)
        place = _PLACES.get(plain, plain)
        if place in FACES or place in GROUPS:
            # `right end` is the right face.
            if not (place == "ends" and plain == "end" and places and places[-1] in FACES):
                places.append(place)
        elif named in SURFACES:
            if surface:
                raise QuantityError(
                    f"“{text[start:end].strip()}” says two surfaces; put a comma between them, each with its faces.",
                    start,
                    end,
                )
            surface = named
        else:
            _unknown(word[0], word.start(), word.end())
    return places, surface


def _unknown(word: str, start: int, end: int) -> None:
    near = nearest(word.casefold(), (*SURFACES, *FACES, *GROUPS))
    hint = (
        f"Did you mean {near}?"
        if near
        else f"Surfaces are {', '.join(SURFACES)}; faces are {', '.join(FACES)}, {', '.join(GROUPS)}."
    )
    raise QuantityError(f"“{word}” is neither a surface nor a face. {hint}", start, end)


def read_faces(text: str) -> Faces:
    """Faces as they are named: `top, bottom`, `the ends`, `all`.

    Raises
    ------
    QuantityError
        With the word that is none.
    """
    faces: list[str] = []
    for word in _WORD.finditer(text):
        plain = word[0].casefold()
        place = _PLACES.get(plain, plain)
        if plain == "all":
            faces += FACES
        elif place in FACES or place in GROUPS:
            if not (plain == "end" and faces and faces[-1] in FACES):
                faces.append(place)
        elif plain not in _BESIDE:
            near = nearest(plain, (*FACES, *GROUPS))
            hint = (
                f"Did you mean {near}?"
                if near
                else f"Write one or several of {', '.join((*FACES, *GROUPS))}."
            )
            raise QuantityError(f"“{word[0]}” is not a face. {hint}", word.start(), word.end())
    if not faces:
        raise QuantityError("No face is named here; write, for example, top, bottom.", 0, len(text))
    return Faces(tuple(dict.fromkeys(faces)), text)


def surfaces_in_words(surfaces: Surfaces) -> str:
    """What was understood, for the line under the field: `ends sawn, the rest black`."""
    ends = [f"{where} {what}" for where, what in surfaces.items if where]
    rest = [
        f"the rest {what}" if ends else f"{what} on all faces" for where, what in surfaces.items if not where
    ]
    return ", ".join((*ends, *rest))
