"""The sum over angle and helix against the check cases, its closed limits, and a plain sum of slices."""

from __future__ import annotations

import math
from functools import partial
from math import pi
from time import perf_counter

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from jobsheet.cutting.chip import arc_chip_thickness
from jobsheet.cutting.kienzle import specific_cutting_force
from jobsheet.cutting.textbook.force_and_power import straight_tooth_force
from jobsheet.cutting.textbook.tooth_forces import helix_lag, mean_tangential_force
from jobsheet.cutting.toothforce import face_arc, side_arc, tooth_forces
from jobsheet.errors import CalcError

from .published_forces import CASES, FACE, FULL, cut
from .row import MM


@pytest.mark.parametrize("case", CASES.values(), ids=CASES)
def test_check_cases_within_half_a_percent(case):
    diameter, teeth, helix, depth, ask_arc, fz, chip, kc, t, x, y, a, torque = case
    arc = ask_arc()
    assert arc_chip_thickness(fz * MM, *arc) / MM == pytest.approx(chip, abs=6e-6)
    assert specific_cutting_force(
        1500e6, 0.21, arc_chip_thickness(fz * MM, *arc), 1.1
    ) / 1e6 == pytest.approx(kc, abs=1)

    got = cut(diameter, teeth, helix, depth, arc, fz)

    found = (
        *(got.tangential_mean, got.tangential_peak, got.feed_mean, got.feed_low, got.feed_high),
        *(got.side_mean, got.side_low, got.side_high, got.axial_mean, got.axial_peak),
    )
    for mine, printed in zip(found, (*t, *x, *y, *a), strict=True):
        # half a percent, or half a unit of the last printed digit
        assert mine == pytest.approx(printed, rel=0.005, abs=0.005 if abs(printed) < 1 else 0.05)
    assert (got.torque_mean, got.torque_peak) == pytest.approx(torque, rel=0.005)


@pytest.mark.parametrize(
    ("name", "ratio"),
    [("C1", 1.11), ("C3", 1.36), ("C5", 1.48), ("C6", 1.57), ("C8", 1.46), ("C9", 1.42), ("C10", 4.13)],
)
def test_peak_over_mean(name, ratio):
    case = next(value for key, value in CASES.items() if key.split()[0] == name)
    forces = cut(*case[:6])
    assert forces.tangential_peak / forces.tangential_mean == pytest.approx(ratio, abs=0.006)


@pytest.mark.parametrize(
    ("arc", "depth", "tip", "top"),
    [
        (partial(side_arc, 0.3 * MM, 12 * MM), 12, -18.0, 0.0),
        (partial(side_arc, 0.3 * MM, 12 * MM, climb=True), 12, 0.0, 59.6),
        (partial(side_arc, 6 * MM, 12 * MM), 6, 0.6, 679),
        (partial(side_arc, 6 * MM, 12 * MM, climb=True), 6, 177, 855),
        (partial(side_arc, 2 * MM, 12 * MM), 12, -15.0, 115),
    ],
)
def test_side_force_while_the_wall_is_made(arc, depth, tip, top):
    forces = [force for _, force in cut(12, 4, 30, depth, arc, 0.04).wall]
    # -15.0 of the last case was read from fewer heights; the corner itself is at -15.3.
    assert min(forces) == pytest.approx(tip, abs=0.3)
    assert max(forces) == pytest.approx(top, rel=0.005)


def test_the_sign_of_the_wall_comes_from_the_sum():
    assert cut(12, 4, 30, 12, side_arc(0.3 * MM, 12 * MM), 0.04).wall_force < 0  # pushed off: metal left
    assert cut(12, 4, 30, 6, side_arc(6 * MM, 12 * MM), 0.04).wall_force > 0  # digs in
    assert cut(12, 4, 30, 6, side_arc(6 * MM, 12 * MM, climb=True), 0.04).wall_force > 0  # pushed off too


def test_a_centred_face_cut_makes_no_wall():
    got = cut(50, 4, 0, 1, FACE, 0.1)
    assert got.wall == ()
    assert got.wall_force == 0


def test_wall_heights_run_from_tip_to_top():
    heights = [height for height, _ in cut(12, 4, 30, 6, FULL, 0.04).wall]
    assert heights == sorted(heights)
    assert heights[0] == 0
    assert heights[-1] == pytest.approx(6 * MM)


