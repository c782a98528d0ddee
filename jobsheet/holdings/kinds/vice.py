"""A vice on the table: jaws, parallels, bar, how far the work stands out."""

from __future__ import annotations

from typing import Any, ClassVar

from jobsheet.cutting.clamping import vice_force
from jobsheet.holdings import shared_facts as common
from jobsheet.holdings.holding_kind import HoldingKind
from jobsheet.holdings.holding_roles import HoldingRoles
from jobsheet.model.held_work import Around, Body, Holding
from jobsheet.model.machine import Machine, Vice
from jobsheet.model.material import Material
from jobsheet.model.quantity import Quantity
from jobsheet.model.setting import Grip
from jobsheet.model.shop import Shop
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Group

#: Nine in ten of plain vices lie between these efficiencies of the screw (cutting-data
#: section 1.14), over the usual 0.18.
VICE_BAND = (0.13 / 0.18, 0.25 / 0.18)
#: A universal vice gives way in its joints: half the grip (A1, common practice).
TILTING = 0.5
#: Friction of soft jaws on the work (holding-and-more-kinds A1).
SOFT = 0.10
#: How thick a jaw is drawn, a bar, and a parallel, where nobody says [m] (common practice, no source).
JAW, BAR, PARALLEL = 0.014, 0.010, 0.006


class Fields(Holding, frozen=True, kw_only=True):
    """What is typed and stored."""

    kind: ClassVar[str] = "vice"

    vice: str = ""
    jaws: str | None = None
    step: Quantity | None = None
    reckon_as: str | None = None
    base: str | None = None
    angle: Quantity | None = None
    set_by: str | None = None
    rests_on: str | None = None
    parallels: Quantity | None = None
    other_parallel: Quantity | None = None
    parallel_width: Quantity | None = None
    parallels_then: str | None = None
    above_jaws: Quantity | None = None
    over_left: Quantity | None = None
    over_right: Quantity | None = None
    bar: bool | None = None
    bar_size: Quantity | None = None
    sits: str | None = None
    spacer: bool | None = None
    stop: str | None = None
    supported_by: str | None = None
    tighten: Quantity | None = None


#: What is entered most stands first: two or three of these are enough for a usual set-up.
FORM = (
    Group(
        "Vice",
        (
            Entry(name="vice", title="Which vice", asks="text", optional=True, hint="empty: the machine's only one"),
            common.choice("rests_on", "Rests on", "bed", "parallels", "packing", "backing", hint="backing: scrap that a drill may run into"),
            common.length("parallels", "Height of the parallels", "200 mm"),
            common.length("other_parallel", "The other parallel", "200 mm", "only where it is not the same height"),
            common.length("parallel_width", "Each so thick", "100 mm"),
            common.choice("parallels_then", "Then the parallels", "kept in", "taken out"),
            common.length("above_jaws", "Above the jaws"),
            common.TIGHTEN,
        ),
    ),
    Group(
        "Where the work sits",
        (
            common.OVER_LEFT,
            common.OVER_RIGHT,
            common.choice("stop", "Stop at its", "left", "right"),
            common.flag("bar", "Bar at the moving jaw"),
            common.length("bar_size", "Size of the bar", "60 mm"),
            common.choice("sits", "Sits in the jaws at their", "middle", "left end", "right end"),
            common.flag("spacer", "Spacer at the other end", "a piece of the same size, where the work sits at one end"),
            common.SUPPORTED_BY,
        ),
    ),
    Group(
        "Jaws",
        (
            common.choice("jaws", "Jaws", "plain", "soft", "vee"),
            common.length("step", "Step of the soft jaws", "50 mm"),
            common.choice("reckon_as", "Reckon their friction as", "soft jaws", "plain jaws", hint="empty: soft jaws, which hold a little less"),
            common.choice("base", "Base", "fixed", "swivel", "tilting"),
            Entry(name="angle", title="Turned by", asks="angle", optional=True),
            common.choice("set_by", "Angle set by", "scale", "indicator"),
        ),
    ),
    Group("Words", (common.NOTE,)),
)  # fmt: skip


def spelled(words: str) -> str:
    """Words as they are compared: small letters, in one spelling."""
    return words.casefold().replace("vise", "vice").strip()


def vice_of(fields: Fields, machine: Machine) -> Vice | None:
    """The vice of the card that is meant; the only one where none is named."""
    wanted = spelled(fields.vice)
    for vice in machine.vices:
        if wanted and (spelled(vice.name) == wanted or spelled(vice.name) in wanted):
            return vice
    return machine.vices[0] if len(machine.vices) == 1 and (not wanted or "vice" in wanted) else None


