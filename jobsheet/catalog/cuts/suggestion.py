"""What a catalogue suggests: a value to start from, its range, its source, and why."""

from __future__ import annotations

from msgspec import Struct


class Suggestion(Struct, frozen=True):
    """A number to start from.

    Parameters
    ----------
    value : float
        Where to start, in SI
    low, high : float
        The range that the source gives, or that is sensible about the value, in SI
    source : str
        Key of resources/sources.yaml
    outside : bool
        Whether what was asked lies outside the source's table; the value then follows its last points
    why : str
        How the value came about, in words for the person
    """

    value: float
    low: float
    high: float
    source: str
    outside: bool
    why: str

    def times(self, factor: float, why: str = "") -> Suggestion:
        """The same suggestion multiplied, with one more reason."""
        reason = "; ".join(one for one in (self.why, why) if one)
        return Suggestion(
            self.value * factor, self.low * factor, self.high * factor, self.source, self.outside, reason
        )
