"""What a machine reamer may find on the diameter, as the review asks for it: wider than what is suggested.

Trade syllabus on reaming, a tool maker's page and a government shop manual, taken
together (cutting-data section 3.4).
"""

from __future__ import annotations

#: Largest reamer of each row, least and most on the diameter, and what is
#: offered [m]; the last row is for all above.
ROWS = (
    (4.3e-3, 0.10e-3, 0.25e-3, 0.2e-3),
    (7.1e-3, 0.10e-3, 0.30e-3, 0.2e-3),
    (22.4e-3, 0.15e-3, 0.41e-3, 0.3e-3),
    (float("inf"), 0.20e-3, 0.76e-3, 0.5e-3),
)


def room(diameter: float) -> tuple[float, float]:
    """Least and most on the diameter for a reamer of that size [m]."""
    _, low, high, _ = next(row for row in ROWS if diameter <= row[0])
    return low, high


def drill_for(diameter: float) -> float:
    """A drill in tenths of a millimetre that leaves the reamer its room [m]."""
    offered = next(row for row in ROWS if diameter <= row[0])[3]
    return round((diameter - offered) * 1e4) / 1e4