def words(fields: Fields) -> str:
    """Its name, and what is not usual of it."""
    more = [f"{fields.jaws} jaws"] if fields.jaws not in (None, "plain") else []
    if fields.base not in (None, "fixed"):
        more.append(f"{fields.base} base")
    return ", ".join((fields.vice or "vice", *more))


def rests(fields: Fields) -> str:
    """What the work sits on, and what lies beside it."""
    phrases = []
    if fields.rests_on == "parallels" or (
        fields.rests_on is None and (fields.parallels or fields.parallel_width)
    ):
        high = f" {fields.parallels.text} high" if fields.parallels else ""
        wide = f"{fields.parallel_width.text} wide " if fields.parallel_width else ""
        phrases.append(f"two {wide}parallels{high}".replace("two parallels", "parallels"))
        if fields.parallels_then:
            phrases[-1] += f", {fields.parallels_then}"
    elif fields.rests_on:
        phrases.append(
            {
                "bed": "on the bed",
                "packing": "on packing",
                "backing": "on scrap",
            }[fields.rests_on]
        )
    if fields.bar:
        phrases.append("round bar at the moving jaw")
    if fields.sits in ("left end", "right end"):
        phrases.append(f"at the {fields.sits} of the jaws")
    if fields.spacer:
        phrases.append("spacer at the other end")
    if fields.supported_by:
        phrases.append(f"held up by {common.SUPPORTS[fields.supported_by]}")
    return "; ".join(phrases)


def _roles(fields: Fields) -> HoldingRoles:
    angle = fields.angle is not None and fields.angle.value != 0
    return HoldingRoles(jaws=True, round=fields.jaws == "vee", tilted=fields.base == "tilting" and angle)


def grip(fields: Fields, machine: Machine, material: Material, shop: Shop) -> Grip | None:
    """By the screw of its vice: 2 π η T / s."""
    vice = vice_of(fields, machine)
    if vice is None:
        return None
    torque = fields.tighten.value if fields.tighten else vice.usual_torque
    if torque is None or vice.lead is None or vice.efficiency is None:
        return None
    force = vice_force(torque=torque, lead=vice.lead, efficiency=vice.efficiency.value)
    force *= TILTING if fields.base == "tilting" else 1.0
    friction = common.friction(material, shop)
    if fields.jaws == "soft" and fields.reckon_as != "plain jaws":
        friction = min(friction, SOFT)
    working = f"2 π η T / s = 2 π × {vice.efficiency.value:g} × {torque:g} N·m / {{}}"
    return Grip(
        kind="vice", force=force, low=force * VICE_BAND[0], high=force * VICE_BAND[1], friction=friction,
        above=fields.above_jaws.value if fields.above_jaws else None, jaw_depth=vice.jaw_depth,
        jaw_width=vice.jaw_width, held_up=fields.supported_by is not None, working=working, over=vice.lead,
    )  # fmt: skip


def top(fields: Fields, machine: Machine, high: float) -> float | None:
    """The bed, the jaws and what stands above them; or the bed, the parallels and the work."""
    vice = vice_of(fields, machine)
    if vice is None or vice.bed_height is None:
        return None
    if fields.above_jaws is not None:
        return vice.bed_height + vice.jaw_depth + fields.above_jaws.value
    if fields.rests_on == "bed":
        return vice.bed_height + high
    if fields.parallels is not None:
        return vice.bed_height + fields.parallels.value + high
    return None


def mass(fields: Fields, machine: Machine) -> float:
    """That of its card."""
    vice = vice_of(fields, machine)
    return (vice.mass or 0.0) if vice is not None else 0.0


def above(fields: Fields, around: Around) -> float | None:
    """How far the work stands over the jaws [m]: said, or from what it sits on."""
    if fields.above_jaws is not None:
        return fields.above_jaws.value
    if around.jaw_depth is None:
        return None
    if fields.rests_on == "bed":
        return around.size[2] - around.jaw_depth
    if fields.parallels is not None:
        return around.size[2] + fields.parallels.value - around.jaw_depth
    return None


