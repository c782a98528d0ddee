"""Threads against the printed lists: minor diameter and height of thread, from the shipped sizes.

The minor diameters of the coarse unified threads were read in the handbook; those of the fine ones in a
public list, which the arithmetic of the same standard gives again. Metric ones follow from the basic profile.
The height of thread is arithmetic of our own notes: it checks sizes of threads and drills, not a source.
"""

from __future__ import annotations

from functools import partial

from jobsheet.catalog.tools.drills import read_drill_size
from jobsheet.catalog.tools.threads import thread_table
from jobsheet.cutting import tapping
from jobsheet.cutting.textbook import tap_holes

from .row import INCH, MM, Mark, Row

# Thread; basic minor diameter and usual tap drill in inches; height of thread in that drill, percent.
UNIFIED = (
    ("#0-80 UNF", 0.0465, 0.0469, 80.8),
    ("#1-64 UNC", 0.0561, 0.0595, 66.5),
    ("#1-72 UNF", 0.0580, 0.0595, 74.8),
    ("#2-56 UNC", 0.0667, 0.0700, 69.0),
    ("#2-64 UNF", 0.0691, 0.0700, 78.8),
    ("#3-48 UNC", 0.0764, 0.0785, 75.7),
    ("#3-56 UNF", 0.0797, 0.0820, 73.3),
    ("#4-40 UNC", 0.0849, 0.0890, 70.8),
    ("#4-48 UNF", 0.0894, 0.0935, 68.4),
    ("#5-40 UNC", 0.0979, 0.1015, 72.4),
    ("#5-44 UNF", 0.1004, 0.1040, 71.1),
    ("#6-32 UNC", 0.1042, 0.1065, 77.6),
    ("#6-40 UNF", 0.1109, 0.1130, 77.0),
    ("#8-32 UNC", 0.1302, 0.1360, 69.0),
    ("#8-36 UNF", 0.1339, 0.1360, 77.6),
    ("#10-24 UNC", 0.1449, 0.1495, 74.8),
    ("#10-32 UNF", 0.1562, 0.1590, 76.4),
    ("#12-24 UNC", 0.1709, 0.1770, 72.1),
    ("#12-28 UNF", 0.1773, 0.1820, 73.3),
    ("1/4-20 UNC", 0.1959, 0.2010, 75.4),
    ("1/4-28 UNF", 0.2113, 0.2130, 79.8),
    ("5/16-18 UNC", 0.2524, 0.2570, 76.9),
    ("5/16-24 UNF", 0.2674, 0.2720, 74.8),
    ("3/8-16 UNC", 0.3073, 0.3125, 77.0),
    ("3/8-24 UNF", 0.3299, 0.3320, 79.4),
    ("7/16-14 UNC", 0.3602, 0.3680, 74.9),
    ("7/16-20 UNF", 0.3834, 0.3906, 72.2),
    ("1/2-13 UNC", 0.4167, 0.4219, 78.2),
    ("1/2-20 UNF", 0.4459, 0.4531, 72.2),
    ("9/16-12 UNC", 0.4723, 0.4844, 72.2),
    ("9/16-18 UNF", 0.5024, 0.5156, 65.0),
    ("5/8-11 UNC", 0.5266, 0.5312, 79.4),
    ("5/8-18 UNF", 0.5649, 0.5781, 65.0),
    ("3/4-10 UNC", 0.6417, 0.6562, 72.2),
    ("3/4-16 UNF", 0.6823, 0.6875, 77.0),
    ("7/8-9 UNC", 0.7547, 0.7656, 75.8),
    ("7/8-14 UNF", 0.7977, 0.8125, 67.4),
    ("1-8 UNC", 0.8647, 0.8750, 77.0),
    ("1-12 UNF", 0.9098, 0.9219, 72.2),
)
METRIC = (
    ("M2x0.4", 1.567, 1.6, 77.0),
    ("M2.5x0.45", 2.013, 2.05, 77.0),
    ("M3x0.5", 2.459, 2.5, 77.0),
    ("M3x0.35", 2.621, 2.65, 77.0),
    ("M3.5x0.6", 2.850, 2.9, 77.0),
    ("M4x0.7", 3.242, 3.3, 77.0),
    ("M4x0.5", 3.459, 3.5, 77.0),
    ("M5x0.8", 4.134, 4.2, 77.0),
    ("M5x0.5", 4.459, 4.5, 77.0),
    ("M6x1", 4.917, 5, 77.0),
    ("M6x0.75", 5.188, 5.25, 77.0),
    ("M7x1", 5.917, 6, 77.0),
    ("M8x1.25", 6.647, 6.8, 73.9),
    ("M8x1", 6.917, 7, 77.0),
    ("M10x1.5", 8.376, 8.5, 77.0),
    ("M10x1.25", 8.647, 8.8, 73.9),
    ("M10x1", 8.917, 9, 77.0),
    ("M12x1.75", 10.106, 10.2, 79.2),
    ("M12x1.5", 10.376, 10.5, 77.0),
    ("M12x1.25", 10.647, 10.8, 73.9),
    ("M14x2", 11.835, 12, 77.0),
    ("M14x1.5", 12.376, 12.5, 77.0),
    ("M16x2", 13.835, 14, 77.0),
    ("M16x1.5", 14.376, 14.5, 77.0),
    ("M18x2.5", 15.294, 15.5, 77.0),
    ("M18x1.5", 16.376, 16.5, 77.0),
    ("M20x2.5", 17.294, 17.5, 77.0),
    ("M20x1.5", 18.376, 18.5, 77.0),
    ("M22x2.5", 19.294, 19.5, 77.0),
    ("M22x1.5", 20.376, 20.5, 77.0),
    ("M24x3", 20.752, 21, 77.0),
    ("M24x2", 21.835, 22, 77.0),
)


