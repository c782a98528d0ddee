"""What makes a function a formula: its source, its range, its units, and how it shows itself worked.

A formula takes plain floats and gives one float, always SI, with operators only, so that it also runs on
pint quantities. `@formula` records where it comes from; it does not wrap the function. Units and meanings
are read from the numpy docstring, and only when somebody asks, so that importing a formula costs nothing.

The closed list of units, one of which ends every description of a parameter or a result:

=========  =====================================================================
``-``      a pure number, also a share of 1 and a number "as printed in inches"
``m``      length; also a feed for one tooth
``m/rev``  length for one turn: feed of a drill, lead of a screw
``m^2``    area
``m^3``    volume
``m^4``    second moment of area
``m/s``    cutting speed, table feed
``m^3/s``  removal rate
``m^3/J``  volume cut with one joule
``rev/s``  speed of a spindle, pace of a handle; a turn counts as 1
``Hz``     vibrations, tooth passes a second
``s``      time
``kg``     mass
``N``      force
``N*m``    torque, moment
``N/m``    stiffness
``W``      power
``Pa``     pressure, specific cutting force, modulus
``J/m^3``  energy for one volume cut away
``rad``    angle
``K``      rise of temperature
``1/K``    growth for one kelvin
=========  =====================================================================
"""

from __future__ import annotations

import importlib
import inspect
import math
from collections.abc import Callable, Mapping
from functools import cache, cached_property
from typing import Any, NamedTuple, TypeVar

from jobsheet.cutting.record import Record

Function = Callable[..., Any]
F = TypeVar("F", bound=Function)

UNITS = frozenset(
    {"-", "m", "m/rev", "m^2", "m^3", "m^4", "m/s", "m^3/s", "m^3/J", "rev/s", "Hz", "s", "kg"}
) | {
    *("N", "N*m", "N/m", "W", "Pa", "J/m^3", "rad", "K", "1/K"),
}

# How a range reads in a sentence: unit of the trade, and how many of it are in one SI unit.
_SPOKEN: Mapping[str, tuple[str, float]] = {
    "m": ("mm", 1e3),
    "m/rev": ("mm", 1e3),
    "m/s": ("m/min", 60.0),
    "rev/s": ("rev/min", 60.0),
    "Pa": ("MPa", 1e-6),
    "N/m": ("N/µm", 1e-6),
    "rad": ("degrees", 180.0 / math.pi),
    "-": ("", 1.0),
}


class Quantity(NamedTuple):
    """Unit and meaning of one input or of the result, as the docstring gives them."""

    unit: str
    meaning: str


class Term(NamedTuple):
    """One number put into a worked formula."""

    symbol: str
    meaning: str
    value: float
    unit: str


class _Doc(NamedTuple):
    title: str
    expression: str
    inputs: dict[str, Quantity]
    result: tuple[str, Quantity]


class Formula(Record):
    """What is known about a formula beside its code."""

    function: Function
    name: str
    source: str
    ranges: Mapping[str, tuple[float, float]]
    symbols: Mapping[str, str]

    @property
    def title(self) -> str:
        """First line of the docstring, without its full stop."""
        return _read(self.function).title

    @property
    def expression(self) -> str:
        """The formula as the docstring writes it."""
        return _read(self.function).expression

    @property
    def inputs(self) -> dict[str, Quantity]:
        """Unit and meaning of every input."""
        return dict(_read(self.function).inputs)

    @property
    def output(self) -> Quantity:
        """Unit and meaning of the result."""
        return _read(self.function).result[1]

    @property
    def output_symbol(self) -> str:
        """The sign the expression uses for the result."""
        return _read(self.function).result[0]

    @cached_property
    def widened(self) -> tuple[tuple[str, float | None, float, float], ...]:
        """Each input with a range: its default, and the range a part in a million wider.

        Typed in another unit a limit is still the limit.
        """
        defaults = _defaults(self.function)
        return tuple(
            (name, defaults.get(name), low * (1 - 1e-6), high * (1 + 1e-6))
            for name, (low, high) in self.ranges.items()
        )

    def symbol(self, name: str) -> str:
        """The sign the expression uses for an input; its own name where none was given."""
        return self.symbols.get(name, name)


class Outside(Record):
    """An input that lies outside the range its source covers; all numbers SI."""

    symbol: str
    value: float
    low: float
    high: float
    unit: str

    def __str__(self) -> str:
        """The ready sentence, in metric units of the trade."""
        spoken, scale = _SPOKEN.get(self.unit, (self.unit, 1.0))
        low, high, value = (f"{number * scale:.3g}" for number in (self.low, self.high, self.value))
        tail = f" {spoken}" if spoken else ""
        limits = f"{self.symbol} {low}-{high}{tail}"
        return f"outside the range of the source ({limits}): {self.symbol} is {value}{tail}"


def range_words(unit: str, low: float, high: float) -> str:
    """A range of a source in the metric units of the trade."""
    spoken, scale = _SPOKEN.get(unit, (unit, 1.0))
    tail = f" {spoken}" if spoken else ""
    return f"{low * scale:.3g} to {high * scale:.3g}{tail}"


