"""One line, read from left to right: numbers with units and limits, depths,
faces; what is wrong is pointed at.

Bare numbers take the unit of the job; where one was read is kept, so that a unit can be written behind it.
"""

from __future__ import annotations

import re

from jobsheet.catalog.trade.tolerances import read_size
from jobsheet.errors import QuantityError
from jobsheet.model.quantity import Quantity, Size
from jobsheet.model.stock import FACES
from jobsheet.units.grammar import nearest, read
from jobsheet.units.lazily import pattern

#: Text longer than this is no line of a drawing.
LONGEST = 300
#: What people call a face beside its own name.
ALSO = {"base": "bottom", "back": "rear", "under": "bottom", "underside": "bottom"}
_FACE_WORDS = "|".join((*FACES, *ALSO))
NUMBER = r"(?:\d+(?:[.,]\d+)?[\s\-]\d+/\d+|\d+/\d+|\d+(?:[.,]\d+)?|[.,]\d+)"
#: `in` is no inch where a face follows: `25 in front`.
UNIT = rf"(?:\s?(?:mm|cm|inch(?:es)?|in(?!\s+(?:the\s+)?(?:{_FACE_WORDS}|[A-Z])\b)|thou|µm|um)(?![A-Za-z])|\s?[\"″])?"
LENGTH = NUMBER + UNIT
#: Fits of holes and shafts; R, M and X are other things on a line.
_FIT = r"\s?(?:JS|js|[A-HJKNPS]|[a-hjkps])\d{1,2}(?!\d|\w)"
_PLUS_MINUS = rf"\s*(?:±|\+/-|\+-)\s*{LENGTH}"
_DECIMAL = r"(?:\d+(?:[.,]\d+)?|[.,]\d+)"
_TWO = rf"\s+[+\-−]?\s?{_DECIMAL}\s*/\s*[+\-−]?\s?{_DECIMAL}{UNIT}(?![\d/])"
_ONE = rf"\s+[+\-−]\s?{_DECIMAL}{UNIT}(?![\d/])"
SIZE = pattern(rf"(?:Ø|⌀|dia\.?\s+)?\s*(?P<number>{LENGTH})(?P<limits>{_PLUS_MINUS}|{_TWO}|{_ONE}|{_FIT})?")
_LENGTH_ALONE = pattern(LENGTH)
_GAP = pattern(r"[\s,;]*(?:(?:and|with)\b[\s,;]*)?")
_FACE = pattern(
    rf"(?:the\s+)?(?:datum\s+)?(?P<face>{_FACE_WORDS}|[A-Za-z])\b(?:\s+(?P<part>face|edge|end|side)s?\b)?",
    re.IGNORECASE,
)
_SHAFT_FIT = pattern(r"(?P<letter>[a-z]{1,2})(?P<grade>\d{1,2})$")
_BARE_END = pattern(r"[\d½¼¾⅛⅜⅝⅞]$")


