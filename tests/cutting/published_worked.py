"""Cases worked by hand in our own notes: drives, quill, holding, hand, walls,
two methods, and the demo jobs.
"""

from __future__ import annotations

from functools import partial
from math import pi, radians

from jobsheet.cutting import (
    chip,
    deflection,
    drill_lines,
    engagement,
    hand,
    heat,
    kienzle,
    quill,
    removal,
    speed,
    strength,
    tapping,
    unit_power,
)
from jobsheet.cutting import clamping as holding
from jobsheet.cutting import drill_forces as drilling
from jobsheet.cutting import motor as spindle
from jobsheet.cutting import stability as chatter
from jobsheet.cutting.textbook import (
    angles_of_engagement,
    chatter_theory,
    chip_thicknesses,
    handwheel,
    motor_torque,
    quill_torque,
)
from jobsheet.cutting.toothforce import ToothForces, side_arc, tooth_forces

from .row import INCH, LBF, MM, MPA, RPM, Row


def derived(
    name: str, what: str, value: float, tolerance: float, calc, unit: str = "", source: str = "derived"
) -> Row:
    return Row(name, source, "derived", what, value, tolerance, calc, unit)


# --- what spindles give -----------------------------------------------------------------------------------


def b1(turns: float, cap: float = 15.0) -> float:
    return motor_torque.capped_torque(spindle.constant_power_torque(550, 0.81, turns * RPM), cap)


def b1_peak(turns: float) -> float:
    return motor_torque.capped_torque(
        motor_torque.peak_torque(spindle.constant_power_torque(550, 0.81, turns * RPM), 1.8), 15
    )


def k2(turns: float) -> float:
    eta, cap = (0.75, 90) if turns <= 300 else (0.85, 45)
    return motor_torque.capped_torque(spindle.constant_power_torque(2200, eta, turns * RPM), cap)


def k2_peak(turns: float) -> float:
    eta, cap = (0.75, 90) if turns <= 300 else (0.85, 45)
    return motor_torque.capped_torque(
        motor_torque.peak_torque(spindle.constant_power_torque(2200, eta, turns * RPM), 2.2), cap
    )


def b2(turns: float, base: float) -> float:
    return motor_torque.constant_torque(500, 0.80, base * RPM, turns * RPM)


DRIVES = (
    *((f"B-1 {n}", partial(b1, n), v) for n, v in ((180, 15.0), (320, 13.3), (560, 7.60), (900, 4.73), (1450, 2.93), (2300, 1.85))),
    *((f"B-1 {n} peak", partial(b1_peak, n), v) for n, v in ((180, 15.0), (320, 15.0), (560, 13.7), (900, 8.51), (1450, 5.28), (2300, 3.33))),
    *((f"K-2 {n}", partial(k2, n), v) for n, v in ((75, 90), (120, 90), (190, 82.9), (300, 52.5), (500, 35.7), (800, 22.3), (1250, 14.3), (2000, 8.93))),
    *((f"K-2 {n} peak", partial(k2_peak, n), v) for n, v in ((75, 90), (190, 90), (300, 90), (500, 45), (800, 45), (1250, 31.4), (2000, 19.6))),
    ("B-1 180 uncapped", partial(b1, 180, 1e9), 23.6),
    ("B-2 low 300", partial(b2, 300, 1000), 3.82),
    ("B-2 low 1000", partial(b2, 1000, 1000), 3.82),
    ("B-2 low 1100", partial(b2, 1100, 1000), 3.47),
    ("B-2 high 1500", partial(b2, 1500, 2300), 1.66),
    ("B-2 high 2500", partial(b2, 2500, 2300), 1.53),
    ("B-2 low peak", lambda: motor_torque.peak_torque(b2(300, 1000), 1.3), 4.97),
    ("B-2 high peak", lambda: motor_torque.peak_torque(b2(2500, 2300), 1.3), 1.99),
)  # fmt: skip

# --- quill --------------------------------------------------------------------------------------------------

LEVERS = {"B-1": (180, 75, 15), "B-2": (150, 70, 10), "K-2": (250, 90, 20)}


