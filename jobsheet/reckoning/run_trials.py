"""How a step of ordinary work went, as a trial of the machine: the same demand as the
plan's, with what really ran put in.
"""

from __future__ import annotations

from typing import Any

from msgspec.structs import replace

from jobsheet.errors import CommandError
from jobsheet.model.job import Operation
from jobsheet.model.setting import Setting
from jobsheet.model.trials import Trial
from jobsheet.model.what_ran import NOT_CUT, Entry
from jobsheet.operations.registry import kind as kind_of
from jobsheet.operations.registry import roles
from jobsheet.reckoning.answers.stopwatch_answer import stopwatch
from jobsheet.reckoning.asked import asked_of
from jobsheet.reckoning.reckoner import Reckoned
from jobsheet.reckoning.what_if import Tried, at_speed, tried, with_texts
from jobsheet.storage.plan_mark import plan_mark
from jobsheet.units.show import trimmed
from jobsheet.units.table import INCH


def trial_of_entry(entry: Entry, reckoned: Reckoned) -> Trial | None:
    """The trial that an entry is; None where the step has no force that is learned,
    was not cut, or cannot be reckoned.

    Raises
    ------
    CommandError
        If the job has no such step.
    """
    if entry.about != "step" or entry.outcome in ("", NOT_CUT):
        return None
    try:
        operation = reckoned.job.find(entry.key)[1]
    except KeyError:
        raise CommandError(f"There is no step {entry.number} in this job.") from None
    process = roles(operation).process
    setting = reckoned.settings.get(entry.key)
    if not process or setting is None:
        return None
    ran = as_it_ran(operation, setting, entry)
    asked = asked_of(ran.figures, setting) if ran.figures is not None else ()
    if not asked:
        return None
    cutter = ran.fields.cutter
    revision = f", plan {plan_mark(entry.revision)}" if entry.revision else ""
    return Trial(
        machine=entry.machine, date=entry.date, time=entry.time, role=entry.role, process=process, kind=operation.kind,
        cutter=cutter.text, cutter_kind=cutter.kind, stick_out=cutter.stick_out, material=setting.material.name,
        holding=_held(setting), units=setting.units, step=_texts(operation.kind, ran, setting.units), speed=ran.value("spindle_speed"),
        length=entry.length, seconds=entry.seconds, asked=asked, outcome=entry.outcome, slipped=entry.slipped, note=entry.note,
        job=f"{entry.job}{revision}, step {entry.number}", entry=entry.id,
    )  # fmt: skip


def as_it_ran(operation: Operation, setting: Setting, entry: Entry) -> Tried:
    """The step with the speed, the depth of a layer and the feed of the watch
    that were said; else as planned.
    """
    fields = operation.fields
    if entry.depth is not None:
        fields = _with_depth(operation.kind, fields, entry.depth, setting.units)
    if entry.speed is not None and hasattr(fields, "spindle"):
        fields = at_speed(fields, entry.speed)
    if entry.seconds is not None and hasattr(fields, "feed"):
        step = replace(operation, fields=fields)
        far = entry.length if entry.length is not None else _far(tried(operation.kind, fields, setting))
        if far is not None:
            return stopwatch(step, setting, seconds=entry.seconds, length=far).found
    return tried(operation.kind, fields, setting)


def _with_depth(kind_name: str, fields: object, depth: float, units: str) -> Any:
    """One layer as deep as it was cut [m]: the whole depth where the step has no layers."""
    if not hasattr(fields, "layer"):
        return fields
    return replace(with_texts(kind_name, fields, (("depth", _length(depth, units)),), units), layer=None)


def _far(found: Tried) -> float | None:
    return found.value("path_length") or found.value("hole_depth")


def _held(setting: Setting) -> str:
    """That something known held it; what it was stands in the plan that the entry names."""
    return "as in the plan" if setting.grip is not None else ""


def _texts(kind_name: str, ran: Tried, units: str) -> tuple[tuple[str, str], ...]:
    """The fields that the demand rests on, as typed: by them it can be worked out again.

    Layers share a depth evenly, and the work that `through` went through is not
    kept: such a depth is said as a size.
    """
    texts = []
    for entry in kind_of(kind_name).entries:
        value = getattr(ran.fields, entry.name, None)
        if entry.name not in _ASKS_NOTHING and value is not None:
            text = value if isinstance(value, str) else getattr(value, "text", "")
            whole = ran.value("hole_depth")
            if getattr(value, "through", False) and hasattr(ran.fields, "layer") and whole is not None:
                text = _length(whole, units)
            if isinstance(text, str) and text:
                texts.append((entry.name, text))
    return tuple(texts)


def _length(size: float, units: str) -> str:
    unit = 1e-3 if units == "mm" else INCH
    return f"{trimmed(size / unit, 3 if units == 'mm' else 4)} {units}"


#: No demand rests on these: words, what is measured, and the cutter, which a trial has for itself. All others
#: are kept, so that a field that a kind is given later is kept too.
_ASKS_NOTHING = frozenset({"cutter", "what", "note", "measure", "instrument", "tolerances", "how", "minutes"})