def test_one_straight_tooth_peaks_at_the_thickest_chip():
    got = tooth_forces(
        kc=2e9, feed_per_tooth=0.1 * MM, depth=3 * MM, diameter=20 * MM, teeth=1, helix=0, start=0, end=pi
    )
    assert got.tangential_peak == pytest.approx(straight_tooth_force(2e9, 3 * MM, 0.1 * MM), rel=1e-3)


def test_two_straight_teeth_in_a_slot_are_half_pi_uneven():
    forces = cut(12, 2, 0, 2, FULL, 0.04)
    assert forces.tangential_peak / forces.tangential_mean == pytest.approx(pi / 2, rel=1e-3)


@pytest.mark.parametrize(("depth", "always"), [(12, False), (14.5, False), (15, True)])
def test_when_there_is_always_a_tooth_in_the_cut(depth, always):
    # 18.19 degrees of arc and 5.514 degrees of lag a millimetre reach a pitch of 90 at 13.02 mm
    got = cut(12, 4, 30, depth - 1.9, side_arc(0.3 * MM, 12 * MM), 0.04)
    assert got.always_in_cut is always


def test_a_left_hand_helix_lifts_the_other_way_and_turns_the_wall_upside_down():
    right, left = (cut(12, 4, helix, 6, side_arc(6 * MM, 12 * MM), 0.04) for helix in (30, -30))
    assert left.axial_peak == pytest.approx(-right.axial_peak)
    assert left.torque_peak == pytest.approx(right.torque_peak)
    assert [force for _, force in left.wall] == pytest.approx([force for _, force in reversed(right.wall)])
    assert left.wall[0][0] == pytest.approx(0, abs=1e-12)


def slices(
    *,
    kc: float,
    feed_per_tooth: float,
    depth: float,
    diameter: float,
    teeth: int,
    helix: float,
    start: float,
    end: float,
    count: int = 800,
    steps: int = 90,
) -> tuple[float, float, float]:
    """Peak Ft, lowest Fx and highest Fy by adding slices, the long way round."""
    found = []
    for step in range(steps):
        ft = fx = fy = 0.0
        for tooth in range(teeth):
            for slice_ in range(count):
                lag = 2 * (slice_ + 0.5) / count * depth * math.tan(helix) / diameter
                phi = (2 * pi * (step / steps / teeth + tooth / teeth) - lag) % (2 * pi)
                if start < phi < end:
                    force = kc * feed_per_tooth * math.sin(phi) * depth / count
                    ft += force
                    fx += -force * math.cos(phi) - 0.4 * force * math.sin(phi)
                    fy += force * math.sin(phi) - 0.4 * force * math.cos(phi)
        found.append((ft, fx, fy))
    return max(f[0] for f in found), min(f[1] for f in found), max(f[2] for f in found)


@pytest.mark.parametrize(
    "put",
    [
        {"depth": 5 * MM, "diameter": 10 * MM, "teeth": 3, "helix": 0.6, "start": 0.0, "end": 1.1},
        {"depth": 30 * MM, "diameter": 6 * MM, "teeth": 2, "helix": 0.8, "start": 2.0, "end": pi},
        {"depth": 3 * MM, "diameter": 40 * MM, "teeth": 5, "helix": 0.2, "start": 0.4, "end": 2.2},
    ],
)
def test_agrees_with_a_plain_sum_of_slices(put):
    given_ = {"kc": 2e9, "feed_per_tooth": 0.05 * MM, **put}
    got = tooth_forces(**given_)
    peak, low, high = slices(**given_)
    assert (got.tangential_peak, got.feed_low, got.side_high) == pytest.approx((peak, low, high), rel=0.01)


cuts = st.fixed_dictionaries(
    {
        "kc": st.floats(1e8, 6e9),
        "feed_per_tooth": st.floats(0.005 * MM, 0.3 * MM),
        "depth": st.floats(0.05 * MM, 40 * MM),
        "diameter": st.floats(2 * MM, 80 * MM),
        "teeth": st.integers(1, 10),
        "helix": st.floats(0, 1.0),
        "start": st.floats(0, 1.5),
        "end": st.floats(1.55, pi),
    }
)


