"""What several kinds of holding ask: entries of the same name, and the force of bolts."""

from __future__ import annotations

from jobsheet.cutting.clamping import bolt_tension, strap_force
from jobsheet.model.material import Material
from jobsheet.model.quantity import Quantity, Thread
from jobsheet.model.setting import Grip
from jobsheet.model.shop import Shop
from jobsheet.operations.entry import Entry

NOTE = Entry(name="note", title="Holding note", asks="text", optional=True)
TIGHTEN = Entry(name="tighten", title="Tighten to", asks="torque", low="0 N·m", high="500 N·m", optional=True)
BOLT = Entry(name="bolt", title="Clamp bolts", asks="thread", optional=True, hint="such as M12")
OVER_LEFT = Entry(
    name="over_left", title="Over the left end", asks="length", low="0 mm", high="3 m", optional=True,
    hint="how far the work stands out, 0: not at all",
)  # fmt: skip
OVER_RIGHT = Entry(
    name="over_right", title="Over the right end", asks="length", low="0 mm", high="3 m", optional=True
)
SUPPORTED_BY = Entry(
    name="supported_by", title="Held up by", asks="choice", choices=("angle plate", "jack", "filler"), optional=True,
    hint="what stands behind tall work or a thin wall",
)  # fmt: skip
#: How words say it.
SUPPORTS = {"angle plate": "an angle plate", "jack": "a jack", "filler": "a filler"}

#: A nut factor scatters by so much either way (cutting-data section 1.14).
BOLT_BAND = (0.7, 1.3)
#: Friction of smooth jaws by what they hold, over steel (section 1.14: 0.10 for
#: aluminium, iron 0.80 of steel).
_FRICTION = {"aluminium": 0.10 / 0.12, "iron": 0.80, "copper": 0.90}


def length(name: str, title: str, high: str = "1 m", hint: str = "", low: str = "0 mm") -> Entry:
    """A length that need not be said."""
    return Entry(name=name, title=title, asks="length", low=low, high=high, optional=True, hint=hint)


def count(name: str, title: str, low: int = 1, high: int = 20) -> Entry:
    """A number of things that need not be said."""
    return Entry(name=name, title=title, asks="count", low=str(low), high=str(high), optional=True)


def choice(name: str, title: str, *choices: str, hint: str = "") -> Entry:
    """One of a few words, or not said."""
    return Entry(name=name, title=title, asks="choice", choices=choices, optional=True, hint=hint)


def flag(name: str, title: str, hint: str = "") -> Entry:
    """Yes, no, or not said."""
    return Entry(name=name, title=title, asks="flag", optional=True, hint=hint)


def friction(material: Material, shop: Shop) -> float:
    """Friction of smooth steel on the work."""
    return shop.friction * _FRICTION.get(material.family, 1.0)


def bolted(
    number: int | None,
    bolt: Thread | None,
    tighten: Quantity | None,
    material: Material,
    shop: Shop,
    *,
    heel: float = 1.0,
    work: float = 1.0,
    what: str = "straps",
) -> Grip | None:
    """The grip of clamps that bolts draw down; `heel` and `work` are the arms from the bolt [m], a half each where not said."""
    if not number or bolt is None or tighten is None:
        return None
    tension = bolt_tension(torque=tighten.value, diameter=bolt.major)
    one = strap_force(tension=tension, heel=heel, work=work)
    force = one * number
    share = "half of" if heel == work else f"{heel / (heel + work):.2f} of"
    working = f"{number} {what}, {share} T / (K d) = {tighten.value:g} N·m / (0.20 × {{}}) each"
    return Grip(
        kind="straps", force=force, low=force * BOLT_BAND[0], high=force * BOLT_BAND[1],
        friction=friction(material, shop), working=working, over=bolt.major,
    )  # fmt: skip
