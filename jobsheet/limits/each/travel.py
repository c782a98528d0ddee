"""Whether the table goes as far as the step needs, with run-in and run-out."""

from __future__ import annotations

from jobsheet.limits.in_units import of
from jobsheet.limits.verdict import by_factor
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.setting import Setting

#: What of its setting it reads.
READS = frozenset({"machine", "shop", "units"})
#: Where it stands among limits of one share.
ORDER = 160
#: It only has to fit: where it does, it governs nothing.
FITS = True


def limit(figures: Figures, setting: Setting, fields: object) -> Limit | None:
    """The axis that is nearest to its end; None where the card has no travels or nothing moves."""
    travels = dict(setting.machine.travel)
    run = 2 * setting.shop.run
    needs: dict[str, float] = {}
    length = figures.value("path_length")
    if length is not None and not getattr(fields, "length", None):
        needs[getattr(fields, "along", "x") or "x"] = length + run
    places = tuple(getattr(fields, "at", ()) or ())
    if places:
        for axis in ("x", "y"):
            values = [getattr(place, axis).value for place in places]
            needs[axis] = max(values) - min(values)
    found = [(need / travels[axis], axis, need) for axis, need in needs.items() if travels.get(axis)]
    if not found:
        return None
    # Rounded, so that two axes that are equally near to their ends do not change
    # places by a rounding of units.
    _, axis, need = max(found, key=lambda one: (round(one[0], 9), one[1]))
    return by_factor(
        "travel", "Travel", demand=need, capacity=travels[axis], unit="m",
        shown=f"{of(need, travels[axis], setting.units)}, {axis}",
        when_beyond=f"the table does not go that far along {axis}: turn the work or move it in two holds",
    )  # fmt: skip