@settings(max_examples=60, deadline=None)
@given(put=cuts)
def test_mean_is_never_above_peak_and_lies_between_the_extremes(put):
    got = tooth_forces(**put)
    slack = 1e-3 * got.tangential_peak + 1e-9
    assert got.tangential_mean <= got.tangential_peak + slack
    assert got.feed_low - slack <= got.feed_mean <= got.feed_high + slack
    assert got.side_low - slack <= got.side_mean <= got.side_high + slack
    assert got.in_plane_peak <= got.tangential_peak * math.hypot(1, 0.4) + slack
    for _, force in got.wall:
        assert got.side_low - slack <= force <= got.side_high + slack


@settings(max_examples=40, deadline=None)
@given(put=cuts, helix=st.floats(0.05, 1.0))
def test_a_helix_changes_no_mean_and_raises_no_peak(put, helix):
    straight, helical = tooth_forces(**{**put, "helix": 0.0}), tooth_forces(**{**put, "helix": helix})
    for name in ("tangential_mean", "feed_mean", "side_mean", "torque_mean"):
        assert getattr(helical, name) == pytest.approx(
            getattr(straight, name), abs=1e-9 * straight.tangential_peak
        )
    assert helical.tangential_peak <= straight.tangential_peak * 1.002


@settings(max_examples=40, deadline=None)
@given(
    depth=st.floats(0.1, 20), part=st.floats(0.01, 1), diameter=st.floats(3, 60), teeth=st.integers(1, 8), climb=st.booleans()
)  # fmt: skip
def test_the_mean_is_that_of_the_power(depth, part, diameter, teeth, climb):
    start, end = side_arc(part * diameter * MM, diameter * MM, climb=climb)
    got = tooth_forces(
        kc=2e9, feed_per_tooth=5e-5, depth=depth * MM, diameter=diameter * MM, teeth=teeth, helix=0.5, start=start, end=end
    )  # fmt: skip
    closed = mean_tangential_force(2e9, depth * MM, part * diameter * MM, 5e-5, teeth, diameter=diameter * MM)
    assert got.tangential_mean == pytest.approx(closed, rel=1e-6)


def test_is_fast_enough_for_every_keystroke():
    put = CASES["C5 thick, conventional"][:6]
    cut(*put)
    best = min(_seconds(put) for _ in range(5))
    assert best < 1e-3


def _seconds(put: tuple) -> float:
    begin = perf_counter()
    cut(*put)
    return perf_counter() - begin


GOOD = {"kc": 2e9, "feed_per_tooth": 5e-5, "depth": 2e-3, "diameter": 0.01, "teeth": 4, "helix": 0.5, "start": 0.0, "end": 1.0}  # fmt: skip


@pytest.mark.parametrize(
    ("name", "bad"),
    [
        *(
            (name, bad)
            for name in ("kc", "feed_per_tooth", "depth", "diameter", "teeth")
            for bad in (0, -1, math.nan)
        ),
        ("teeth", 2.5),
        ("helix", pi / 2),
        ("start", -0.1),
        ("end", 0.0),
        ("end", 4.0),
        ("radial", -1),
    ],
)
def test_refuses_what_has_no_meaning(name, bad):
    with pytest.raises(CalcError):
        tooth_forces(**{**GOOD, name: bad})


def test_arcs_refuse_a_cut_wider_than_the_cutter():
    with pytest.raises(CalcError, match="width"):
        side_arc(13 * MM, 12 * MM)
    with pytest.raises(CalcError, match="offset"):
        face_arc(38 * MM, 50 * MM, 7 * MM)


def test_a_result_is_a_frozen_value():
    got = tooth_forces(**GOOD)
    assert got == tooth_forces(**GOOD)
    assert len(vars(got)) == 20
    with pytest.raises(AttributeError):
        got.start = 0.0


