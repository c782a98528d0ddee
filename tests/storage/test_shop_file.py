"""A workshop's own numbers change verdicts and minutes; a wrong file says where."""

from __future__ import annotations

import pytest

from jobsheet.catalog.reading.strict_yaml import parse
from jobsheet.errors import DocumentError
from jobsheet.model.shop import Shop
from jobsheet.reckoning.minutes import minutes_of_job
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.shop_file import CALLED, NAME, OPINIONS, PLACE, PRINTED, SHOP, shop_from_text, workshop


def test_without_a_file_the_usual_numbers_hold():
    assert workshop() == Shop()
    assert {entry.name for entry in (*SHOP, *OPINIONS, *PLACE, *PRINTED, *CALLED)} == set(
        Shop.__struct_fields__
    )


def test_a_slower_hand_makes_the_facing_tight(hm100, own_home):
    (own_home / NAME).write_text("format: 1\nfastest pace: 40 turns a minute\n", encoding="utf-8")
    outcome = Reckoner().reckon(hm100).operations["face-rough"]
    assert (
        next(one for one in outcome.limits if one.name == "hand-pace").verdict == "tight"
    )  # 44.8 turns, of 40 that nine in ten keep and 64 that half do


def test_minutes_around_the_cut(hm100, own_home):
    """20 min to set up, 18 by hand, 5 tools at 2 min, one size at 1.5 min; 7 in the cut."""
    found = minutes_of_job(Reckoner().reckon(hm100))
    assert found.set_up == 20 * 60
    assert found.bench == 18 * 60
    assert found.change == 5 * 2 * 60
    assert found.measure == 90
    assert found.cut / 60 == pytest.approx(2.3 + 2.9 + 0.5 + 1.0, abs=0.1)
    assert found.whole == pytest.approx(found.around + found.cut)
    (own_home / NAME).write_text("format: 1\ntool change time: 5 min\n", encoding="utf-8")
    assert minutes_of_job(Reckoner().reckon(hm100)).change == 5 * 5 * 60


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("fastest pase: 40 rpm\n", "did you mean fastest pace"),
        ("fastest pace: fast\n", "not a spindle speed"),
        ("fastest pace: [1, 2]\n", "this is a list"),
        ("easy push: 300 N\n", "must be less than strong push"),
        ("wear milling: 9\n", "at most 2"),
        ("- a\n", "a group of fields"),
    ],
)
def test_a_wrong_file_says_where(own_home, text, says):
    (own_home / NAME).write_text(text, encoding="utf-8")
    with pytest.raises(DocumentError, match=says):
        workshop()


def test_nothing_in_the_file_has_to_be_said(own_home):
    """Its format alone is a workshop, with the usual numbers."""
    (own_home / NAME).write_text("format: 1\n", encoding="utf-8")
    assert workshop() == Shop()
    assert [one.name for one in (*SHOP, *OPINIONS, *PLACE, *PRINTED, *CALLED) if not one.optional] == []


PAIRS = (
    ("slowest_pace", "fastest_pace", 20, "rpm"), ("easy_push", "strong_push", 100, "N"), ("easy_wrench", "strong_wrench", 50, "N"),
    ("stiff_crank", "stuck_crank", 50, "N"), ("least_finish", "most_finish", 0.2, "mm"), ("very_close_limits", "close_limits", 0.04, "mm"),
)  # fmt: skip


@pytest.mark.parametrize(("low", "high", "number", "unit"), PAIRS)
def test_of_two_numbers_that_belong_together_the_lower_is_really_lower(low, high, number, unit):
    """Asked with both the same, a hair apart, and the wrong way round; the line is that of the lower one."""

    def told(first, second):
        text = f"{high.replace('_', ' ')}: {second:.6f} {unit}\n{low.replace('_', ' ')}: {first:.6f} {unit}\n"
        try:
            shop_from_text(parse(f"format: 1\n{text}", "workshop.yaml"), "workshop.yaml")
        except DocumentError as refused:
            return [str(one) for one in refused.problems]
        return []

    wrong = [f"line 3: {low.replace('_', ' ')}: this must be less than {high.replace('_', ' ')}"]
    assert told(number, number * 1.001) == []
    assert told(number, number) == wrong
    assert told(number * 1.001, number) == wrong
