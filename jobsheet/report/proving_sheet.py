"""The proving sheet: the stop rule and the test's own safety box, and only then the
rungs with boxes for what happened.

Without the initials of both people it is still made, but says NOT ACKNOWLEDGED and has no places for results;
a ladder that is refused has no rungs, and the page says why (safety-notes section 3).
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from msgspec import Struct

from jobsheet.limits.verdict import in_words
from jobsheet.model.trials import OUTCOMES
from jobsheet.operations.registry import kind as kind_of
from jobsheet.reckoning.ladder.ladder_expected import takes_words, words_of
from jobsheet.reckoning.ladder.rung import Ladder, Rung
from jobsheet.report.blocks import (
    Box,
    Columns,
    Document,
    Gap,
    Heading,
    NoteLine,
    NoteLines,
    Page,
    RungRow,
    RungRows,
    StopBand,
    TitleCell,
    Words,
    Writing,
)
from jobsheet.report.wording import CALCULATED, COMPETENT, FOOT, STAMP, STAMP_REASON
from jobsheet.review.notes.notes import NoteRow, cutter_word, rows
from jobsheet.review.notes.triggers import holds

#: Notes of the sheet beside those that ask for `job.proving`, in the order in which they are read.
_ALSO = ("guards-set-before-start", "eyes-shielded", "hearing-protection-on", "power-tap-agreed")
#: A test may ring: hearing protection lies ready also where the machine is quiet.
_QUIET = "hearing-protection-at-hand"
_STOP_RULE = "proving-stop-rule"
#: Where the layers of a step are the rungs none asks more than its plan: then the part itself is cut.
_ON_SCRAP = "proving-on-scrap"
#: A note that asks for initials is as high as so many without (estimate): by it
#: the two columns come out even.
INITIALLED = 1.7
#: The deferring words of a test, after safety-notes section 1.
SUPERVISION = "The machine’s manual, local rules and the person in charge go before this sheet."


class Initialled(Struct, frozen=True, kw_only=True):
    """Who has read the stop notes for this very print: the operator, the second
    person, and the person in charge.
    """

    operator: str = ""
    second: str = ""
    in_charge: str = ""


def proving_sheet(
    ladder: Ladder,
    *,
    initials: Initialled | None = None,
    trainee: bool = False,
    planned_by: str = "",
    workshop: str = "",
    name: str = "proving",
) -> Document:
    """One page of a ladder.

    Parameters
    ----------
    initials : Initialled, optional
        Of both people, and where somebody learns or a tap is driven of the person in charge too
    trainee : bool
        Whether a learner makes the test: then somebody in charge gives initials at each rung
    """
    given = initials or Initialled()
    noted = notes_of(ladder, trainee=trainee)
    asked = {note.id: _who(note, given) for note in noted if note.level == "stop"}
    refused = bool(ladder.refused)
    open_stops = tuple(note for note, by in asked.items() if not by)
    if refused and not open_stops:
        open_stops = ("no-proving-on-these",)
    body: list[object] = []
    if not refused:
        body += [_stop_box(noted, asked), _safety(noted, asked)]
        body += [Heading(_heading(ladder), _beside(ladder))]
        if ladder.expected is not None:
            body.append(Words(words_of(ladder.expected), "note bold"))
        body += _table(ladder, bool(open_stops), trainee)
        body += [Words("What was seen at the last rung", "label bold"), Writing(1)]
    else:
        body += [Gap(6), Heading("No ladder"), Words(ladder.refused, "step")]
    page = Page(
        kind="proving", about="proving", title=_title(ladder, planned_by, workshop), blocks=tuple(body),
        foot=(f"{CALCULATED} {SUPERVISION}", FOOT), band=StopBand(STAMP, STAMP_REASON, ()) if open_stops else None, number=1, total=1,
    )  # fmt: skip
    return Document(
        name=name,
        title=f"{ladder.machine.title}, proving sheet",
        pages=(page,),
        source=b"",
        open_stops=open_stops,
    )


def notes_of(ladder: Ladder, *, trainee: bool = False) -> tuple[NoteRow, ...]:
    """The safety notes that this test calls up, the stop rule first."""
    facts = _facts(ladder, trainee=trainee)
    called = [row for row in rows() if "job.proving" in row.trigger and holds(row.trigger, facts)]
    found = {row.id: row for row in rows()}
    called += [found[name] for name in _ALSO if holds(found[name].trigger, facts)]
    if all(row.id != "hearing-protection-on" for row in called):
        called.append(found[_QUIET])
    return tuple(
        row for row in called if "refused" not in row.initials and not (ladder.inside and row.id == _ON_SCRAP)
    )


def stop_notes(ladder: Ladder, *, trainee: bool = False) -> tuple[NoteRow, ...]:
    """The stop notes of this test, each of which asks for initials before anything is
    entered, on paper and on the screen.
    """
    return tuple(note for note in notes_of(ladder, trainee=trainee) if note.level == "stop")


def unread(ladder: Ladder, given: Initialled, *, trainee: bool = False) -> tuple[str, ...]:
    """The ids of the stop notes for which initials are missing."""
    return tuple(note.id for note in stop_notes(ladder, trainee=trainee) if not _who(note, given))


def _facts(ladder: Ladder, *, trainee: bool) -> Mapping[str, Any]:
    material, cutter, machine = ladder.setting.material, ladder.cutter, ladder.machine
    return {
        "sheet": True, "set-up": True, "job.proving": True, "person": frozenset({"trainee"} if trainee else ()),
        "kind": frozenset({kind_of(ladder.kind).word, *kind_of(ladder.kind).groups}),
        "method": "power" if ladder.process == "tap" else "",
        "material.hazard": frozenset(material.hazards), "material.family": material.family,
        "cutter.kind": cutter_word(cutter.kind), "cutter.marked-speed": cutter.marked_speed,
        "cutter.inserts": cutter.kind in ("face mill", "fly cutter") and cutter.material == "carbide",
        "machine.noise": machine.noise, "machine.reverse": machine.spindle.reverses,
    }  # fmt: skip


def _who(note: NoteRow, given: Initialled) -> str:
    """The initials that a stop note asks for; empty while one of them is missing."""
    if note.initials == "both people":
        return f"{given.operator}, {given.second}" if given.operator and given.second else ""
    return given.in_charge if "in charge" in note.initials else given.operator


def _stop_box(noted: tuple[NoteRow, ...], asked: Mapping[str, str]) -> Box:
    """The stop rule in the largest type, its signs one by one."""
    rule = next(note for note in noted if note.id == _STOP_RULE)
    text = rule.text.removeprefix("Printed before the table: ")
    first, _, rest = text.partition(". ")
    signs, _, last = rest.partition(". ")
    lead = f"{first[:1].upper()}{first[1:]}."
    ends = NoteLine(last, "", initials=f"initials, {rule.initials}", given=asked[rule.id])
    each = [f"{sign[:1].upper()}{sign[1:]}" for sign in signs.split(" · ")]
    half = (len(each) + 1) // 2
    parts = tuple(tuple(Words(sign, "step") for sign in part) for part in (each[:half], each[half:]))
    return Box((Words(lead, "title"), Columns(parts=parts, shares=(0.48, 0.52)), NoteLines((ends,), "label")))


def _safety(noted: tuple[NoteRow, ...], asked: Mapping[str, str]) -> Box:
    """The test's own safety box: stop notes with their initials left, the rest right."""
    left = [
        NoteLine(
            note.text.replace(": ____", "."),
            "hazard",
            initials=f"initials, {note.initials}",
            given=asked[note.id],
        )
        for note in noted
        if note.level == "stop" and note.id != _STOP_RULE
    ]
    rest = [NoteLine(note.text.replace("*", "")) for note in noted if note.level != "stop"]
    rest.append(NoteLine(COMPETENT))
    half = round((len(rest) - INITIALLED * len(left)) / 2)
    left += rest[: max(half, 0)]
    right = rest[max(half, 0) :]
    return Box(
        (
            Heading("Before the first rung"),
            Columns(parts=((NoteLines(tuple(left), "note"),), (NoteLines(tuple(right), "note"),)), shares=(0.5, 0.5)),
        )
    )  # fmt: skip


