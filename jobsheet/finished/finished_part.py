"""All that is said of the finished part at once: what could be read, and what could not with its
problem. Asked late, remembered by value.
"""

from __future__ import annotations

from msgspec import Struct

from jobsheet.errors import QuantityError
from jobsheet.finished.feature_line import read_feature
from jobsheet.finished.general_words import general_either_way
from jobsheet.finished.sizes_line import read_shape
from jobsheet.model.finished import Feature, Finished, Shape
from jobsheet.model.job import Job
from jobsheet.model.quantity import Size
from jobsheet.remembered import remembered

Datums = tuple[tuple[str, str], ...]


class Unread(Struct, frozen=True):
    """A line that cannot be read: which (0 is that of the sizes, features count from 1),
    as typed, and the sentence about it.
    """

    line: int
    text: str
    sentence: str


class FinishedPart(Struct, frozen=True, kw_only=True):
    """What is said: the sizes of the whole or None, each feature with the number of its
    line, and lines that cannot be read.
    """

    shape: Shape | None
    features: tuple[tuple[int, Feature], ...]
    unread: tuple[Unread, ...]
    datums: Datums
    #: What the drawing says for sizes without limits of their own, and the unit of its bare numbers.
    general: str
    units: str

    def limits(self, size: Size) -> tuple[float, float] | None:
        """The lower and the upper limit of a size [m]: its own, else the general
        ones; None where nobody says any.
        """
        if size.high > size.low:
            return size.low, size.high
        either = general_either_way(size.nominal, self.general, self.units)
        return None if either is None else (size.nominal - either, size.nominal + either)


def finished_part(job: Job) -> FinishedPart:
    """What a job says of its finished part."""
    return _read(job.finished, job.units, job.datums, job.part.general_limits)


@remembered(16)
def _read(finished: Finished, units: str, datums: Datums, general: str) -> FinishedPart:
    unread: list[Unread] = []
    shape = None
    if finished.sizes.strip():
        try:
            shape = read_shape(finished.sizes, units, datums)
        except QuantityError as error:
            unread.append(Unread(0, finished.sizes, str(error)))
    features = []
    for number, text in enumerate(finished.features, 1):
        if not text.strip():
            continue
        try:
            features.append((number, read_feature(text, units, datums)))
        except QuantityError as error:
            unread.append(Unread(number, text, str(error)))
    return FinishedPart(
        shape=shape,
        features=tuple(features),
        unread=tuple(unread),
        datums=datums,
        general=general,
        units=units,
    )
