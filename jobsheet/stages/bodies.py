"""The solid after a step, held for as long as there is room: what is let go is cut again from
an earlier one when it is asked for.

A long plan has more solids than anybody looks at, each a copy of nearly the same metal: six hundred steps
took three hundred megabytes. What cuts them is small and stays, and so does every so many solids, so that
cutting one again takes few steps.
"""

from __future__ import annotations

import threading
from itertools import count
from typing import Any
from weakref import ref

from jobsheet.model.lying import Box

#: Metres to the modeller's unit.
MM = 1e3
#: What the modeller holds for one triangle: measured on plans of 40, 160 and 640 steps, 190 to 210 bytes.
TRIANGLE = 200
#: Room for solids, of all modellers together [bytes].
ROOM = 48_000_000
#: One solid in so many is never let go.
STAYS = 24

_MARKS = count(1)


class Body:
    """One solid: `cutter` took it from `base`; volume [m³] and box [m] are known
    without it. `mark` is its own for good.
    """

    __slots__ = ("__weakref__", "_solid", "base", "box", "cutter", "mark", "steps", "volume", "weight")

    def __init__(self, solid: Any, base: Body | None = None, cutter: Any = None) -> None:
        # The modeller puts its work off; done step by step, no other thread has to wait long for it.
        self.weight = int(solid.num_tri()) * TRIANGLE
        self._solid = solid
        self.base, self.cutter = base, cutter
        self.mark = next(_MARKS)
        self.steps: int = 0 if base is None else base.steps + 1
        self.volume = float(solid.volume()) / MM**3
        self.box = _box_of(solid)
        _HELD.take(self)

    @property
    def solid(self) -> Any:
        """The solid itself [mm]."""
        found, waiting = self._solid, [self]
        while found is None:
            base = waiting[-1].base
            assert base is not None, "the stock is never let go"
            found = base._solid  # noqa: SLF001  another of its own kind
            if found is None:
                waiting.append(base)
        if self._solid is None:
            for body in reversed(waiting):
                found = found - body.cutter
                found.num_tri()
            self._solid = found
            _HELD.take(self)
        return found

    @property
    def stays(self) -> bool:
        """Whether it is one of those that the others are cut from."""
        return self.base is None or self.steps % STAYS == 0

    def let_go(self) -> None:
        """Make room: it is cut again when somebody asks."""
        self._solid = None


class _Held:
    """Which solids are there, the one that was made last standing last."""

    def __init__(self) -> None:
        # The collector may take a body while another is taken in, on the same thread.
        self._lock = threading.RLock()
        self._there: dict[int, tuple[ref[Body], int]] = {}
        self._weight = 0

    def take(self, body: Body) -> None:
        """Note one, and let go of the oldest where there is no room for all."""
        with self._lock:
            mark, weight = body.mark, body.weight
            if mark not in self._there:
                self._there[mark] = ref(body, lambda _: self._forget(mark)), weight
                self._weight += weight
            if self._weight > ROOM:
                self._make_room(body)

    def _make_room(self, new: Body) -> None:
        for mark, (held, _) in list(self._there.items()):
            if self._weight <= ROOM:
                return
            body = held()
            if body is not None and body is not new and not body.stays:
                body.let_go()
                self._forget(mark)

    def _forget(self, mark: int) -> None:
        with self._lock:
            _, weight = self._there.pop(mark, (None, 0))
            self._weight -= weight

    @property
    def weight(self) -> int:
        """What all of them take [bytes]."""
        return self._weight


_HELD = _Held()


def held() -> int:
    """What all solids that are there take [bytes]."""
    return _HELD.weight


def _box_of(solid: Any) -> Box:
    """The box round a solid, in the drawing's axes [m]."""
    if solid.is_empty():
        return (0.0, 0.0), (0.0, 0.0), (0.0, 0.0)
    found = solid.bounding_box()
    x, y, z = ((low / MM, high / MM) for low, high in zip(found[:3], found[3:], strict=True))
    return x, y, z
