"""Worked examples out of books and catalogues, A1 to A35."""

from __future__ import annotations

from functools import partial
from math import pi, radians

from jobsheet.cutting import (
    deflection,
    drill_lines,
    feed,
    finish,
    kienzle,
    removal,
    speed,
    tapping,
    times,
)
from jobsheet.cutting import drill_forces as drill
from jobsheet.cutting import stability as chatter
from jobsheet.cutting.textbook import (
    approach_lengths,
    chatter_theory,
    chip_thicknesses,
    force_and_power,
    tap_holes,
    twist_drill_forms,
)
from jobsheet.cutting.textbook.rule_of_thumb_power import thumb_power

from .row import FPM, HP, INCH, INCH_POUND, LBF, MM, MPA, PER_MINUTE, RPM, Row

CM3 = 1e-6


def rpm(speed_m_min: float, diameter_mm: float) -> float:
    """Revolutions a minute from m/min and mm."""
    return speed.spindle_speed(speed_m_min / 60, diameter_mm * MM) * 60


def mm_min(tooth: float, teeth: float, turns: float) -> float:
    """Table feed in mm/min."""
    return feed.table_feed(tooth * MM, teeth, turns * RPM) / MM * 60


def a7_rpm() -> float:
    return speed.spindle_speed(speed.speed_with_fluid(250 * FPM, 0.6), INCH) * 60


def a7_feed() -> float:
    return feed.table_feed(0.008 * INCH, 4, a7_rpm() * RPM) / INCH * 60


def a9_power() -> float:
    net = kienzle.milling_power(2 * MM, 80 * MM, 280 * MM * PER_MINUTE, 1800 * MPA)
    return force_and_power.motor_power(net, 0.8) / 1e3


def a10_length() -> float:
    return 300 + times.side_approach(30 * MM, 30 * MM) / MM + 2 * 3


def a10_power() -> float:
    return kienzle.milling_power(4 * MM, 30 * MM, 120 * MM * PER_MINUTE, 1000 * MPA)


def a10_speed() -> float:
    return speed.cutting_speed(150 * RPM, 30 * MM)


def a11_feed() -> float:
    return mm_min(0.25, 5, rpm(70, 80))


def a11_time() -> float:
    way = 400 * MM + times.side_approach(5 * MM, 80 * MM)
    return times.cutting_time(way, a11_feed() * MM * PER_MINUTE) / 60


def a12_feed() -> float:
    return feed.table_feed(0.27 * MM, 4, speed.spindle_speed(2.8, 150 * MM))


def a12_time() -> float:
    return times.cutting_time(300 * MM + approach_lengths.face_approach(125 * MM, 150 * MM), a12_feed())


def a13_power() -> float:
    rate = removal.milling_removal_rate(3 * MM, 100 * MM, 500 * MM * PER_MINUTE)
    return force_and_power.cutting_power(rate, 3e9)


def a13_time() -> float:
    return times.cutting_time(
        300 * MM + approach_lengths.slab_approach(3 * MM, 50 * MM), 500 * MM * PER_MINUTE
    )


def a14_feed() -> float:
    return feed.axial_feed(0.30 * MM, rpm(25, 12.7) * RPM) / MM * 60


def a14_time() -> float:
    way = 60 * MM + times.point_length(12.7 * MM, radians(118))
    return times.cutting_time(way, a14_feed() * MM * PER_MINUTE) / 60


def a14_rate() -> float:
    return removal.drilling_removal_rate(12.7 * MM, 0.30 * MM, rpm(25, 12.7) * RPM) * 60e9


def a15_rate() -> float:
    return removal.drilling_removal_rate(10 * MM, 0.2 * MM, 800 * RPM)


def a15_torque() -> float:
    return kienzle.torque_from_power(force_and_power.cutting_power(a15_rate(), 0.5e9), 800 * RPM)


def a16_rate() -> float:
    return removal.drilling_removal_rate(22 * MM, 0.15 * MM, rpm(200, 22) * RPM)


def a16_power() -> float:
    return force_and_power.motor_power(force_and_power.cutting_power(a16_rate(), 2200 * MPA), 0.75) / 1e3


