"""What every shop knows, asked of our own operations on the bench mill B-2, each with all its conditions.

Source of every line: common practice. Only the order within one process is asked for. How large a cut the
machine bears is not: that is its owner's to find out, and no number here is fitted to one machine.
"""

from __future__ import annotations

import pytest

from jobsheet.catalog.metals.materials import find
from jobsheet.catalog.tools.drills import read_drill_size
from jobsheet.catalog.tools.webs import pilot as suggested_pilot
from jobsheet.catalog.tools.webs import web
from jobsheet.model.figure import Figures
from jobsheet.model.setting import Setting
from jobsheet.operations.kind import fields_from
from jobsheet.operations.registry import kind
from jobsheet.storage.card_files import find_card

INCH = 25.4e-3
STEEL = "1018 CD"


def reckon(name: str, *, pilot: float | None = None, metal: str = STEEL, **texts: str) -> Figures:
    """Figures of one operation in cold drawn mild steel 4 x 3 x 1 in on B-2,
    brushed with oil; texts as typed.
    """
    setting = Setting(
        machine=find_card("bench-mill-b-2"),
        material=find(metal),
        units="in",
        fluid="brushed",
        extent=(4 * INCH, 3 * INCH, 1 * INCH),
        thickness=1 * INCH,
        pilot=pilot,
    )
    found = kind(name)
    return found.figures(fields_from(found.fields, found.entries, texts, "in"), setting)


def value(figures: Figures, name: str) -> float:
    found = figures.value(name)
    assert found is not None
    return found


def test_the_card_is_b_2_and_the_speeds_of_this_file_are_on_it():
    card = find_card("bench-mill-b-2")
    assert card.title == "Bench mill B-2"
    assert reckon("slot", **SLOT, cutter=f"{TWO}, 1 in out", depth="0.150 in").missing_speed is None
    assert reckon("face", **FACE, depth="0.050 in").missing_speed is None
    assert reckon("drill", **HOLE).missing_speed is None


# --- a pilot is at least the web of the final drill ---------------------------------------------------------

#: 1/2 in jobber drill, 118 degrees, 0.005 in a turn, 500 rpm, 1 in deep.
HOLE = {
    "cutter": "drill 1/2 in",
    "at": "2 in, 1.5 in",
    "depth": "1 in",
    "feed": "0.005 in",
    "spindle": "500 rpm",
}


@pytest.mark.parametrize("size", ["1/4", "5/16", "3/8", "1/2", "5/8", "3/4", "1"])
def test_the_pilot_we_suggest_is_at_least_the_web_of_the_final_drill(size):
    final = read_drill_size(f"{size} in", "in")
    pilot, thick = suggested_pilot(final), web(final)
    assert pilot.low >= thick.value
    assert pilot.value >= thick.value
    assert pilot.value < final / 2


def test_a_pilot_at_least_as_wide_as_the_web_takes_off_most_of_the_thrust():
    """1/2 in drill after 5/32 in: its web is about 0.08 in, its chisel edge 0.09 in."""
    alone, after = reckon("drill", **HOLE), reckon("drill", **HOLE, pilot=5 / 32 * INCH)
    assert web(INCH / 2).value <= 5 / 32 * INCH
    assert value(after, "thrust") < 0.5 * value(alone, "thrust")
    assert value(after, "torque") < value(alone, "torque")


def test_a_pilot_narrower_than_the_web_relieves_less_than_one_as_wide():
    """1/2 in drill after 1/16 in, which is narrower than its web; after 5/32 in, which is wider."""
    alone, after = reckon("drill", **HOLE), reckon("drill", **HOLE, pilot=INCH / 16)
    wide = reckon("drill", **HOLE, pilot=5 / 32 * INCH)
    assert web(INCH / 2).value > INCH / 16
    assert value(wide, "thrust") < value(after, "thrust") < value(alone, "thrust")


# --- tapping ------------------------------------------------------------------------------------------------


