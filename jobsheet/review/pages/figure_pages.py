"""Pages of the help for figures and for the formulas that they come from."""

from __future__ import annotations

from jobsheet.catalog.reading.sources import words as source_words
from jobsheet.cutting.formula import Formula, all_formulas, formula_of, range_words
from jobsheet.operations.names import FIGURES
from jobsheet.review.pages.one_page import Page


def figure_pages() -> list[Page]:
    """One for each figure."""
    return [
        Page(
            id=f"figure:{name}", sort="figure", title=named.title,
            lines=(
                ("Measures", named.measures),
                ("Shown in", " or ".join(dict.fromkeys(unit for unit in (named.metric, named.inch) if unit)) or "a plain number"),
                ("How it came about", "Show the working, in the margin of a step, has every formula with its numbers put in."),
            ),
        )
        for name, named in FIGURES.items()
    ]  # fmt: skip


def formula_pages() -> list[Page]:
    """One for each formula."""
    return [_formula(formula_of(function)) for function in all_formulas().values()]


def _unit(text: str) -> str:
    return "" if text == "-" else f" [{text}]"


def _formula(formula: Formula) -> Page:
    """Its sign language, what is put in, and by whose word."""
    expression = "  ".join(line.strip() for line in formula.expression.splitlines())
    lines = [("", expression)] if expression else []
    lines += [
        (formula.symbol(name), f"{said.meaning}{_unit(said.unit)}") for name, said in formula.inputs.items()
    ]
    lines.append((formula.output_symbol, f"{formula.output.meaning}{_unit(formula.output.unit)}"))
    lines += [
        ("Source covers", f"{formula.symbol(name)} from {range_words(formula.inputs[name].unit, low, high)}")
        for name, (low, high) in formula.ranges.items()
    ]
    lines.append(("Source", source_words(formula.source)))
    return Page(id=f"formula:{formula.name}", sort="formula", title=formula.title, lines=tuple(lines))