def _heading(ladder: Ladder) -> str:
    return {
        "face": "Facing",
        "side": "Side cuts",
        "slot": "Slots",
        "drill": "Holes",
        "tap": "Threads under power",
        "pocket": "Pocket",
        "keyway": "Keyway",
        "fly cut": "Fly cuts",
    }[ladder.process]


def _beside(ladder: Ladder) -> str:
    """What stays the same on every rung."""
    if not ladder.rungs:
        return ""
    first, texts = ladder.rungs[0], dict(ladder.rungs[0].texts)
    parts = []
    if ladder.grows == "depth" and first.width:
        parts.append(f"{first.width} wide")
    if ladder.grows == "width" and len({rung.depth for rung in ladder.rungs}) == 1:
        parts.append(f"{first.depth} deep")
    if texts.get("feed_per_tooth"):
        parts.append(f"{texts['feed_per_tooth']} a tooth")
    if texts.get("way"):
        parts.append(texts["way"])
    if first.length_text and ladder.process not in ("drill", "tap"):
        parts.append(f"time it over {first.length_text}")
    parts.append(f"fluid {ladder.setting.fluid}")
    return ", ".join(parts)


def _table(ladder: Ladder, unread: bool, trainee: bool) -> list[object]:
    grows = {"depth": "depth, and its dial", "width": "width, and its dial", "size": "tool"}[ladder.grows]
    if _lightened(ladder):
        grows = "width × depth, dial"
    blocks: list[object] = [
        RungRows(
            rows=tuple(_row(ladder, rung) for rung in ladder.rungs),
            grows=grows,
            results=not unread,
            initials=trainee,
        )
    ]
    if unread:
        blocks.append(
            Words("No places for results until the initials above are given for a print.", "note bold")
        )
    else:
        legend = " · ".join(f"{digit} {word}" for digit, word in enumerate(OUTCOMES, 1))
        blocks.append(Words(f"Outcome: {legend}", "label bold"))
    return blocks


