"""A holding round the work as it lies: what its bodies are, and whether jaws are at a face of it."""

from __future__ import annotations

from jobsheet.holdings.all_holdings import kind_of, roles_of
from jobsheet.holdings.kinds.other_words import Fields as OtherWords
from jobsheet.holdings.kinds.vice import Fields as ViceFacts
from jobsheet.holdings.kinds.vice import above as _above
from jobsheet.holdings.kinds.vice import vice_of as _vice_of
from jobsheet.model.held_work import NOTHING, Around, Bar, Body, Holding
from jobsheet.model.job import SetUp
from jobsheet.model.lying import NORMALS, Lying
from jobsheet.model.machine import Machine, Vice


def in_jaws(set_up: SetUp, lie: Lying) -> bool:
    """Whether jaws hold the work, and the fixed one can be at the face that is named for it."""
    return roles_of(set_up.holding).jaws and lie.side(set_up.fixed_jaw) not in ("up", "down")


def vice_of(holding: Holding, machine: Machine) -> Vice | None:
    """The vice of the card that holds the work, or None."""
    return _vice_of(holding, machine) if isinstance(holding, ViceFacts) else None


#: What is lower than that is no pair of parallels that anybody has [m].
LEAST_UNDER = 1e-3


def own_vice(machine: Machine, named: str = "") -> Holding:
    """The machine's vice of that name, else its first, tightened as usual; nothing where it has none.

    Words that name no vice of the card are kept as they are: of such a holding nothing is known.
    """
    if not named.strip():
        return ViceFacts(vice=machine.vices[0].name) if machine.vices else NOTHING
    name, _, more = named.partition(",")
    jaws = next((word for word in ("soft", "vee") if f"{word} jaws" in more.casefold()), None)
    fields = ViceFacts(vice=name.strip(), jaws=jaws)
    return fields if _vice_of(fields, machine) is not None else OtherWords(device=named.strip())


def around(set_up: SetUp, lie: Lying, machine: Machine | None) -> Around:
    """What stands round the work at this set-up, as kinds of holding ask for it."""
    vice = vice_of(set_up.holding, machine) if machine is not None else None
    side = lie.side(set_up.fixed_jaw) if roles_of(set_up.holding).jaws else "far"
    return Around(
        size=lie.size, fixed=side if side not in ("up", "down") else "far",
        jaw_width=vice.jaw_width if vice else None, jaw_depth=vice.jaw_depth if vice else None, bar=bar_of(lie),
    )  # fmt: skip


def bar_of(lie: Lying) -> Bar | None:
    """The bar that the work is made of, as it lies; None where it is none."""
    along, outline = lie.bar, lie.outline
    if along is None or outline is None:
        return None
    middle = []
    for face in (lie.right, lie.far, lie.up):
        axis = next(at for at, part in enumerate(NORMALS[face]) if part)
        low, high = lie.box[axis]
        if axis == outline.axis:
            middle.append((high - low) / 2)
            continue
        plain = [one for one in range(3) if one != outline.axis].index(axis)
        ends = [one[plain] for one in outline.outer]
        at = (min(ends) + max(ends)) / 2
        middle.append(at - low if NORMALS[face][axis] > 0 else high - at)
    return Bar(along, outline.radius, (middle[0], middle[1], middle[2]), outline.is_round)


def bodies_of(set_up: SetUp, lie: Lying, machine: Machine | None) -> tuple[Body, ...]:
    """What stands round the work, in its frame [m]: nothing where nothing holds it, or only words say how."""
    kind = kind_of(set_up.holding)
    return kind.bodies(set_up.holding, around(set_up, lie, machine)) if kind is not None else ()


def above_jaws(set_up: SetUp, lie: Lying, machine: Machine | None) -> float | None:
    """How far the work stands over the jaws [m], said or by what it sits on; None where
    that is not known, or no jaws hold it.
    """
    held = set_up.holding
    return _above(held, around(set_up, lie, machine)) if isinstance(held, ViceFacts) else None


def height_under(set_up: SetUp, lie: Lying, machine: Machine | None) -> float | None:
    """How high parallels or packing must be so that the work stands over the jaws as
    said [m]; None where that does not follow.

    The jaws are as deep as the card says: from their upper edge down to the bed is the
    rest of the work and what it lies on.
    """
    held = set_up.holding
    if not isinstance(held, ViceFacts) or held.parallels is not None:
        return None
    placed = around(set_up, lie, machine)
    out = _above(held, placed)
    if out is None or placed.jaw_depth is None:
        return None
    high = placed.jaw_depth - (placed.size[2] - out)
    under = any(body.part in ("parallel", "packing") for body in bodies_of(set_up, lie, machine))
    return high if under and high > LEAST_UNDER else None
