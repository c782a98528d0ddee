"""What test cuts asked of the frame, worked anew from the cut that their record keeps.

How a demand is worked out may change; the cut was what it was, so that an old log and a new plan stay
comparable. The log itself is never touched.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from msgspec.structs import replace

from jobsheet.catalog.metals.materials import find as find_material
from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.cutting.stability import direction
from jobsheet.errors import CalcError, JobsheetError
from jobsheet.model.machine import Machine
from jobsheet.model.quantity import Quantity
from jobsheet.model.setting import Setting
from jobsheet.model.trials import Asked, Trial
from jobsheet.operations.kind import fields_from
from jobsheet.operations.registry import kind as kind_of
from jobsheet.operations.shared.milling_work import edge_arc
from jobsheet.reckoning.asked import asked_of
from jobsheet.reckoning.what_if import Tried, tried
from jobsheet.remembered import remembered
from jobsheet.storage.card_files import find_card
from jobsheet.units.grammar import read

#: A piece that is large enough for any test cut [m]: its size changes nothing of what one pass asks.
_PIECE = (1.0, 1.0, 0.1)


def anew(trials: Iterable[Trial]) -> tuple[Trial, ...]:
    """The same trials with what each asked of the frame as it is worked out today."""
    return tuple(_anew(trial, _card_of(trial)) for trial in trials)


def _card_of(trial: Trial) -> Machine | None:
    """The card that its cut is worked out with, as it is now."""
    try:
        return find_card(trial.machine)
    except JobsheetError:
        return None


@remembered(1024)
def _anew(trial: Trial, card: Machine | None) -> Trial:
    """One trial, by the card of its machine; as it stands where its record
    names no cut or there is no card.
    """
    was = trial.of("chatter")
    if was is None or was.demand <= 0 or (trial.kind and card is None):
        return trial
    try:
        if card is not None and trial.kind:
            again = _of_cut(trial, card)
        else:
            now = was.demand / _by_width(trial)
            again = Asked("chatter", now, was.share * now / was.demand)
    except (JobsheetError, ArithmeticError):
        return trial
    return replace(trial, asked=tuple(again if asked is was else asked for asked in trial.asked))


def _of_cut(trial: Trial, card: Machine) -> Asked:
    """From the fields of its step, the watch and the tachometer; its share is of what the card says today."""
    kind = kind_of(trial.kind)
    typed = dict(trial.step)
    if trial.entry and "cut" not in typed and any(entry.name == "cut" for entry in kind.entries):
        # Steps of a job were once kept without the width of a cut: as wide as
        # the whole step it would ask far more.
        raise CalcError("trial", trial.id, "one that says how wide each cut was")
    fields = fields_from(kind.fields, kind.entries, {**typed, "cutter": trial.cutter}, trial.units)
    setting = Setting(
        machine=card, material=find_material(trial.material), units=trial.units,
        extent=_PIECE, thickness=_PIECE[2],
    )  # fmt: skip
    found = tried(trial.kind, fields, setting)
    speed = found.value("spindle_speed")
    if trial.seconds and trial.length:
        found = _timed(trial.kind, found, setting, trial.length / trial.seconds)
    if trial.tachometer is not None and speed is not None:
        found = at_tachometer(trial.kind, found, setting, speed, trial.tachometer)
    asked = asked_of(found.figures, setting) if found.figures is not None else ()
    again = next((other for other in asked if other.limit == "chatter"), None)
    if again is None:
        raise CalcError("trial", trial.id, "one that can be worked out again")
    return again


def _by_width(trial: Trial) -> float:
    """What an old record that holds only a demand left out: the direction of the
    force, by the width that it names.
    """
    width = dict(trial.step).get("width")
    diameter = read_cutter(trial.cutter, trial.units).diameter
    if not width or diameter is None or trial.process == "slot":
        return 1.0
    return direction(*edge_arc(read(width, "length", trial.units), diameter))


def _timed(kind: str, found: Tried, setting: Setting, feed: float) -> Tried:
    """The same cut with the feed of the watch [m/s], at the speed that it was planned with."""
    speed = found.number("spindle_speed")
    held = replace(
        found.fields,
        feed=Quantity(feed, f"{feed * 60e3:.6g} mm/min"),
        feed_per_tooth=None,
        spindle=Quantity(speed, f"{speed * 60:.0f} rpm"),
    )
    return tried(kind, held, setting)


def at_tachometer(kind: str, found: Tried, setting: Setting, planned: float, measured: float) -> Tried:
    """A cut with the speed of the tachometer in place of the planned one [rev/s].

    A slower spindle under the same feed cuts a thicker chip: it asks more.
    """
    return tried(kind, _slowed(found.fields, found, planned / measured), setting)


def _slowed(fields: Any, found: Tried, ratio: float) -> Any:
    """The same feed of the hand at another speed, said as a chip: the marked speed stays in the fields."""
    tooth, turn = found.value("feed_per_tooth"), found.value("feed_per_turn")
    if hasattr(fields, "feed_per_tooth") and tooth is not None:
        chip = tooth * ratio
        return replace(fields, feed=None, feed_per_tooth=Quantity(chip, f"{chip * 1e3:.6g} mm"))
    if turn is not None:
        chip = turn * ratio
        return replace(fields, feed=Quantity(chip, f"{chip * 1e3:.6g} mm"))
    return fields