def a16_time() -> float:
    return times.cutting_time(35 * MM, feed.axial_feed(0.15 * MM, rpm(200, 22) * RPM)) / 60


def a17_printed_thrust() -> float:
    """The printed inch line with the factors as the tables round them."""
    return 2 * 24000 * 0.021 * 0.899 * 1.355 * 1.3 + 24000 * 0.875**2 * 0.030 * 1.3


def a17_thrust() -> float:
    return drill.drill_thrust(24000, 0.008 * INCH, 0.875 * INCH, 0.18, 1.3) / LBF


def a17_torque() -> float:
    return drill.drill_torque(24000, 0.008 * INCH, 0.875 * INCH, 0.18, 1.3)


def a17_power() -> float:
    return kienzle.power_from_torque(a17_torque(), 350 * RPM) / HP


def percent(major: float, per_inch: float, hole: float) -> float:
    return tapping.percent_of_thread(major * INCH, hole * INCH, INCH / per_inch) * 100


def minor(major: float, per_inch: float) -> float:
    return tap_holes.minor_diameter(major * INCH, INCH / per_inch) / INCH


def thin_feed(part: float) -> float:
    """Feed per tooth for a mean chip of 0.16 mm by the square root."""
    return 0.16 / chip_thicknesses.thin_cut_chip_thickness(1.0, part, 1.0)


def exact_feed(part: float) -> float:
    """Feed per tooth for a mean chip of 0.16 mm, exact."""
    return 0.16 / chip_thicknesses.mean_chip_thickness(1.0, part, 1.0)


def carbide_4mm(ratio: float) -> float:
    return deflection.cutter_stiffness(600e9, ratio * 4 * MM, 16 * MM) / 1e6


def a29() -> float:
    once, twice = (deflection.cutter_stiffness(600e9, 8 * MM, length * MM) for length in (30, 60))
    return 0.2 * once / twice


def tap_style(factor: float) -> float:
    """Torque of a style of tap as a percentage of the hand tap's, M10 in medium carbon steel."""
    hand, other = (tapping.tap_torque(3900 * MPA, k, 10 * MM, 8.5 * MM) for k in (1.35, factor))
    return other / hand * 100


def a33_full() -> float:
    mode = chatter.Mode(20e6, 80, 0.03)
    return chatter.zeroth_order([mode], [], teeth=4, kt=600e6, kr=0.3, start=0, end=pi).depth / MM


def hp_per_inch3(number: float) -> float:
    """hp for one cubic inch a minute in W*s/mm^3, through the unit power of one cubic inch."""
    return number * HP / (INCH**3 / 60) / 1e9


