"""What all milling kinds share: power and torque of a cut, the forces of its
teeth, what gives way, what is left.

One cut is described by its arc: where a tooth enters and where it leaves. Mean power and torque are
Kienzle's at the exact mean chip; peaks come from the tooth force summed over angle and helix.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.cutting.chip import arc_chip_thickness
from jobsheet.cutting.deflection import (
    CARBIDE_MODULUS,
    HSS_MODULUS,
    cutter_stiffness,
    equivalent_diameter,
    wall_error,
)
from jobsheet.cutting.engagement import teeth_in_cut
from jobsheet.cutting.finish import nose_roughness, side_roughness
from jobsheet.cutting.kienzle import milling_power, specific_cutting_force, torque_from_power
from jobsheet.cutting.removal import milling_removal_rate
from jobsheet.cutting.stability import cutting_stiffness, direction
from jobsheet.cutting.strength import CARBIDE_RUPTURE, HSS_RUPTURE, bending_stress
from jobsheet.cutting.toothforce import ToothForces, tooth_forces
from jobsheet.cutting.unit_power import unit_power, unit_power_feed_factor
from jobsheet.errors import CalcError
from jobsheet.model.figure import Figures
from jobsheet.model.quantity import Cutter, Quantity
from jobsheet.model.row import Row
from jobsheet.model.setting import Setting
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Dial
from jobsheet.operations.names import show
from jobsheet.operations.shared import common
from jobsheet.operations.shared.fastest import edge_speed
from jobsheet.operations.shared.tally import KIENZLE_BAND, Tally
from jobsheet.remembered import remembered

#: By value: the same cut is asked for again whenever something else of its operation or of the work changes.
_tooth_forces = remembered(256)(tooth_forces)
#: Helix of an end mill where none is written (cutting-data section 8); face mills and fly cutters have none.
USUAL_HELIX = math.radians(30)
_STRAIGHT = ("face mill", "fly cutter", "chamfer mill")
#: Two methods that differ beyond this are worth a word (cutting-data section 2.4).
METHODS = (0.7, 1.5)
#: A cutter is loaded to a third of its rupture strength at most (cutting-data section 1.7).
STRENGTH_FACTOR = 3.0
#: A wall that gives way by more is said in words: the linear model overstates it
#: (cutting-data section 1.11) [m].
TOLD = 50e-6


class Cut(Struct, frozen=True, kw_only=True):
    """One pass: axial depth, width across the cutter and feed per tooth [m], and the arc of a tooth [rad].

    `wall` says whether the side of the cutter makes a finished wall.
    """

    cutter: Cutter
    depth: float
    width: float
    tooth: float
    start: float
    end: float
    wall: bool = False


def teeth_of(cutter: Cutter) -> int:
    """The teeth of a milling cutter; it cannot be reckoned without."""
    if cutter.teeth is None:
        raise CalcError("cutter", f"“{cutter.text}”", "written with its number of teeth, such as 4 teeth")
    return cutter.teeth


def diameter_of(cutter: Cutter) -> float:
    """The diameter of a cutter [m]; it cannot be reckoned without."""
    if cutter.diameter is None:
        raise CalcError("cutter", f"“{cutter.text}”", "written with its diameter, such as 12 mm")
    return cutter.diameter


def helix_of(cutter: Cutter) -> float:
    """The helix angle [rad]: as written, or the usual one of its kind."""
    if cutter.helix is not None:
        return cutter.helix
    return 0.0 if cutter.kind in _STRAIGHT else USUAL_HELIX


def _entering(cutter: Cutter) -> float:
    """The angle of the edge to the finished face [rad]: 90° where nothing else is written."""
    return cutter.entering if cutter.entering is not None else math.pi / 2


def _chip(cut: Cut) -> float:
    """The mean chip thickness of a cut [m]."""
    return arc_chip_thickness(
        feed_per_tooth=cut.tooth, start=cut.start, end=cut.end, entering_angle=_entering(cut.cutter)
    )


def edge_arc(width: float, diameter: float, *, climb: bool = False) -> tuple[float, float]:
    """Where a tooth enters and leaves a cut counted from the cutter's edge [rad]."""
    if width > diameter * (1 + 1e-9):
        raise CalcError("width", f"{width * 1e3:.4g} mm", f"at most the cutter, {diameter * 1e3:.4g} mm")
    if width <= 0:
        raise CalcError(
            "width", f"{width * 1e3:.4g} mm", "above zero: nothing of the work is left to cut here"
        )
    arc = math.acos(max(1 - 2 * width / diameter, -1.0))
    return (math.pi - arc, math.pi) if climb else (0.0, arc)


