"""What is likely to come next: at most three steps with a reason each, by what
stands before the place of insertion.

After a spot drill the hole is drilled, a hole of tapping size is tapped, at the very same places. What
follows what is the order in which a part is usually made: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable

from msgspec import Struct

from jobsheet.model.quantity import Cutter
from jobsheet.operations import registry, written
from jobsheet.operations.choosing import hole_steps
from jobsheet.operations.choosing.filled import Texts
from jobsheet.operations.choosing.order_of_work import role_of
from jobsheet.operations.choosing.standing_here import Here

#: More than this is no longer taken in at a glance.
MOST = 3


class Likely(Struct, frozen=True, kw_only=True):
    """One step that may come next: its kind, its words, why, what stands in its form,
    and why it cannot be cut just now.
    """

    kind: str
    title: str
    reason: str
    texts: Texts = ()
    why_not: str = ""


#: A kind, and why it comes.
_Plain = tuple[str, str]
#: After a step of that role ("" is the beginning of a set-up): kinds with their reasons, the likeliest first.
_FOLLOWS: dict[str, tuple[_Plain, ...]] = {
    "": ((written.FACE, "the face that all others are judged from"), (written.FIND, "where the dials count from"), (written.TRAM, "before a face that has to be flat")),
    "find": ((written.FACE, "the face that all others are judged from"), (written.SPOT, "marks the holes from this zero"), (written.SIDE, "a side from this zero")),
    "tram": ((written.FACE, "the head stands square"), (written.FIND, "where the dials count from")),
    "saw": ((written.FACE, "sawn to size, then flat"), (written.SIDE, "takes off what the saw left")),
    "flat": ((written.FIND, "the top is clean: find the zero"), (written.SIDE, "the sides follow the top"), (written.SPOT, "marks the holes in the clean top")),
    "wall": ((written.SIDE, "the next side, same cutter"), (written.SPOT, "the sides are there to measure from"), (written.CHAMFER, "the edges are sharp now")),
    "groove": ((written.SIDE, "opens the groove to its width"), (written.CHAMFER, "the edges are sharp now"), (written.SPOT, "holes after the groove")),
    "recess": ((written.SIDE, "finishes a wall"), (written.CHAMFER, "the edges are sharp now"), (written.SPOT, "holes after the pocket")),
    "edge": ((written.BENCH, "clean, measure, note"), (written.SPOT, "the next holes")),
    "bench": ((written.FACE, "the face that all others are judged from"), (written.FIND, "where the dials count from"), (written.SPOT, "marks the holes")),
    "tap": ((written.SPOT, "the next holes"), (written.CHAMFER, "the edges, last"), (written.BENCH, "clean, measure, note")),
    "ream": ((written.BENCH, "try the gauge, note what was found"), (written.CHAMFER, "the edges, last")),
}  # fmt: skip
#: After these the same holes go on; each maker says what it would cut there, or nothing.
_SAME_HOLES: dict[str, tuple[Callable[[Here], hole_steps.Hole | None], ...]] = {
    "spot": (hole_steps.drill,),
    "drill": (hole_steps.tap, hole_steps.ream, hole_steps.countersink, hole_steps.counterbore, hole_steps.bore),
    "plunge": (hole_steps.bore, hole_steps.ream),
    "bore": (hole_steps.ream, hole_steps.countersink),
    "ream": (hole_steps.countersink,),
    "counterbore": (hole_steps.tap, hole_steps.countersink),
    "countersink": (hole_steps.tap, hole_steps.ream),
}  # fmt: skip
#: What stands once in a set-up.
_ONCE = ("find", "flat", "tram", "edge")


def likely_next(here: Here) -> tuple[Likely, ...]:
    """At most three, the first of them the likeliest; those that cannot be cut
    as the cabinet stands come last.
    """
    made = [_of(step, here) for make in _SAME_HOLES.get(here.role, ()) if (step := make(here)) is not None]
    for kind, reason in _FOLLOWS.get(here.role, _FOLLOWS["edge"]):
        role = role_of(kind)
        if not (role in _ONCE and here.anywhere(role)):
            texts = _same_cutter(here, kind)
            made.append(Likely(kind=kind, title=registry.title(kind), reason=reason, texts=texts))
    kept = sorted(made[:MOST], key=lambda likely: bool(likely.why_not))
    return tuple(kept)


def same_holes(kind: str, here: Here) -> str:
    """`at these 4 holes`, where a step of that kind goes on with the holes of
    the step before; else nothing.
    """
    goes_on = (
        here.role in _SAME_HOLES and here.places is not None and registry.kind(kind).entry("at") is not None
    )
    return f"at {here.holes_in_words}" if goes_on else ""


def at_the_same_holes(kind: str, texts: Texts, here: Here) -> Texts:
    """The texts of a new step that was found by typing; behind a step at holes it goes on with those."""
    if here.places is None or not same_holes(kind, here) or any(name == "at" for name, _ in texts):
        return texts
    return (*texts, ("at", here.places.text))


def _same_cutter(here: Here, kind: str) -> Texts:
    """More of the same is cut with what is in the spindle."""
    before = here.before
    same = before is not None and before.kind == kind
    cutter = getattr(before.fields, "cutter", None) if before is not None and same else None
    return (("cutter", cutter.text),) if isinstance(cutter, Cutter) else ()


def _of(step: hole_steps.Hole, here: Here) -> Likely:
    title = registry.title(step.kind)
    return Likely(
        kind=step.kind,
        title=f"{title}, {step.size}" if step.size else title,
        reason=f"{here.holes_in_words}; {step.reason}" if step.reason else here.holes_in_words,
        texts=step.texts,
        why_not=step.why_not,
    )