@pytest.mark.parametrize(
    "call",
    [
        lambda: side_arc(0, 12 * MM),
        lambda: side_arc(6 * MM, 0),
        lambda: face_arc(0, 50 * MM),
        lambda: face_arc(38 * MM, 0),
        lambda: face_arc(38 * MM, 50 * MM, math.nan),
        lambda: face_arc(38 * MM, 50 * MM, math.inf),
        lambda: face_arc(38 * MM, 50 * MM, 6.01 * MM),
        lambda: face_arc(38 * MM, 50 * MM, -6.01 * MM),
        lambda: tooth_forces(**{**GOOD, "helix": -pi / 2}),
        lambda: tooth_forces(**{**GOOD, "helix": 1.6}),
        lambda: tooth_forces(**{**GOOD, "helix": -1.6}),
        lambda: helix_lag(2 * MM, pi / 2, 12 * MM),
        lambda: helix_lag(2 * MM, -pi / 2, 12 * MM),
        lambda: helix_lag(2 * MM, 1.6, 12 * MM),
        lambda: helix_lag(2 * MM, -1.6, 12 * MM),
    ],
)
def test_arcs_and_helices_without_meaning_are_refused(call):
    with pytest.raises(CalcError):
        call()


@pytest.mark.parametrize(
    ("width", "offset", "start", "end"),
    [(38, 0, 40.54, 139.46), (38, 6, 0.0, 121.33), (38, -6, 58.67, 180.0), (50, 0, 0.0, 180.0), (25, 5, 45.57, 107.46)],
)  # fmt: skip
def test_a_face_cut_begins_and_ends_where_the_work_does(width, offset, start, end):
    """The tooth stands at y = D/2 cos(phi): edges of the work at offset +- width/2."""
    found = face_arc(width * MM, 50 * MM, offset * MM)
    assert [math.degrees(angle) for angle in found] == pytest.approx([start, end], abs=0.006)


@pytest.mark.parametrize("climb", [False, True])
def test_half_the_cutter_and_the_whole(climb):
    half, whole = (side_arc(width, 12.0, climb=climb) for width in (6.0, 12.0))
    assert half == pytest.approx((pi / 2, pi) if climb else (0.0, pi / 2))
    assert whole == pytest.approx((0.0, pi))


def test_a_steep_helix_is_a_helix():
    right, left = (tooth_forces(**{**GOOD, "helix": helix}) for helix in (1.5, -1.5))
    assert right.tangential_peak == pytest.approx(left.tangential_peak)
    assert right.axial_mean == pytest.approx(math.tan(1.5) * right.tangential_mean)


def test_shares_of_the_radial_and_the_axial_force_can_be_given():
    none = tooth_forces(**GOOD, radial=0.0, axial=0.0)
    half = tooth_forces(**GOOD, radial=0.5, axial=0.25)
    assert none.axial_peak == none.axial_mean == 0
    assert half.axial_mean == pytest.approx(0.25 * half.tangential_mean)
    assert half.axial_peak == pytest.approx(0.25 * half.tangential_peak)
    assert none.tangential_peak == half.tangential_peak
    # the mean along the feed changes by the radial share of the mean across it, and the other way round
    assert half.feed_mean - none.feed_mean == pytest.approx(-0.5 * none.side_mean)
    assert half.side_mean - none.side_mean == pytest.approx(0.5 * none.feed_mean)


def side_at(put: dict, height: float, count: int = 600) -> float:
    """Side force at the moment an edge at this height makes the wall, by adding slices."""
    slope = 2 * math.tan(put["helix"]) / put["diameter"]
    moment = pi if put["end"] > pi - 1e-9 else 0.0
    side = 0.0
    for tooth in range(put["teeth"]):
        for slice_ in range(count):
            at = (slice_ + 0.5) / count * put["depth"]
            phi = (moment + (height - at) * slope + 2 * pi * tooth / put["teeth"]) % (2 * pi)
            if put["start"] < phi < put["end"]:
                force = put["kc"] * put["feed_per_tooth"] * math.sin(phi) * put["depth"] / count
                side += force * math.sin(phi) - 0.4 * force * math.cos(phi)
    return side


