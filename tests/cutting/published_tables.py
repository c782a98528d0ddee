"""Printed tables against the closed forms they were made from, and catalogue pairs against each other."""

from __future__ import annotations

from functools import partial

from jobsheet.cutting import drill_factors, tapping, times

from .row import HP, INCH, MM, MPA, Row

# Table 7: c/d, A, B, J. The torque factor at 0.15 is a misprint.
CHISEL = (
    (0.03, 1.000, 1.100, 0.001),
    (0.05, 1.005, 1.140, 0.003),
    (0.08, 1.015, 1.200, 0.006),
    (0.10, 1.020, 1.235, 0.010),
    (0.13, 1.040, 1.270, 0.017),
    (0.15, 1.080, 1.310, 0.022),
    (0.18, 1.085, 1.355, 0.030),
    (0.20, 1.105, 1.380, 0.040),
    (0.25, 1.155, 1.445, 0.065),
    (0.30, 1.235, 1.500, 0.090),
    (0.35, 1.310, 1.575, 0.120),
    (0.40, 1.395, 1.620, 0.160),
)

FEED_INCH = {
    0.0005: 0.0023, 0.001: 0.004, 0.002: 0.007, 0.003: 0.010, 0.004: 0.012, 0.005: 0.014, 0.006: 0.017,
    0.007: 0.019, 0.008: 0.021, 0.009: 0.023, 0.010: 0.025, 0.012: 0.029, 0.013: 0.031, 0.015: 0.035,
    0.018: 0.040, 0.020: 0.044, 0.022: 0.047, 0.025: 0.052, 0.030: 0.060, 0.035: 0.068, 0.040: 0.076,
    0.050: 0.091,
}  # fmt: skip
FEED_METRIC = {
    0.01: 0.025, 0.03: 0.060, 0.05: 0.091, 0.08: 0.133, 0.10: 0.158, 0.12: 0.183, 0.15: 0.219, 0.18: 0.254,
    0.20: 0.276, 0.22: 0.298, 0.25: 0.330, 0.30: 0.382, 0.35: 0.432, 0.40: 0.480, 0.45: 0.528, 0.50: 0.574,
    0.55: 0.620, 0.65: 0.708, 0.75: 0.794, 0.90: 0.919, 1.00: 1.000, 1.25: 1.195,
}  # fmt: skip

DIAMETER_INCH = {
    0.063: (0.110, 0.007), 0.094: (0.151, 0.014), 0.125: (0.189, 0.024), 0.156: (0.226, 0.035),
    0.188: (0.263, 0.049), 0.219: (0.297, 0.065), 0.250: (0.330, 0.082), 0.281: (0.362, 0.102),
    0.313: (0.395, 0.124), 0.344: (0.426, 0.146), 0.375: (0.456, 0.171), 0.438: (0.517, 0.226),
    0.500: (0.574, 0.287), 0.563: (0.632, 0.355), 0.625: (0.687, 0.429), 0.688: (0.741, 0.510),
    0.875: (0.899, 0.786), 0.938: (0.950, 0.891), 1.000: (1.0, 1.0), 1.063: (1.050, 1.116),
    1.125: (1.099, 1.236), 1.250: (1.195, 1.494), 1.375: (1.290, 1.774), 1.500: (1.383, 2.075),
}  # fmt: skip
DIAMETER_METRIC = {
    1.6: (1.46, 2.33), 2.4: (2.02, 4.84), 3.2: (2.54, 8.12), 4.0: (3.03, 12.12), 4.8: (3.51, 16.84),
    5.6: (3.97, 22.22), 6.4: (4.42, 28.26), 7.2: (4.85, 34.93), 8.0: (5.28, 42.22), 8.8: (5.96, 50.13),
    9.5: (6.06, 57.53), 11: (6.81, 74.90), 12.5: (7.54, 94.28), 14.5: (8.49, 123.1), 16: (9.19, 147.0),
    17.5: (9.87, 172.8), 22: (11.86, 260.8), 24: (12.71, 305.1), 25.5: (13.34, 340.2),
}  # fmt: skip

# hp for one cubic inch a minute, and W*s for one mm3, as the page prints them side by side.
UNIT_POWER = (
    (0.63, 1.72), (0.66, 1.80), (0.69, 1.88), (0.74, 2.02), (0.78, 2.13), (0.82, 2.24), (0.85, 2.32),
    (0.89, 2.43), (0.92, 2.51), (0.95, 2.59), (1.00, 2.73), (1.03, 2.81), (1.06, 2.89), (1.14, 3.11),
    (0.41, 1.12), (0.42, 1.15), (0.44, 1.20), (0.48, 1.31), (0.50, 1.36), (0.51, 1.39), (0.55, 1.50),
    (0.57, 1.56), (0.62, 1.69), (0.65, 1.77), (0.72, 1.97), (0.76, 2.07), (0.80, 2.18), (0.84, 2.29),
    (0.87, 2.38), (0.91, 2.48), (0.96, 2.62), (0.56, 1.53), (0.59, 1.61), (0.70, 1.91), (0.74, 2.02),
    (0.77, 2.10), (0.83, 2.27), (0.89, 2.43), (0.79, 2.16),
)  # fmt: skip

