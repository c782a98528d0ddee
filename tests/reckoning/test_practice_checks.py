"""What every machinist knows, asked of limits and advice; each is common practice, no source."""

from __future__ import annotations

import pytest

from jobsheet.catalog.cuts.feeds import drill_feed
from jobsheet.catalog.metals.materials import find
from jobsheet.reckoning.adviser.best_cut import best_cut
from jobsheet.reckoning.adviser.start_values import LEAST_DRILL
from jobsheet.reckoning.answers.inverse import deepest_here
from jobsheet.reckoning.what_if import tried
from jobsheet.storage.card_files import find_card
from tests.reckoning.steps import around, step


def beyond(one, setting):
    found = tried(one.kind, one.fields, setting)
    assert not found.problem
    return {limit.name: limit.sentence for limit in found.limits if limit.verdict == "beyond"}


def slot(wide, depth):
    return step(
        "slot", cutter=f"slot drill {wide} mm, {2 * wide + 6} mm out", ends="20, 20; 60, 20", depth=f"{depth} mm",
        feed_per_tooth="0.03 mm",
    )  # fmt: skip


def test_the_bench_mill_has_600_watts():
    assert find_card("bench-mill-b-1").spindle.power.value == pytest.approx(600, rel=0.1)


def test_13_mm_from_solid_on_a_knee_mill_at_the_lowest_feed_that_cuts():
    """A drill as it is used, in pecks that last less than 13 s: as long as an arm gives its whole push."""
    feed = LEAST_DRILL * drill_feed(13e-3, find("S235")).value * 1e3
    one = step("drill", cutter="drill 13", at="20, 20", depth="20 mm", feed=f"{feed:.4f} mm", peck="4 mm")
    assert beyond(one, around("knee-mill-k-2", "S235")) == {}


def test_a_slot_of_12_mm_2_mm_deep_in_mild_steel_on_600_watts():
    assert beyond(slot(12, 2), around("bench-mill-b-1", "S235")) == {}


def test_a_side_cut_30_mm_deep_on_600_watts_is_beyond_without_any_test_cut():
    one = step(
        "side-mill", cutter="end mill 12 mm, 4 teeth, 45 mm out", side="left", way="conventional", width="6 mm", depth="30 mm",
        feed_per_tooth="0.03 mm",
    )  # fmt: skip
    assert (
        "deeper than this kind of machine carries" in beyond(one, around("bench-mill-b-1", "S235"))["chatter"]
    )


@pytest.mark.parametrize("cutter", ["end mill 20 mm, 4 teeth, HSS", "face mill 50 mm, 4 teeth, carbide"])
def test_aluminium_can_be_faced_on_a_bench_mill(cutter):
    one = step("face", cutter=cutter, depth="1 mm", feed_per_tooth="0.05 mm")
    found = best_cut(one, around("bench-mill-b-1", "6082-T6"))
    assert found is not None
    assert found.clears


def test_a_slot_of_10_mm_is_not_offered_12_mm_deep():
    setting = around("knee-mill-k-2", "S235")
    found = best_cut(slot(10, 12), setting)
    assert (found.found.value("layers") or 1) >= 3
    assert deepest_here(slot(10, 12), setting).plan <= 5e-3
