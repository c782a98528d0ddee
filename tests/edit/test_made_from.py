"""A new part from an old plan: the steps come along, what speaks of the old part alone is left behind."""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.edit.made_from import made_from
from jobsheet.model.job import Dismissed, Photograph, Revision


def test_steps_come_along_and_the_old_part_stays_behind(hm100):
    old = replace(
        hm100, dismissed=(Dismissed(rule="x", reason="y"),), revisions=(Revision(number=3),), photographs=(Photograph(content="0" * 64),),
    )  # fmt: skip
    new = made_from(old, number="N-1", name="Plate", material="6082-T6", stock=None, day="2026-11-30")
    assert new.set_ups == old.set_ups
    assert (new.part.number, new.part.name, new.part.drawing, new.part.revision) == ("N-1", "Plate", "", "")
    assert new.part.quantity == old.part.quantity
    assert (new.dismissed, new.revisions, new.photographs, new.plan_number) == ((), (), (), 0)
    assert (new.material, new.planned_on, new.stock) == ("6082-T6", "2026-11-30", old.stock)


def test_another_stock_stands_in_place_of_the_old_one(hm100):
    other = replace(hm100.stock, relieved=not hm100.stock.relieved)
    assert made_from(hm100, number="N-1", name="", material="S235", stock=other, day="").stock is other