def thrust(card: str, push: float) -> float:
    lever, travel, spring = LEVERS[card]
    return quill.thrust_from_push(push, lever * MM, travel * MM, spring)


def quill_feed(card: str, kd: float, diameter: float, push: float) -> float:
    return quill.feed_from_thrust(thrust(card, push), kd, diameter * MM, wear=1.3) / MM


THRUSTS = (("B-1", 1270, 2550), ("B-2", 1130, 2280), ("K-2", 1460, 2950))
FEEDS = (
    ("B-1", 20000, ((0.114, 0.296), (0.072, 0.203), (0.053, 0.163), (0.030, 0.115), (0.014, 0.080))),
    ("K-2", 18000, ((0.161, 0.411), (0.106, 0.287), (0.082, 0.234), (0.052, 0.170), (0.030, 0.125))),
    ("K-2", 35000, ((0.062, 0.169), (0.036, 0.112), (0.023, 0.086), (0.009, 0.055), (0, 0.033))),
    ("K-2", 7000, ((0.565, 1.39), (0.400, 1.00), (0.328, 0.837), (0.244, 0.648), (0.186, 0.517))),
)
DRILLS = (5, 6.8, 8, 10, 12)


def _quill_feeds():
    for card, kd, pairs in FEEDS:
        for diameter, pair in zip(DRILLS, pairs, strict=True):
            for push, value in zip((100, 200), pair, strict=True):
                name = f"quill {card} Kd {kd} {diameter} mm {push} N"
                calc = partial(quill_feed, card, kd, diameter, push)
                # The printed digits; one more unit where the thrust itself was rounded first.
                yield derived(
                    name, "feed that a push gives", value, 0.0012 if value < 1 else 0.006, calc, "mm"
                )


def small_drill(diameter: float) -> float:
    """Thrust at half the torque that breaks the drill."""
    half = strength.drill_strength(diameter * MM) / 2
    return drilling.drill_thrust(
        20000, quill_torque.feed_from_torque(half, 20000, diameter * MM, wear=1.3), diameter * MM, wear=1.3
    )


def small_drill_feed(diameter: float) -> float:
    half = strength.drill_strength(diameter * MM) / 2
    return quill_torque.feed_from_torque(half, 20000, diameter * MM, wear=1.3) / MM


def small_drill_push(diameter: float) -> float:
    return quill.push_from_thrust(small_drill(diameter), 180 * MM, 75 * MM, 15)


SMALL = (
    (1, 0.029, 0.008, 43, 4),
    (1.5, 0.099, 0.015, 96, 9),
    (2, 0.236, 0.023, 171, 14),
    (2.5, 0.460, 0.031, 267, 22),
    (3, 0.795, 0.041, 384, 31),
    (4, 1.89, 0.064, 683, 54),
    (5, 3.68, 0.089, 1067, 84),
    (6, 6.36, 0.117, 1536, 121),
)


def _small_drills():
    for d, ms, f, t, push in SMALL:
        yield derived(
            f"small drill {d} strength",
            "torsion",
            ms,
            0.006 * ms + 0.0004,
            partial(strength.drill_strength, d * MM),
            "N*m",
            "estimate",
        )
        yield derived(
            f"small drill {d} feed", "feed at half of it", f, 0.0006, partial(small_drill_feed, d), "mm"
        )
        yield derived(
            f"small drill {d} thrust", "thrust there", t, max(0.5, 0.006 * t), partial(small_drill, d), "N"
        )
        yield derived(
            f"small drill {d} push", "push at the lever", push, 0.75, partial(small_drill_push, d), "N"
        )


# --- walls, chatter, holding, hand --------------------------------------------------------------------------


def steel_cut(width: float, depth: float, *, climb: bool = False) -> ToothForces:
    """12 mm z 4 in the steel of the check cases."""
    start, end = side_arc(width * MM, 12 * MM, climb=climb)
    h = chip.arc_chip_thickness(0.04 * MM, start, end)
    kc = kienzle.specific_cutting_force(1500 * MPA, 0.21, h, 1.1)
    return tooth_forces(
        kc=kc, feed_per_tooth=0.04 * MM, depth=depth * MM, diameter=12 * MM, teeth=4, helix=radians(30), start=start, end=end
    )  # fmt: skip


