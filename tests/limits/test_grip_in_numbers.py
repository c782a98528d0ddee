"""Holding in all that it says: the pull of a cut, what turns the work, what lifts it
(cutting-data 1.14, holding-and-more-kinds A).
"""

from __future__ import annotations

import math
from types import SimpleNamespace

import pytest
from msgspec.structs import replace

from jobsheet.catalog.metals.materials import find
from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.limits.each import holding
from jobsheet.model.figure import Figure, Figures
from jobsheet.model.quantity import Depth
from jobsheet.model.setting import Grip, Setting
from jobsheet.model.shop import Shop
from jobsheet.storage.card_files import find_card

#: 2 × 0.12 × 5 kN holds 1200 N; its band 1.5 times either way.
VICE = Grip(
    kind="vice", force=5000.0, low=5000 / 1.5, high=7500.0, friction=0.12, jaw_depth=0.025, jaw_width=0.08, above=0.006, working="a handle"
)  # fmt: skip
STRAPS = replace(VICE, kind="straps", jaw_width=None, jaw_depth=None, above=None)
THROUGH, BLIND = Depth(None, "through"), Depth(0.01, "10 mm")


def say(grip=VICE, cutter="drill 12 mm", depth=BLIND, extent=(0.1, 0.06, 0.02), shop=None, **values):
    made = Figures(tuple(Figure(name, value, "", "") for name, value in values.items()))
    setting = Setting(machine=find_card("bench-mill-b-1"), material=find("S235"), grip=grip, extent=extent, shop=shop or Shop())  # fmt: skip
    fields = SimpleNamespace(cutter=read_cutter(cutter, "mm") if cutter else None, depth=depth)
    return holding.limit(made, setting, fields)


@pytest.mark.parametrize(
    "values",
    [
        {}, {"torque": 3.0},  # a hand at a wrench
        {"spindle_speed": 9.0}, {"lift": 50.0},
    ],
)  # fmt: skip
def test_nothing_pulls_nothing_is_said(values):
    assert say(**values) is None


def test_nothing_is_said_where_nobody_knows_what_holds_it():
    assert say(None, in_plane_peak=100.0) is None
    assert say(None, torque=3.0, spindle_speed=9.0) is None


@pytest.mark.parametrize(
    ("pull", "lift", "verdict", "sentence"),
    [
        # 2.5 × √(pull² + lift²) of 1200 N: six tenths of it at 288 N, all of it at 480 N.
        (287.0, None, "expected", "grip enough"), (289.0, None, "tight", "grip doubtful: tighten, hold more of it, or cut lighter"),
        (479.0, None, "tight", "grip doubtful: tighten, hold more of it, or cut lighter"),
        (481.0, None, "beyond", "grip not enough: clamp better or cut lighter"),
        (229.0, 171.7, "expected", "grip enough"), (231.0, 173.3, "tight", "grip doubtful: tighten, hold more of it, or cut lighter"),
        (0.0, 500.0, "beyond", "grip not enough: clamp better or cut lighter"),
    ],
)  # fmt: skip
def test_one_peak_of_a_milling_cut(pull, lift, verdict, sentence):
    values = {"in_plane_peak": pull} | ({} if lift is None else {"lift": lift})
    found = say(cutter="end mill 12 mm", **values)
    wanted = 2.5 * math.hypot(pull, lift or 0.0)
    assert (found.verdict, found.sentence) == (verdict, sentence)
    assert (found.name, found.title, found.unit, found.chance) == ("holding", "Holding", "N", None)
    assert (found.demand, found.capacity, found.share) == (pytest.approx(wanted), pytest.approx(1200), pytest.approx(wanted / 1200))  # fmt: skip
    assert (found.low, found.high) == (pytest.approx(800), pytest.approx(1800))
    assert found.shown == f"{wanted / 1000:.2f} of 1.20 kN"
    assert (
        found.working == f"2.5 × √({pull:.0f}² + {lift or 0:.0f}²) N; 2 μ F = 2 × 0.12 × 5.00 kN; F: a handle"
    )


@pytest.mark.parametrize(
    ("above", "deep", "factor"),
    [
        (0.006, 0.025, 2.5), (0.025, 0.025, 2.5), (0.0251, 0.025, 4.0),  # it stands higher over the jaws than they hold
        (None, 0.025, 2.5), (0.03, None, 2.5),
    ],
)  # fmt: skip
def test_work_that_stands_high_wants_four_times(above, deep, factor):
    """2.5 times, 4 where it stands high over the jaws (cutting-data section 1.14)."""
    held = replace(VICE, above=above, jaw_depth=deep)
    assert say(held, cutter="end mill 12 mm", in_plane_peak=100.0).demand == pytest.approx(100 * factor)
    assert say(held, torque=10.0, spindle_speed=9.0).demand == pytest.approx(10 * factor)


def test_the_workshop_s_own_factors():
    own = Shop(holding_factor=2.0, holding_factor_high=5.0)
    assert say(in_plane_peak=100.0, shop=own).demand == pytest.approx(200)
    assert say(replace(VICE, above=0.03), in_plane_peak=100.0, shop=own).demand == pytest.approx(500)


