"""One operation reckoned once: what its kind and the limits do not read of its setting counts for nothing."""

from __future__ import annotations

from jobsheet.errors import JobsheetError
from jobsheet.limits.register import READS, Asked, asked, in_order
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.not_checked import alone
from jobsheet.model.row import Row
from jobsheet.model.setting import Setting
from jobsheet.operations.kind import Dial
from jobsheet.operations.manners import with_manners
from jobsheet.operations.reads import TO_READ, narrowed
from jobsheet.operations.registry import kind as kind_of
from jobsheet.reckoning.roomy import Roomy
from jobsheet.reckoning.what_if import sentence_of

Found = tuple[Figures | None, tuple[Limit, ...], tuple[Row, ...], tuple[Dial, ...], str]


def reckon_operation(kind_name: str, fields: object, setting: Setting) -> Found:
    """Figures, limits, rows, dials and what is wrong, by value: what a kind does not read
    of its setting counts for nothing.
    """
    figures, said, rows, dials, problem = known(kind_name, fields, setting)
    return figures, in_order(said), rows, dials, problem


def known(
    kind_name: str, fields: object, setting: Setting
) -> tuple[Figures | None, Asked, tuple[Row, ...], tuple[Dial, ...], str]:
    """The same with what every limit says, in the limits' own order."""
    looks = kind_of(kind_name).looks_at(fields)
    figures, said, problem = _reckoned(kind_name, fields, narrowed(setting, (looks | READS) - TO_READ))
    if figures is None:
        return None, (), (), (), problem
    rows, dials, problem = _read_off(kind_name, fields, narrowed(setting, looks))
    return (None, (), (), (), problem) if problem else (figures, said, rows, dials, "")


def make_room(steps: int) -> None:
    """Remember as many as a plan of so many steps needs."""
    for roomy in (_reckoned, _figured, _read_off):
        roomy.make_room(steps)


@Roomy
def _reckoned(kind_name: str, fields: object, setting: Setting) -> tuple[Figures | None, Asked, str]:
    """The setting holds only what the figures and the limits rest on."""
    return alone(lambda: _with_limits(kind_name, fields, setting), lambda why: (None, (), why))


def _with_limits(kind_name: str, fields: object, setting: Setting) -> tuple[Figures | None, Asked, str]:
    """What nobody foresaw is a problem of this one step, as `_reckoned` has it:
    the others keep their figures.
    """
    kind = kind_of(kind_name)
    figures, problem = _figures_of(kind_name, fields, setting)
    if figures is None:
        return None, (), problem
    try:
        return figures, asked(figures, setting, fields, kind.plays(fields).process), ""
    except (JobsheetError, ArithmeticError) as error:
        return None, (), sentence_of(error)


def _figures_of(kind_name: str, fields: object, setting: Setting) -> tuple[Figures | None, str]:
    """The figures of a step, and what is wrong."""
    looks = kind_of(kind_name).looks_at(fields) - TO_READ
    found: tuple[Figures | None, str] = _figured(kind_name, fields, narrowed(setting, looks))
    return found


@Roomy
def _figured(kind_name: str, fields: object, setting: Setting) -> tuple[Figures | None, str]:
    """The setting holds only what the figures of the kind rest on."""
    return alone(lambda: _by_kind(kind_name, fields, setting), lambda why: (None, why))


def _by_kind(kind_name: str, fields: object, setting: Setting) -> tuple[Figures | None, str]:
    try:
        return kind_of(kind_name).figures(fields, setting), ""
    except (JobsheetError, ArithmeticError) as error:
        return None, sentence_of(error)


@Roomy
def _read_off(
    kind_name: str, fields: object, setting: Setting
) -> tuple[tuple[Row, ...], tuple[Dial, ...], str]:
    """The words of the sheet and what is set at the dials; the setting holds all that the kind reads."""
    return alone(lambda: _rows_and_dials(kind_name, fields, setting), lambda why: ((), (), why))


def _rows_and_dials(
    kind_name: str, fields: object, setting: Setting
) -> tuple[tuple[Row, ...], tuple[Dial, ...], str]:
    kind = kind_of(kind_name)
    figures, problem = _figures_of(kind_name, fields, setting)
    if figures is None:
        return (), (), problem
    try:
        rows = with_manners(kind.rows(fields, figures, setting), fields)
        return rows, kind.dials(fields, figures, setting), ""
    except JobsheetError as error:
        return (), (), sentence_of(error)
