"""Collects the figures of one operation and, beside each, the formula it came from."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from msgspec.structs import replace

from jobsheet.cutting.formula import formula_of, outside_validity
from jobsheet.model.figure import EdgeSpeed, Figure, Figures, Step
from jobsheet.operations.names import FIGURES, show, si_unit

#: Kienzle's constants describe a family of steels, not this bar: cutting-data
#: section 2.1, spread between sources.
KIENZLE_BAND = (0.75, 1.35)
#: The handbook's drilling constants: no spread is printed; taken as for milling (estimate).
DRILL_BAND = (0.75, 1.35)


#: Where each figure stands among all.
_ORDER = {name: index for index, name in enumerate(FIGURES)}


class Tally:
    """Figures in the order in which they are reckoned; made anew for each reckoning."""

    def __init__(self, units: str) -> None:
        self._units = units
        self._figures: dict[str, Figure] = {}
        self._steps: list[Step] = []
        self._caveats: list[str] = []
        self._missing_speed: float | None = None
        self._gaps = False
        self._edge: EdgeSpeed | None = None

    def use(self, figure: str, formula: Callable[..., float], **inputs: Any) -> float:
        """The result of a formula, kept with what was put in; outside its
        source's range a caveat is kept too.
        """
        result, known = formula(**inputs), formula_of(formula)
        self._steps.append(Step(figure, known.name, tuple(inputs.items()), result))
        if known.widened:  # one formula in five has a range at all
            for caveat in outside_validity(formula, **inputs):
                self.caveat(caveat)
        return result

    def show(self, name: str, value: float, band: tuple[float, float] | None = None) -> float:
        """Keep a figure for the margin and the sheet; the band is given as factors on it."""
        low, high = (value * band[0], value * band[1]) if band else (None, None)
        self._figures[name] = Figure(name, value, si_unit(name), show(name, value, self._units), low, high)
        return value

    def in_words(self, name: str, said: str) -> None:
        """Say a figure that is kept in words: its number would claim more than is known."""
        self._figures[name] = replace(self._figures[name], shown=said)

    def figure(
        self,
        name: str,
        formula: Callable[..., float],
        *,
        band: tuple[float, float] | None = None,
        **inputs: Any,
    ) -> float:
        """Use a formula and show its result under that name."""
        return self.show(name, self.use(name, formula, **inputs), band)

    def caveat(self, sentence: str) -> None:
        """Something to say about these figures as a whole."""
        if sentence not in self._caveats:
            self._caveats.append(sentence)

    def missing_speed(self, asked: float) -> None:
        """Keep a speed [rev/s] that was typed and that the machine has not."""
        self._missing_speed = asked

    def take(self, reckoned: Figures, renamed: dict[str, str], as_they_are: tuple[str, ...] = ()) -> None:
        """Take over figures of a part reckoned apart, some under another
        name; its caveats and working too.
        """
        for figure in reckoned.items:
            name = renamed.get(figure.name, figure.name if figure.name in as_they_are else None)
            if name is not None:
                self._figures[name] = replace(figure, name=name)
        self._steps.extend(reckoned.working)
        for caveat in reckoned.caveats:
            self.caveat(caveat)

    def gaps(self) -> None:
        """Say that between two teeth nothing cuts."""
        self._gaps = True

    def edge(self, edge_speed: EdgeSpeed | None) -> None:
        """Keep how fast the edge may run."""
        self._edge = edge_speed

    def done(self) -> Figures:
        """All figures, in the order of `FIGURES`."""
        items = sorted(self._figures.values(), key=lambda figure: _ORDER[figure.name])
        return Figures(
            tuple(items),
            tuple(self._steps),
            tuple(self._caveats),
            self._missing_speed,
            self._gaps,
            self._edge,
        )