@pytest.mark.parametrize(
    "put",
    [
        {"depth": 6 * MM, "diameter": 12 * MM, "teeth": 4, "helix": 0.52, "start": 0.0, "end": pi / 2},
        {"depth": 6 * MM, "diameter": 12 * MM, "teeth": 2, "helix": 0.52, "start": 0.0, "end": pi},
        {"depth": 9 * MM, "diameter": 12 * MM, "teeth": 3, "helix": 0.7, "start": 2.2, "end": pi},
        {"depth": 25 * MM, "diameter": 10 * MM, "teeth": 2, "helix": 0.6, "start": 0.0, "end": 0.9},
    ],
)
def test_the_wall_agrees_with_slices_at_its_own_moments(put):
    given_ = {"kc": 2e9, "feed_per_tooth": 0.05 * MM, **put}
    wall = tooth_forces(**given_).wall
    largest = max(abs(force) for _, force in wall)
    near = [abs(force - side_at(given_, height)) < 0.02 * largest for height, force in wall]
    assert sum(near) >= 0.97 * len(near)  # the slices blur the heights next to a corner


@pytest.mark.parametrize(
    ("teeth", "arc", "always"),
    [
        (3, partial(face_arc, 38 * MM, 50 * MM), False),  # 98.9 degrees of 120
        (4, partial(face_arc, 38 * MM, 50 * MM), True),  # 98.9 degrees of 90
        (2, partial(side_arc, 12 * MM, 12 * MM), True),  # 180 of 180: one leaves as the other enters
        (4, partial(side_arc, 6 * MM, 12 * MM, climb=True), True),  # 90 of 90
        (4, partial(side_arc, 5.99 * MM, 12 * MM, climb=True), False),
    ],
)
def test_straight_teeth_follow_each_other_or_leave_a_gap(teeth, arc, always):
    start, end = arc()
    got = tooth_forces(
        **{**GOOD, "diameter": 12 * MM, "teeth": teeth, "helix": 0.0, "start": start, "end": end}
    )
    assert got.always_in_cut is always


def test_one_straight_tooth_pushes_with_its_tangential_and_radial_force_together():
    got = tooth_forces(**{**GOOD, "teeth": 1, "helix": 0.0, "end": pi})
    assert got.in_plane_peak == pytest.approx(got.tangential_peak * math.hypot(1, 0.4))


def closed_side_at(put: dict, height: float) -> float:
    """The same by the sum closed over height: u ([phi/2 - sin(2 phi)/4] -
    Kr [sin^2/2]) over what is in the cut.
    """
    slope = 2 * math.tan(put["helix"]) / put["diameter"]
    tip = (pi if put["end"] > pi - 1e-9 else 0.0) + height * slope
    side = 0.0
    for turn in range(-2 * put["teeth"], 3 * put["teeth"]):
        last = tip + 2 * pi * turn / put["teeth"]
        low, high = max(last - put["depth"] * slope, put["start"]), min(last, put["end"])
        if low < high:
            whole, radial = (
                (high - low) / 2 - (math.sin(2 * high) - math.sin(2 * low)) / 4,
                math.sin(high) ** 2 - math.sin(low) ** 2,
            )
            side += put["kc"] * put["feed_per_tooth"] / slope * (whole - 0.4 * radial / 2)
    return side


@pytest.mark.parametrize(
    "put",
    [
        {"depth": 12 * MM, "diameter": 12 * MM, "teeth": 4, "helix": 0.5236, "start": 0.0, "end": 0.8411},
        {"depth": 12 * MM, "diameter": 12 * MM, "teeth": 4, "helix": 0.5236, "start": pi - 0.8411, "end": pi},
        {"depth": 18 * MM, "diameter": 12 * MM, "teeth": 3, "helix": 0.6, "start": 0.0, "end": 1.3},
        {"depth": 18 * MM, "diameter": 12 * MM, "teeth": 3, "helix": 0.6, "start": pi - 1.3, "end": pi},
    ],
)
def test_no_height_of_the_wall_is_pushed_farther_than_we_say(put):
    """A corner between two of our heights would be missed; so many more heights are tried."""
    given_ = {"kc": 2e9, "feed_per_tooth": 0.05 * MM, **put}
    forces = [force for _, force in tooth_forces(**given_).wall]
    plain = [closed_side_at(given_, given_["depth"] * step / 3000) for step in range(3001)]
    span = max(forces) - min(forces)
    assert min(forces) == pytest.approx(min(plain), abs=0.001 * span)
    assert max(forces) == pytest.approx(max(plain), abs=0.001 * span)
