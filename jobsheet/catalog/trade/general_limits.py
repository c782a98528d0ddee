"""General limits of lengths where a drawing gives none beside the size: ISO 2768-1, class m (medium)."""

from __future__ import annotations

from jobsheet.errors import CalcError

#: Up to which size [m] and how far either way [m]: ISO 2768-1:1989, table 1, class m.
CLASS_M = (
    (6e-3, 0.1e-3),
    (30e-3, 0.2e-3),
    (120e-3, 0.3e-3),
    (400e-3, 0.5e-3),
    (1000e-3, 0.8e-3),
    (2000e-3, 1.2e-3),
)
#: What they are called where they are assumed.
NAME = "ISO 2768-1 m"


def general_limit(size: float) -> float:
    """How far a length of that size may be out either way [m].

    Raises
    ------
    CalcError
        Above the end of the table.
    """
    for upper, either_way in CLASS_M:
        if size <= upper * (1 + 1e-9):
            return either_way
    raise CalcError("size", f"{size * 1e3:g} mm", f"at most {CLASS_M[-1][0] * 1e3:g} mm for general limits")
