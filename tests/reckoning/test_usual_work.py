"""The usual piece of work: in the machine's own vice, in the units that were asked for."""

from __future__ import annotations

import pytest

from jobsheet.errors import NoSuchEntry
from jobsheet.reckoning.answers.usual_work import setting_of
from jobsheet.storage.card_files import find_card


@pytest.mark.parametrize("units", ["mm", "in"])
def test_it_lies_in_the_vice_of_the_machine(units):
    machine = find_card("bench-mill-b-1")
    setting = setting_of(machine, "S235", units=units)
    assert (setting.machine, setting.units, setting.fluid) == (machine, units, "brushed")
    assert setting.extent == (0.08, 0.05, 0.04)
    assert setting.thickness == 0.04
    assert setting.grip is not None
    assert setting.grip.jaw_width == machine.vices[0].jaw_width


def test_a_metal_that_nobody_knows_is_told():
    with pytest.raises(NoSuchEntry):
        setting_of(find_card("bench-mill-b-1"), "unobtainium")