def wall_um(width: float, depth: float, *, climb: bool = False) -> float:
    return deflection.wall_error(steel_cut(width, depth, climb=climb).wall_force, 9.59e6, 5e6) * 1e6


def wall_alone(width: float, depth: float, *, climb: bool = False) -> float:
    return deflection.deflection(steel_cut(width, depth, climb=climb).wall_force, 9.59e6) * 1e6


def asked(depth: float) -> float:
    h = chip_thicknesses.mean_chip_thickness(0.04 * MM, 6 * MM, 12 * MM)
    kt = kienzle.specific_cutting_force(1450 * MPA, 0.20, h)
    return (
        chatter.cutting_stiffness(
            depth * MM, engagement.teeth_in_cut(4, angles_of_engagement.engagement_angle(6 * MM, 12 * MM)), kt
        )
        / 1e6
    )


def teeth(width: float) -> float:
    return engagement.teeth_in_cut(4, angles_of_engagement.engagement_angle(width * MM, 12 * MM))


def scale(diameter: float, out: float) -> float:
    cutter = deflection.cutter_stiffness(207e9, 0.8 * diameter * MM, out * MM)
    return chatter.cutter_scale(5e6, cutter)


def wave(meters: float, frequency: float) -> float:
    return chatter_theory.wave_length(meters / 60, frequency) / MM


def stiff(diameter: float, out: float) -> float:
    return deflection.cutter_stiffness(210e9, 0.8 * diameter * MM, out * MM) / 1e6


def zoa(along, across, end: float = pi, **cut: float) -> float:
    return chatter.zeroth_order(along, across, start=0, end=end, **cut).depth / MM


BENCH = chatter.Mode(5e6, 80, 0.04)
KNEE = chatter.Mode(10e6, 80, 0.04)
INSPERGER = chatter.Mode(1.340e6, 922, 0.011)
WECK = (chatter.Mode(5.59e6, 603, 0.039), chatter.Mode(5.715e6, 666, 0.035))


def stud(torque_ft_lb: float, size: float, pounds: float) -> float:
    """Nut factor of a published stud."""
    return torque_ft_lb * 12 / (size * pounds)


# --- demo jobs ----------------------------------------------------------------------------------------------


def demo_kc() -> float:
    return kienzle.specific_cutting_force(
        1450 * MPA, 0.20, chip_thicknesses.mean_chip_thickness(0.05 * MM, 16 * MM, 20 * MM), 1.1
    )


def demo_power() -> float:
    return kienzle.milling_power(0.8 * MM, 16 * MM, 64 * MM / 60, demo_kc())


def demo_torque() -> float:
    return kienzle.torque_from_power(demo_power(), 320 * RPM)


def demo_forces() -> ToothForces:
    start, end = side_arc(16 * MM, 20 * MM)
    return tooth_forces(
        kc=demo_kc(), feed_per_tooth=0.05 * MM, depth=0.8 * MM, diameter=20 * MM, teeth=4, helix=radians(30), start=start, end=end
    )  # fmt: skip


def solid(kd: float, f: float, d: float) -> tuple[float, float]:
    return drilling.drill_torque(kd, f * MM, d * MM, wear=1.3), drilling.drill_thrust(
        kd, f * MM, d * MM, wear=1.3
    )


def piloted(kd: float, f: float, d: float, pilot: float) -> tuple[float, float]:
    put = {"kd": kd, "feed": f * MM, "diameter": d * MM, "pilot": pilot * MM, "wear": 1.3}
    return drilling.pilot_torque(**put), drilling.pilot_thrust(**put)


def percent(major: float, hole: float, pitch: float) -> float:
    return tapping.percent_of_thread(major, hole, pitch) * 100


