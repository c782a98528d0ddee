"""The safety notes beside those at their steps: once each, grouped by when they are
needed, and only so many as are read.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from jobsheet.model.job import SetUp
from jobsheet.model.remark import Note
from jobsheet.remembered import remembered
from jobsheet.report.blocks import Columns, Gap, Heading, NoteLine, NoteLines, Page, Words, words_of
from jobsheet.report.dial_words import in_runs_of
from jobsheet.report.plan import Plan
from jobsheet.report.wording import DATA_SHEET, YOUNG
from jobsheet.review.notes.legal import by_law, today

#: More lines than this on a page of notes are no longer read (common practice).
MOST = 24
#: When a note is needed, in the order of the hands; what is named nowhere is needed while it cuts.
CUTTING = "While it cuts"
MOMENTS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("Holding, loading, measuring", ("stop-before-measuring", "tight-then-turn-by-hand", "table-clear", "clear-of-the-cutter-to-load",
        "no-spindle-power-for-nuts", "clamp-against-turning", "room-under-the-hole", "lift-with-help", "slide-do-not-drop", "rated-lifting-gear",
        "gloves-for-handling-only", "light-and-floor", "machine-fixed-down", "handle-out-before-reversing")),
    ("Changing cutter or speed", ("belt-cover-closed", "lowest-speed-before-start", "wind-down-before-stopping", "range-changed-at-rest",
        "wrench-out-before-start", "cutter-change-at-rest", "drawbar-tight-taper-clean", "collet-fits-the-shank", "tool-drops-when-loosened",
        "head-held-before-slackening", "heavy-cutter-two-hands", "read-the-marked-speed")),
    (CUTTING, ()),
    ("When something goes wrong", ("isolate-before-repair", "switch-off-in-a-power-cut", "tell-someone", "let-go-when-it-spins",
        "free-a-jam-by-hand", "broken-stump-shielded")),
    ("Afterwards", ("fresh-edges-cut", "fluid-off-the-skin", "spill-mopped", "chip-bin-lidded", "lead-wash-hands", "chips-by-brush")),
)  # fmt: skip
_MOMENT = {name: moment for moment, names in MOMENTS for name in names}


def first_sentence(text: str) -> str:
    """A note's first sentence; a colon or a semicolon does not end it."""
    return re.split(r"(?<=[.!?])\s+", text, maxsplit=1)[0]


def plain(text: str) -> str:
    """The text without the stars that the source marks a stress with."""
    return text.replace("*", "")


def line(note: Note, *, short: bool = False, bold: bool = False) -> NoteLine:
    """One note as it is printed, in full or its first sentence."""
    text = plain(note.text)
    first = first_sentence(text)
    return NoteLine(first if short else text, "hazard", bold)


def rest(plan: Plan, pages: Iterable[Page], most: int = MOST) -> list[object]:
    """Blocks of what is still to be heeded: every note that does not stand in full on the pages
    made so far, the most specific first.

    What is over `most` lines is left out, the least specific, and it is said how many and where they are.
    """
    blocks_of = [block for page in pages for block in (*page.blocks, page.band)]
    printed: frozenset[str] = frozenset().union(*map(_texts, blocks_of))
    found = [(moment, text) for moment, text in plan.once(_told) if text not in printed]
    kept, over = found[:most], len(found) - most
    blocks: list[object] = [_in_columns(kept)] if kept else []
    if over > 0:
        blocks.append(
            Words(
                f"{over} more of a general kind: in the window beside this job, and by “jobsheet why”.",
                "note",
            )
        )
    blocks += _by_law(plan)
    if any(setting.material.hazards for setting in plan.reckoned.settings.values()):
        blocks.append(Words(DATA_SHEET))
    if plan.job.trainee:
        blocks.append(Words(YOUNG))
    return blocks


# Pages are tried with more notes and with fewer; what else stands on them is the same each time.
@remembered(96)
def _texts(block: object) -> frozenset[str]:
    return frozenset(words_of(block))


def _in_columns(kept: list[tuple[str, str]]) -> Columns:
    """The notes under the moments at which they are needed, in two columns of about the same length."""
    groups = [(moment, [text for at, text in kept if at == moment]) for moment, _ in MOMENTS]
    whole = sum(map(len, (text for _, text in kept)))
    columns: tuple[list[object], list[object]] = ([], [])
    told = 0
    for moment, texts in groups:
        parts: tuple[list[NoteLine], list[NoteLine]] = ([], [])
        for text in texts:
            parts[0 if told + len(text) / 2 <= whole / 2 else 1].append(NoteLine(text))
            told += len(text)
        for column, lines in zip(columns, parts, strict=True):
            if lines:
                column += [Words(moment, "label bold"), NoteLines(tuple(lines), "note")]
    return Columns(parts=(tuple(columns[0]), tuple(columns[1])), shares=(0.5, 0.5))


def _told(plan: Plan) -> list[tuple[str, str]]:
    """Every note that is no stop with its moment, once each: those of steps, of some
    set-ups, of all of them, of the job.
    """
    own = _of_steps(plan)
    heads: dict[str, tuple[Note, list[int]]] = {}
    for set_up in plan.job.set_ups:
        for note in _head_notes(plan, set_up):
            heads.setdefault(note.id, (note, []))[1].append(set_up.number)
    count = len(plan.job.set_ups)
    some = [(note, numbers) for note, numbers in heads.values() if len(numbers) < count]
    each = [(note, numbers) for note, numbers in heads.values() if len(numbers) == count]
    own += [
        (_moment(note), f"Set-up{'s' if len(n) > 1 else ''} {in_runs_of(tuple(n))}: {plain(note.text)}")
        for note, n in some
    ]
    own += [(_moment(note), plain(note.text)) for note, _ in each]
    own += [(_moment(note), plain(note.text)) for note in plan.notes.sheet]
    return list(dict.fromkeys(own))


def _moment(note: Note) -> str:
    return _MOMENT.get(note.id, CUTTING)


def _head_notes(plan: Plan, set_up: SetUp) -> list[Note]:
    return [note for note in plan.notes.set_ups.get(set_up.key, ()) if note.level != "stop"]


def _of_steps(plan: Plan) -> list[tuple[str, str]]:
    """Notes of steps in full; they stand at their first step, and here only
    where they were shortened there.
    """
    found: dict[str, Note] = {}
    for _, operation in plan.job.operations():
        for note in plan.notes.steps.get(operation.key, ()):
            if note.level != "stop":
                found.setdefault(note.id, note)
    return [(_moment(note), plain(note.text)) for note in found.values()]


def _by_law(plan: Plan) -> list[object]:
    """Figures of law and advice of the chosen country with place and date; else
    that they differ, in one line.
    """
    lines = by_law(plan.notes, plan.reckoned.shop.country).lines(today())
    if not lines:
        return []
    if len(lines) == 1:
        return [Words(f"Law and advice. {lines[0]}", "note")]
    return [Gap(6), Heading("Law and advice"), *(Words(text, "label") for text in lines)]