def mean_torque(cut: Cut, setting: Setting) -> float:
    """Mean torque of a cut [N·m]; it does not hang on the speed as long as the feed per tooth stays.

    Asked for every cut that is tried, only to choose a speed: no working is kept of it.
    """
    return _power(_alone, cut, setting, 1.0)[1]


def _alone(_name: str, formula: Callable[..., float], *, band: object = None, **inputs: float) -> float:
    del band
    return formula(**inputs)


def _power(
    figure: Callable[..., float], cut: Cut, setting: Setting, speed: float
) -> tuple[float, float, float]:
    """Power [W], torque [N·m] and specific force [Pa]; `figure` takes what each is called, its formula and inputs."""
    material = setting.material
    chip = figure(
        "chip_thickness",
        arc_chip_thickness,
        feed_per_tooth=cut.tooth,
        start=cut.start,
        end=cut.end,
        entering_angle=_entering(cut.cutter),
    )
    kc = figure(
        "specific_force",
        specific_cutting_force,
        kc11=material.kc11.value,
        mc=material.mc.value,
        h=chip,
        wear=common.wear(setting, cut.cutter, "mill"),
        rake=cut.cutter.rake or 0.0,
    )
    power = figure(
        "power",
        milling_power,
        band=KIENZLE_BAND,
        depth=cut.depth,
        width=cut.width,
        table_feed=cut.tooth * teeth_of(cut.cutter) * speed,
        kc=kc,
    )
    torque = figure("torque", torque_from_power, band=KIENZLE_BAND, power=power, spindle_speed=speed)
    return power, torque, kc


def mill(tally: Tally, cut: Cut, setting: Setting, speed: float) -> ToothForces:
    """All figures of one pass at a spindle speed [rev/s]; returns the forces for a kind's own use."""
    cutter, diameter, teeth = cut.cutter, diameter_of(cut.cutter), teeth_of(cut.cutter)
    power, _, kc = _power(tally.figure, cut, setting, speed)
    feed = cut.tooth * teeth * speed
    removal = tally.figure(
        "removal_rate", milling_removal_rate, depth=cut.depth, width=cut.width, table_feed=feed
    )
    forces = _tooth_forces(
        kc=kc,
        feed_per_tooth=cut.tooth,
        depth=cut.depth,
        diameter=diameter,
        teeth=teeth,
        helix=helix_of(cutter),
        start=cut.start,
        end=cut.end,
    )
    tally.show("torque_peak", forces.torque_peak, KIENZLE_BAND)
    if not forces.always_in_cut:
        tally.gaps()
    tally.show("feed_force", abs(forces.feed_mean), KIENZLE_BAND)
    tally.show("in_plane_peak", forces.in_plane_peak, KIENZLE_BAND)
    tally.show("lift", abs(forces.axial_peak), KIENZLE_BAND)
    _chatter(tally, cut, setting, teeth)
    _bending(tally, cut, setting, forces)
    tooth = tally.figure("finish", side_roughness, feed=cut.tooth, diameter=diameter) if cut.wall else 0.0
    if tooth:
        tally.figure("finish_run_out", side_roughness, feed=cut.tooth * teeth, diameter=diameter)
    elif cutter.nose is not None:
        tally.figure("finish", nose_roughness, feed=cut.tooth, nose_radius=cutter.nose)
        tally.figure("finish_run_out", nose_roughness, feed=cut.tooth * teeth, nose_radius=cutter.nose)
    _second(tally, cut, setting, power, removal)
    return forces


def _chatter(tally: Tally, cut: Cut, setting: Setting, teeth: int) -> None:
    """What the cut asks of the frame: depth times mean teeth in cut times the force
    for a chip, sharp, by its direction.
    """
    engaged = tally.figure("teeth_in_cut", teeth_in_cut, teeth=float(teeth), engagement=cut.end - cut.start)
    chip = _chip(cut)
    kt = specific_cutting_force(kc11=setting.material.kc11.value, mc=setting.material.mc.value, h=chip)
    tally.figure(
        "cutting_stiffness",
        cutting_stiffness,
        depth=cut.depth,
        teeth_in_cut=engaged,
        kt=kt,
        direction=direction(cut.start, cut.end),
    )


