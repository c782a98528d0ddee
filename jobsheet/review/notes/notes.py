"""Safety notes by trigger: which stand in the safety box, at the head of a set-up, beside a step.

Nothing is dropped: at most two warnings stand beside one step, the rest at the head of its set-up.
"""

from __future__ import annotations

from functools import cache
from typing import Any

from msgspec import Struct

from jobsheet.catalog.metals.densities import density
from jobsheet.catalog.metals.materials import find as find_material
from jobsheet.catalog.reading.data import shipped
from jobsheet.errors import JobsheetError
from jobsheet.holdings.placed import vice_of
from jobsheet.model.job import Job, Operation, SetUp
from jobsheet.model.machine import Machine, Vice
from jobsheet.model.material import Material
from jobsheet.model.quantity import Depth
from jobsheet.model.remark import Note
from jobsheet.model.shop import Shop
from jobsheet.model.stock import FACES, SHEARED
from jobsheet.operations.registry import kind as kind_of
from jobsheet.operations.registry import roles
from jobsheet.reckoning.reckoner import Reckoned
from jobsheet.review.notes.trigger_text import parsed
from jobsheet.review.notes.triggers import holds
from jobsheet.storage.card_files import find_card

#: So many warnings stand beside one step (safety-notes, levels).
BESIDE = 2
_STEP_TERMS = {
    "kind", "hole.through", "hole.blind", "holder.kind", "cutter.kind", "cutter.inserts", "cutter.material",
    "cutter.mass", "cutter.diameter", "cutter.marked-speed", "direction", "method", "speed", "outcome",
}  # fmt: skip
_SET_UP_TERMS = {"set-up", "tool-change", "set-up.speed-changes", "set-up.head-tilted", "material.chips"}
_USUAL = Shop()
#: What is lifted onto the table is asked of a set-up, whatever cutter is in the same trigger.
_LIFTED = {"stock.mass", "holding.mass"}
_FLUID_WORDS = {"brushed": "brush-on oil", "dripped": "brush-on oil"}


class NoteRow(Struct, frozen=True, kw_only=True):
    """One row of `resources/notes.yaml`."""

    id: str
    trigger: str
    level: str
    text: str
    source: str
    initials: str
    back: bool
    beside: int

    @property
    def scope(self) -> str:
        """What it is read against: a step, a set-up or the sheet."""
        names = parsed(self.trigger)[1]
        if names & _LIFTED:
            return "set-up"
        if names & _STEP_TERMS:
            return "step"
        return "set-up" if names & _SET_UP_TERMS else "sheet"


class Notes(Struct, frozen=True, kw_only=True):
    """All notes of a job, each where it stands; `stops` are those that ask for initials."""

    sheet: tuple[Note, ...]
    set_ups: dict[str, tuple[Note, ...]]
    steps: dict[str, tuple[Note, ...]]
    stops: tuple[Note, ...]


@cache
def rows() -> tuple[NoteRow, ...]:
    """Every note there is."""
    return tuple(
        NoteRow(
            id=name, trigger=row["trigger"], level=row["level"], text=row["text"], source=row["source"],
            initials=row.get("initials", ""), back=row.get("back") == "yes", beside=int(row.get("beside", "9")),
        )
        for name, row in shipped("notes.yaml")["notes"].items()
    )  # fmt: skip


def notes_for(job: Job, reckoned: Reckoned) -> Notes:
    """The notes that this job calls up."""
    of_sheet = sheet_facts(job, reckoned.shop)
    masses = masses_by_set_up(job)
    by_scope: dict[str, list[NoteRow]] = {"sheet": [], "set-up": [], "step": []}
    for row in rows():
        by_scope[row.scope].append(row)
    sheet = [_note(row) for row in by_scope["sheet"] if holds(row.trigger, {**of_sheet, "sheet": True})]
    set_ups: dict[str, tuple[Note, ...]] = {}
    steps: dict[str, tuple[Note, ...]] = {}
    stops = [note for note in sheet if note.level == "stop"]
    for set_up in job.set_ups:
        facts = of_sheet | set_up_facts(set_up, reckoned) | masses[set_up.key]
        head = [_note(row, set_up=set_up.key) for row in by_scope["set-up"] if holds(row.trigger, facts)]
        shown: set[str] = {note.id for note in head}
        told: set[tuple[str, str]] = set()
        for operation in set_up.operations:
            of_step = facts | step_facts(operation)
            fired = [row for row in by_scope["step"] if holds(row.trigger, of_step)]
            fired.sort(key=lambda row: (row.level != "stop", row.level == "note", row.beside))
            # Said once for a cutter in a set-up: the same words under every step are no longer read.
            cutter = getattr(getattr(operation.fields, "cutter", None), "text", "")
            said = [row for row in fired if row.level != "stop" and (row.id, cutter) in told]
            fired = [row for row in fired if row not in said and row.id not in shown]
            beside = [row for row in fired if row.level == "stop" or row.beside < 9][:BESIDE]
            told.update((row.id, cutter) for row in beside)
            steps[operation.key] = tuple(_note(row, set_up.key, operation.key) for row in beside)
            stops.extend(note for note in steps[operation.key] if note.level == "stop")
            for row in fired:
                if row not in beside and row.id not in shown:
                    shown.add(row.id)
                    head.append(_note(row, set_up.key, operation.key if row.level == "stop" else ""))
        stops.extend(note for note in head if note.level == "stop")
        set_ups[set_up.key] = tuple(note for note in head if note.level != "note")
        sheet.extend(
            note for note in head if note.level == "note" and note.id not in {note.id for note in sheet}
        )
    return Notes(
        sheet=tuple(note for note in sheet if note.level != "stop"),
        set_ups=set_ups,
        steps=steps,
        stops=tuple(stops),
    )


