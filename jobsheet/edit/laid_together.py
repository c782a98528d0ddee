"""Two orders of steps laid together: one of them stands, and what only the other has comes
behind what it stood behind there.
"""

from __future__ import annotations

from collections.abc import Sequence

#: The keys of set-ups, each with the keys of its steps, in cutting order.
Places = tuple[tuple[str, tuple[str, ...]], ...]


def laid_together(first: Places, second: Places, steps: set[str], set_ups: set[str]) -> Places:
    """The order of the first, with what is kept of the second.

    Parameters
    ----------
    steps, set_ups : set of str
        The keys that are kept. A set-up in which a step is kept stays too, for a step has to stand somewhere.
    """
    stands = {key for _, inside in first for key in inside}
    needed = set_ups | {key for key, inside in first if steps & set(inside)}
    needed |= {key for key, inside in second if (steps - stands) & set(inside)}
    order = _woven([key for key, _ in first], [key for key, _ in second], needed)
    one, other = dict(first), dict(second)
    return tuple(
        (key, tuple(_woven(one.get(key, ()), [step for step in other.get(key, ()) if step not in stands], steps, other.get(key, ()))))
        for key in order
    )  # fmt: skip


def _woven(
    first: Sequence[str], added: Sequence[str], kept: set[str], order: Sequence[str] = ()
) -> list[str]:
    """The first, and what is added to it behind its neighbour in the order that it comes from."""
    order = order or added
    found = [key for key in first if key in kept]
    for key in added:
        if key in found or key not in kept:
            continue
        before = [one for one in order[: order.index(key)] if one in found]
        found.insert(found.index(before[-1]) + 1 if before else 0, key)
    return found
