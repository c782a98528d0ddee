"""Finding jobs on a shelf: words in any field, sizes as sizes, a kind before a
size; all of them have to be there.
"""

from __future__ import annotations

import re
import sqlite3
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.errors import CannotWrite
from jobsheet.shelf.days_asked import When, asked_when
from jobsheet.shelf.how_it_went import NOT_YET, asked_how
from jobsheet.shelf.shelf_index import ORDERS, Index
from jobsheet.shelf.size_words import MM_IN, NEAR, Size, sizes
from jobsheet.storage.check_code import typed_code
from jobsheet.units.show import trimmed

#: More are counted, not listed.
MOST = 60
_ORDER = re.compile(rf"\b(?:{'|'.join(ORDERS)})\b", re.IGNORECASE)
_WORD = re.compile(r"[^\s\"“”;,]+")


class Asked(Struct, frozen=True, kw_only=True):
    """A question as it was understood."""

    words: tuple[str, ...] = ()
    sizes: tuple[Size, ...] = ()
    #: How it went, in the words of `how_it_went.py`.
    how: tuple[str, ...] = ()
    when: tuple[When, ...] = ()
    #: The order that was asked for, of `shelf_index.ORDERS`; without one what is called so stands first.
    order: str = ""
    #: What the places of the sizes count in.
    text: str = ""

    @property
    def said(self) -> str:
        """The same in words, for the line under the question."""
        parts = [f"{size.before} {_shown(size)}".strip() for size in self.sizes]
        parts += [
            *self.words,
            *(f"day: {one.said}" for one in self.when),
            *(f"how it went: {word}" for word in self.how),
        ]
        return " · ".join([*parts, *([self.order] if self.order else [])])


class Hit(Struct, frozen=True, kw_only=True):
    """A job that was found, and the line in which it was: empty where its title alone says it."""

    path: str
    number: str
    name: str
    revision: str
    machine: str
    material: str
    plan: int
    steps: int
    made: str
    times: int
    went: str
    how: str
    planned_on: str
    content: str
    where: str = ""
    #: From where to where in it what was asked for stands.
    mark: tuple[int, int] = (0, 0)
    #: Names of other files beside it that are of the very same plan.
    twins: tuple[str, ...] = ()


class Found(Struct, frozen=True, kw_only=True):
    """What was found, the best first; `count` of all, also those that are not listed."""

    asked: Asked
    hits: tuple[Hit, ...]
    count: int


def asked_by(text: str) -> Asked:
    """The question in its parts. Nothing that is typed is an error."""
    code = typed_code(text) if text.strip().casefold() not in ORDERS else None
    if code is not None:  # the paper in hand, however its signs were read
        return Asked(words=(code,), sizes=())
    orders = [match[0].casefold() for match in _ORDER.finditer(text)]
    how, text = asked_how(_ORDER.sub(" ", text))
    when, text = asked_when(text)
    found, words, last = [], [], 0
    for size in sizes(text):
        before = text[last : size.start]
        kept = _WORD.findall(before)
        belongs = (
            bool(kept) and kept[-1].casefold() == size.before and not any(sign.isdigit() for sign in kept[-1])
        )
        if belongs:
            kept.pop()  # the word before a size belongs to it
        words += kept
        found.append(size if belongs else Size(size.micrometres, "", size.exact, size.start, size.end))
        last = size.end
    words += _WORD.findall(text[last:])
    return Asked(
        words=tuple(words),
        sizes=tuple(found),
        how=how,
        when=when,
        order=orders[-1] if orders else "",
        text=text,
    )


def find(index: Index, text: str, most: int = MOST) -> Found:
    """The jobs in which all words and sizes of the question are; all of them, the last
    made first, where nothing is asked.

    Raises CannotWrite where the index cannot be asked.
    """
    asked = asked_by(text)
    words = _matching(asked.words)
    if asked.words and not words:
        return Found(asked=asked, hits=(), count=0)
    try:
        wanted, named = _asked_ids(index, asked, words)
        rows = index.in_order(asked.order)
        kept = rows if wanted is None else [at for at in rows if at in wanted]
        if named and not asked.order:
            kept = [at for at in kept if at in named] + [at for at in kept if at not in named]
        hits = [_hit(index, asked, int(at)) for at in kept[:most]]
    except sqlite3.Error as error:
        raise CannotWrite(
            f"The index of {index.shelf.name} cannot be read: {error}. Open the shelf again; it is made anew."
        ) from None
    return Found(asked=asked, hits=_by_part(hits), count=len(kept))


def _by_part(hits: list[Hit]) -> tuple[Hit, ...]:
    """What is looked for is a part: its plans stand together, where the first of them stands."""
    first: dict[str, int] = {}
    for at, hit in enumerate(hits):
        first.setdefault(hit.number.casefold() or hit.path, at)
    return tuple(sorted(hits, key=lambda hit: first[hit.number.casefold() or hit.path]))


