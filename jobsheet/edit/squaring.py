"""A block squared on all six faces, put in as one edit: set-ups and steps from
the stock and the finished sizes.

The order is that of `review/rules/squaring`: the best face first as the reference; it goes to the fixed
jaw with a round bar at the moving jaw for both sides; the face opposite it on parallels with a finished
side at the fixed jaw; ends last, stood up by a square, or, where they are too tall for that, over the end
of the jaws with the side of the cutter.
"""

from __future__ import annotations

import math
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.edit.squaring_cuts import Cuts
from jobsheet.edit.squaring_faces import Faces, Sizes, faces_of, sizes_of
from jobsheet.edit.squaring_layers import carried, in_front
from jobsheet.errors import CommandError
from jobsheet.holdings.kinds.vice import Fields as Vice
from jobsheet.model.job import Job, Operation, SetUp
from jobsheet.model.lying import OPPOSITE, lying, stock_box
from jobsheet.model.quantity import Quantity
from jobsheet.storage.shop_file import workshop

#: The choice of the trade by which the face opposite the first comes third (`resources/opinions.yaml`).
OPPOSITE_FIRST = "next face round"
#: What the work rests on and what is at the moving jaw.
BED = {"rests_on": "bed"}
PACKED, PACKED_BAR = {"rests_on": "packing"}, {"rests_on": "packing", "bar": True}
PARALLELS, PARALLELS_BAR = {"rests_on": "parallels"}, {"rests_on": "parallels", "bar": True}
#: An end hangs over the jaws by what comes off it and so much more [m] (common practice, no source).
OVER = 5e-3
SQUARE = "check with a square both ways"


class SquareAllSix(Struct, frozen=True):
    """Six faces of a plain block: the finished sizes as typed, and the cutter for the faces
    (none: the nearest that carries it).
    """

    length: str
    width: str
    height: str
    cutter: str = ""
    label: str = "square all six faces"
    merge_key: str = ""

    def apply(self, job: Job) -> Job:
        """The next job: the set-ups stand first; empty ones that stood there are replaced.

        Raises
        ------
        CommandError
            Where a size cannot be finished from this stock, in one sentence that says which.
        """
        if job.stock.as_bought is not None:
            raise CommandError(
                f"The stock says that faces stay as bought ({job.stock.as_bought.text.strip()}): take that out under Stock first."
            )
        sizes, faces = (
            sizes_of(job, {"length": self.length, "width": self.width, "height": self.height}),
            faces_of(job),
        )
        made = carried(
            job, self.cutter, lambda cuts: _sides(job, sizes, faces, cuts) + _ends(job, sizes, faces, cuts)
        )
        said = "; ".join((*sizes.assumed, "half of what comes off from each side", "end faces last"))
        made = (replace(made[0], note=f"assumed: {said}"), *made[1:])
        return in_front(job, made)


def _sides(job: Job, sizes: Sizes, faces: Faces, cuts: Cuts) -> tuple[SetUp, ...]:
    """The four long sides, each from one that is already true; which comes third is the workshop's choice."""
    first, side = faces.first, faces.side
    other_side, other = cuts.face(sizes, OPPOSITE[side]), cuts.face(sizes, OPPOSITE[first])
    onto_jaw = f"the {side} face to the fixed jaw, no bar; tap down, parallels tight"
    against = f"the {side} face to the fixed jaw, the {first} face down, a bar against the raw one; tap down"
    onto_side = f"the {first} face to the fixed jaw, the {side} face down; tap down"
    if workshop().third_side == OPPOSITE_FIRST:
        last = (
            _held(job, OPPOSITE[first], side, PARALLELS_BAR, against, other),
            _held(job, OPPOSITE[side], first, PARALLELS, onto_side, other_side),
        )
    else:
        last = (
            _held(job, OPPOSITE[side], first, PARALLELS_BAR, onto_side, other_side),
            _held(job, OPPOSITE[first], side, PARALLELS, onto_jaw, other),
        )
    return (
        _held(job, first, side, PACKED_BAR, "the better of the two largest faces is the reference",
              cuts.face(sizes, first, opens=True)),
        _held(job, side, first, PACKED_BAR, f"the {first} face to the fixed jaw",
              cuts.face(sizes, side, opens=True)),
        *last,
    )  # fmt: skip