ROWS = (
    Row("A1", "mit-f", "read", "cutting speed, 125 mm at 350", 137.4, 0.1, lambda: speed.cutting_speed(350 * RPM, 125 * MM) * 60, "m/min"),
    Row("A2", "mit-f", "read", "feed per tooth, 500 mm/min, 10 teeth, 500 rpm", 0.1, 1e-9, lambda: feed.feed_per_tooth(500 * MM * PER_MINUTE, 10, 500 * RPM) / MM, "mm"),
    Row("A3 n", "wid", "read", "spindle speed, 200 m/min on 125 mm", 510, 1, partial(rpm, 200, 125), "rpm"),
    Row("A3 vf", "wid", "read", "table feed, 0.2 x 8 at the rounded 510", 816, 0.5, partial(mm_min, 0.2, 8, 510), "mm/min"),
    Row("A4 10", "tun-m", "read", "100 m/min on 10 mm (pi taken as 3.14)", 3184, 1.5, partial(rpm, 100, 10), "rpm"),
    Row("A4 16", "tun-m", "read", "100 m/min on 16 mm (pi taken as 3.14)", 1990, 1.5, partial(rpm, 100, 16), "rpm"),
    Row("A4 12", "tun-m", "read", "150 m/min on 12 mm (pi taken as 3.14)", 3980, 1.5, partial(rpm, 150, 12), "rpm"),
    Row("A5 ipr", "nia", "read", "feed per turn, 0.004 x 32 teeth", 0.128, 1e-9, lambda: feed.feed_per_turn(0.004, 32), "in"),
    Row("A5 ipm", "nia", "read", "table feed at 88 rpm (printed cut off)", 11.2, 0.07, lambda: feed.table_feed(0.004 * INCH, 32, 88 * RPM) / INCH * 60, "in/min"),
    Row("A6 50", "jared", "read", "50 ft/min on 1.5 in", 127, 0.5, lambda: speed.spindle_speed(50 * FPM, 1.5 * INCH) * 60, "rpm"),
    Row("A6 200", "jared", "read", "200 ft/min on 1.5 in", 509, 0.5, lambda: speed.spindle_speed(200 * FPM, 1.5 * INCH) * 60, "rpm"),
    Row("A7 n", "uf", "read", "1 in end mill, 250 ft/min x 0.6 for hand oiling", 570, 5, a7_rpm, "rpm"),
    Row("A7 vf", "uf", "read", "its feed, 0.008 x 4", 18, 0.5, a7_feed, "in/min"),
    Row("A8 n", "mit-f", "part remembered", "face mill 200 mm at 125 m/min", 199, 0.1, partial(rpm, 125, 200), "rpm"),
    Row("A8 t", "mit-f", "part remembered", "time for 300 + 200 mm", 0.63, 0.005, lambda: times.cutting_time(500 * MM, mm_min(0.25, 16, rpm(125, 200)) * MM * PER_MINUTE) / 60, "min"),
    Row("A9 n", "mit-p", "read", "80 m/min on 250 mm", 101.91, 0.06, partial(rpm, 80, 250), "rpm", note="exact pi gives 101.86"),
    Row("A9 fz", "mit-p", "read", "feed per tooth, 280 mm/min, 12 teeth (printed cut off)", 0.228, 0.0012, lambda: feed.feed_per_tooth(280 * MM * PER_MINUTE, 12, 101.91 * RPM) / MM, "mm"),
    Row("A9 P", "mit-p", "read", "motor power, 2 x 80, kc 1800, 0.8", 1.68, 0.005, a9_power, "kW"),
    Row("A10 L", "yeh", "read", "way of a slot 300 long, 30 mm cutter, 3 each side", 321, 1e-9, a10_length, "mm"),
    Row("A10 t", "yeh", "read", "its time at 120 mm/min", 2.68, 0.006, lambda: times.cutting_time(a10_length() * MM, 120 * MM * PER_MINUTE) / 60, "min"),
    Row("A10 n", "yeh", "read", "spindle speed from 0.1 mm x 8 teeth", 150, 1e-9, lambda: feed.feed_from_speed(120 * MM, 0.8 * MM), "rpm"),
    Row("A10 v", "yeh", "read", "cutting speed at 150 rpm", 14.13, 0.01, lambda: a10_speed() * 60, "m/min"),
    Row("A10 F", "yeh", "read", "tangential force", 1019, 0.5, lambda: force_and_power.tangential_force(a10_power(), a10_speed()), "N"),
    Row("A10 P", "yeh", "read", "power at the cutter", 0.24, 1e-9, lambda: a10_power() / 1e3, "kW"),
    Row("A10 Pm", "yeh", "read", "power at the motor, 0.9", 0.27, 0.005, lambda: force_and_power.motor_power(a10_power(), 0.9) / 1e3, "kW"),
    Row("A11 n", "gro", "remembered", "70 m/min on 80 mm", 279, 0.6, partial(rpm, 70, 80), "rpm"),
    Row("A11 fr", "gro", "remembered", "feed 0.25 x 5", 348, 0.5, a11_feed, "mm/min"),
    Row("A11 A", "gro", "remembered", "approach, 5 mm wide", 19.4, 0.05, lambda: times.side_approach(5 * MM, 80 * MM) / MM, "mm"),
    Row("A11 t", "gro", "remembered", "time for 400 mm", 1.20, 0.005, a11_time, "min"),
    Row("A11 Q", "gro", "remembered", "removal, 60 x 5", 104400, 50, lambda: removal.milling_removal_rate(60 * MM, 5 * MM, a11_feed() * MM * PER_MINUTE) * 60e9, "mm3/min"),
    Row("A12 A", "gro", "remembered", "approach, centred face mill 150 on 125", 33.5, 0.05, lambda: approach_lengths.face_approach(125 * MM, 150 * MM) / MM, "mm"),
    Row("A12 t", "gro", "remembered", "time for 300 mm", 52, 0.05, a12_time, "s"),
    Row("A12 Q", "gro", "remembered", "removal, 6 x 125", 4813, 0.5, lambda: removal.milling_removal_rate(6 * MM, 125 * MM, a12_feed()) * 1e9, "mm3/s"),
    Row("A13 v", "kalp", "remembered", "table feed, 0.25 x 20 at 100", 500, 1e-9, partial(mm_min, 0.25, 20, 100), "mm/min"),
    Row("A13 Q", "kalp", "remembered", "removal, 3 x 100", 150000, 1e-6, lambda: removal.milling_removal_rate(3 * MM, 100 * MM, 500 * MM * PER_MINUTE) * 60e9, "mm3/min"),
    Row("A13 P", "kalp", "remembered", "power at 3 W*s/mm3", 7.5, 1e-9, lambda: a13_power() / 1e3, "kW"),
    Row("A13 M", "kalp", "remembered", "torque at 100 rpm", 716, 0.5, lambda: kienzle.torque_from_power(a13_power(), 100 * RPM), "N*m"),
    Row("A13 lc", "kalp", "remembered", "approach (dD)^0.5; exact 11.87", 12.2, 0.06, lambda: approach_lengths.slab_approach(3 * MM, 50 * MM) / MM, "mm"),
    Row("A13 t", "kalp", "remembered", "time for 300 mm", 37.5, 0.05, a13_time, "s"),
    Row("A14 n", "gro", "remembered", "25 m/min on 12.7 mm", 626.6, 0.05, partial(rpm, 25, 12.7), "rpm"),
    Row("A14 fr", "gro", "remembered", "feed 0.30 a turn", 188, 0.05, a14_feed, "mm/min"),
    Row("A14 A", "gro", "remembered", "point of a 118 degree drill", 3.82, 0.006, lambda: times.point_length(12.7 * MM, radians(118)) / MM, "mm"),
    Row("A14 t", "gro", "remembered", "time for 60 deep", 0.339, 0.0006, a14_time, "min"),
    Row("A14 Q", "gro", "remembered", "removal", 23800, 50, a14_rate, "mm3/min"),
    Row("A15 Q", "kalp", "remembered", "removal, 10 mm, 0.2 at 800", 210, 1, lambda: a15_rate() * 1e9, "mm3/s"),
    Row("A15 P", "kalp", "remembered", "power at 0.5 W*s/mm3", 105, 0.5, lambda: force_and_power.cutting_power(a15_rate(), 0.5e9), "W"),
    Row("A15 M", "kalp", "remembered", "torque", 1.25, 0.005, a15_torque, "N*m"),
    Row("A16 n", "isc-d", "read", "200 m/min on 22 mm", 2894, 0.5, partial(rpm, 200, 22), "rpm"),
    Row("A16 vf", "isc-d", "read", "feed 0.15 a turn", 434, 0.1, lambda: feed.axial_feed(0.15 * MM, rpm(200, 22) * RPM) / MM * 60, "mm/min"),
    Row("A16 Q", "isc-d", "read", "removal", 165, 0.1, lambda: a16_rate() / CM3 * 60, "cm3/min"),
    Row("A16 P", "isc-d", "read", "motor power, kc 2200, 0.75", 8.06, 0.01, a16_power, "kW"),
    Row("A16 M", "isc-d", "read", "torque by the lips", 20, 0.05, lambda: drill_lines.kienzle_drill_torque(2200 * MPA, 0.15 * MM, 22 * MM), "N*m"),
    Row("A16 T", "isc-d", "read", "thrust of a thinned point, sin taken as 1", 2286, 1, lambda: twist_drill_forms.kienzle_drill_thrust(2200 * MPA, 0.15 * MM, 22 * MM, pi), "N"),
    Row("A16 t", "isc-d", "read", "time for 25 + 10", 0.08, 0.001, a16_time, "min"),
    Row("A17 T table", "mh31", "part remembered", "thrust, 7/8 in, by the printed factors", 2313, 0.5, a17_printed_thrust, "lbf"),
    Row("A17 T", "mh31", "part remembered", "thrust, 7/8 in, by the closed form", 2313, 5, a17_thrust, "lbf", ours=2370, note="the table rounds J 0.0324 to 0.030, and the metric line its 0.05 and 0.007: 2.4 % more"),
    Row("A17 M", "mh31", "part remembered", "torque, 7/8 in", 559, 5.6, lambda: a17_torque() / INCH_POUND, "lbf*in", note="the metric line rounds 2.514e-5 to 2.5e-5"),
    Row("A17 Pc", "mh31", "part remembered", "power at the drill, 350 rpm", 3.1, 0.05, a17_power, "hp"),
    Row("A17 Pm", "mh31", "part remembered", "power at the motor, 0.80", 3.9, 0.06, lambda: force_and_power.motor_power(a17_power(), 0.80), "hp"),
    Row("A18 M", "mit-c", "read", "torque, 10 mm, 0.3, mild steel", 15, 1, lambda: drill.drill_torque(24000, 0.3 * MM, 10 * MM), "N*m"),
    Row("A18 M second", "mit-c", "read", "the same by the second set", 15, 2.5, lambda: drill_lines.twist_drill_torque(2.22, 0.3 * MM, 10 * MM), "N*m"),
    Row("A18 T", "mit-c", "read", "thrust, 10 mm, 0.3, mild steel", 2500, 250, lambda: drill.drill_thrust(24000, 0.3 * MM, 10 * MM), "N", ours=4420, note="the page means a thinned point; a standard chisel doubles the thrust, and the second set agrees with us"),
    Row("A18 T second", "mit-c", "read", "the same by the second set", 2500, 250, lambda: drill_lines.twist_drill_thrust(2.22, 0.3 * MM, 10 * MM), "N", ours=4548, note="see A18 T"),
    Row("A19 v", "lzq", "read", "12 mm at 1350", 50.9, 0.05, lambda: speed.cutting_speed(1350 * RPM, 12 * MM) * 60, "m/min"),
    Row("A19 vf", "lzq", "read", "0.2 a turn at 1350", 270, 1e-6, lambda: feed.axial_feed(0.2 * MM, 1350 * RPM) / MM * 60, "mm/min"),
    Row("A20", "mh31", "read", "thread, 2-56 in 0.0700", 69, 0.5, partial(percent, 0.086, 56, 0.0700), "%"),
    Row("A21", "mh31", "read", "thread, 3-48 in 0.0785", 76, 0.5, partial(percent, 0.099, 48, 0.0785), "%"),
    Row("A22", "mh31", "read", "thread, 1-64 in 1.45 mm", 77, 0.6, partial(percent, 0.073, 64, 0.0571), "%", ours=78.3, note="printed 1 low"),
    Row("A23", "mh31", "read", "thread, 0-80 in 1.25 mm", 68, 0.6, partial(percent, 0.060, 80, 0.0492), "%", ours=66.5, note="1.25 mm is 0.0492 in; probably slipped by a column"),
    Row("A24 3/4", "mh31", "read", "minor diameter 3/4-10", 0.6417, 1e-4, partial(minor, 0.75, 10), "in"),
    Row("A24 1/4", "mh31", "read", "minor diameter 1/4-20", 0.1959, 1e-4, partial(minor, 0.25, 20), "in"),
    Row("A24 1", "mh31", "read", "minor diameter 1-8", 0.8647, 1e-4, partial(minor, 1.0, 8), "in"),
    Row("A25", "ste", "read", "feed for a chip of 0.08 at 42 degrees", 0.12, 0.001, lambda: chip_thicknesses.feed_for_entering_angle(0.08 * MM, radians(42)) / MM, "mm"),
    Row("A26 0.2", "cer", "read", "feed for a mean chip of 0.16, width 0.2 D, square root", 0.36, 0.005, partial(thin_feed, 0.2), "mm"),
    Row("A26 0.4", "cer", "read", "the same, 0.4 D", 0.25, 0.005, partial(thin_feed, 0.4), "mm"),
    Row("A26 1", "cer", "read", "the same, a slot", 0.16, 1e-9, partial(thin_feed, 1.0), "mm"),
    Row("A26 0.2 exact", "cer", "read", "exact mean, 0.2 D", 0.36, 0.005, partial(exact_feed, 0.2), "mm", ours=0.371, note="the table is the square root, which is meant for thin cuts"),
    Row("A26 0.4 exact", "cer", "read", "exact mean, 0.4 D", 0.25, 0.005, partial(exact_feed, 0.4), "mm", ours=0.274, note="as above"),
    Row("A26 1 exact", "cer", "read", "exact mean, a slot", 0.16, 0.005, partial(exact_feed, 1.0), "mm", ours=0.251, note="as above: 57 % off in a slot"),
    Row("A27", "curious", "read", "tool life at half the speed, n 0.25", 16, 1e-6, lambda: approach_lengths.tool_life(0.5, 1.0, 0.25) / approach_lengths.tool_life(1.0, 1.0, 0.25), "times"),
    Row("A28", "mit-f", "part remembered", "roughness, 0.2 a turn, radius 0.8", 6.25, 1e-6, lambda: finish.nose_roughness(0.2 * MM, 0.8 * MM) * 1e6, "um"),
    Row("A29", "mit-c", "read", "deflection 0.2 mm at twice the overhang", 1.6, 1e-9, a29, "mm"),
    Row("A30 k solid", "cort", "read", "stiffness, 4 mm carbide 16 mm out", 0.6, 0.1, partial(carbide_4mm, 1.0), "N/um", ours=5.5, note="does not follow from the bending of a bar; holder and collet may be in it"),
    Row("A30 k fluted", "cort", "read", "the same, fluted", 0.6, 0.1, partial(carbide_4mm, 0.8), "N/um", ours=2.262, note="as above"),
    Row("A30 cutter", "cort", "read", "deflection, 11 N on 0.6 N/um", 20, 2, lambda: deflection.deflection(11, 0.6e6) * 1e6, "um"),
    Row("A30 machine", "cort", "read", "deflection, 11 N on 5 N/um", 2.5, 0.35, lambda: deflection.deflection(11, 5e6) * 1e6, "um"),
    Row("A31 first", "yam", "read", "tapping torque, M8 in 6.8 (formula read, no printed answer)", 3.94, 0.005, lambda: tapping.tap_torque(3900 * MPA, 1.35, 8 * MM, 6.8 * MM), "N*m"),
    Row("A31 second", "lub", "read", "the same by the simple form (formula read, no printed answer)", 3.91, 0.005, lambda: tap_holes.simple_tap_torque(2500 * MPA, 1.25 * MM, 8 * MM), "N*m"),
    Row("A32 flute", "yam", "read", "spiral flute against hand tap, measured", 72.5, 2.5, partial(tap_style, 1.15), "%", ours=85, note="the same maker measures less than its own table of K"),
    Row("A32 point", "yam", "read", "spiral point against hand tap, measured", 62.5, 2.5, partial(tap_style, 0.95), "%", ours=70.4, note="as above"),
    Row("A33", "derived", "derived", "chatter in a slot, one mode, closed form", 6.867, 0.001, lambda: chatter_theory.slot_limit_one_mode(20e6, 0.03, 600e6, 0.3, 4) / MM, "mm"),
    Row("A33 full", "ab95", "derived", "the same by the full theory", 6.867, 0.001, a33_full, "mm"),
    Row("A34 0.82", "mh31", "read", "0.82 hp for one in3/min", 2.24, 0.005, partial(hp_per_inch3, 0.82), "W*s/mm3"),
    Row("A34 1.14", "mh31", "read", "1.14 hp for one in3/min", 3.11, 0.005, partial(hp_per_inch3, 1.14), "W*s/mm3"),
    Row("A35", "dp-f", "read", "power by the rule of thumb, 2 x 50 at 200, steel", 0.83, 0.005, lambda: thumb_power(removal.milling_removal_rate(2 * MM, 50 * MM, 200 * MM * PER_MINUTE), 24000e-9 / 60e3) / 1e3, "kW"),
    Row("A35 kc", "dp-f", "read", "the same by a specific force of 2500", 0.83, 0.005, lambda: kienzle.milling_power(2 * MM, 50 * MM, 200 * MM * PER_MINUTE, 2500 * MPA) / 1e3, "kW"),
)  # fmt: skip