def bodies(fields: Fields, around: Around) -> tuple[Body, ...]:
    """Both jaws, the bed, parallels, the bar, the stop."""
    turned = around.fixed in ("left", "right")
    run, across = (1, 0) if turned else (0, 1)  # along the jaws, and from jaw to jaw
    long, wide, high = around.size[run], around.size[across], around.size[2]
    out = above(fields, around)
    known = out is not None and around.jaw_depth is not None
    deep = around.jaw_depth or max(0.6 * high, 0.02)
    upper = high - (out if out is not None else min(0.35 * high, max(high - deep, 0.0)))
    lower = upper - deep
    left = fields.over_left.value if fields.over_left else 0.0
    right = fields.over_right.value if fields.over_right else 0.0
    said = fields.over_left is not None or fields.over_right is not None
    jaw = around.jaw_width or max(long - left - right, 0.02)
    begin, end = _span(long, jaw, left, right, said=said)
    parts: list[Body] = []

    def box(
        part: str,
        ends: tuple[float, float],
        sides: tuple[float, float],
        levels: tuple[float, float],
        **more: Any,
    ) -> None:
        low, up = [0.0, 0.0, levels[0]], [0.0, 0.0, levels[1]]
        (low[run], up[run]), (low[across], up[across]) = ends, sides
        parts.append(Body(part=part, low=tuple(low), high=tuple(up), **more))  # type: ignore[arg-type]

    # A bar lies between the work and the moving jaw, which stands off by its size.
    bar = (fields.bar_size.value if fields.bar_size else BAR) if fields.bar else 0.0
    fixed_high = around.fixed in ("far", "right")
    near = ((-JAW - (bar if fixed_high else 0.0)), -(bar if fixed_high else 0.0))
    far = (wide + (0.0 if fixed_high else bar), wide + JAW + (0.0 if fixed_high else bar))
    ends = (begin, end)
    sure = known and (said or around.jaw_width is not None)
    box("moving jaw" if fixed_high else "fixed jaw", ends, near, (lower, upper), sure=sure)
    box("fixed jaw" if fixed_high else "moving jaw", ends, far, (lower, upper), sure=sure)
    box("bed", ends, (near[0], far[1]), (lower - 0.012, lower), sure=known)
    if bar:
        middle = (lower + upper) / 2
        sides = (-bar, 0.0) if fixed_high else (wide, wide + bar)
        box(
            "bar",
            ends,
            sides,
            (middle - bar / 2, middle + bar / 2),
            axis=run,
            sure=fields.bar_size is not None,
        )
    if (
        fields.rests_on == "parallels" or fields.parallels or fields.parallel_width
    ) and fields.parallels_then != "taken out":
        thick = min(fields.parallel_width.value if fields.parallel_width else PARALLEL, wide / 2)
        level = fields.parallels.value if fields.parallels else max(0.0 - lower, 0.004)
        for sides in ((0.0, thick), (wide - thick, wide)):
            box("parallel", ends, sides, (-level, 0.0), sure=fields.parallel_width is not None)
    elif fields.rests_on == "packing" and lower < 0:
        box(
            "packing",
            (begin + (end - begin) * 0.2, end - (end - begin) * 0.2),
            (wide * 0.2, wide * 0.8),
            (lower, 0.0),
            sure=False,
        )
    if fields.stop:
        at = (-0.008, 0.0) if fields.stop == "left" else (long, long + 0.008)
        box(
            "stop",
            at,
            (wide * 0.35, wide * 0.65),
            (max(lower, 0.0), max(min(upper, high * 0.8), 0.004)),
            sure=False,
        )
    return tuple(parts)


def _span(long: float, jaw: float, left: float, right: float, *, said: bool) -> tuple[float, float]:
    """Where the jaws begin and end along the work [m]; it sits in their
    middle where nobody says otherwise.
    """
    if said and left and not right:
        return left, left + jaw
    if said and right and not left:
        return long - right - jaw, long - right
    if said and left and right:
        return left, long - right
    middle = long / 2
    return middle - jaw / 2, middle + jaw / 2


KIND = HoldingKind(
    name="vice", title="Vice", reckons=("vice", "jaws", "reckon_as", "base", "rests_on", "parallels", "above_jaws", "supported_by", "tighten"),
    needs=("rests_on", "above_jaws", "tighten"), fields=Fields, form=FORM, words=words, rests=rests, bodies=bodies, grip=grip, top=top,
    mass=mass, roles=_roles,
    spared={"rests_on": ("jaws", ("soft",))},  # it sits on the step that is cut into them
    only_with={
        "step": ("jaws", ("soft",)), "reckon_as": ("jaws", ("soft",)), "angle": ("base", ("swivel", "tilting")), "set_by": ("base", ("swivel", "tilting")),
        "parallels": ("rests_on", ("parallels",)), "other_parallel": ("rests_on", ("parallels",)),
        "parallel_width": ("rests_on", ("parallels",)), "parallels_then": ("rests_on", ("parallels",)),
        "bar_size": ("bar", (True,)),
    },
)  # fmt: skip
