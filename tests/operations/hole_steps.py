"""A hole step reckoned by itself, from texts as they are typed: what the tests of the hole kinds share."""

from __future__ import annotations

import pytest

from jobsheet.catalog.metals.materials import find
from jobsheet.errors import CalcError
from jobsheet.limits.register import limits_of
from jobsheet.model.setting import Setting
from jobsheet.operations.kind import fields_from
from jobsheet.operations.registry import kind
from jobsheet.storage.card_files import find_card


class Step:
    """One step with its figures, row, dials and limits."""

    def __init__(self, name, texts, *, material, pilot=None, thickness=0.012, fluid="brushed", units="mm", machine="knee-mill-k-2"):  # fmt: skip
        self.kind = kind(name)
        self.setting = Setting(
            machine=find_card(machine), material=find(material), units=units, fluid=fluid, pilot=pilot,
            thickness=thickness, extent=(0.1, 0.06, thickness),
        )  # fmt: skip
        self.fields = fields_from(self.kind.fields, self.kind.entries, {"at": "10, 10", **texts}, units)
        self.figures = self.kind.figures(self.fields, self.setting)
        (self.row,) = self.kind.rows(self.fields, self.figures, self.setting)
        self.dials = self.kind.dials(self.fields, self.figures, self.setting)
        self.shapes = self.kind.sweep(self.fields, self.setting)
        self.holes = self.kind.holes(self.fields)

    def value(self, name):
        found = self.figures.value(name)
        assert found is not None, f"{name} is not among the figures"
        return found

    def share(self):
        """Share of the spindle's continuous torque, in per cent."""
        found = limits_of(self.figures, self.setting)
        return 100 * next(one for one in found if one.name == "spindle-torque").share

    def caveats(self):
        return " ".join(self.figures.caveats)


def check(step, printed):
    """Every printed figure: name -> (as printed, factor from SI, half of the printed digit)."""
    for name, (value, factor, tolerance) in printed.items():
        found = step.share() if name == "share" else step.value(name) * factor
        assert found == pytest.approx(value, abs=tolerance + 1e-9), name


def refusal(name, texts, **around):
    """The sentence with which a step is refused."""
    with pytest.raises(CalcError) as found:
        Step(name, texts, **around)
    return str(found.value)