def tap(thread: str, hole: str) -> Figures:
    """A plug tap, sharp and oiled, turned by hand and guided by the spindle,
    1/2 in deep, in the hole given.
    """
    texts = {"at": "2 in, 1.5 in", "depth": "0.5 in", "method": "by hand", "condition": "sharp and oiled"}
    return reckon("tap", **texts, cutter=f"tap {thread}, plug", thread=thread, hole=hole)


@pytest.mark.parametrize(("thread", "letter", "percent"), [("5/16-18", "H", 64), ("3/8-16", "P", 64)])
def test_a_letter_drill_for_an_easier_thread(thread, letter, percent):
    """Letter H is 0.266 in, P 0.323 in."""
    assert value(tap(thread, letter), "percent_thread") * 100 == pytest.approx(percent, abs=0.7)


#: The usual tap drill of the charts for each, plug tap, sharp and oiled, mild steel.
TAPS = (("1/4-20", "#7"), ("5/16-18", "F"), ("3/8-16", "5/16 in"))


def test_taps_need_more_torque_in_the_order_of_their_sizes():
    quarter, five, three = (value(tap(*one), "torque") for one in TAPS)
    assert quarter < five < three
    assert three >= 1.4 * five


def test_so_they_do_in_the_larger_holes_of_about_64_percent():
    """7/32 in is 0.2188 in: about 48 percent in 1/4-20; H and P give 64 percent."""
    quarter, five, three = (
        value(tap(*one), "torque") for one in (("1/4-20", "7/32 in"), ("5/16-18", "H"), ("3/8-16", "P"))
    )
    assert quarter < five < three
    assert three >= 1.4 * five


@pytest.mark.parametrize(("thread", "tight", "easy"), [("5/16-18", "F", "H"), ("3/8-16", "5/16 in", "P")])
def test_a_larger_hole_taps_easier(thread, tight, easy):
    assert value(tap(thread, easy), "torque") < value(tap(thread, tight), "torque")


# --- slotting steel -----------------------------------------------------------------------------------------

TWO = "slot drill 1/2 in, 2 teeth"
FOUR = "end mill 1/2 in, 4 teeth"
#: 1/2 in high speed steel, feed 0.0015 in a tooth, 700 rpm, helix 30 degrees, 1 in out, along x.
SLOT = {"ends": "1 in, 1.5 in; 3 in, 1.5 in", "feed_per_tooth": "0.0015 in", "spindle": "700 rpm"}


@pytest.mark.parametrize("cutter", [TWO, FOUR])
@pytest.mark.parametrize("figure", ["torque", "power", "torque_peak", "in_plane_peak", "cutting_stiffness"])
def test_a_slot_of_three_tenths_of_the_cutter_asks_clearly_less_than_of_half(cutter, figure):
    """Depth 0.150 in and 0.250 in, one layer."""
    shallow, deep = (
        value(reckon("slot", **SLOT, cutter=f"{cutter}, 1 in out", depth=depth), figure)
        for depth in ("0.150 in", "0.250 in")
    )
    assert shallow < 0.75 * deep


@pytest.mark.parametrize("size", ["1/4", "3/8", "1/2"])
@pytest.mark.parametrize("part", [0.1, 0.2, 0.3])
def test_two_flutes_push_the_wall_of_a_slot_less_than_four(size, part):
    """Same size, same 0.001 in a tooth, 700 rpm, 1 in out, same depth: the other
    flute cuts nothing at that instant.

    The side force at the instant an edge makes the wall is what the wall's error is reckoned from; cutter and
    frame are equally stiff, so the errors stand to each other as the forces.
    """
    texts = {**SLOT, "feed_per_tooth": "0.001 in", "depth": f"{float(read_drill_size(f'{size} in', 'in')) / INCH * part:.4f} in"}  # fmt: skip
    two = reckon("slot", **texts, cutter=f"slot drill {size} in, 2 teeth, 1 in out")
    four = reckon("slot", **texts, cutter=f"end mill {size} in, 4 teeth, 1 in out")
    assert value(two, "cutter_stiffness") == value(four, "cutter_stiffness")
    assert abs(value(two, "wall_error")) < 0.7 * abs(value(four, "wall_error"))


