"""What a machine takes in a metal: usual cutters, each with what stops it, in the units that are asked."""

from __future__ import annotations

import pytest

from jobsheet.errors import NoSuchEntry
from jobsheet.reckoning.answers.reach_answer import reach, setting_of
from jobsheet.storage.card_files import find_card

B1 = find_card("bench-mill-b-1")


def test_a_usual_piece_in_the_machine_s_own_vice():
    setting = setting_of(B1, "S235")
    assert setting.grip.kind == "vice"
    assert setting.thickness == setting.extent[2]
    with pytest.raises(NoSuchEntry):
        setting_of(B1, "unobtainium")


@pytest.mark.parametrize("units", ["mm", "in"])
def test_each_pass_has_its_cutter_and_its_answer(units):
    found = reach(B1, "S235", units=units)
    assert len(found.passes) == 4
    assert len({one.words for one in found.passes}) == 4
    for one in found.passes:
        assert one.feed.endswith("a tooth")
        least, most = one.answer.expected or 0, one.answer.tight or 0
        assert 0 <= least <= most or not most
    assert found.tools