# Tap drill and thread in mm; torque in soft steel, strength.
TAPS = (
    ("M3", 3, 2.5, 0.234, 1.06),
    ("M4", 4, 3.3, 0.607, 2.51),
    ("M5", 5, 4.2, 1.00, 4.90),
    ("M6", 6, 5.0, 1.87, 8.47),
    ("M8", 8, 6.8, 3.64, 20.1),
    ("M10", 10, 8.5, 7.10, 39.2),
    ("M12", 12, 10.2, 12.3, 67.7),
    ("1/4-20", 6.35, 5.105, 3.00, 10.0),
    ("5/16-18 H", 7.9375, 6.756, 3.50, 19.6),
    ("5/16-18 F", 7.9375, 6.528, 4.88, 19.6),
    ("3/8-16", 9.525, 7.938, 7.48, 33.9),
)

POINTS = (
    (60, 0.866),
    (82, 0.575),
    (90, 0.5),
    (118, 0.3),
    (120, 0.289),
    (130, 0.233),
    (135, 0.207),
    (140, 0.182),
)


def inch_feed_factor(feed: float) -> float:
    """The table counts 1 at a feed of one inch."""
    return drill_factors.drill_feed_factor(feed * INCH) / drill_factors.drill_feed_factor(INCH)


def inch_factor(function, diameter: float) -> float:
    """The table counts 1 at a diameter of one inch."""
    return function(diameter * INCH) / function(INCH)


def metric_energy(horse_power: float) -> float:
    return horse_power * HP / (INCH**3 / 60) / 1e9


def point(angle: float) -> float:
    from math import radians

    return times.point_length(1.0, radians(angle))


def _chisel():
    for ratio, torque, thrust, indentation in CHISEL:
        a = partial(drill_factors.chisel_torque_factor, ratio)
        if ratio == 0.15:
            why = "off the curve of its neighbours by 2.3 %: a misprint"
            yield Row(f"T7 A {ratio}", "mh31", "read", "table 7, A", torque, 0.006, a, ours=1.056, note=why)
        else:
            yield Row(f"T7 A {ratio}", "mh31", "read", "table 7, A", torque, 0.006, a)
        yield Row(
            f"T7 B {ratio}",
            "mh31",
            "read",
            "table 7, B",
            thrust,
            0.014,
            partial(drill_factors.chisel_thrust_factor, ratio),
        )
        yield Row(f"T7 J {ratio}", "mh31", "read", "table 7, J", indentation, 0.003, partial(drill_factors.chisel_indentation_factor, ratio))  # fmt: skip


def _drills():
    for size, factor in FEED_INCH.items():
        yield Row(
            f"T8 {size} in", "mh31", "read", "table 8, inch", factor, 0.00055, partial(inch_feed_factor, size)
        )
    for size, factor in FEED_METRIC.items():
        yield Row(f"T8 {size} mm", "mh31", "read", "table 8, metric", factor, 0.009 * factor, partial(drill_factors.drill_feed_factor, size * MM))  # fmt: skip
    thrust, torque = drill_factors.drill_thrust_diameter_factor, drill_factors.drill_torque_diameter_factor
    for size, (ft, fm) in DIAMETER_INCH.items():
        yield Row(
            f"T9 FT {size} in",
            "mh31",
            "read",
            "table 9, inch, thrust",
            ft,
            0.0016,
            partial(inch_factor, thrust, size),
        )
        yield Row(
            f"T9 FM {size} in",
            "mh31",
            "read",
            "table 9, inch, torque",
            fm,
            0.0016,
            partial(inch_factor, torque, size),
        )
    for size, (ft, fm) in DIAMETER_METRIC.items():
        row = partial(Row, f"T9 FT {size} mm", "mh31", "read", "table 9, metric, thrust", ft, 0.006)
        if size == 8.8:
            yield row(
                partial(thrust, size * MM), ours=5.70, note="larger than the next row allows: a misprint"
            )
        else:
            yield row(partial(thrust, size * MM))
        yield Row(f"T9 FM {size} mm", "mh31", "read", "table 9, metric, torque", fm, 0.0006 * fm + 0.005, partial(torque, size * MM))  # fmt: skip


def _taps():
    for name, major, hole, torque, strength in TAPS:
        turn = partial(tapping.tap_torque, 3600 * MPA, 1.35, major * MM, hole * MM)
        yield Row(
            f"tap {name} torque",
            "yam",
            "derived",
            "torque in soft steel",
            torque,
            0.0055 * torque,
            turn,
            "N*m",
        )
        yield Row(f"tap {name} strength", "estimate", "derived", "strength", strength, 0.0055 * strength, partial(tapping.tap_strength, major * MM), "N*m")  # fmt: skip


ROWS = (
    *_chisel(),
    *_drills(),
    *(
        Row(f"Kp {position} {inch}", "mh31", "read", "unit power, inch and metric side by side", metric, 0.012, partial(metric_energy, inch), "W*s/mm3")
        for position, (inch, metric) in enumerate(UNIT_POWER)
    ),
    *_taps(),
    *(Row(f"point {angle}", "derived", "derived", "point over diameter", length, 0.0006, partial(point, angle)) for angle, length in POINTS),
    Row("edges 3", "so57", "remembered", "factor of three edges", 1.08, 0.005, partial(drill_factors.edges_factor, 3)),
    Row("edges 4", "so57", "remembered", "factor of four edges", 1.15, 0.005, partial(drill_factors.edges_factor, 4)),
    Row("edges 6", "so57", "remembered", "factor of six edges", 1.25, 0.005, partial(drill_factors.edges_factor, 6)),
)  # fmt: skip
