"""The datum letters of the drawing in one line: `A: bottom, B: front, C: left`. A letter then
stands for its face in every other line.
"""

from __future__ import annotations

import re
from string import ascii_uppercase

from jobsheet.errors import QuantityError
from jobsheet.finished.scanned import ALSO
from jobsheet.finished.settled import AXES, ENDS, datum_end
from jobsheet.model.stock import FACES
from jobsheet.units.grammar import nearest
from jobsheet.units.lazily import pattern

Datums = tuple[tuple[str, str], ...]

_ONE = pattern(
    r"\s*(?:datum\s+)?(?P<letter>[A-Za-z]\w*)\s*(?:[:=]|(?:is|on)\b)?\s*(?:the\s+)?(?P<face>[A-Za-z]+)?(?:\s+(?:face|end|side)\b)?"
    r"\s*(?:[,;]|and\b|$)?",
    re.IGNORECASE,
)


def read_datums(text: str) -> Datums:
    """Letter and face of each, in their order.

    Parameters
    ----------
    text : str
        As it is typed; nothing where no face has a letter

    Raises
    ------
    QuantityError
        With a sentence that says what to write, and the part of the text that it is about.
    """
    letters: dict[str, str] = {}
    at = 0
    while text[at:].strip(" ,;\t"):
        clause = _ONE.match(text, at)
        if clause is None or clause.end() == at:
            raise QuantityError(
                f"“{text[at:].strip()}” is no datum; write letter and face, such as A: bottom, B: front.",
                at,
                len(text),
            )
        letter, face = _letter(clause), _face(clause)
        if letter in letters:
            raise QuantityError(
                f"{letter} is the {letters[letter]} already; take one out.",
                clause.start("letter"),
                clause.end(),
            )
        if other := next((known for known, of in letters.items() if of == face), ""):
            raise QuantityError(
                f"The {face} is {other} already; a face has one letter.", clause.start("letter"), clause.end()
            )
        letters[letter] = face
        at = clause.end()
    return tuple(letters.items())


def _letter(match: re.Match[str]) -> str:
    word = match["letter"]
    if len(word) == 1:
        return word.upper()
    if _plain(word) in FACES:
        raise QuantityError(
            f"The letter comes first: write A: {_plain(word)}.", match.start("letter"), match.end()
        )
    raise QuantityError(
        f"“{word}” is no datum letter; write one letter, such as A: bottom.",
        match.start("letter"),
        match.end("letter"),
    )


def _face(match: re.Match[str]) -> str:
    word = match["face"]
    letter = match["letter"].upper()
    if not word:
        raise QuantityError(
            f"Say on which face {letter} lies, such as {letter}: bottom.", match.start("letter"), match.end()
        )
    face = _plain(word)
    if face in FACES:
        return face
    near = nearest(face, FACES)
    hint = f"did you mean {near}?" if near else f"the faces are {', '.join(FACES)}."
    raise QuantityError(f"“{word}” is no face: {hint}", match.start("face"), match.end("face"))


def _plain(word: str) -> str:
    return ALSO.get(word.casefold(), word.casefold())


def datums_text(datums: Datums) -> str:
    """The line of these datums, as `read_datums` reads it."""
    return ", ".join(f"{letter}: {face}" for letter, face in datums)


def datums_told(datums: Datums) -> str:
    """What was understood: `A bottom, B front, C left; places on the top count from C (left) and B
    (front) where their line says nothing`.
    """
    if not datums:
        return ""
    letters = {face: letter for letter, face in datums}
    said = ", ".join(f"{letter} {face}" for letter, face in datums)
    both = next((pair for pair in ENDS if all(face in letters for face in pair)), None)
    if both is not None:
        return (
            f"{said}; {both[0]} and {both[1]} both have a letter: a line says from which one its places count"
        )
    ends = [datum_end(letters, axis) or ENDS[axis][0] for axis in AXES["top"]]
    named = " and ".join(f"{letters[face]} ({face})" if face in letters else face for face in ends)
    return f"{said}; places on the top count from {named} where their line says nothing"


def next_datums(datums: Datums) -> tuple[tuple[str, str], ...]:
    """What may be said next: the next letter on each face that has none, and the whole line with it."""
    used, faces = {letter for letter, _ in datums}, {face for _, face in datums}
    letter = next((one for one in ascii_uppercase if one not in used), "")
    # The faces that a drawing begins with, in the order of its planes.
    order = [face for pair in reversed(ENDS) for face in pair if face not in faces]
    return tuple((f"{letter}: {face}", datums_text((*datums, (letter, face)))) for face in order)
