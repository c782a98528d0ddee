"""`jobsheet work`: any formula, worked; without a name, the list of all with their sources."""

from __future__ import annotations

from typing import Any

import click

from jobsheet.cli.output import as_json, columns, say
from jobsheet.errors import JobsheetError


@click.command("work")
@click.argument("formula", required=False)
@click.argument("inputs", nargs=-1, metavar="[name=value …]")
@click.option("--json", "want_json", is_flag=True, help="as JSON, values in SI units")
def command(formula: str | None, inputs: tuple[str, ...], want_json: bool) -> int:
    """Work a formula with its numbers put in, or list all formulas with their sources.

    Values have units, and the answer has theirs: jobsheet work spindle-speed cutting_speed="30 m/min"
    diameter="12 mm" A diameter may be a drill by its name, diameter="#7" or diameter=H.
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


def _work(function: Any, inputs: tuple[str, ...], want_json: bool) -> None:
    from jobsheet.cli.typed_values import Typed, answer, typed
    from jobsheet.cutting.formula import work
    from jobsheet.units.grammar import nearest

    about = function.formula
    known = about.inputs
    values: dict[str, Typed] = {}
    for item in inputs:
        name, equals, text = item.partition("=")
        name = name.strip().replace("-", "_")
        if not equals:
            raise JobsheetError(f"“{item}” is not name=value; write, for example, {next(iter(known))}=…")
        if name not in known:
            near = nearest(name, tuple(known))
            hint = f"did you mean {near}?" if near else f"its inputs are {', '.join(known)}"
            raise JobsheetError(f"{about.name} has no input called “{name}”; {hint}.")
        values[name] = typed(name, text, known[name].unit)
    try:
        done = work(function, **{name: typed.value for name, typed in values.items()})
    except (TypeError, KeyError):
        missing = [f"{name} [{one.unit}]" for name, one in known.items() if name not in values]
        raise JobsheetError(f"{about.name} still needs {', '.join(missing)}.") from None
    except OverflowError:
        raise JobsheetError(f"{about.name}: these numbers are too large.") from None
    lines = working_lines(done, tuple(known), values)
    if want_json:
        shown = answer(done.result, done.unit, tuple(values.values()))
        as_json({"value": done.result, "unit": done.unit, "shown": shown, "working": lines})
        return
    for line in lines:
        say(line)


def working_lines(done: Any, names: tuple[str, ...], values: dict[str, Any]) -> list[str]:
    """A formula worked, line by line: title, symbols, numbers as they were typed, result, source, caveats."""
    from jobsheet.cli.typed_values import Typed, answer, as_typed

    lines = [done.title, *(f"  {line.strip()}" for line in done.expression.splitlines())]
    lines.extend(
        f"    {term.symbol} = {as_typed(values.get(name, Typed(term.value)), term.unit)}   {term.meaning}"
        for name, term in zip(names, done.inputs, strict=True)
    )
    lines.append(f"  {done.symbol} = {answer(done.result, done.unit, tuple(values.values()))}")
    lines.append(f"  source: {source_words(done.source)}")
    lines.extend(f"  {caveat}" for caveat in done.caveats)
    return lines
