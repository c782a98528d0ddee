"""Every inverse answer is carried and five in a hundred more (or the next size in the list) is not."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from jobsheet.reckoning.answers import largest
from jobsheet.reckoning.answers import reach_answer as reach
from jobsheet.reckoning.answers.inverse import (
    best,
    deepest_pass,
    easy_but,
    is_carried,
    widest_pass,
    with_depth,
    with_width,
)
from jobsheet.storage.card_files import find_card
from tests.reckoning.steps import around, step

MACHINES = ("bench-mill-b-1", "bench-mill-b-2", "knee-mill-k-2")
METALS = ("S235", "6082-T6", "304", "EN-GJL-250")
SOME_METALS = [
    "S235",
    "304",
    *(pytest.param(one, marks=pytest.mark.long) for one in ("6082-T6", "EN-GJL-250")),
]
machines, metals = st.sampled_from(MACHINES), st.sampled_from(METALS)
#: Room for any cut that is asked about, so that the work's own size ends nothing.
ROOMY = {"extent": (0.1, 0.1, 0.1), "thickness": 0.1}


def check(answer, kind, put, fields, setting):
    """Carried at the answer, and as expected there but for what is tight anyway; not carried 5 % above it."""
    if answer.tight is None:
        assert answer.stops
        assert answer.expected is None
        return
    assert best(kind, put(fields, answer.tight), setting, is_carried).carried
    if not answer.end:
        more = best(kind, put(fields, answer.tight * 1.05), setting, is_carried)
        assert not more.carried
        assert answer.stopped is not None
    if answer.expected is None:
        return
    assert answer.expected <= answer.tight * (1 + 1e-9)
    easy = easy_but(frozenset(limit.name for limit in answer.anyway))
    assert easy(best(kind, put(fields, answer.expected), setting, easy))
    if answer.expected < answer.tight * 0.95:
        assert not easy(best(kind, put(fields, answer.expected * 1.05), setting, easy))
        assert answer.hardened is not None


@given(machines, metals, st.sampled_from([(6, 2), (8, 2), (10, 4), (12, 4)]), st.floats(0.01, 0.06))
@settings(max_examples=15)
def test_deepest_slot(machine, metal, cutter, tooth):
    diameter, teeth = cutter
    one = step(
        "slot", cutter=f"end mill {diameter} mm, {teeth} teeth, {4 * diameter} mm out", ends="20, 20; 60, 20", depth="1",
        feed_per_tooth=f"{tooth:.4f}",
    )  # fmt: skip
    setting = around(machine, metal, **ROOMY)
    check(deepest_pass(one, setting), "slot", with_depth, one.fields, setting)


@given(machines, metals, st.floats(5, 49), st.floats(0.03, 0.12))
@settings(max_examples=15)
def test_deepest_face(machine, metal, width, tooth):
    one = step(
        "face",
        cutter="face mill 50 mm, 4 teeth, carbide",
        depth="0.5",
        width=f"{width:.2f}",
        feed_per_tooth=f"{tooth:.4f}",
    )
    setting = around(machine, metal, **ROOMY)
    check(deepest_pass(one, setting), "face", with_depth, one.fields, setting)


@given(machines, metals, st.floats(0.2, 20), st.floats(0.02, 0.08))
@settings(max_examples=15)
def test_widest_side_cut(machine, metal, depth, tooth):
    one = step(
        "side-mill",
        cutter="end mill 16 mm, 4 teeth, 40 mm out",
        depth=f"{depth:.3f}",
        width="1",
        feed_per_tooth=f"{tooth:.4f}",
    )
    setting = around(machine, metal, **ROOMY)
    check(widest_pass(one, setting), "side-mill", with_width, one.fields, setting)


@given(machines, metals, st.sampled_from(["mm", "in"]), st.booleans())
@settings(max_examples=15)
def test_largest_drill(machine, metal, units, piloted):
    setting = around(machine, metal, units=units)
    found = largest.largest_drill(setting, pilot=piloted)
    sizes = [size for size in largest._drills(units) if size.diameter >= 1e-3]

    def made(size):
        there = largest.replace(setting, pilot=largest.usual_pilot(size.diameter).high if piloted else None)
        usual = largest.drill_feed(size.diameter, there.material).value
        ways = [
            best("drill", largest._drilled(size, there, usual * share), there, is_carried)
            for share in (1.0, 0.65, 0.4)
        ]
        return next((one for one in ways if one.carried), ways[0])

    _next_is_not_carried(found, sizes, [size.name for size in sizes], made)


@given(machines, metals, st.sampled_from(["mm", "in"]))
@settings(max_examples=12)
def test_largest_tap(machine, metal, units):
    setting = around(machine, metal, units=units)
    found = largest.largest_tap(setting)
    rows = largest._threads(units)
    method = largest.UNDER_POWER if found.way == largest.UNDER_POWER else largest.BY_HAND

    def made(row):
        return best("tap", largest._tapped(row, setting, method), setting, is_carried)

    names = [largest._short(row) for row in rows]
    if method == largest.BY_HAND and found.stopped is None:
        assert "usual wrench" in found.stops
        assert made(rows[names.index(found.tight)]).carried
        return
    _next_is_not_carried(found, rows, names, made)


@given(machines, metals, st.sampled_from(["mm", "in"]), st.floats(0.1, 4.0))
@settings(max_examples=12)
def test_widest_face_mill(machine, metal, units, depth):
    setting = around(machine, metal, units=units, extent=(0.2, 0.2, 0.05))
    found = largest.widest_face_mill(setting, depth * 1e-3)
    sizes = largest._FACE_MILLS[units]
    names = [f"face mill {largest.trimmed(size, 3)} {units}" for size, _ in sizes]
    feed = largest.face_mill_feed(setting.material).value

    def made(size):
        texts = {
            "cutter": f"face mill {size[0]} {units}, {size[1]} teeth, carbide",
            "depth": f"{depth * 1.0:.9g} mm",
        }
        ways = [
            best(
                "face", step("face", units=units, feed_per_tooth=f"{feed * share * 1e3:.9g} mm", **texts).fields, setting, is_carried
            )
            for share in (1.0, 0.65, 0.35)
        ]  # fmt: skip
        return next((one for one in ways if one.carried), ways[0])

    _next_is_not_carried(found, sizes, names, made)


def _next_is_not_carried(found, rows, names, made):
    """The one that is named is carried; the next in the list is not, and the answer says what stops it."""
    if not found.tight:
        assert found.stops
        return
    index = names.index(found.tight)
    assert made(rows[index]).carried
    if index + 1 < len(rows):
        assert not made(rows[index + 1]).carried
        assert found.stops
    if found.expected:
        assert names.index(found.expected) <= index
        assert found.expected_size <= found.tight_size


@pytest.mark.parametrize("units", ["mm", pytest.param("in", marks=pytest.mark.long)])
@pytest.mark.parametrize("metal", SOME_METALS)
@pytest.mark.parametrize("machine", MACHINES)
def test_everything_that_the_verb_reach_prints(machine, metal, units):
    found = reach.reach(find_card(machine), metal, units=units)
    for one, (_, name, kind, _, _) in zip(found.passes, reach._CUTS[units], strict=True):
        answer = one.answer
        if answer.at is None:
            assert answer.stops
            continue
        put = with_depth if name == "depth" else with_width
        fields = answer.at.fields
        setting = found.setting
        if name == "width":  # a pass may be wider than the usual piece
            wide = fields.cutter.diameter
            setting = largest.replace(setting, extent=(max(0.08, wide), max(0.05, wide), 0.04))
        check(answer, kind, put, fields, setting)
        if answer.plan_shown:  # rounded down: what is printed is carried too
            unit = 1e-3 if units == "mm" else 25.4e-3
            printed = float(answer.plan_shown.split()[0]) * unit
            assert printed <= answer.plan * (1 + 1e-9)
            if printed > 0:
                assert best(kind, put(fields, printed), setting, is_carried).carried