def _ends(job: Job, sizes: Sizes, faces: Faces, cuts: Cuts) -> tuple[SetUp, ...]:
    """The two ends, stood up by a square, or lying where they are too tall to stand."""
    first, side, end, other = faces.first, faces.side, faces.end, OPPOSITE[faces.end]
    if cuts.ends_stand:
        above, lower = cuts.above_jaws(sizes, end, opens=True), cuts.above_jaws(sizes, other, opens=False)
        return (
            _held(job, end, first, BED if above else PACKED, "stood up by a small square against a finished side",
                  cuts.face(sizes, end, opens=True, note=SQUARE), above=above),
            _held(job, other, first, BED if lower else PACKED, f"the {end} end down; tap down",
                  cuts.face(sizes, other, note=SQUARE), above=lower),
        )  # fmt: skip
    up = OPPOSITE[first]
    packing = PARALLELS
    set_up = _held(job, up, side, packing, f"the {side} face to the fixed jaw, the end over the jaws", ())
    jaw = side if lying(set_up, stock_box(job)).right == end else OPPOSITE[side]
    ends = (end, other)
    made = []
    for which, face_at in zip(ends, (jaw, OPPOSITE[jaw]), strict=True):
        steps = cuts.end(sizes, which, opens=which == end)
        rests = packing | _over_the_jaws(job, steps, lying(set_up, stock_box(job)).size[0])
        words = f"the {face_at} face to the fixed jaw; the {which} end over the jaws"
        made.append(
            _held(job, up, face_at, rests, words, steps, title=f"{which.capitalize()} end over the jaws")
        )
    return tuple(made)


def _over_the_jaws(job: Job, steps: tuple[Operation, ...], long: float) -> dict[str, Any]:
    """How far the right end hangs over: what comes off it and a little, as far as the left one where it is
    longer than the jaws; a spacer where the jaws hold it by less than half of them.
    """
    from jobsheet.storage.card_files import find_card

    off = sum(
        operation.fields.width.value
        for operation in steps
        if getattr(operation.fields, "width", None) is not None
    )
    vices = find_card(job.machine).vices
    middle = (long - vices[0].jaw_width) / 2 if vices else 0.0
    over = math.ceil(max(off + OVER, middle) * 1e3 - 1e-6)
    one_sided = bool(vices) and long - over * 1e-3 < vices[0].jaw_width / 2
    return {"over_right": Quantity(over * 1e-3, f"{over} mm")} | ({"spacer": True} if one_sided else {})


def _held(
    job: Job,
    up: str,
    jaw: str,
    rests: dict[str, Any],
    note: str,
    steps: tuple[Operation, ...],
    title: str = "",
    above: Quantity | None = None,
) -> SetUp:
    """One set-up in the machine's vice: that face up, that one at the fixed jaw, which is on the far side."""
    device, tighten = _vice(job)
    return SetUp(
        key="squaring",
        number=0,
        title=title,
        up=up,
        operator=OPPOSITE[jaw],
        fixed_jaw=jaw,
        holding=Vice(vice=device, above_jaws=above, tighten=tighten, note=note, **rests),
        operations=steps,
    )


def _vice(job: Job) -> tuple[str, Quantity | None]:
    """What the card says of the vice: its name, and how tight it usually is."""
    from jobsheet.storage.card_files import find_card

    vices = find_card(job.machine).vices
    if not vices:
        return "vice", None
    torque = vices[0].usual_torque
    return vices[0].name, Quantity(torque, f"{torque:g} N·m") if torque is not None else None
