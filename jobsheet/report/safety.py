"""The safety notes on their pages: boxes to tick before cutting, stop notes with initials, the page of the rest."""

from __future__ import annotations

import re

from jobsheet.model.job import SetUp
from jobsheet.model.remark import Note
from jobsheet.report.blocks import Box, Gap, Heading, NoteLine, NoteLines, Page, Ticks, Words, words_of
from jobsheet.report.plan import Plan
from jobsheet.report.wording import DATA_SHEET, STAMP_REASON, YOUNG
from jobsheet.review.engine import title_of
from jobsheet.review.notes.legal import by_law, today

#: Ticks in the order of the hands (me, machine, hold, tool, then): the notes that call for each, and its words.
_TICKS: tuple[tuple[tuple[str, ...], str], ...] = (
    (("eyes-shielded",), "eye protection on"),
    (("nothing-loose-to-catch", "hair-up-and-covered"), "nothing loose on you"),
    (("guards-set-before-start", "chip-shield-at-the-cutter"), "chip shield set"),
    (("belt-cover-closed",), "belt cover shut"),
    (("lowest-speed-before-start",), "speed at its lowest"),
    (("range-changed-at-rest",), "range engaged"),
    (("drawbar-tight-taper-clean",), "drawbar tight"),
    (("wrench-out-before-start",), "key and wrench out"),
    (("quill-locked-for-milling", "slides-locked-for-milling"), "idle slides locked"),
    (("tight-then-turn-by-hand",), "spun once by hand"),
)


def ticks(plan: Plan, set_up: SetUp, *, reminded: bool = True) -> Ticks:
    """Only the ticks that this set-up calls for; holding comes between machine and tool."""
    here = {note.id for note in plan.notes.sheet} | {
        note.id for note in plan.notes.set_ups.get(set_up.key, ())
    }
    for operation in set_up.operations:
        here |= {note.id for note in plan.notes.steps.get(operation.key, ())}
    words = [text for ids, text in _TICKS if here & set(ids)]
    hold = ["work seated and tight"]
    if "room-under-the-hole" in here:
        hold.append("room under the holes")
    at = next(
        (index for index, text in enumerate(words) if text.startswith(("drawbar", "key", "idle", "spun"))),
        len(words),
    )
    more = [row.text for row in plan.reminders.ticks.get(set_up.key, ()) if reminded]
    return Ticks((*more[:1], *words[:at], *hold, *more[1:], *words[at:]))


def first_sentence(text: str) -> str:
    """A note's first sentence; a colon or a semicolon does not end it."""
    return re.split(r"(?<=[.!?])\s+", text, maxsplit=1)[0]


def plain(text: str) -> str:
    """The text without the stars that the source marks a stress with."""
    return text.replace("*", "")


def line(plan: Plan, note: Note, *, short: bool = False, bold: bool = False) -> NoteLine:
    """One note as it is printed; a stop always in full and with a place for initials."""
    if note.level == "stop":
        return NoteLine(plain(note.text), "hazard", True, f"initials, {note.initials}", plan.given(note))
    text = plain(note.text)
    first = first_sentence(text)
    return NoteLine(first if short else text, "hazard", bold)


def stop_box(plan: Plan, stops: tuple[Note, ...]) -> tuple[Box, ...]:
    """The stop notes of a page in a frame of their own, each with initials or a blank for them."""
    if not stops:
        return ()
    open_ones = any(not plan.given(note) for note in stops)
    head: list[object] = [Heading("Stop before cutting")]
    if open_ones:
        head.append(Words(STAMP_REASON, "note"))
    return (Box((*head, NoteLines(tuple(line(plan, note) for note in stops), "note"))),)


def set_up_stops(plan: Plan, set_up: SetUp) -> tuple[Note, ...]:
    """Stop notes that stand at the head of a set-up: those of the sheet, and those no step had room for."""
    own = [note for note in plan.notes.set_ups.get(set_up.key, ()) if note.level == "stop"]
    return (*(note for note in plan.notes.stops if not note.set_up and not note.operation), *own)