@pytest.mark.parametrize(
    ("grip", "extent", "holds", "words"),
    [
        # Jaws are turned by their force times a sixth of what they hold: 80 mm of
        # them, or the work where it is shorter.
        (VICE, (0.1, 0.06, 0.02), 5000 * 0.08 / 6, "F × a sixth of what the jaws hold"),
        (VICE, (0.05, 0.06, 0.02), 5000 * 0.05 / 6, "F × a sixth of what the jaws hold"),
        # Under straps friction at the mean radius of the face, 0.38 of its shorter side.
        (STRAPS, (0.1, 0.06, 0.02), 1200 * 0.38 * 0.06, "2 μ F × 0.38 of the shorter side"),
        (STRAPS, (0.04, 0.06, 0.02), 1200 * 0.38 * 0.04, "2 μ F × 0.38 of the shorter side"),
    ],
)
@pytest.mark.parametrize(
    ("share", "verdict", "sentence"),
    [
        (0.59, "expected", "grip enough"), (0.61, "tight", "grip doubtful: it may turn the work: set a stop"),
        (0.99, "tight", "grip doubtful: it may turn the work: set a stop"),
        (1.01, "beyond", "grip not enough: it turns the work: set a stop, or clamp better"),
    ],
)  # fmt: skip
def test_what_turns_the_work(grip, extent, holds, words, share, verdict, sentence):
    torque = share * holds / 2.5
    found = say(grip, extent=extent, torque=torque, spindle_speed=9.0)
    assert (found.verdict, found.sentence) == (verdict, sentence)
    assert (found.name, found.title, found.unit) == ("holding", "Holding", "N*m")
    assert (found.demand, found.capacity, found.share) == (pytest.approx(2.5 * torque), pytest.approx(holds), pytest.approx(share))  # fmt: skip
    assert (found.low, found.high) == (pytest.approx(holds / 1.5), pytest.approx(holds * 1.5))
    assert found.shown == f"{2.5 * torque:.1f} of {holds:.3g} N·m"
    assert found.working == f"2.5 × {torque:.2f} N·m; {words}; F: a handle"


@pytest.mark.parametrize(
    ("share", "verdict", "sentence"),
    [
        (0.59, "expected", "grip enough"),
        (0.61, "tight", "grip doubtful: it may lift the work as it breaks through: clamp better and ease off"),
        (1.01, "beyond", "grip not enough: it lifts the work as it breaks through: clamp from above, or drill in stages"),
    ],
)  # fmt: skip
@pytest.mark.parametrize("cutter", ["drill 12 mm", "core drill 12 mm"])
def test_what_lifts_the_work_at_break_through(cutter, share, verdict, sentence):
    """1.155 M/D (holding-and-more-kinds A1), no factor on it; jaws of a metre are not turned before."""
    torque = share * 1200 * 0.012 / (2 * math.tan(math.radians(30)))
    found = say(
        replace(VICE, jaw_width=1.0), cutter, THROUGH, (1.0, 1.0, 0.02), torque=torque, spindle_speed=9.0
    )
    assert (found.verdict, found.sentence) == (verdict, sentence)
    assert (found.demand, found.unit, found.share) == (pytest.approx(1200 * share), "N", pytest.approx(share))
    assert found.working.startswith(
        f"at break-through 2 M / D × tan 30° = 2 × {torque:.2f} N·m / 12 mm × 0.577; 2 μ F"
    )
    assert torque / 0.012 * 1.155 == pytest.approx(found.demand, rel=1e-3)


@pytest.mark.parametrize(
    ("cutter", "depth", "unit"),
    [
        ("drill 12 mm", THROUGH, "N"), ("drill 12 mm", BLIND, "N*m"), ("drill 12 mm", None, "N*m"),
        ("reamer 12 mm", THROUGH, "N*m"),  # its flutes pull nothing in
        ("drill", THROUGH, "N*m"),  # of no size
        (None, THROUGH, "N*m"),
    ],
)  # fmt: skip
def test_only_a_drill_that_goes_through_lifts(cutter, depth, unit):
    """20 N·m turn with 50 of 66.7 N·m, 0.75; a 12 mm drill lifts 1925 of 1200 N."""
    assert say(cutter=cutter, depth=depth, torque=20.0, spindle_speed=9.0).unit == unit


@pytest.mark.parametrize("extent", [(0.0, 0.06, 0.02), (0.1, 0.0, 0.02)])
def test_where_the_size_of_the_work_is_not_known_it_may_only_be_lifted(extent):
    assert say(extent=extent, torque=20.0, spindle_speed=9.0) is None
    assert say(depth=THROUGH, extent=extent, torque=20.0, spindle_speed=9.0).unit == "N"


def test_the_nearer_of_turning_and_lifting_is_said():
    """A drill of 40 mm with 20 N·m lifts 577 of 1200 N, 0.48; it turns with 50 of 66.7 N·m."""
    assert say(cutter="drill 40 mm", depth=THROUGH, torque=20.0, spindle_speed=9.0).unit == "N*m"
    assert say(cutter="drill 20 mm", depth=THROUGH, torque=20.0, spindle_speed=9.0).unit == "N"


@pytest.mark.parametrize("values", [{"in_plane_peak": 1.0}, {"torque": 1.0, "spindle_speed": 9.0}])
def test_what_is_just_at_a_factor_belongs_to_the_better_word(values):
    """With a factor of one what is wanted is what pulls: all that holds, and six tenths of it."""
    own = Shop(holding_factor=1.0)
    holds = say(shop=own, **values).capacity
    first = next(iter(values))
    for share, better, worse in ((1.0, "tight", "beyond"), (0.6, "expected", "tight")):
        at = holds * share
        for asked, verdict in ((at, better), (math.nextafter(at, math.inf), worse)):
            assert say(shop=own, **{**values, first: asked}).verdict == verdict
