"""Values as they are typed behind a formula, and the answer in the same units: inches in, inches out."""

from __future__ import annotations

from typing import Any

from msgspec import Struct

from jobsheet.errors import JobsheetError, QuantityError

#: What a formula's unit measures where people write quantities, the likeliest first.
_MEASURES: dict[str, tuple[str, ...]] = {
    "m": ("length", "feed per tooth", "feed per turn"),
    "m/rev": ("feed per turn", "length"),
    "m/s": ("cutting speed", "feed"),
    "rev/s": ("spindle speed",),
    "rad": ("angle",),
    "N*m": ("torque",),
    "N": ("force",),
    "W": ("power",),
    "Pa": ("pressure",),
    "s": ("time",),
    "kg": ("mass",),
    "m^3": ("volume",),
    "m^3/s": ("removal rate",),
    "N/m": ("stiffness",),
    "-": ("share",),
}
#: What an SI unit is shown in: metric, inch, and with forces in pounds.
_SHOWN: dict[str, tuple[tuple[str, str], tuple[str, str], tuple[str, str]]] = {
    "m": (("length", "mm"), ("length", "in"), ("length", "in")),
    "m/rev": (("feed per turn", "mm"), ("feed per turn", "in"), ("feed per turn", "in")),
    "m/s": (("cutting speed", "m/min"), ("cutting speed", "ft/min"), ("cutting speed", "ft/min")),
    "rev/s": (("spindle speed", "rpm"), ("spindle speed", "rpm"), ("spindle speed", "rpm")),
    "rad": (("angle", "°"), ("angle", "°"), ("angle", "°")),
    "N*m": (("torque", "N·m"), ("torque", "N·m"), ("torque", "lbf·ft")),
    "N": (("force", "N"), ("force", "N"), ("force", "lbf")),
    "W": (("power", "W"), ("power", "W"), ("power", "hp")),
    "Pa": (("pressure", "MPa"), ("pressure", "MPa"), ("pressure", "psi")),
    "s": (("time", "s"), ("time", "s"), ("time", "s")),
    "m^3": (("volume", "cm³"), ("volume", "in³"), ("volume", "in³")),
    "m^3/s": (("removal rate", "cm³/min"), ("removal rate", "in³/min"), ("removal rate", "in³/min")),
    "N/m": (("stiffness", "N/µm"), ("stiffness", "N/µm"), ("stiffness", "N/µm")),
    "kg": (("mass", "kg"), ("mass", "kg"), ("mass", "lb")),
}
_FEEDS = (("feed", "mm/min"), ("feed", "in/min"), ("feed", "in/min"))
_METRIC, _INCH, _POUNDS = range(3)
_INCHES = frozenset({"in", "thou", "ft", "in/min", "ft/min", "in³", "in³/min"})
_BY_THE_POUND = frozenset({"lbf·ft", "lbf·in", "lbf", "hp", "psi", "lb"})
_MILLIMETRES = frozenset(
    {"mm", "µm", "cm", "m", "mm/min", "mm/s", "m/min", "m/s", "cm³", "mm³", "cm³/min", "mm³/s"}
)
#: Slower than this a speed is a feed [m/s]: nothing cuts at a metre a minute.
_SLOWEST_CUT = 0.02


class Typed(Struct, frozen=True):
    """One value: in SI, the measure and unit that it was typed in where the
    table has it, and its name as a drill.
    """

    value: Any
    measures: str = ""
    symbol: str = ""
    drill: str = ""


def typed(name: str, text: str, unit: str) -> Typed:
    """A typed value, which a formula takes in that SI unit; a length may be a drill's name, `#49` or `H`.

    Raises
    ------
    JobsheetError
        Naming the input and what to write.
    """
    from jobsheet.units.grammar import read, read_number

    try:
        if unit == "m" and (drill := _drill(text)) is not None:
            return drill
    except QuantityError as error:
        raise JobsheetError(f"{name}: {error}") from None
    complaint: QuantityError | None = None
    for measures in _MEASURES.get(unit, ()):
        try:
            return Typed(read(text, measures), measures, _symbol(text, measures))
        except QuantityError as error:
            complaint = complaint or error
    beyond = _beyond_the_table(text, unit)
    if beyond is not None:
        return Typed(beyond)
    if complaint is None:
        try:
            number, rest = read_number(text)
        except QuantityError as error:
            raise JobsheetError(f"{name}: {error}") from None
        if not rest.strip():
            return Typed(number)
        complaint = QuantityError(f"“{rest.strip()}” is no unit here: write the number in {unit}.")
    raise JobsheetError(f"{name}: {complaint}") from None


def _drill(text: str) -> Typed | None:
    from jobsheet.catalog.tools.drills import name_in, read_drill_size

    name = name_in(text)
    return Typed(read_drill_size(text), drill=name) if name is not None else None


def _symbol(text: str, measures: str) -> str:
    """The unit that was written, by its usual sign; empty for a bare number."""
    from jobsheet.units.grammar import read_number
    from jobsheet.units.table import unit

    found = unit(measures, " ".join(read_number(text)[1].split()))
    return found.symbol if found is not None else ""


def _beyond_the_table(text: str, unit: str) -> float | None:
    """A value in any other unit that the units library knows; imported only for this."""
    from jobsheet.units.beyond import convert
    from jobsheet.units.grammar import read_number

    try:
        number, rest = read_number(text)
    except QuantityError:
        return None
    return convert(number, rest.strip(), unit) if rest.strip() else None


def systems(values: tuple[Typed, ...]) -> tuple[int, ...]:
    """In which systems to answer: that of the values, or both where they were
    typed in both; metric where none says.
    """
    signs = {typed.symbol for typed in values}
    inch = bool(signs & _INCHES) or (any(typed.drill for typed in values) and not signs & _MILLIMETRES)
    english = _POUNDS if signs & _BY_THE_POUND else _INCH if inch else None
    if english is None:
        return (_METRIC,)
    return (english, _METRIC) if signs & _MILLIMETRES else (english,)


def answer(value: float, unit: str, values: tuple[Typed, ...]) -> str:
    """A result in the units of what was typed, in both systems where both were."""
    texts = [_in_system(value, unit, system) for system in systems(values)]
    return " = ".join(dict.fromkeys(texts))


def as_typed(one: Typed, unit: str) -> str:
    """A value as it was put in; a drill by its name and its size."""
    from jobsheet.units.show import both_lengths, shown

    if one.drill:
        return f"{one.drill} = {both_lengths(one.value)}"
    if one.symbol and one.symbol != "%":
        return shown(one.value, one.measures, one.symbol)
    return _in_system(one.value, unit, _METRIC)


def _in_system(value: float, unit: str, system: int) -> str:
    """A value in the units people use, three significant digits or more."""
    from jobsheet.units.show import shown, significant

    if unit in _SHOWN:
        row = _FEEDS if unit == "m/s" and abs(value) < _SLOWEST_CUT else _SHOWN[unit]
        measures, symbol = row[system]
        return shown(value, measures, symbol)
    return f"{significant(value, 4)} {'' if unit == '-' else unit}".strip()