def _note(row: NoteRow, set_up: str = "", operation: str = "") -> Note:
    return Note(
        id=row.id, level=row.level, text=row.text, source=row.source, initials=row.initials, scope=row.scope,
        operation=operation, set_up=set_up, back=row.back,
    )  # fmt: skip


def sheet_facts(job: Job, shop: Shop = _USUAL) -> dict[str, Any]:
    """What is true of the job as a whole; a machine or material that is gone leaves its facts out."""
    people = {"trainee": job.trainee, "alone": shop.works_alone == "yes"}
    facts: dict[str, Any] = {
        "person": frozenset(word for word, here in people.items() if here),
        "country": shop.country,
        "machine.air-line": shop.air_line == "yes",
        "machine.voice-raised": shop.raised_voices == "yes",
    }
    try:
        material: Material | None = find_material(job.material)
    except JobsheetError:
        material = None
    if material:
        facts |= {
            "material.family": material.family,
            "material.hazard": frozenset(material.hazards),
            "material.chips": material.chips,
            "material.work-hardens": material.work_hardens,
        }
    try:
        machine = find_card(job.machine)
    except JobsheetError:
        machine = None
    if machine:
        facts |= {
            "machine.drive": machine.spindle.change,
            "machine.reverse": machine.spindle.reverses,
            "machine.quill": machine.quill,
            "machine.noise": machine.noise,
            "machine.stand": machine.stand,
        }
    size = job.stock
    facts["stock.thickness"] = min(size.length.value, size.width.value, size.height.value)
    if any(size.surface(face) == SHEARED for face in FACES) or "sharp" in size.condition.casefold():
        facts["stock.edges"] = "sharp"
    fluid = job.fluid or "brushed"
    facts["fluid"] = _FLUID_WORDS.get(fluid, fluid)
    return facts


def masses_by_set_up(job: Job) -> dict[str, dict[str, float]]:
    """What is lifted onto the table for each set-up, by its key [kg]; what is not known is left out.

    The stock counts as it is bought, before any cut: the first lift is the heaviest. A vice counts where it
    is put on, not where it stands on the table already.
    """
    masses: dict[str, dict[str, float]] = {set_up.key: {} for set_up in job.set_ups}
    try:
        heavy = density(find_material(job.material).family)
    except JobsheetError:
        heavy = None
    try:
        machine: Machine | None = find_card(job.machine)
    except JobsheetError:
        machine = None
    before: Vice | None = None
    for set_up in job.set_ups:
        if heavy is not None:
            size = job.stock
            masses[set_up.key]["stock.mass"] = (
                size.length.value * size.width.value * size.height.value * heavy
            )
        vice = vice_of(set_up.holding, machine) if machine is not None else None
        if vice is not None and vice.mass is not None and vice != before:
            masses[set_up.key]["holding.mass"] = vice.mass
        before = vice
    return masses


def set_up_facts(set_up: SetUp, reckoned: Reckoned) -> dict[str, Any]:
    """What is true of a set-up, for triggers."""
    cutters = [
        cutter.text
        for operation in set_up.operations
        if (cutter := getattr(operation.fields, "cutter", None))
    ]
    speeds = {
        value
        for operation in set_up.operations
        if (outcome := reckoned.operations.get(operation.key)) and outcome.figures
        if (value := outcome.figures.value("spindle_speed")) is not None
    }
    return {
        "set-up": True,
        "tool-change": bool(cutters),
        "set-up.speed-changes": len(speeds) > 1,
    }


def cutter_word(kind: str) -> str:
    """A kind of cutter as the triggers spell it."""
    return "fly-cutter" if kind == "fly cutter" else kind


def step_facts(operation: Operation) -> dict[str, Any]:
    """What is true of a step, for triggers."""
    fields = operation.fields
    kind = kind_of(operation.kind)
    words = {kind.word, *kind.groups}
    facts: dict[str, Any] = {}
    cutter = getattr(fields, "cutter", None)
    if cutter is not None:
        facts["cutter.kind"] = cutter_word(cutter.kind)
        facts["holder.kind"] = cutter.holder or None
        facts["cutter.material"] = cutter.material
        facts["cutter.diameter"] = cutter.diameter
        facts["cutter.inserts"] = cutter.kind in ("face mill", "fly cutter") and cutter.material == "carbide"
        facts["cutter.marked-speed"] = cutter.marked_speed
        facts["direction"] = "with-rotation" if getattr(fields, "way", "") == "climb" else "against-rotation"
        if cutter.kind in ("spot drill", "centre drill"):
            words = {"spot", *kind.groups}
    facts["kind"] = frozenset(words)
    depth = getattr(fields, "depth", None)
    if isinstance(depth, Depth):
        facts["hole.through"] = depth.through
        facts["hole.blind"] = not depth.through
    plays = roles(operation)
    if plays.mills == "recess" and fields.depth.through:
        facts["kind"] = frozenset({*words, "window"})
    if plays.hole == "tap":
        facts["method"] = "hand-in-spindle" if plays.by_hand else "power"
    return facts