class Working(Record):
    """A formula with its numbers put in: all a page needs to show how a figure came about."""

    name: str
    title: str
    expression: str
    inputs: tuple[Term, ...]
    result: float
    unit: str
    symbol: str
    source: str
    caveats: tuple[str, ...]


_known: dict[str, Function] = {}


def formula(
    source: str,
    symbols: Mapping[str, str] | None = None,
    **ranges: tuple[float, float],
) -> Callable[[F], F]:
    """Record source, signs and range on a function; the function itself stays as it is.

    Parameters
    ----------
    source : str
        Key of the source in `resources/sources.yaml`
    symbols : mapping, optional
        Sign in the expression for each input whose name is not its sign
    **ranges : tuple of float
        For an input, the lowest and highest value the source covers, SI

    Raises
    ------
    ValueError
        If another formula already has this name.
    """

    def record(function: F) -> F:
        name = function.__name__.replace("_", "-")
        other = _known.get(name)
        if other is not None:
            raise ValueError(f"two formulas are called {name}: {other.__module__} and {function.__module__}")
        _known[name] = function
        noted: Any = function
        noted.formula = Formula(function, name, source, dict(ranges), dict(symbols or {}))
        return function

    return record


def formula_of(function: Function) -> Formula:
    """What `@formula` recorded on a function, with its type."""
    found: Formula = function.formula  # type: ignore[attr-defined]
    return found


def all_formulas() -> dict[str, Function]:
    """Every formula of the package by name; imports the topics that nobody has used yet."""
    import pkgutil  # late: only the pages that list formulas need it

    package = importlib.import_module(__package__ or "jobsheet.cutting")
    for module in pkgutil.walk_packages(package.__path__, f"{package.__name__}."):
        importlib.import_module(module.name)
    return dict(sorted(_known.items()))


def outside(function: Function, **inputs: float) -> list[Outside]:
    """Inputs that lie outside the range of the source, as numbers."""
    recorded = formula_of(function)
    found = []
    for name, otherwise, lowest, highest in recorded.widened:
        value = inputs.get(name, otherwise)
        if value is not None and not lowest <= value <= highest:
            low, high = recorded.ranges[name]
            found.append(Outside(recorded.symbol(name), value, low, high, recorded.inputs[name].unit))
    return found


def outside_validity(function: Function, **inputs: float) -> list[str]:
    """Ready sentences about inputs outside the range of the source; empty when all are inside."""
    return [str(one) for one in outside(function, **inputs)]


def work(function: Function, **inputs: float) -> Working:
    """Calculate a formula and keep all that shows how: signs, meanings, numbers, source, caveats."""
    recorded = formula_of(function)
    given = {**_defaults(function), **inputs}
    known = _read(function)
    terms = tuple(
        Term(recorded.symbol(name), quantity.meaning, given[name], quantity.unit)
        for name, quantity in known.inputs.items()
    )
    symbol, output = known.result
    return Working(
        name=recorded.name,
        title=known.title,
        expression=known.expression,
        inputs=terms,
        result=function(**inputs),
        unit=output.unit,
        symbol=symbol,
        source=recorded.source,
        caveats=tuple(outside_validity(function, **inputs)),
    )


# --- refusing what has no meaning ---------------------------------------------------------------------------
# Operators only: the same checks stand when the inputs are pint quantities.


# --- reading the docstring ----------------------------------------------------------------------------------


@cache
def _defaults(function: Function) -> dict[str, float]:
    parameters = inspect.signature(function).parameters.values()
    return {
        parameter.name: parameter.default
        for parameter in parameters
        if parameter.default is not inspect.Parameter.empty
    }


@cache
def _read(function: Function) -> _Doc:
    text = inspect.getdoc(function) or ""
    sections = _sections(text)
    paragraphs = sections[""].split("\n\n")
    title = paragraphs[0].strip().rstrip(".")
    expression = paragraphs[1].strip() if len(paragraphs) > 1 else ""
    inputs = _entries(sections.get("Parameters", ""))
    results = _entries(sections.get("Returns", ""))
    result = next(iter(results.items()), ("", Quantity("", "")))
    return _Doc(title or function.__name__, expression, inputs, result)


def _sections(text: str) -> dict[str, str]:
    """Cut a numpy docstring at its underlined headings; what stands before the first is under ''."""
    found: dict[str, list[str]] = {"": []}
    heading = ""
    lines = text.splitlines()
    for position, line in enumerate(lines):
        below = lines[position + 1] if position + 1 < len(lines) else ""
        if below and not below.strip("-") and len(below) == len(line):
            heading = line
            found[heading] = []
        elif not (line and not line.strip("-")):
            found[heading].append(line)
    return {key: "\n".join(body).strip("\n") for key, body in found.items()}


def _entries(section: str) -> dict[str, Quantity]:
    """Names, meanings and units under one heading; a unit stands in the last square brackets."""
    entries: dict[str, Quantity] = {}
    name, words = "", ""
    for line in [*section.splitlines(), "end"]:
        if line and not line[0].isspace():
            if name:
                meaning, _, unit = words.strip().rpartition(" [")
                entries[name] = Quantity(unit.rstrip("]"), meaning)
            name, words = line.partition(":")[0].strip(), ""
        else:
            words += f" {line.strip()}"
    return entries
