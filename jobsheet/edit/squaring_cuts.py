"""The cuts by which a block is squared, face by face: what comes off in how many steps, and to which size."""

from __future__ import annotations

from msgspec import Struct

from jobsheet.edit.squaring_faces import Sizes, axis_of
from jobsheet.model.job import Operation
from jobsheet.model.quantity import Quantity
from jobsheet.operations import written
from jobsheet.operations.kind import fields_from
from jobsheet.operations.registry import kind as kind_of
from jobsheet.units.grammar import read

#: What the last, light pass takes off, and from how much on a face is parted into
#: two (common practice, no source) [m].
FINISH, PARTED = 0.2e-3, 0.6e-3
#: How much is seen over the jaws at least where work stands in them (common practice, no source) [m].
SEEN = 10e-3
EDGES = "break the edges"


class Cuts(Struct, frozen=True, kw_only=True):
    """The cutter for faces, that for ends which lie, whether the ends stand, and how deep the jaws are where that is known [m]."""

    units: str
    cutter: str
    end_cutter: str
    ends_stand: bool
    jaws: float | None = None

    def face(self, sizes: Sizes, face: str, *, opens: bool = False, note: str = "") -> tuple[Operation, ...]:
        """The steps of one face that is up: one where it opens a pair, else roughed and finished to its size."""
        off = sizes.off(face)[0 if opens else 1]
        if opens:
            return (self._step(written.FACE, self._off(sizes, off), note),)
        last = {"measure": sizes.size[axis_of(face)].text, "tolerances": "gauge micrometer"}
        words = f"measure before unclamping; {note}" if note else "measure before unclamping"
        if off < PARTED:
            return (self._step(written.FACE, self._off(sizes, off) | last, words),)
        return (
            self._step(written.FACE, self._off(sizes, off - FINISH), ""),
            self._step(written.FACE, self._off(sizes, FINISH) | last, words),
        )

    def end(self, sizes: Sizes, face: str, *, opens: bool) -> tuple[Operation, ...]:
        """The step of one end that lies over the jaws on the right: the side of the cutter, over the whole height."""
        first, after = sizes.off(face)
        high = min(sizes.size[axis].nominal for axis in range(3) if axis != axis_of(face))
        texts = {
            "cutter": self.end_cutter,
            "side": "right",
            "width": sizes.text(first if opens else after),
            "depth": sizes.text(high),
            "way": "conventional",
        }
        if not opens:
            texts |= {"measure": sizes.size[axis_of(face)].text, "tolerances": "gauge micrometer"}
        return (
            self._step(written.SIDE, texts, "the last layer runs out below; check with a square both ways"),
        )

    def above_jaws(self, sizes: Sizes, face: str, *, opens: bool) -> Quantity | None:
        """How much stands over the jaws where work is stood on the bed of the vice; nothing where the jaws are not known.

        The second end stands lower by what came off the first.
        """
        high = sizes.stock[axis_of(face)] - (0.0 if opens else sizes.off(face)[0])
        if self.jaws is None or high - self.jaws < SEEN:
            return None
        text = sizes.text(high - self.jaws)
        return Quantity(read(text, "length", self.units), text)

    def _off(self, sizes: Sizes, off: float) -> dict[str, str]:
        return {"cutter": self.cutter, "depth": sizes.text(off), "along": "x"}

    def _step(self, kind: str, texts: dict[str, str], note: str) -> Operation:
        made = kind_of(kind)
        texts = texts | {"note": f"{note}; {EDGES}" if note else EDGES}
        return Operation(
            key=kind, number=0, kind=kind, fields=fields_from(made.fields, made.entries, texts, self.units)
        )
