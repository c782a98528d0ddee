"""Ten cuts whose forces were summed twice in our own notes, by two computations, C1 to C10."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from math import radians

from jobsheet.cutting.chip import arc_chip_thickness
from jobsheet.cutting.kienzle import specific_cutting_force
from jobsheet.cutting.toothforce import ToothForces, face_arc, side_arc, tooth_forces

from .row import MM, Row

# The arcs are asked for when a cut is reckoned, not when this is read: a wrong arc is then a wrong force.
FULL = partial(side_arc, 12 * MM, 12 * MM)
FACE = partial(face_arc, 38 * MM, 50 * MM)

# D, z, helix, depth, arc, feed | chip mm, kc MPa | Ft mean peak | Fx mean low high | Fy mean low high | Fa | torque
CASES = {
    "C1 slot, straight": (12, 4, 0, 2, FULL, 0.04, 0.02546, 3566, (363, 403), (-114, -114, -114), (285, 285, 285), (0, 0), (2.18, 2.42)),
    "C2 slot": (12, 4, 30, 2, FULL, 0.04, 0.02546, 3566, (363, 403), (-114, -114, -114), (285, 285, 285), (210, 233), (2.18, 2.42)),
    "C3 thin, conventional": (12, 4, 30, 12, partial(side_arc, 0.3 * MM, 12 * MM), 0.04, 0.00630, 4782, (73.1, 99.4), (-77.4, -105, 0), (-13.2, -18.0, 0), (42.2, 57.4), (0.438, 0.596)),
    "C4 thin, climb": (12, 4, 30, 12, partial(side_arc, 0.3 * MM, 12 * MM, climb=True), 0.04, 0.00630, 4782, (73.1, 99.4), (65.1, 0, 88.6), (43.8, 0, 59.6), (42.2, 57.4), (0.438, 0.596)),
    "C5 thick, conventional": (12, 4, 30, 6, partial(side_arc, 6 * MM, 12 * MM), 0.04, 0.02546, 3566, (545, 809), (-444, -607, -243), (319, 0.635, 679), (315, 467), (3.27, 4.86)),
    "C6 thick, straight": (12, 4, 0, 6, partial(side_arc, 6 * MM, 12 * MM), 0.04, 0.02546, 3566, (545, 856), (-444, -632, 0), (319, -33.0, 856), (0, 0), (3.27, 5.14)),
    "C7 thick, climb": (12, 4, 30, 6, partial(side_arc, 6 * MM, 12 * MM, climb=True), 0.04, 0.02546, 3566, (545, 809), (101, -98.9, 265), (537, 177, 855), (315, 467), (3.27, 4.86)),
    "C8 face, centred": (50, 4, 0, 1, FACE, 0.1, 0.08803, 2749, (266, 389), (-95.0, -203, 72.3), (237, 104, 285), (0, 0), (6.65, 9.72)),
    "C9 face, offset 6": (50, 4, 0, 1, partial(face_arc, 38 * MM, 50 * MM, 6 * MM), 0.1, 0.07178, 2869, (278, 394), (-160, -212, -115), (207, 26.6, 287), (0, 0), (6.94, 9.86)),
    "C10 fly cutter": (50, 1, 0, 0.5, FACE, 0.1, 0.08803, 2749, (33.2, 137), (-11.9, -101, 44.7), (29.7, 0, 143), (0, 0), (0.831, 3.44)),
}  # fmt: skip


def cut(
    diameter: float,
    teeth: int,
    helix: float,
    depth: float,
    arc: Callable[[], tuple[float, float]] | tuple[float, float],
    fz: float,
) -> ToothForces:
    start, end = arc() if callable(arc) else arc
    chip = arc_chip_thickness(fz * MM, start, end)
    return tooth_forces(
        kc=specific_cutting_force(1500e6, 0.21, chip, 1.1),
        feed_per_tooth=fz * MM,
        depth=depth * MM,
        diameter=diameter * MM,
        teeth=teeth,
        helix=radians(helix),
        start=start,
        end=end,
    )


#: Figure of the sum, what the table calls it, its unit.
FIGURES = (
    ("tangential_mean", "tangential force, mean", "N"),
    ("tangential_peak", "tangential force, peak", "N"),
    ("feed_mean", "force along the feed, mean", "N"),
    ("feed_low", "force along the feed, lowest", "N"),
    ("feed_high", "force along the feed, highest", "N"),
    ("side_mean", "force across the feed, mean", "N"),
    ("side_low", "force across the feed, lowest", "N"),
    ("side_high", "force across the feed, highest", "N"),
    ("axial_mean", "force along the axis, mean", "N"),
    ("axial_peak", "force along the axis, peak", "N"),
    ("torque_mean", "torque, mean", "N*m"),
    ("torque_peak", "torque, peak", "N*m"),
)


def force(case: tuple, name: str) -> float:
    return float(getattr(cut(*case[:6]), name))


def _rows():
    for title, case in CASES.items():
        key, _, words = title.partition(" ")
        printed = [value for group in case[8:] for value in group]
        for (name, what, unit), value in zip(FIGURES, printed, strict=True):
            # half a percent, or half a unit of the last printed digit
            tolerance = max(
                0.005 * abs(value), 0.0005 if unit == "N*m" else 0.005 if abs(value) < 1 else 0.05
            )
            yield Row(
                f"{key} {name}",
                "derived",
                "derived",
                f"{words}: {what}",
                value,
                tolerance,
                partial(force, case, name),
                unit,
            )


ROWS = tuple(_rows())