def _bending(tally: Tally, cut: Cut, setting: Setting, forces: ToothForces) -> None:
    """What gives way under the force: the cutter where it leaves the holder, and the wall with the frame."""
    cutter = cut.cutter
    if cutter.stick_out is None:
        return
    carbide = cutter.material == "carbide"
    bar = equivalent_diameter(diameter=diameter_of(cutter))
    reach = cutter.stick_out - cut.depth / 2
    if reach <= 0:
        raise CalcError("cutter", f"“{cutter.text}”", "further out of the holder than half the depth of cut")
    stress = tally.figure(
        "bending_stress", bending_stress, force=forces.in_plane_peak, length=reach, diameter=bar
    )
    tally.show("bending_share", stress * STRENGTH_FACTOR / (CARBIDE_RUPTURE if carbide else HSS_RUPTURE))
    stiffness = tally.figure(
        "cutter_stiffness",
        cutter_stiffness,
        modulus=CARBIDE_MODULUS if carbide else HSS_MODULUS,
        diameter=bar,
        length=cutter.stick_out,
    )
    frame = setting.machine.frame
    if cut.wall and frame is not None and forces.makes_wall:
        error = tally.figure(
            "wall_error", wall_error, force=forces.wall_force, cutter=stiffness, frame=frame.value
        )
        if abs(error) > TOLD:
            tally.in_words("wall_error", f"more than {show('wall_error', TOLD, setting.units)}")
            tally.caveat("The wall gives way by more than 0.05 mm: take a finishing cut.")
        elif error:
            # Conventional milling has its wall at +y: a push towards it digs in; climb has it at -y.
            digs_in = (error > 0) == (cut.start == 0.0)
            tally.caveat("The wall comes out " + ("dug in." if digs_in else "with metal left on."))


def _second(tally: Tally, cut: Cut, setting: Setting, power: float, removal: float) -> None:
    """Unit power as a second opinion; a word where the two differ much.

    Its feed factor goes by the feed a tooth, as the unit-power tables define it: they know no thinner chip of
    a cut from the side, so that there the first method gives more.
    """
    energy = setting.material.kp
    if energy is None:
        return
    second = tally.figure(
        "second_power",
        unit_power,
        energy=energy.value * 1e9,
        feed_factor=unit_power_feed_factor(feed=cut.tooth),
        removal_rate=removal,
        wear=common.wear(setting, cut.cutter, "mill"),
    )
    ratio = tally.show("method_ratio", power / second)
    if not METHODS[0] <= ratio <= METHODS[1]:
        tally.caveat(f"Two methods disagree: power is {ratio:.2f} of that by unit power; take the larger.")


class Asked(Struct, frozen=True, kw_only=True):
    """What a person asked of speed and feed; what is None is chosen."""

    spindle: Quantity | None = None
    cutting_speed: Quantity | None = None
    feed_per_tooth: Quantity | None = None
    feed: Quantity | None = None
    along: str = "x"


def asked_of(fields: Any) -> Asked:
    """The speed and feed of a milling kind's fields, by their shared names."""
    return Asked(
        spindle=fields.spindle,
        cutting_speed=fields.cutting_speed,
        feed_per_tooth=fields.feed_per_tooth,
        feed=fields.feed,
        along=getattr(fields, "along", "x"),
    )


def run(tally: Tally, cut: Cut, setting: Setting, asked: Asked) -> tuple[float, float, ToothForces]:
    """Choose the speed, set the feed and its pace, and reckon the pass; speed [rev/s], feed [m/s], forces.

    The torque does not hang on the speed as long as the feed per tooth stays: it is reckoned once for the
    choice. With a table feed the chip changes with the speed, so the speed is chosen first.
    """
    if asked.feed is None and asked.feed_per_tooth is None:
        raise CalcError("feed", "empty", "given as a feed per tooth or as a table feed")
    guess = 0.0
    if asked.feed_per_tooth is not None and asked.feed is None:
        guess = mean_torque(replace(cut, tooth=asked.feed_per_tooth.value), setting)
    choice = common.set_spindle(
        tally,
        setting,
        diameter=diameter_of(cut.cutter),
        torque=guess,
        asked=asked.spindle,
        asked_speed=asked.cutting_speed,
        start=common.start_speed(setting, cut.cutter, "mill"),
    )
    tally.edge(edge_speed(setting, cut.cutter, "mill"))
    speed = choice.at.speed
    feed, tooth = common.set_table_feed(
        tally, teeth=teeth_of(cut.cutter), speed=speed, per_tooth=asked.feed_per_tooth, feed=asked.feed
    )
    handle = setting.machine.handle(asked.along)
    if handle is not None:
        common.set_pace(tally, handle, feed)
    return speed, feed, mill(tally, replace(cut, tooth=tooth), setting, speed)