class Scanned:
    """A line and how far it is read. `bare` are the places behind which a number stands without its unit."""

    def __init__(self, text: str, units: str, datums: tuple[tuple[str, str], ...]) -> None:
        self.text = text
        self.units = units
        self.datums = {letter.casefold(): face for letter, face in datums}
        self.at = 0
        self.bare: list[int] = []
        if len(text) > LONGEST:
            raise QuantityError(f"This is too long for one line: write at most {LONGEST} characters.")

    # --- reading on ---

    def gap(self) -> None:
        """Pass over blanks, commas and words that only join."""
        match = _GAP.match(self.text, self.at)
        self.at = match.end() if match else self.at

    def done(self) -> bool:
        """Whether all is read."""
        self.gap()
        return self.at >= len(self.text)

    def take(self, form: re.Pattern[str]) -> re.Match[str] | None:
        """What stands next, if it has this form."""
        start = self.at
        self.gap()
        match = form.match(self.text, self.at)
        if match is None or match.end() == match.start():
            self.at = start
            return None
        self.at = match.end()
        return match

    def error(self, sentence: str, start: int | None = None, end: int | None = None) -> QuantityError:
        """What is wrong, pointed at: from where the line stands to the next
        comma, if nothing else is said.
        """
        start = self.at if start is None else start
        if end is None:
            end = len(self.text)
        return QuantityError(sentence, start, max(end, min(start + 1, len(self.text))))

    def rest(self) -> str:
        """The next words, for a sentence."""
        return " ".join(self.text[self.at :].split()[:3])

    # --- sizes ---

    def length(self, match: re.Match[str], group: str | int = 0) -> Quantity:
        """A length that was taken."""
        return Quantity(self._read(match[group], match.start(group)), match[group].strip())

    def take_length(self) -> Quantity | None:
        """The length that stands next."""
        match = self.take(_LENGTH_ALONE)
        return self.length(match) if match else None

    def take_size(self, what: str = "hole") -> Size | None:
        """The size that stands next, with its limits; `what` it is of: a hole has no fit of a shaft."""
        match = self.take(SIZE)
        return self.size(match, what) if match else None

    def size(self, matched: re.Match[str], what: str = "hole") -> Size:
        """A size that was taken, with its limits."""
        number, limits = matched["number"], (matched["limits"] or "").strip()
        start = matched.start("number")
        written = f"{number} {limits}".strip()
        shaft = _SHAFT_FIT.match(limits)
        if shaft and what not in ("length", "shaft"):
            meant = f"{number.strip()} {shaft['letter'].upper()}{shaft['grade']}"
            raise self.error(
                f"“{written}” is the fit of a shaft; for a {what} write {meant}.", start, matched.end()
            )
        try:
            size = read_size(_both_ends(written), self.units)
        except QuantityError as error:
            raise self.error(str(error), start, matched.end()) from None
        if size.low > size.nominal + abs(size.nominal) or size.low <= 0:
            raise self.error(f"“{written}” has limits that are larger than itself.", start, matched.end())
        self._note_bare(matched.end("number"), number)
        return Size(size.nominal, size.low, size.high, written)

    def _read(self, text: str, start: int) -> float:
        try:
            value = read(text, "length", self.units)
        except QuantityError as error:
            raise self.error(str(error), start, start + len(text)) from None
        self._note_bare(start + len(text.rstrip()), text)
        return value

    def _note_bare(self, end: int, text: str) -> None:
        if _BARE_END.search(text.strip()):
            self.bare.append(end)

    # --- faces ---

    def take_face(self) -> tuple[str, str] | None:
        """The face that stands next and whether `edge`, `end`, `side` or `face` stands behind
        it; by its name or its datum letter.
        """
        self.gap()
        start = self.at
        match = self.take(_FACE)
        if match is None:
            return None
        return self.face(match["face"], start), (match["part"] or "").casefold()

    def face(self, word: str, start: int) -> str:
        """The face that a word or a datum letter names."""
        plain = ALSO.get(word.casefold(), word.casefold())
        if plain in FACES:
            return plain
        if plain in self.datums:
            return self.datums[plain]
        letters = ", ".join(letter.upper() for letter in self.datums)
        known = f"the datums are {letters}" if letters else "no datum has a letter yet"
        near = nearest(plain, FACES) if len(plain) > 1 else None
        hint = f"did you mean {near}?" if near else f"{known}; the faces are {', '.join(FACES)}."
        raise self.error(f"“{word}” is no face: {hint}", start, start + len(word))


def _both_ends(written: str) -> str:
    """`4 +0.2` as `4 +0.2/0`: one limit alone has the nominal as the other."""
    return f"{written}/0" if re.search(r"\s[+\-−]\s?[\d.,]+$", written) else _unit_last(written)


def _unit_last(written: str) -> str:
    """`4 +0.2 mm` as `4 +0.2/0 mm`."""
    match = re.match(r"^(.*\s[+\-−]\s?[\d.,]*\d)(\s?[A-Za-z\"″]+)$", written)
    return f"{match[1]}/0{match[2]}" if match and "/" not in written and "±" not in written else written
