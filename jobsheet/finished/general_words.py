"""General limits as a drawing says them in words: `ISO 2768-1 m`, `ISO 2768-mK`, `±0.1 unless stated`."""

from __future__ import annotations

from jobsheet.catalog.trade.general_limits import general_limit
from jobsheet.errors import CalcError, QuantityError
from jobsheet.remembered import remembered
from jobsheet.units.grammar import read
from jobsheet.units.lazily import pattern

_ISO = pattern(r"2768\s*(?:-\s*1)?\s*[-–]?\s*(?P<letter>[fFmM])(?=[HKL]|\b)")
_EITHER = pattern(r"(?:±|\+/-|\+-)\s*(?P<length>\d*[.,]?\d+(?:\s?(?:mm|in|thou))?)")
#: ISO 2768-1:1989, table 1, class f (fine): up to which size and how far either way [m].
_FINE = ((6e-3, 0.05e-3), (30e-3, 0.1e-3), (120e-3, 0.15e-3), (400e-3, 0.2e-3))


@remembered(256)
def general_either_way(size: float, words: str, units: str = "mm") -> float | None:
    """How far a length may be out either way [m] by what a drawing says for all; None
    where it says nothing that is known.
    """
    if match := _ISO.search(words):
        if match["letter"].casefold() == "f":
            return next((either for upper, either in _FINE if size <= upper * (1 + 1e-9)), None)
        try:
            return general_limit(size)
        except CalcError:
            return None
    if match := _EITHER.search(words):
        try:
            return read(match["length"], "length", units)
        except QuantityError:
            return None
    return None