def minor(name: str, unit: float) -> float:
    """Basic minor diameter from the shipped major diameter and pitch."""
    row = thread_table()[name]
    return tap_holes.minor_diameter(row.major, row.pitch) / unit


def drill(name: str, unit: float) -> float:
    """The shipped tap drill by its name, or by its size."""
    return read_drill_size(str(thread_table()[name].drill), "mm" if unit == MM else "in") / unit


def height(name: str, unit: float) -> float:
    """Height of thread in the shipped tap drill, percent."""
    row = thread_table()[name]
    return tapping.percent_of_thread(row.major, drill(name, unit) * unit, row.pitch) * 100


#: Coarse threads whose tap drill is remembered; those of fine ones are diameter less pitch.
REMEMBERED = ("M3.5x0.6", "M7x1", "M14x2", "M18x2.5", "M22x2.5")


def mark(name: str) -> Mark:
    if thread_table()[name].fine:
        return "derived"
    return "remembered" if name in REMEMBERED else "read"


def _unified():
    for name, d1, size, percent in UNIFIED:
        if name.endswith("UNC"):
            yield Row(
                f"D1 {name}", "mh31", "read", "minor diameter", d1, 1e-4, partial(minor, name, INCH), "in"
            )
        else:
            yield Row(
                f"D1 {name}",
                "derived",
                "derived",
                "minor diameter",
                d1,
                1e-4,
                partial(minor, name, INCH),
                "in",
            )
        yield Row(
            f"drill {name}", "charts", "read", "usual tap drill", size, 6e-5, partial(drill, name, INCH), "in"
        )
        yield Row(
            f"thread {name}",
            "derived",
            "derived",
            "height of thread in it",
            percent,
            0.06,
            partial(height, name, INCH),
            "%",
        )


def _metric():
    for name, d1, size, percent in METRIC:
        yield Row(
            f"D1 {name}", "iso68", "derived", "minor diameter", d1, 6e-4, partial(minor, name, MM), "mm"
        )
        yield Row(
            f"drill {name}",
            "charts",
            mark(name),
            "usual tap drill",
            size,
            1e-9,
            partial(drill, name, MM),
            "mm",
        )
        yield Row(
            f"thread {name}",
            "derived",
            "derived",
            "height of thread in it",
            percent,
            0.06,
            partial(height, name, MM),
            "%",
        )


ROWS = (*_unified(), *_metric())
