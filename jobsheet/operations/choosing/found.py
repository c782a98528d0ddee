"""Kinds of step by what is typed: a part of a name, a thread, a size, in any
order: `sl`, `m6`, `10 slot`, `csk 8`.
"""

from __future__ import annotations

from functools import cache
from typing import Any

from msgspec import Struct

from jobsheet.catalog.tools.threads import read_thread, tap_drill
from jobsheet.errors import QuantityError
from jobsheet.model.own_tools import Cabinet
from jobsheet.operations import registry
from jobsheet.operations.choosing.filled import Texts, with_size, with_thread
from jobsheet.operations.choosing.order_of_work import in_order, roles_of
from jobsheet.operations.kind import Kind
from jobsheet.units.grammar import read
from jobsheet.units.lazily import pattern

_WORDS = pattern(r"[\s,;]+")
#: A unit that stands apart from its number belongs to it.
_APART = pattern(r"(?<=\d)\s+(mm|in|thou|inch|unc|unf)\b")
#: The series behind the size of a unified thread.
_SERIES = pattern(r"(UN\w*)$")


class Asked(Struct, frozen=True):
    """What was typed, taken apart: words, a thread, a size as written."""

    words: tuple[str, ...] = ()
    thread: str = ""
    size: str = ""


class Found(Struct, frozen=True, kw_only=True):
    """One kind that is meant, the part of its title that was typed, and what goes into its form."""

    kind: str
    title: str
    hit: tuple[int, int] = (0, 0)
    texts: Texts = ()


def taken_apart(typed: str, units: str) -> Asked:
    """The words, the thread and the size in what was typed."""
    words: list[str] = []
    thread = size = ""
    for part in _WORDS.split(_APART.sub(r"\1", typed.strip().casefold())):
        if not part:
            continue
        if not thread and _is_thread(part):
            thread = part.replace("m", "M", 1) if part[0] == "m" else _SERIES.sub(r" \1", part.upper())
        elif not size and part[0] in "0123456789.⌀ø" and _is_size(part.lstrip("⌀ø"), units):
            size = part.lstrip("⌀ø")
        else:
            words.append(part)
    return Asked(tuple(words), thread, size)


def _is_thread(text: str) -> bool:
    if not any(sign.isdigit() for sign in text):
        return False
    try:
        read_thread(text)
    except QuantityError:
        return False
    return True


def _is_size(text: str, units: str) -> bool:
    try:
        return read(text, "length", units) > 0
    except QuantityError:
        return False


def kinds_found(typed: str, units: str, cabinet: Cabinet | None, height: str = "") -> tuple[Found, ...]:
    """Every kind that is meant, the best hit first; ties in the order of work. Nothing typed finds nothing.

    `height` is how high a thread the workshop wants, which chooses the drill below one.
    """
    asked = taken_apart(typed, units)
    if not (asked.words or asked.thread or asked.size):
        return ()
    ranked: list[tuple[int, Found]] = []
    for kind in in_order():
        rank, hit = _rank(kind, asked.words)
        texts = _texts(kind, asked, units, cabinet, height)
        if rank is None or ((asked.thread or asked.size) and not texts):
            continue
        if asked.thread and kind.entry("thread") is None:
            rank += 1  # the thread itself comes before the hole for it
        elif asked.size and not asked.words:
            rank += not _is_there(texts, cabinet)
        ranked.append((rank, Found(kind=kind.name, title=_title(kind, asked), hit=hit, texts=texts)))
    return tuple(other for _, other in sorted(ranked, key=lambda one: one[0]))


def _texts(kind: Kind[Any], asked: Asked, units: str, cabinet: Cabinet | None, height: str) -> Texts:
    if asked.thread:
        texts = with_thread(kind, asked.thread, units, cabinet)
        roles = roles_of(kind.name)
        if texts or roles.hole != "drill" or roles.opens:
            return texts
        size = tap_drill(read_thread(asked.thread), height)
        return with_size(kind, size.removesuffix(" mm"), units, cabinet) if size else ()
    return with_size(kind, asked.size, units, cabinet) if asked.size else ()


def _is_there(texts: Texts, cabinet: Cabinet | None) -> bool:
    """Whether the cutter is one of the cabinet: then it is more likely meant."""
    line = dict(texts).get("cutter", "")
    return cabinet is not None and any(thing.line == line for thing in cabinet.things)


def _title(kind: Kind[Any], asked: Asked) -> str:
    if asked.thread:
        by_thread = kind.entry("thread") is not None
        return f"{kind.title}, {asked.thread}" if by_thread else f"{kind.title} for {asked.thread}"
    return f"{kind.title}, {asked.size}" if asked.size else kind.title


@cache
def _others(name: str) -> tuple[str, ...]:
    """The words beside its title: its own others, and the cutter that it usually takes."""
    kind = registry.kind(name)
    cutters = tuple(word for entry in kind.entries if entry.asks == "cutter" for word in entry.choices[:1])
    return (*kind.also, *cutters)


def _rank(kind: Kind[Any], words: tuple[str, ...]) -> tuple[int | None, tuple[int, int]]:
    """How well the words fit, nought the best, None where one fits not at all;
    and where they stand in the title.
    """
    title = kind.title.casefold()
    worst, hit = 0, (0, 0)
    for word in words:
        at = title.find(word)
        if at >= 0 and (at == 0 or title[at - 1] == " "):
            rank = 0 if at == 0 else 1
        elif any(_begins(other, word) for other in _others(kind.name)):
            rank, at = 2, -1
        elif at >= 0 and len(word) > 1:
            rank = 3
        else:
            return None, (0, 0)
        worst = max(worst, rank)
        if at >= 0 and hit == (0, 0):
            hit = (at, at + len(word))
    return worst, hit


def _begins(other: str, word: str) -> bool:
    return other.startswith(word) or f" {word}" in other