def rest(plan: Plan, pages: list[Page]) -> list[object]:
    """Blocks of the page of safety notes: every note that does not stand in full on the pages made so far."""
    blocks: list[object] = []
    cover = _printed(pages, "cover")
    sheet = [note for note in plan.notes.sheet if plain(note.text) not in cover]
    if sheet:
        blocks.append(Heading("For the whole job"))
        blocks += [NoteLines((NoteLine(plain(note.text)),), "label") for note in sheet]
    found = {
        set_up.number: _of_set_up(plan, set_up, _printed(pages, set_up.key)) for set_up in plan.job.set_ups
    }
    shared = _shared(found)
    for numbers, texts in _by_set_ups(shared, len(plan.job.set_ups)):
        blocks += [Gap(6), Heading(numbers)]
        blocks += [NoteLines((NoteLine(text),), "label") for text in texts]
    for set_up in plan.job.set_ups:
        own = [text for text in found[set_up.number] if text not in shared]
        if own:
            blocks += [
                Gap(6),
                Heading(
                    f"Set-up {set_up.number}", plan.short(set_up.title, 60, f"set-up {set_up.number}, title")
                ),
            ]
            blocks += [NoteLines((NoteLine(text),), "label") for text in own]
    blocks += _set_aside(plan)
    blocks += _by_law(plan)
    if any(setting.material.hazards for setting in plan.reckoned.settings.values()):
        blocks.append(Words(DATA_SHEET))
    if plan.job.trainee:
        blocks.append(Words(YOUNG))
    return blocks


def _shared(found: dict[int, list[str]]) -> dict[str, tuple[int, ...]]:
    """Notes that several set-ups have word for word, with their numbers: said once, they are read."""
    where: dict[str, list[int]] = {}
    for number, texts in found.items():
        for text in dict.fromkeys(texts):
            where.setdefault(text, []).append(number)
    return {text: tuple(numbers) for text, numbers in where.items() if len(numbers) > 1}


def _by_set_ups(shared: dict[str, tuple[int, ...]], count: int) -> list[tuple[str, list[str]]]:
    """The shared notes by the set-ups that they belong to, those of all set-ups first."""
    groups: dict[tuple[int, ...], list[str]] = {}
    for text, numbers in shared.items():
        groups.setdefault(numbers, []).append(text)
    ordered = sorted(groups.items(), key=lambda one: (-len(one[0]), one[0]))
    return [
        ("Every set-up" if len(numbers) == count else f"Set-ups {', '.join(map(str, numbers))}", texts)
        for numbers, texts in ordered
    ]


def _set_aside(plan: Plan) -> list[object]:
    """Remarks that were set aside for this job, each with its reason and whose initials stand for it."""
    if not plan.job.dismissed:
        return []
    numbers = {operation.key: f"Step {operation.number}" for _, operation in plan.job.operations()}
    numbers |= {set_up.key: f"Set-up {set_up.number}" for set_up in plan.job.set_ups}
    blocks: list[object] = [
        Gap(6),
        Heading("Set aside for this job", "remarks of the review, with the reason"),
    ]
    for one in plan.job.dismissed:
        where = numbers.get(one.about, "")
        words = f"{where}{', ' if where else ''}{title_of(one.rule)}: {one.reason}"
        by = f" ({one.initials})" if one.initials else ""
        blocks.append(Words(f"{words.rstrip('.')}{by}.", "label"))
    return blocks


def _by_law(plan: Plan) -> list[object]:
    """Figures of law and advice of the chosen country with place and date; else that they differ, in one line."""
    lines = by_law(plan.notes, plan.reckoned.shop.country).lines(today())
    if not lines:
        return []
    return [Gap(6), Heading("Law and advice"), *(Words(text, "label") for text in lines)]


def _printed(pages: list[Page], about: str) -> set[str]:
    """All texts of the pages of a set-up, or of the cover."""
    return {text for page in pages if page.about == about for text in words_of(page.blocks)}


def _of_set_up(plan: Plan, set_up: SetUp, printed: set[str]) -> list[str]:
    """Its notes in words: those of its head, then those that stood shortened beside steps, each once."""
    texts = [plain(note.text) for note in plan.notes.set_ups.get(set_up.key, ()) if note.level != "stop"]
    by_text: dict[str, list[str]] = {}
    for operation in set_up.operations:
        for note in plan.notes.steps.get(operation.key, ()):
            text = plain(note.text)
            if note.level != "stop" and text not in printed:
                by_text.setdefault(text, []).append(str(operation.number))
    beside = [f"{_steps(numbers)}: {text}" for text, numbers in by_text.items() if text not in texts]
    return texts + beside


def _steps(numbers: list[str]) -> str:
    return f"Step {numbers[0]}" if len(numbers) == 1 else f"Steps {', '.join(numbers)}"
