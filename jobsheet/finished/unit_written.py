"""The unit behind every bare number of the lines, so that changing what a
bare number means changes no size.
"""

from __future__ import annotations

from jobsheet.errors import QuantityError
from jobsheet.finished.feature_line import feature_of
from jobsheet.finished.scanned import Scanned
from jobsheet.finished.sizes_line import shape_of
from jobsheet.model.finished import Finished

Datums = tuple[tuple[str, str], ...]


def with_units(finished: Finished, units: str, datums: Datums) -> Finished:
    """The same lines with their units behind them; one that cannot be read is left as it is."""
    return Finished(
        sizes=_line(finished.sizes, units, datums, whole=True),
        features=tuple(_line(line, units, datums, whole=False) for line in finished.features),
    )


def _line(text: str, units: str, datums: Datums, *, whole: bool) -> str:
    line = Scanned(text, units, datums) if len(text) <= 300 else None
    if line is None or not text.strip():
        return text
    try:
        shape_of(line) if whole else feature_of(line)
    except QuantityError:
        return text
    for end in sorted(set(line.bare), reverse=True):
        text = f"{text[:end]} {units}{text[end:]}"
    return text