# --- facing steel -------------------------------------------------------------------------------------------

#: 2 in carbide face mill, 4 teeth, 0.003 in a tooth, passes 1.2 in wide, 500 rpm, along x.
FACE = {
    "cutter": "face mill 2 in, 4 teeth, carbide",
    "width": "1.2 in",
    "feed_per_tooth": "0.003 in",
    "spindle": "500 rpm",
}


@pytest.mark.parametrize("figure", ["power", "torque", "torque_peak", "in_plane_peak", "cutting_stiffness"])
def test_facing_deeper_asks_more(figure):
    """0.050, 0.100 and 0.150 in deep, one layer."""
    asked = [value(reckon("face", **FACE, depth=f"0.{depth} in"), figure) for depth in ("050", "100", "150")]
    assert asked == sorted(asked)
    assert len(set(asked)) == 3


@pytest.mark.parametrize("depth", ["0.025", "0.050", "0.075"])
def test_twice_the_depth_is_twice_the_power(depth):
    once, twice = (reckon("face", **FACE, depth=f"{float(depth) * times:.3f} in") for times in (1, 2))
    assert value(twice, "power") == pytest.approx(2 * value(once, "power"))


def test_the_same_cut_typed_in_millimetres_is_the_same_cut():
    inches = reckon("face", **FACE, depth="0.100 in")
    metric = {"cutter": "face mill 50.8 mm, 4 teeth, carbide", "width": "30.48 mm", "feed_per_tooth": "0.0762 mm", "spindle": "500 rpm"}  # fmt: skip
    millimetres = reckon("face", **metric, depth="2.54 mm")
    assert [one.name for one in inches.items] == [one.name for one in millimetres.items]
    for one in inches.items:
        assert millimetres.value(one.name) == pytest.approx(one.value), one.name


# --- what the frame is asked by cuts that every shop knows --------------------------------------------------

#: Common practice, no source: medium carbon steel on one bench mill of about 170 kg. Each is the most that it
#: bears, and what was one step too much without stalling.
SIDE = {"side": "front", "length": "3 in", "feed_per_tooth": "0.002 in", "spindle": "700 rpm"}
THE_MOST: dict[str, tuple[str, dict[str, str], dict[str, str]]] = {
    "face": ("face", {**FACE, "width": "1.5 in", "depth": "0.10 in"}, {"depth": "0.15 in"}),
    "slot": ("slot", {**SLOT, "cutter": f"{TWO}, 1 in out", "depth": "0.15 in"}, {"depth": "0.25 in"}),
    "side": ("side-mill", {**SIDE, "cutter": f"{FOUR}, 1.3 in out", "width": "0.05 in", "depth": "1 in"}, {"width": "0.15 in"}),
}  # fmt: skip


def asked_of_the_frame(which: str, *, too_much: bool = False) -> float:
    name, most, more = THE_MOST[which]
    return (
        value(reckon(name, metal="1045", **{**most, **(more if too_much else {})}), "cutting_stiffness") / 1e6
    )


def test_three_cuts_that_one_machine_bears_ask_about_the_same_of_its_frame():
    """Within a factor of 1.7; by depth times teeth alone they would lie a factor of four apart."""
    asked = {which: asked_of_the_frame(which) for which in THE_MOST}
    assert max(asked.values()) < 1.7 * min(asked.values()), asked
    assert all(asked[which] < asked_of_the_frame(which, too_much=True) for which in THE_MOST), asked
    # Nine in ten bench mills lie within e^(1.645 × 0.743) = 3.39 of 6 N/µm (cutting-data
    # 1.9, with a process's own spread).
    assert all(6 / 3.39 < one < 6 * 3.39 for one in asked.values()), asked