def layers_of(total: float, layer: Quantity | None) -> int:
    """Into how many equal layers a depth is cut."""
    return max(1, math.ceil(total / layer.value - 1e-9)) if layer is not None else 1


def pace_problem(reckoned: Figures, setting: Setting) -> str:
    """Why the pace cannot be kept, for its dial; empty where a hand keeps it even."""
    pace = reckoned.value("handle_pace")
    way = setting.shop.out_of_hand(pace) if pace is not None else 0
    return {1: "faster than a hand keeps even", -1: "slower than a hand keeps even"}.get(way, "")


def layers_words(reckoned: Figures) -> str:
    """`one layer`, `4 layers`."""
    return common.times(reckoned.count("layers"), "one layer", "layers")


def passes_words(reckoned: Figures) -> str:
    """`one pass`, `4 passes`."""
    return common.times(reckoned.count("passes"), "one pass", "passes")


def depth_words(total: float, reckoned: Figures, setting: Setting) -> tuple[str, str]:
    """The depth as it is set, `4 × 3` in layers, and its unit."""
    layers = reckoned.count("layers")
    each, unit = common.millimetres(total / layers, setting.units)
    return (f"{layers} × {each}" if layers > 1 else each), unit


def dials(total: float, reckoned: Figures, setting: Setting, along: str, note: str = "") -> tuple[Dial, ...]:
    """Spindle, feed handle and depth: the three things to set for a milling pass.

    The depth dial is read after the first layer and after the last, counted on
    from where the cutter was touched.
    """
    from jobsheet.machine.dial_readings import running

    speed, pace = reckoned.number("spindle_speed"), reckoned.value("seconds_a_turn")
    handle = common.depth_handle(setting.machine)
    number, unit = depth_words(total, reckoned, setting)
    if handle is not None and total > 0:
        layers = reckoned.count("layers")
        ends = running(handle, (total / layers,) * layers, start=setting.wound)
        set_at = " to ".join(dict.fromkeys((ends[0].dial, ends[-1].dial)))
        note = " · ".join(part for part in (f"{set_at}, {handle.name}", note) if part)
    return (
        common.spindle_dial(setting, reckoned.shown("spindle_speed"), speed, reckoned.shown("cutting_speed")),
        Dial(
            f"Wind the {along.upper()} handle",
            common.one_decimal(pace) if pace else "–",
            "s a turn",
            reckoned.shown("handle_pace"),
            pace_problem(reckoned, setting),
        ),
        Dial("Raise the knee" if handle and handle.name == "knee" else "Set the depth", number, unit, note),
    )


def row(
    fields: Any,
    reckoned: Figures,
    setting: Setting,
    *,
    do: str,
    note: str,
    total: float,
    along: str,
    readings: tuple[str, ...] = (),
) -> Row:
    """The line of a milling step: what was asked for, how it is set, what to
    measure; `readings` are parts of its note.
    """
    from jobsheet.catalog.tools.cutters import short_name

    pace = reckoned.value("seconds_a_turn")
    number, unit = depth_words(total, reckoned, setting)
    return Row(
        do=fields.what or do,
        note="; ".join(part for part in (note, fields.note) if part),
        cutter=fields.cutter.place or short_name(fields.cutter),
        spindle=f"{reckoned.number('spindle_speed') * 60:.0f}",
        pace=common.one_decimal(pace) if pace else "",
        pace_unit=f"s a turn, {along}" if pace else "",
        depth=number,
        depth_unit=unit,
        measure=fields.measure.said if fields.measure else "",
        readings=tuple(reading for reading in readings if reading),
    )


#: The entries of speed and feed that all milling kinds share.
FEED_ENTRIES = (
    Entry(
        name="feed_per_tooth",
        title="Feed per tooth",
        asks="feed per tooth",
        low="0.001 mm",
        high="2 mm",
        optional=True,
    ),
    Entry(
        name="feed",
        title="Table feed",
        asks="feed",
        low="1 mm/min",
        high="5000 mm/min",
        optional=True,
        hint="instead of the feed per tooth",
    ),
)
ALONG = Entry(name="along", title="Feed along", asks="choice", choices=("x", "y"), optional=True)
LAYER = Entry(
    name="layer",
    title="Depth per layer",
    asks="length",
    low="0.01 mm",
    high="100 mm",
    optional=True,
    hint="leave empty to take it at once",
)