ROWS = (
    *(derived(name, "torque at the spindle", value, 0.006 * value, calc, "N*m") for name, calc, value in DRIVES),
    *(derived(f"lever {card} {push}", "thrust of a push", value, 6, partial(thrust, card, push), "N") for card, *both in THRUSTS for push, value in zip((100, 200), both, strict=True)),
    *_quill_feeds(),
    *_small_drills(),
    derived("10 mm solid M", "10 mm, 0.13, mild steel", 8.68, 0.01, lambda: solid(20000, 0.13, 10)[0], "N*m"),
    derived("10 mm solid T", "10 mm, 0.13, mild steel", 2760, 6, lambda: solid(20000, 0.13, 10)[1], "N"),
    derived("10 mm at 200 N", "torque at the feed of a strong push", 7.84, 0.05, lambda: solid(20000, 0.115, 10)[0], "N*m"),
    derived("10 mm pilot M", "after 4 mm", 6.30, 0.01, lambda: piloted(20000, 0.13, 10, 4)[0], "N*m"),
    derived("10 mm pilot T", "after 4 mm", 900, 3, lambda: piloted(20000, 0.13, 10, 4)[1], "N"),
    derived("12 mm solid M", "12 mm, 0.14", 12.8, 0.05, lambda: solid(20000, 0.14, 12)[0], "N*m"),
    derived("12 mm pilot M", "after 4 mm", 9.91, 0.01, lambda: piloted(20000, 0.14, 12, 4)[0], "N*m"),
    derived("12 mm pilot T", "after 4 mm", 1240, 5, lambda: piloted(20000, 0.14, 12, 4)[1], "N"),
    derived("5 mm M", "5 mm, 0.08", 1.69, 0.005, lambda: solid(20000, 0.08, 5)[0], "N*m"),
    derived("5 mm T", "5 mm, 0.08", 991, 0.5, lambda: solid(20000, 0.08, 5)[1], "N"),
    derived("5 mm push", "its lever push", 79, 0.6, lambda: quill.push_from_thrust(991, 180 * MM, 75 * MM, 15), "N"),
    derived("5 mm share", "its share of 4.73 N*m", 36, 0.5, lambda: solid(20000, 0.08, 5)[0] / b1(900) * 100, "%"),
    derived("9 mm stainless", "9.0 solid, 0.12", 4.11, 0.006, lambda: solid(35000, 0.12, 9)[1] / 1e3, "kN"),
    derived("9 mm stainless pilot", "after 6.5", 0.60, 0.005, lambda: piloted(35000, 0.12, 9, 6.5)[1] / 1e3, "kN"),
    derived("two methods first", "12 mm, 0.14, sharp", 9.83, 0.01, lambda: drilling.drill_torque(20000, 0.14 * MM, 12 * MM), "N*m"),
    derived("two methods second", "the same by catalogue lines", 9.55, 0.01, lambda: drill_lines.twist_drill_torque(2.22, 0.14 * MM, 12 * MM), "N*m"),
    # walls: above zero the cutter moves to +y, which digs in with conventional
    # milling and leaves metal in climb
    derived("wall C3", "conventional 12 x 0.3", -5.5, 0.05, partial(wall_um, 0.3, 12), "um"),
    derived("wall C3 alone", "by the cutter alone", -1.9, 0.05, partial(wall_alone, 0.3, 12), "um"),
    derived("wall C4", "climb 12 x 0.3", 18.1, 0.05, partial(wall_um, 0.3, 12, climb=True), "um"),
    derived("wall C4 alone", "by the cutter alone", 6.2, 0.05, partial(wall_alone, 0.3, 12, climb=True), "um"),
    derived("wall C5", "conventional 6 x 6", 207, 0.6, partial(wall_um, 6, 6), "um"),
    derived("wall C5 alone", "by the cutter alone", 70.8, 0.1, partial(wall_alone, 6, 6), "um"),
    derived("wall C7", "climb 6 x 6", 260, 0.6, partial(wall_um, 6, 6, climb=True), "um"),
    derived("wall C7 alone", "by the cutter alone", 89.2, 0.1, partial(wall_alone, 6, 6, climb=True), "um"),
    derived("wall 2.0", "conventional 12 x 2.0", 35.1, 0.1, partial(wall_um, 2, 12), "um"),
    derived("wall 2.0 alone", "by the cutter alone", 12.0, 0.06, partial(wall_alone, 2, 12), "um"),
    derived("k 6", "6 mm, 20 out", 2.05, 0.03, partial(stiff, 6, 20), "N/um"),
    derived("k 10", "10 mm, 30 out", 4.69, 0.1, partial(stiff, 10, 30), "N/um"),
    derived("k 12.7", "12.7 mm, 38 out", 6.01, 0.01, partial(stiff, 12.7, 38), "N/um"),
    derived("k 12", "12 mm, 30 out", 9.59, 0.005, lambda: deflection.cutter_stiffness(207e9, 9.6 * MM, 30 * MM) / 1e6, "N/um"),
    # chatter
    *(derived(f"teeth {w}", "teeth in cut, 12 mm z 4", m, 0.0006, partial(teeth, w)) for w, m in ((6, 1.0), (8, 1.216), (1.27, 0.422), (0.5, 0.262))),
    derived("asked 2.0", "asked of the frame, 2.0 x 6", 6.04, 0.01, partial(asked, 2.0), "N/um"),
    derived("asked 2.5", "asked of the frame, 2.5 x 6", 7.55, 0.01, partial(asked, 2.5), "N/um"),
    derived("S 12", "12 mm, 50 out", 0.45, 0.005, partial(scale, 12, 50)),
    derived("S 20", "20 mm, 40 out", 1.31, 0.005, partial(scale, 20, 40)),
    derived("S 10", "10 mm, 30 out", 0.73, 0.02, partial(scale, 10, 30)),
    *(derived(f"wave 21 {f}", "wave at 21 m/min", v, 0.06, partial(wave, 21, f), "mm") for f, v in ((30, 11.7), (80, 4.4), (120, 2.9), (600, 0.58), (1500, 0.23))),
    *(derived(f"wave 79 {f}", "wave at 79 m/min", v, 0.06, partial(wave, 79, f), "mm") for f, v in ((30, 43.9), (80, 16.5), (120, 11.0), (600, 2.2), (1500, 0.88))),
    derived("passes", "560 rpm, 4 teeth", 37.3, 0.05, lambda: chatter_theory.tooth_frequency(560 * RPM, 4), "Hz"),
    derived("zoa insperger", "one mode, slot, z 2", 0.298, 0.0006, lambda: zoa([INSPERGER], [], teeth=2, kt=600e6, kr=1 / 3), "mm", "ab95"),
    derived("zoa weck", "half immersion, z 3", 1.087, 0.0006, lambda: zoa([WECK[0]], [WECK[1]], pi / 2, teeth=3, kt=600e6, kr=0.07), "mm", "ab95"),
    derived("zoa bench", "bench mill, steel slot", 0.109, 0.0006, lambda: zoa([BENCH], [BENCH], teeth=4, kt=1800e6, kr=0.3), "mm", "ab95"),
    derived("zoa knee", "knee mill, steel slot", 0.219, 0.0006, lambda: zoa([KNEE], [KNEE], teeth=4, kt=1800e6, kr=0.3), "mm", "ab95"),
    derived("zoa knee aluminium", "knee mill, aluminium slot", 0.562, 0.0006, lambda: zoa([KNEE], [KNEE], teeth=4, kt=700e6, kr=0.3), "mm", "ab95"),
    derived("slot two modes", "closed form, equal modes", 0.2174, 0.0001, lambda: chatter_theory.slot_limit_two_modes(10e6, 0.04, 1800e6, 0.3, 4) / MM, "mm"),
    # holding
    Row("stud 1/2", "carr", "read", "tension of a 1/2-13 stud at 38 ft*lbf, K 0.20", 4600, 50, lambda: holding.bolt_tension(38 * 12 * LBF * INCH, 0.5 * INCH) / LBF, "lbf"),
    Row("stud 3/8", "carr", "read", "tension of a 3/8-16 stud at 16 ft*lbf, K 0.20", 2600, 50, lambda: holding.bolt_tension(16 * 12 * LBF * INCH, 0.375 * INCH) / LBF, "lbf"),
    Row("strap 2:1", "carr", "read", "strap with the bolt midway", 0.5, 1e-9, lambda: holding.strap_force(1, 50 * MM, 50 * MM), ""),
    derived("strap near", "bolt near the work", 2 / 3, 1e-9, lambda: holding.strap_force(1, 50 * MM, 25 * MM)),
    derived("bolt M12", "40 N*m", 16.7, 0.05, lambda: holding.bolt_tension(40, 12 * MM) / 1e3, "kN"),
    derived("vice 80", "20 N*m, lead 3", 7.54, 0.005, lambda: holding.vice_force(20, 3 * MM, 0.18) / 1e3, "kN"),
    derived("vice 80 low", "efficiency 0.13", 5.4, 0.05, lambda: holding.vice_force(20, 3 * MM, 0.13) / 1e3, "kN"),
    derived("vice 80 high", "efficiency 0.25", 10.5, 0.05, lambda: holding.vice_force(20, 3 * MM, 0.25) / 1e3, "kN"),
    derived("vice 150", "60 N*m, lead 4", 19.8, 0.05, lambda: holding.vice_force(60, 4 * MM, 0.21) / 1e3, "kN"),
    derived("grip 80", "two faces", 1.81, 0.005, lambda: holding.grip(holding.vice_force(20, 3 * MM, 0.18), 0.12) / 1e3, "kN"),
    derived("grip 150", "two faces", 4.75, 0.01, lambda: holding.grip(holding.vice_force(60, 4 * MM, 0.21), 0.12) / 1e3, "kN"),
    derived("need 80", "2.5 times the pull", 809, 1.5, lambda: holding.required_grip(285, 153), "N"),
    derived("need 150", "2.5 times the pull", 2210, 2, lambda: holding.required_grip(705, 533), "N"),
    derived("lift 30", "pull of 30 degrees", 0.577, 0.0005, lambda: holding.lift(1, radians(30))),
    derived("lift 45", "pull of 45 degrees", 1.0, 1e-9, lambda: holding.lift(1, radians(45))),
    # hand
    derived("stopwatch", "10 turns in 23.4 s", 64.1, 0.05, lambda: hand.stopwatch_feed(10, 2.5 * MM, 23.4) / MM * 60, "mm/min"),
    derived("crank B-1 torque", "900 N", 1.19, 0.005, lambda: hand.handle_torque(900, 2.5 * MM, 0.3), "N*m"),
    derived("crank B-1", "900 N", 21.7, 0.05, lambda: hand.crank_force(900, 2.5 * MM, 0.3, 55 * MM), "N"),
    derived("crank K-2 torque", "1500 N", 3.47, 0.006, lambda: hand.handle_torque(1500, 5.08 * MM, 0.35), "N*m"),
    derived("crank K-2", "1500 N", 40.8, 0.05, lambda: hand.crank_force(1500, 5.08 * MM, 0.35, 85 * MM), "N"),
    *(derived(f"wrench {size} {push}", "two hands", v, 0.01, partial(tapping.wrench_torque, push, size * MM), "N*m", "estimate") for size, *both in ((180, 5.4, 10.8), (280, 8.4, 16.8), (380, 11.4, 22.8)) for push, v in zip((30, 60), both, strict=True)),
    # the demo jobs
    derived("demo speed", "25 m/min, 20 mm", 398, 0.5, lambda: speed.spindle_speed(25 / 60, 20 * MM) * 60, "rpm"),
    derived("demo fluid", "34 m/min brushed", 23.8, 0.05, lambda: speed.speed_with_fluid(34 / 60, 0.7) * 60, "m/min"),
    derived("demo fluid rpm", "on 12 mm", 631, 0.5, lambda: speed.spindle_speed(speed.speed_with_fluid(34 / 60, 0.7), 12 * MM) * 60, "rpm"),
    derived("demo handle", "64 mm/min on 2.5", 25.6, 0.05, lambda: hand.handle_speed(64 * MM / 60, 2.5 * MM) * 60, "turns/min"),
    derived("demo handle time", "64 mm/min on 2.5", 2.34, 0.005, lambda: hand.seconds_a_turn(64 * MM / 60, 2.5 * MM), "s"),
    derived("demo dial turns", "75 mm on 0.200 in", 14, 1, lambda: handwheel.handle_turns(75 * MM, 0.2 * INCH), "turns"),
    derived("demo dial rest", "75 mm on 0.200 in", 0.1528, 0.00005, lambda: handwheel.past_last_turn(75 * MM, 0.2 * INCH) / INCH, "in"),
    derived("demo near turn", "30.5 mm on 0.200 in", 0.0008, 0.00005, lambda: handwheel.past_last_turn(30.5 * MM, 0.2 * INCH) / INCH, "in"),
    derived("demo removal", "0.8 x 16 x 64", 0.82, 0.005, lambda: removal.milling_removal_rate(0.8 * MM, 16 * MM, 64 * MM / 60) * 60e6, "cm3/min"),
    derived("demo thread M8", "6.8 mm", 73.9, 0.05, lambda: percent(8 * MM, 6.8 * MM, 1.25 * MM), "%"),
    derived("demo thread 1/4", "0.201", 75.4, 0.06, lambda: percent(0.25 * INCH, 0.201 * INCH, INCH / 20), "%"),
    derived("demo thread 3/8", "5/16", 77.0, 0.06, lambda: percent(0.375 * INCH, 0.3125 * INCH, INCH / 16), "%"),
    derived("demo thread 3/8 Q", "0.332", 53.0, 0.06, lambda: percent(0.375 * INCH, 0.332 * INCH, INCH / 16), "%"),
    derived("demo heat", "100 mm aluminium, 10 K", 0.022, 0.0005, lambda: heat.expansion(100 * MM, 10, heat.ALUMINIUM_EXPANSION) / MM, "mm"),
    derived("demo chip", "20 mm z 4, 16 wide", 0.0361, 0.00005, lambda: chip_thicknesses.mean_chip_thickness(0.05 * MM, 16 * MM, 20 * MM) / MM, "mm"),
    derived("demo kc", "structural steel", 3099, 1, lambda: demo_kc() / MPA, "MPa"),
    derived("demo power", "0.8 x 16 at 64", 42.3, 0.05, demo_power, "W"),
    derived("demo torque", "at 320", 1.26, 0.005, demo_torque, "N*m"),
    derived("demo share", "of 13.3 N*m", 9.5, 0.05, lambda: demo_torque() / b1(320) * 100, "%"),
    derived("demo peak", "peak torque", 1.73, 0.008, lambda: demo_forces().torque_peak, "N*m"),
    derived("demo tap M6", "in 5.0, kc 3700", 1.92, 0.005, lambda: tapping.tap_torque(3700 * MPA, 1.35, 6 * MM, 5 * MM), "N*m"),
    derived("demo power B-2", "3.82 N*m at 300", 120, 0.5, lambda: kienzle.power_from_torque(b2(300, 1000), 300 * RPM), "W"),
    # two methods of power at a chip of 0.05 mm: J/mm3
    *(derived(f"energy {name}", "energy of a volume, first method", v, 0.012, partial(lambda k, m: kienzle.specific_cutting_force(k * MPA, m, 0.05 * MM) / 1e9, k, m), "W*s/mm3") for name, k, m, v in (("1045", 1700, 0.20, 3.09), ("4140", 1775, 0.24, 3.64), ("304", 2150, 0.20, 3.91), ("6061", 750, 0.25, 1.59), ("A36", 1450, 0.20, 2.64), ("718", 3100, 0.24, 6.36))),
    derived("energy 1045 second", "energy of a volume, second method", 3.13, 0.01, lambda: unit_power.unit_power(0.82 * 2.7305e9, unit_power.unit_power_feed_factor(0.05 * MM), 1e-9), "W*s/mm3"),
)  # fmt: skip