def _lightened(ladder: Ladder) -> bool:
    """Whether a ladder of widths begins less deep than it goes on."""
    return ladder.grows == "width" and len({rung.depth for rung in ladder.rungs}) > 1


def _row(ladder: Ladder, rung: Rung) -> RungRow:
    number, _, unit = (
        rung.size.rpartition(" ") if ladder.grows != "size" else (rung.size.replace("letter ", ""), "", "")
    )
    note = f"{rung.handle} {rung.dial}" if rung.dial else ""
    if _lightened(ladder):
        wide, deep = rung.width.rpartition(" "), rung.depth.rpartition(" ")
        number, unit = f"{wide[0]} × {deep[0]}", wide[2]
    if ladder.grows == "size" and rung.depth:
        note = f"{rung.depth} deep"
    pace, _, more = rung.pace.partition(", ")
    asks = (f"bad end {in_words(rung.chance)}", *takes_words(ladder.process, rung.asked, ladder.units))
    return RungRow(
        number=str(rung.number), size=number, unit=unit, size_note=note,
        spindle=rung.spindle.removesuffix(" rpm"), spindle_note=rung.position,
        pace="it feeds itself" if ladder.process == "tap" else more or pace, pace_note=pace.replace(" turns a minute", " a minute") if more else _feed(rung), asks=asks,
        seconds=f"plan {rung.seconds:.0f} s" if rung.seconds is not None and ladder.process != "tap" else "",
    )  # fmt: skip


def _feed(rung: Rung) -> str:
    feed = rung.figures.shown("feed_per_turn")
    return f"{feed} a turn" if feed else ""


def _title(ladder: Ladder, planned_by: str, workshop: str) -> tuple[tuple[TitleCell, ...], ...]:
    card = ladder.machine
    machine = f"{card.title}, invented" if card.invented else card.title
    planned = ", ".join(word for word in (planned_by, ladder.date) if word)
    return (
        (
            TitleCell(caption="Test cuts", text=f"{_heading(ladder)}, {ladder.inside or 'on scrap'}", share=0.416, strong=True),
            TitleCell(caption="Machine", text=machine, share=0.334, strong=True),
            TitleCell(caption="Page", share=0.25, strong=True, page=True),
        ),
        (
            TitleCell(caption="Cutter", text=ladder.cutter.text, share=0.416),
            TitleCell(caption="Material", text=ladder.setting.material.title, share=0.334),
            TitleCell(caption="Machine card dated", text=card.card_date, share=0.25),
        ),
        (
            TitleCell(caption="Held in", text=ladder.holding, share=0.416),
            TitleCell(caption="Planned by, date", text=planned, share=0.334),
            TitleCell(caption="Workshop", text=workshop, share=0.25),
        ),
    )  # fmt: skip
