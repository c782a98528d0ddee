"""An operation reckoned once by its figures and limits, also with something else in its
fields or around it; kept nowhere.
"""

from __future__ import annotations

from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.errors import CalcError, JobsheetError
from jobsheet.limits.register import governing, limits_of
from jobsheet.limits.verdict import is_tight
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.quantity import Quantity
from jobsheet.model.setting import Setting
from jobsheet.operations.registry import kind as kind_of

#: Limits that say yes or no, in the order in which they are asked (cutting-data section 1.6).
YES_OR_NO = (
    "reverse",
    "holder-grip",
    "speed-range",
    "cutting-speed",
    "marked-speed",
    "flute-length",
    "headroom",
    "travel",
    "table-load",
)


class Tried(Struct, frozen=True, kw_only=True):
    """What came of it; where it cannot be reckoned `problem` says why."""

    fields: Any
    setting: Setting
    figures: Figures | None = None
    limits: tuple[Limit, ...] = ()
    problem: str = ""

    def limit(self, name: str) -> Limit | None:
        """The limit of that name, or None where it does not apply."""
        return next((limit for limit in self.limits if limit.name == name), None)

    @property
    def governing(self) -> Limit | None:
        """The limit nearest to giving out."""
        return governing(self.limits)

    @property
    def stopped_by(self) -> Limit | None:
        """The first limit that is beyond: those that say yes or no before those that weigh."""
        return self._first(("beyond",))

    @property
    def hard(self) -> Limit | None:
        """The first limit that is no longer as expected; a lucky cut that was
        made before is not planned with.
        """
        return self._first(("beyond", "tight"))

    def _first(self, verdicts: tuple[str, ...]) -> Limit | None:
        limits = [
            limit
            for limit in self.limits
            if limit.verdict in verdicts or ("tight" in verdicts and is_tight(limit))
        ]
        limits.sort(
            key=lambda limit: YES_OR_NO.index(limit.name) if limit.name in YES_OR_NO else len(YES_OR_NO)
        )
        return limits[0] if limits else None

    @property
    def carried(self) -> bool:
        """Whether it can be reckoned and no limit is beyond."""
        return self.figures is not None and self.stopped_by is None

    @property
    def easy(self) -> bool:
        """Whether all of its limits are as expected."""
        return self.figures is not None and self.hard is None

    def value(self, name: str) -> float | None:
        """A figure's value in SI, or None."""
        return self.figures.value(name) if self.figures is not None else None

    def number(self, name: str) -> float:
        """A figure's value in SI; nought where there is none."""
        return self.figures.number(name) if self.figures is not None else 0.0

    def count(self, name: str) -> int:
        """How many a figure says; one where there is none."""
        return self.figures.count(name) if self.figures is not None else 1

    def shown(self, name: str) -> str:
        """A figure as text, or nothing."""
        return self.figures.shown(name) if self.figures is not None else ""


def sentence_of(error: Exception) -> str:
    """What went wrong as a sentence of its own."""
    words = str(error)
    return f"{words[:1].upper()}{words[1:]}."


def tried(kind_name: str, fields: object, setting: Setting) -> Tried:
    """Figures and limits of these fields in this setting. Never raises for what cannot be reckoned."""
    try:
        kind = kind_of(kind_name)
        figures = kind.figures(fields, setting)
        limits = limits_of(figures, setting, fields, kind.plays(fields).process)
    except (JobsheetError, ArithmeticError) as error:
        return Tried(fields=fields, setting=setting, problem=sentence_of(error))
    return Tried(fields=fields, setting=setting, figures=figures, limits=limits)


def with_texts(kind_name: str, fields: Any, edits: tuple[tuple[str, str], ...], units: str) -> Any:
    """The fields after these edits, each text read as if it had been typed.

    Raises
    ------
    CalcError
        If there is no such field.
    QuantityError
        If a text cannot be read.
    """
    changed = {}
    for name, text in edits:
        entry = kind_of(kind_name).entry(name)
        if entry is None:
            raise CalcError("field", f"“{name}”", f"one of {', '.join(fields.__struct_fields__)}")
        changed[name] = entry.read(text, units)
    return replace(fields, **changed)


def at_speed(fields: Any, speed: float | None) -> Any:
    """The same fields with that spindle speed typed [rev/s]; None leaves it to be chosen."""
    return replace(fields, spindle=None if speed is None else Quantity(speed, f"{speed * 60:.0f} rpm"))
