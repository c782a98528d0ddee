"""How the figures came about: every formula with its numbers put in, its result and its source."""

from __future__ import annotations

from jobsheet.catalog.reading.sources import words as source_words
from jobsheet.cutting.formula import all_formulas, outside_validity, work
from jobsheet.model.figure import Step
from jobsheet.operations.names import FIGURES
from jobsheet.report.blocks import Gap, Heading, Words, Worked
from jobsheet.report.plan import Plan
from jobsheet.report.wording import CALCULATED
from jobsheet.units.show import significant
from jobsheet.units.table import BY_SPELLING

#: SI unit -> what is measured and the unit of the trade it is printed in.
_SHOWN = {
    "m": ("length", "mm"), "m/rev": ("feed per turn", "mm"), "rev/s": ("spindle speed", "rpm"),
    "rad": ("angle", "°"), "N*m": ("torque", "N·m"), "N": ("force", "N"), "W": ("power", "W"),
    "Pa": ("pressure", "MPa"), "s": ("time", "s"), "m^3": ("volume", "cm³"), "m^3/s": ("removal rate", "cm³/min"),
    "N/m": ("stiffness", "N/µm"), "kg": ("mass", "kg"),
}  # fmt: skip

#: Slower than this a speed is a feed [m/s]: nothing cuts at a metre a minute.
SLOWEST_CUT = 0.02


def working(plan: Plan) -> list[object]:
    """Blocks of all operations that something was reckoned for, in cutting order."""
    blocks: list[object] = [Words(CALCULATED, "body"), Gap(2)]
    for set_up in plan.job.set_ups:
        for operation in set_up.operations:
            outcome = plan.reckoned.operations[operation.key]
            figures = outcome.figures
            if figures is None or not figures.working:
                continue
            name = plan.short(outcome.title, 80, f"step {operation.number}")
            blocks.append(Heading(f"Step {operation.number}", name))
            steps = [worked(step) for step in figures.working]
            below = {caveat for step in steps for caveat in step.caveats}
            blocks += [
                Words(f"Caveat: {caveat}", "note bold") for caveat in figures.caveats if caveat not in below
            ]
            blocks += steps
    return blocks


def worked(step: Step) -> Worked:
    """One formula as it was used."""
    title = FIGURES[step.figure].title if step.figure in FIGURES else step.figure.replace("_", " ")
    function = all_formulas().get(step.formula)
    if function is None:
        numbers = ", ".join(
            f"{name} = {value:.6g}" for name, value in step.inputs if isinstance(value, float)
        )
        return Worked(
            title=title, expression=step.formula, numbers=numbers, result=significant(step.result), source=""
        )
    done = work(function, **dict(step.inputs))
    numbers = ", ".join(
        f"{term.symbol} = {in_unit(term.value, term.unit)} ({term.meaning.rstrip('.')})"
        for term in done.inputs
    )
    return Worked(
        title=f"{title}: {done.title[:1].lower()}{done.title[1:]}",
        expression="  ".join(line.strip() for line in done.expression.splitlines()),
        numbers=numbers,
        result=f"{done.symbol} = {in_unit(step.result, done.unit)}",
        source=source_words(done.source),
        caveats=tuple(outside_validity(function, **dict(step.inputs))),
    )


def in_unit(value: object, unit: str) -> str:
    """A value of a formula in the unit that people use, four significant digits."""
    if not isinstance(value, (int, float)):
        return str(value)
    if unit == "m/s":
        # A cutting speed is written in m/min, a feed in mm/min: by its size.
        return f"{_four(value * 60)} m/min" if value > SLOWEST_CUT else f"{_four(value * 6e4)} mm/min"
    if unit == "J/m^3":
        return f"{_four(value * 1e-9)} J/mm³"
    if unit in _SHOWN:
        measures, symbol = _SHOWN[unit]
        return f"{_four(value / BY_SPELLING[measures, symbol].size)}{'' if symbol == '°' else ' '}{symbol}"
    return f"{_four(value)} {unit.strip('-')}".strip()


def _four(value: float) -> str:
    """Four significant digits, without noughts at the end."""
    text = significant(value, 4)
    return text.rstrip("0").rstrip(".") if "." in text else text
