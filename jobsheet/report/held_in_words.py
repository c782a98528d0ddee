"""A holding in words for the set-up sheet: how the work sits in it, what a step took off, what holds since."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.holdings.all_holdings import entries_of, words_of
from jobsheet.model.held_work import Holding
from jobsheet.model.job import Operation, SetUp
from jobsheet.operations.registry import roles

#: The bodies that go with what a step takes off.
_GO_WITH = {
    "straps": ("strap", "stud", "packing"),
    "screws": ("screw",),
    "parallels": ("parallel",),
    "bar": ("bar",),
    "backing": ("backing",),
}


def _changed_until(set_up: SetUp, number: int) -> Iterator[Operation]:
    """Steps up to that one that change what holds the work."""
    for operation in set_up.operations:
        if operation.number <= number and "change holding" in roles(operation).does:
            yield operation


def gone_by(set_up: SetUp, number: int) -> frozenset[str]:
    """Parts of the holding that steps up to that one took off."""
    return frozenset(
        part
        for operation in _changed_until(set_up, number)
        for name in getattr(operation.fields, "removes", None) or ()
        for part in _GO_WITH.get(name, ())
    )


def changes(set_up: SetUp, number: int) -> str:
    """What changed up to that step, in a few words: `straps off since 40, screws hold`."""
    said = []
    for operation in _changed_until(set_up, number):
        off, on = (getattr(operation.fields, name, None) for name in ("removes", "stays"))
        words = [f"{', '.join(off)} off since {operation.number}"] if off else []
        words += [f"{', '.join(on)} hold"] if on else []
        said += words
    return ", ".join(said)


#: What words and picture have said already.
_SAID = ("kind", "note", "vice", "jaws", "base", "rests_on", "parallels", "parallel_width", "parallels_then", "bar", "spacer",
    "under", "stops", "device", "packing", "on", "tighten")  # fmt: skip


def tight_words(holding: Holding) -> str:
    """How tight it is drawn; nothing where nobody says."""
    torque = getattr(holding, "tighten", None)
    return f"tighten to {torque.text}" if torque is not None else ""


def sits_words(holding: Holding, units: str) -> str:
    """Every fact beside those in one line: `above the jaws 3 mm; over the left end 6 mm; stop at its right`."""
    phrases = []
    named = (
        words_of(holding).replace(",", " ").split()
    )  # how many clamps, with which bolts: some kinds are named by them
    for entry in entries_of(holding):
        value = getattr(holding, entry.name)
        if entry.name in _SAID or value is None or not (text := entry.text(value)):
            continue
        if entry.name in ("clamps", "bolt") and text in named:
            continue
        if entry.asks == "flag":
            phrases.append(entry.title.lower() if value else f"no {entry.title.lower()}")
        else:
            phrases.append(f"{entry.title.lower()} {sized(text, units) if entry.asks == 'length' else text}")
    return "; ".join(phrases)


def sized(text: str, units: str) -> str:
    """A size as typed, with the job's unit where none was written."""
    return f"{text} {units}" if text.strip()[-1:].isdigit() else text
