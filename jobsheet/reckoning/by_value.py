"""One operation reckoned once: what its kind and the limits do not read of its setting counts for nothing."""

from __future__ import annotations

from typing import Any

from jobsheet.errors import JobsheetError
from jobsheet.limits.register import READS, Asked, asked, in_order
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.not_checked import alone
from jobsheet.model.row import Row
from jobsheet.model.setting import Setting
from jobsheet.operations.kind import Dial
from jobsheet.operations.reads import narrowed
from jobsheet.operations.registry import kind as kind_of
from jobsheet.reckoning.roomy import Roomy
from jobsheet.reckoning.what_if import sentence_of

Found = tuple[Figures | None, tuple[Limit, ...], tuple[Row, ...], tuple[Dial, ...], str]


def reckon_operation(kind_name: str, fields: Any, setting: Setting) -> Found:
    """Figures, limits, rows, dials and what is wrong, by value: what a kind does not read of its setting counts for nothing."""
    figures, said, rows, dials, problem = known(kind_name, fields, setting)
    return figures, in_order(said), rows, dials, problem


def known(
    kind_name: str, fields: Any, setting: Setting
) -> tuple[Figures | None, Asked, tuple[Row, ...], tuple[Dial, ...], str]:
    """The same with what every limit says, in the limits' own order."""
    reads = kind_of(kind_name).looks_at(fields) | READS
    found: tuple[Figures | None, Asked, tuple[Row, ...], tuple[Dial, ...], str] = _reckoned(
        kind_name, fields, narrowed(setting, reads)
    )
    return found


def make_room(steps: int) -> None:
    """Remember as many as a plan of so many steps needs."""
    for one in (_reckoned, _figured):
        one.make_room(steps)


@Roomy
def _reckoned(
    kind_name: str, fields: Any, setting: Setting
) -> tuple[Figures | None, Asked, tuple[Row, ...], tuple[Dial, ...], str]:
    """The setting holds only what kind and limits read."""
    return alone(lambda: _with_limits(kind_name, fields, setting), lambda why: (None, (), (), (), why))


def _with_limits(
    kind_name: str, fields: Any, setting: Setting
) -> tuple[Figures | None, Asked, tuple[Row, ...], tuple[Dial, ...], str]:
    """What nobody foresaw is a problem of this one step, as `_reckoned` has it: the others keep their figures."""
    kind = kind_of(kind_name)
    figures, rows, dials, problem = _figured(kind_name, fields, narrowed(setting, kind.looks_at(fields)))
    if figures is None:
        return None, (), (), (), problem
    try:
        return figures, asked(figures, setting, fields, kind.plays(fields).process), rows, dials, ""
    except (JobsheetError, ArithmeticError) as error:
        return None, (), (), (), sentence_of(error)


@Roomy
def _figured(
    kind_name: str, fields: Any, setting: Setting
) -> tuple[Figures | None, tuple[Row, ...], tuple[Dial, ...], str]:
    """The setting holds only what the kind reads."""
    return alone(lambda: _by_kind(kind_name, fields, setting), lambda why: (None, (), (), why))


def _by_kind(
    kind_name: str, fields: Any, setting: Setting
) -> tuple[Figures | None, tuple[Row, ...], tuple[Dial, ...], str]:
    kind = kind_of(kind_name)
    try:
        figures = kind.figures(fields, setting)
    except (JobsheetError, ArithmeticError) as error:
        return None, (), (), sentence_of(error)
    try:
        return figures, kind.rows(fields, figures, setting), kind.dials(fields, figures, setting), ""
    except JobsheetError as error:
        return None, (), (), sentence_of(error)
