"""A cabinet by its drawers, in the order of fetching, and what is away."""

from __future__ import annotations

from jobsheet.model.own_tools import Cabinet, Thing
from jobsheet.report.cabinet_list import cabinet_facts


def cabinet(*places, **more):
    return Cabinet(
        name="own",
        things=tuple(
            Thing(section="cutters", what=f"drill {row} mm", place=place, row=row, **more)
            for row, place in enumerate(places)
        ),
    )


def test_an_empty_one_says_what_to_begin_with():
    for nothing in (None, cabinet()):
        (facts,) = cabinet_facts(nothing)
        assert facts.rows == ()
        assert "Begin with" in facts.note


def test_drawers_go_by_their_numbers_and_things_without_a_place_come_last():
    found = cabinet_facts(cabinet("", "drawer 10 no. 1", "drawer 2 no. 11", "drawer 2 no. 3", "drawer 2"))
    assert [facts.title for facts in found] == ["Drawer 2", "Drawer 10", ""]
    assert [row[0].split()[0] for row in found[0].rows[:2]] == ["3", "11"]
    assert found[0].rows[-1] == ("drill 4 mm",)


def test_what_is_away_stands_at_the_end_with_where_it_is():
    found = cabinet_facts(cabinet("drawer 1", out="lent"))
    assert found[-1].title == "Not there now"
    assert found[-1].rows == (("drill 0 mm", "lent"),)
