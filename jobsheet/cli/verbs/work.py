"""`jobsheet work`: any formula, worked; without a name, the list of all with their sources."""

from __future__ import annotations

from typing import Any

import click

from jobsheet.cli.output import as_json, columns, say
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
_SHOWN = {
    "m": ("length", "mm"), "m/rev": ("feed per turn", "mm"), "m/s": ("cutting speed", "m/min"),
    "rev/s": ("spindle speed", "rpm"), "rad": ("angle", "°"), "N*m": ("torque", "N·m"), "N": ("force", "N"),
    "W": ("power", "W"), "Pa": ("pressure", "MPa"), "s": ("time", "s"), "m^3": ("volume", "cm³"),
    "m^3/s": ("removal rate", "cm³/min"), "N/m": ("stiffness", "N/µm"), "kg": ("mass", "kg"),
}  # fmt: skip


@click.command("work")
@click.argument("formula", required=False)
@click.argument("inputs", nargs=-1, metavar="[name=value …]")
@click.option("--json", "want_json", is_flag=True, help="as JSON, values in SI units")
def command(formula: str | None, inputs: tuple[str, ...], want_json: bool) -> int:
    """Work a formula with its numbers put in, or list all formulas with their sources.

    Values have units: jobsheet work spindle-speed cutting_speed="30 m/min" diameter="12 mm"
    """
    from jobsheet.cutting.formula import all_formulas

    formulas = all_formulas()
    if formula is None:
        _list(formulas, want_json)
        return 0
    name = formula.strip().lower().replace("_", "-")
    if name not in formulas:
        from jobsheet.units.grammar import nearest

        near = nearest(name, tuple(formulas))
        hint = f" Did you mean {near}?" if near else " Without a name, jobsheet work lists them all."
        raise JobsheetError(f"There is no formula called “{formula}”.{hint}")
    _work(formulas[name], inputs, want_json)
    return 0


def _list(formulas: dict[str, Any], want_json: bool) -> None:
    described = [function.formula for function in formulas.values()]
    if want_json:
        as_json(
            {
                "formulas": [
                    {
                        "name": one.name,
                        "source": source_words(one.source),
                        "inputs": {
                            name: {"unit": about.unit, "meaning": about.meaning}
                            for name, about in one.inputs.items()
                        },
                        "unit": one.output.unit,
                    }
                    for one in described
                ]
            }
        )
        return
    for one in described:
        say(f"{one.name}")
        say(f"    {one.title}")
        for line in one.expression.splitlines():
            say(f"    {line.strip()}")
        columns(
            [(f"{name}", f"{about.meaning} [{about.unit}]") for name, about in one.inputs.items()], "      "
        )
        say(f"    source: {source_words(one.source)}\n")


def source_words(key: str) -> str:
    """A source in words, as a sheet would print it."""
    from jobsheet.catalog.reading.sources import words

    return words(key)


def _value(name: str, text: str, unit: str) -> Any:
    """A typed value in the SI unit that the formula takes.

    Raises
    ------
    JobsheetError
        Naming the input and what to write.
    """
    from jobsheet.units.grammar import read, read_number

    complaint: QuantityError | None = None
    for measures in _MEASURES.get(unit, ()):
        try:
            return read(text, measures)
        except QuantityError as error:
            complaint = complaint or error
    beyond = _beyond_the_table(text, unit)
    if beyond is not None:
        return beyond
    if complaint is None:
        try:
            number, rest = read_number(text)
        except QuantityError as error:
            raise JobsheetError(f"{name}: {error}") from None
        if not rest.strip():
            return number
        complaint = QuantityError(f"“{rest.strip()}” is no unit here: write the number in {unit}.")
    raise JobsheetError(f"{name}: {complaint}") from None


def _beyond_the_table(text: str, unit: str) -> float | None:
    """A value in any other unit that the units library knows; imported only for this."""
    from jobsheet.units.beyond import convert
    from jobsheet.units.grammar import read_number

    try:
        number, rest = read_number(text)
    except QuantityError:
        return None
    return convert(number, rest.strip(), unit) if rest.strip() else None


def _shown(value: float, unit: str) -> str:
    """A value in the units people use, three significant digits or more."""
    from jobsheet.units.show import shown, significant

    if unit in _SHOWN:
        measures, symbol = _SHOWN[unit]
        return shown(value, measures, symbol)
    return f"{significant(value, 4)} {'' if unit == '-' else unit}".strip()


def _work(function: Any, inputs: tuple[str, ...], want_json: bool) -> None:
    from jobsheet.cutting.formula import work
    from jobsheet.units.grammar import nearest

    about = function.formula
    known = about.inputs
    values: dict[str, Any] = {}
    for item in inputs:
        name, equals, text = item.partition("=")
        name = name.strip().replace("-", "_")
        if not equals:
            raise JobsheetError(f"“{item}” is not name=value; write, for example, {next(iter(known))}=…")
        if name not in known:
            near = nearest(name, tuple(known))
            hint = f"did you mean {near}?" if near else f"its inputs are {', '.join(known)}"
            raise JobsheetError(f"{about.name} has no input called “{name}”; {hint}.")
        values[name] = _value(name, text, known[name].unit)
    try:
        done = work(function, **values)
    except (TypeError, KeyError):
        missing = [f"{name} [{one.unit}]" for name, one in known.items() if name not in values]
        raise JobsheetError(f"{about.name} still needs {', '.join(missing)}.") from None
    except OverflowError:
        raise JobsheetError(f"{about.name}: these numbers are too large.") from None
    lines = working_lines(done)
    if want_json:
        as_json({"value": done.result, "unit": done.unit, "working": lines})
        return
    for line in lines:
        say(line)


def working_lines(done: Any) -> list[str]:
    """A formula worked, line by line: title, symbols, numbers, result, source, caveats."""
    lines = [done.title, *(f"  {line.strip()}" for line in done.expression.splitlines())]
    lines.extend(
        f"    {term.symbol} = {_shown(term.value, term.unit)}   {term.meaning}" for term in done.inputs
    )
    lines.append(f"  {done.symbol} = {_shown(done.result, done.unit)}")
    lines.append(f"  source: {source_words(done.source)}")
    lines.extend(f"  {caveat}" for caveat in done.caveats)
    return lines