def _asked_ids(index: Index, asked: Asked, words: str) -> tuple[set[str] | None, set[str]]:
    """The jobs with all of it, None where nothing is asked; and those whose number or name has the words."""
    wanted: set[str] | None = None
    named: set[str] = set()
    match = "select rowid as job from words where words match ?"
    if words:
        wanted = set(index.ids(match, (words,)))
        # One letter begins half of all names: which come first says nothing yet,
        # and costs as much as the finding.
        if any(len(word) > 1 for word in asked.words):
            named = set(index.ids(match, (f"{{number name}} : ({words})",)))
    for size in asked.sizes:
        near = _sized(size)
        here = set(index.ids(_SIZED, (*near[:2], *near[4:])))
        if not size.exact:
            here.update(index.ids(_SIZED, near[2:]))
        if (
            not here and not size.exact
        ):  # `lot 12` and `6082` are sizes of nothing: they may stand there in words
            phrase = f'"{size.before} {asked.text[size.start : size.end]}" *'
            here = set(index.ids(match, (phrase,)))
        wanted = here if wanted is None else wanted & here
    for word in asked.how:
        here = set(index.ids(_NOT_YET) if word == NOT_YET else index.ids(_HOW, (word, word)))
        wanted = here if wanted is None else wanted & here
    for day in asked.when:  # or it stands in words, such as the day of a revision
        here = set(index.ids(_WHEN, (day.pattern, day.pattern)))
        here.update(index.ids(match, (f'"{day.said}"',)))
        wanted = here if wanted is None else wanted & here
    return wanted, named


_WHEN = "select id as job from jobs where made like ? or planned_on like ?"
#: Made, and it went so; or never made, and that is what its plan is said to be.
_HOW = (
    "select id as job from jobs where how = ?"
    " union select jobs.id from worked join jobs on jobs.content = worked.content where worked.verdict = ? and jobs.how = ''"
)
_NOT_YET = "select id as job from jobs where how = '' and content not in (select content from worked)"


#: A size within five micrometres, behind a word or in a step of a kind that begins so.
_SIZED = "select distinct job from sizes where micrometres between ? and ? and (? = '' or before like ? or kind like ?)"
_LINE_OF = (
    "select line from sizes where (micrometres between ? and ? or micrometres between ? and ?)"
    " and (? = '' or before like ? or kind like ?) and job = ? limit 1"
)


def _hit(index: Index, asked: Asked, at: int) -> Hit:
    names = (
        "path",
        "number",
        "name",
        "revision",
        "machine",
        "material",
        "plan",
        "steps",
        "made",
        "times",
        "went",
        "how",
        "planned_on",
        "content",
    )
    row = index.database.execute(
        f"select {', '.join(names)} from jobs where id = ?",  # noqa: S608 - the names of above
        (at,),
    ).fetchone()
    hit = Hit(**dict(zip(names, row, strict=True)), twins=tuple(Path(twin).name for twin in index.twins(at)))
    for size in asked.sizes:
        line = index.database.execute(_LINE_OF, (*_sized(size), at)).fetchone()
        if line is not None:
            return _with(hit, line[0], _span_of(line[0], size))
    title = f"{hit.number} {hit.name}".casefold()
    missing = [word for word in asked.words if word.casefold() not in title]
    if not missing:
        return hit
    text = index.database.execute("select text from words where rowid = ?", (at,)).fetchone()[0]
    wanted = missing[0].casefold()
    where = next((line for line in text.split("\n") if wanted in line.casefold()), "")
    start = max(0, where.casefold().find(wanted))
    return _with(hit, where, (start, start + len(wanted)))


def _with(hit: Hit, where: str, mark: tuple[int, int]) -> Hit:
    return replace(hit, where=where, mark=mark)


def _span_of(line: str, asked: Size) -> tuple[int, int]:
    """Where a size stands in the line in which it was found."""
    near = {asked.micrometres, asked.micrometres if asked.exact else round(asked.micrometres * MM_IN)}
    for units in ("mm", "in"):
        for size in sizes(line, units):
            if any(abs(size.micrometres - other) <= NEAR for other in near):
                return size.start, size.end
    return 0, 0


def _matching(words: tuple[str, ...]) -> str:
    """Each word quoted, its beginning is enough; all of them have to be there
    (lessons-and-shelf section 6).
    """
    kept = [word for word in words if any(sign.isalnum() for sign in word)]
    return " AND ".join('"' + word.replace('"', '""') + '" *' for word in kept)


def _sized(size: Size) -> tuple[str | int, ...]:
    """A size within five micrometres, as millimetres or, where no unit was said, as inches too."""
    other = size.micrometres if size.exact else round(size.micrometres * MM_IN)
    start = f"{size.before.replace('%', '').replace('_', '')}%"
    return (
        size.micrometres - NEAR,
        size.micrometres + NEAR,
        other - NEAR,
        other + NEAR,
        size.before,
        start,
        start,
    )


def _shown(size: Size) -> str:
    return f"{trimmed(size.micrometres / 1000, 3)} mm" if size.exact else trimmed(size.micrometres / 1000, 3)
