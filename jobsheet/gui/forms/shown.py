"""What fields show, and how they stand together: values between the desk and its forms, no widgets."""

from __future__ import annotations

from msgspec import Struct

from jobsheet.errors import QuantityError
from jobsheet.operations.entry import Entry


class Shown(Struct, frozen=True):
    """What one field shows: the text, what was understood, or the problem; where
    it is left empty what stands for it.
    """

    text: str
    understood: str = ""
    problem: QuantityError | None = None
    proposed: str = ""


def shown(entry: Entry, value: object, draft: str | None, units: str, proposed: str = "") -> Shown:
    """What stands in the field of an entry: its value as typed, or the draft that cannot be
    read; `proposed` where it is empty.
    """
    if draft is not None:
        try:
            entry.read(draft, units)
        except QuantityError as problem:
            return Shown(draft, "", problem.kept())
        return Shown(draft)
    return Shown(entry.text(value), entry.understood(value, units), proposed=proposed)


class Section(Struct, frozen=True):
    """A group of entries: the name by which edits call it, its caption, its entries."""

    name: str
    caption: str
    entries: tuple[Entry, ...]
