"""What a field with a list can be filled with: cutters and wrenches of the cabinet,
materials, machines, what holds the work.
"""

from __future__ import annotations

from msgspec import Struct
from PySide6.QtCore import QCoreApplication

from jobsheet.edit.commands import value_of
from jobsheet.edit.finished_lines import OWNER
from jobsheet.errors import JobsheetError
from jobsheet.gui.choosing.listed import Listed, hit_in, holds_all, words_of
from jobsheet.gui.desk.desk import Desk
from jobsheet.model.machine import Vice
from jobsheet.operations.entry import Entry
from jobsheet.reckoning.cabinet.cabinet_picks import Pick, picks
from jobsheet.storage.cabinet_file import cabinet_for
from jobsheet.storage.card_files import find_card

translate = QCoreApplication.translate
#: A row that leads to a place: this before the id of the way.
WAY = "way:"
#: So many of the cabinet's lines are looked through.
LINES = 200


class Source(Struct, frozen=True):
    """All that a field can be filled with, and what is offered where that does not do."""

    things: tuple[Listed, ...]
    offers: tuple[Listed, ...] = ()

    def found(self, typed: str) -> tuple[Listed, ...]:
        """Those that hold every word typed, with the first hit underlined."""
        words = words_of(typed)
        return tuple(
            Listed(
                key=listed.key,
                title=listed.title,
                under=listed.under,
                beside=listed.beside,
                away=listed.away,
                hit=hit_in(listed.title, words),
                under_hit=hit_in(listed.under, words),
            )
            for listed in self.things
            if holds_all(f"{listed.title} {listed.under} {listed.beside}", words)
        )


def source_of(desk: Desk, owner: str, entry: Entry) -> Source:
    """What there is for that field."""
    if entry.asks == "machine":
        from jobsheet.gui.edits.machine_choice import machines

        return Source(machines(), (_way("new-card", translate("Choosing", "New machine…")),))
    if entry.asks == "material":
        from jobsheet.gui.edits.material_choice import materials_listed

        return Source(materials_listed("", desk.job.material))
    if owner == OWNER:
        from jobsheet.gui.edits.line_choice import lines_listed

        return Source(lines_listed(desk.job, entry.name))
    if entry.name == "vice":
        return _devices(desk)
    if entry.asks == "several":
        value = value_of(desk.job, owner, entry.name)
        return Source(several_of(entry, value.text if value is not None else "", all_of_them=True))
    return _of_cabinet(desk, owner, entry.name)


def several_of(entry: Entry, typed: str, *, all_of_them: bool = False) -> tuple[Listed, ...]:
    """What can stand behind the last comma of a list: the words that are not in it yet,
    with all that stands before them kept.
    """
    whole = typed.strip()
    head, _, last = whole.rpartition(",") if not all_of_them else (whole, "", "")
    there = [part.strip() for part in head.split(",") if part.strip()]
    words = words_of(last)
    return tuple(
        Listed(key=", ".join((*there, choice)), title=choice, hit=hit_in(choice, words))
        for choice in entry.choices
        if choice not in there and holds_all(choice, words)
    )


def _way(id_: str, title: str) -> Listed:
    return Listed(key=f"{WAY}{id_}", title=title)


def _said(words: str) -> Listed:
    """A sentence in the list, which cannot be taken."""
    return Listed(key="", title=words, away=" ")


def _of_cabinet(desk: Desk, owner: str, name: str) -> Source:
    """What does this work, the nearest first; the way to the cabinet where it
    has nothing, or there is none.
    """
    new = _way("cabinet", translate("Choosing", "New cabinet…"))
    own = _way("cabinet", translate("Choosing", "Open the cabinet…"))
    try:
        cabinet = cabinet_for(desk.job.workshop)
    except JobsheetError as error:
        return Source((), (_said(str(error).replace("\n", " ")), own))
    if cabinet is None:
        return Source((), (_said(translate("Picking", "There is no cabinet yet.")), new))
    _, operation = desk.job.find(owner)
    found = picks(desk.job, operation, name, cabinet, most=LINES)
    if not found:
        return Source((), (_said(translate("Picking", "The cabinet has nothing that does this.")), own))
    return Source(tuple(_pick(pick) for pick in found), (own,) if cabinet.own else ())


def _pick(pick: Pick) -> Listed:
    away = translate("Picking", "not there now: {where}").format(where=pick.away) if pick.away else ""
    return Listed(key=pick.text, title=pick.shown, beside=pick.note, away=away)


def _devices(desk: Desk) -> Source:
    """The vices of the card."""
    try:
        card = find_card(desk.job.machine)
    except JobsheetError as error:
        return Source((), (_said(str(error)),))
    vices = tuple(Listed(key=vice.name, title=vice.name, under=_vice_words(vice)) for vice in card.vices)
    return Source(
        vices, (_way("card", translate("Choosing", "Open the card of {title}").format(title=card.title)),)
    )


def _vice_words(vice: Vice) -> str:
    """What it takes: `opens 75 mm, jaws 25 mm deep, bed 42 mm high`."""
    parts = (
        (translate("Choosing", "opens {size}"), vice.opening),
        (translate("Choosing", "jaws {size} deep"), vice.jaw_depth),
        (translate("Choosing", "bed {size} high"), vice.bed_height),
    )
    return ", ".join(words.format(size=f"{size * 1e3:g} mm") for words, size in parts if size)
