"""The form that starts a ladder: what is filled in before it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from msgspec import Struct
from PySide6.QtCore import QCoreApplication

from jobsheet.limits.as_depth import said
from jobsheet.operations.entry import Entry
from jobsheet.operations.registry import roles
from jobsheet.operations.written import PROVED
from jobsheet.storage.card_files import card_names

if TYPE_CHECKING:
    from jobsheet.gui.desk.desk import Desk

translate = QCoreApplication.translate


class Asked(Struct, frozen=True, kw_only=True):
    """What is filled in before a ladder: all of it as typed."""

    machine: str
    kind: str = "side"
    cutter: str = "end mill 12 mm, 4 teeth, 30 mm out"
    material: str = "S235"
    width: str = "6 mm"
    grow: str = "depth"
    spindle: str = ""
    feed: str = ""
    holding: str = ""
    chance: str = ""
    role: str = ""


def asked_at(desk: Desk, key: str) -> Asked | None:
    """The ladder of such cuts as the chosen step makes; None where no step is
    chosen whose cuts grow on a ladder.
    """
    outcome = desk.outcome(key) if key else None
    if outcome is None or outcome.figures is None:
        return None
    operation = desk.filled(key)
    process = roles(operation).process
    if PROVED.get(process) != operation.kind:
        return None
    wide, units = outcome.figures.value("width_of_cut"), desk.job.units
    width = said(wide, units) if wide is not None and process in ("face", "side") else ""
    return Asked(
        machine=desk.job.machine, kind=process, cutter=operation.fields.cutter.text, material=desk.job.material or "S235",
        width=width,
    )  # fmt: skip


def entries() -> tuple[Entry, ...]:
    """The form that starts a ladder."""
    say = translate
    return (
        Entry(name="machine", title=say("Proving", "Machine"), asks="choice", choices=card_names()),
        Entry(
            name="kind", title=say("Proving", "Kind of cut"), asks="choice",
            choices=("face", "side", "slot", "drill", "tap"),
        ),
        Entry(name="cutter", title=say("Proving", "Cutter"), asks="text"),
        Entry(name="material", title=say("Proving", "Metal of the test piece"), asks="material"),
        Entry(name="grow", title=say("Proving", "What grows"), asks="choice", choices=("depth", "width")),
        Entry(
            name="width", title=say("Proving", "Fixed size"), asks="length", low="0.01 mm", high="1 m", optional=True,
            hint=say("Proving", "for milling: the size that does not grow"),
        ),
        Entry(
            name="spindle", title=say("Proving", "Spindle"), asks="spindle speed", low="1 rpm", high="60000 rpm", optional=True,
            hint=say("Proving", "leave empty: from the material"),
        ),
        Entry(
            name="feed", title=say("Proving", "Feed per tooth or a turn"), asks="length", low="0.001 mm", high="5 mm", optional=True,
            hint=say("Proving", "leave empty: from the table"),
        ),
        Entry(
            name="holding", title=say("Proving", "Held in"), asks="text", optional=True,
            hint=say("Proving", "leave empty: the machine's own vice"),
        ),
        Entry(
            name="chance", title=say("Proving", "Chance of a bad end, each rung"), asks="share", low="1 %", high="50 %", optional=True,
            hint=say("Proving", "leave empty: the workshop's own"),
        ),
        Entry(
            name="role", title=say("Proving", "Cut by, and who is beside"), asks="text", optional=True,
            hint=say("Proving", "such as Apprentice A, with the Trainer"),
        ),
    )  # fmt: skip
