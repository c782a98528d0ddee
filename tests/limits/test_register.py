"""Which limit stands first, which governs, and which is asked again when something around a step changes."""

from __future__ import annotations

from types import SimpleNamespace

import pytest
from msgspec.structs import replace

from jobsheet.catalog.metals.materials import find
from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.limits import register
from jobsheet.limits.register import LIMITS, asked, asked_again, governing, in_order, limits_of
from jobsheet.model.capacity import Capacity, Snapshot
from jobsheet.model.figure import Figure, Figures, Limit
from jobsheet.model.setting import Setting
from jobsheet.storage.card_files import find_card

CARD = find_card("bench-mill-b-1")
FIELDS = SimpleNamespace(cutter=read_cutter("end mill 12 mm, 4 teeth, 30 mm out", "mm"))


def made(name, verdict, share, *, from_class=False):
    return Limit(
        name=name, title="", demand=1.0, capacity=1.0, unit="", share=share, verdict=verdict, low=1.0, high=1.0, from_class=from_class
    )  # fmt: skip


def figures(**values):
    return Figures(tuple(Figure(name, value, "", "") for name, value in values.items()))


def around(**more):
    return Setting(machine=CARD, material=find("S235"), **more)


#: From what gives out first to what never governs: the worse word before the larger share; what is expected
#: from the class alone behind all that is known of the machine; what only has to fit, and does, last.
RANKED = (
    made("torsion", "beyond", 2.0), made("travel", "beyond", 1.1),
    made("chatter", "tight", 0.8), made("marked-speed", "tight", 0.7),
    made("chatter", "not tried", 0.5, from_class=True),
    made("holding", "expected", 0.5), made("quill-push", "cut before", 0.4), made("wrench", "expected", 0.3),
    made("chatter", "expected", 0.38, from_class=True), made("chatter", "expected", 0.1, from_class=True),
    made("headroom", "expected", 0.99), made("cutting-speed", "expected", 0.9), made("flute-length", "expected", 0.5),
    made("speed-range", "expected", 0.2),
)  # fmt: skip


def test_the_order_of_what_is_near_to_giving_out():
    assert in_order(RANKED[::-1]) == RANKED
    assert in_order((None, *RANKED[::2], None, *RANKED[1::2])) == RANKED


def test_limits_of_one_share_stand_in_the_order_of_the_register():
    first, second = made("spindle-torque", "expected", 0.5), made("spindle-power", "expected", 0.5 + 1e-9)
    assert in_order((first, second)) == (first, second)
    assert in_order((second, first)) == (second, first)


@pytest.mark.parametrize("first", range(len(RANKED)))
def test_what_governs_is_the_first_that_is_loaded(first):
    found = governing(RANKED[first:])
    assert found == (RANKED[first] if first < 8 else None)


def test_nothing_governs_where_nothing_applies():
    assert governing(()) is None
    assert in_order((None,) * len(LIMITS)) == ()


def test_every_limit_is_asked_and_those_that_do_not_apply_are_left_out():
    found = figures(torque=1.0, power=58.6, spindle_speed=560 / 60, handle_pace=20 / 60, wall_error=1e-6)
    said = asked(found, around(), FIELDS)
    assert len(said) == len(LIMITS)
    assert [one.name for one in said if one is not None] == [
        "spindle-torque",
        "spindle-power",
        "hand-pace",
        "speed-range",
    ]
    # 1 of 7.60 N·m is 0.13; 20 of 80 turns a minute 0.25; a speed that is there is no load.
    assert [one.name for one in limits_of(found, around(), FIELDS)] == ["hand-pace", "spindle-torque", "spindle-power", "speed-range"]  # fmt: skip


def test_those_that_trials_teach_are_told_which_process_it_is():
    """A record of side cuts stands for side cuts; without the process only what
    the machine alone gives counts.
    """
    cells = {"low": 0.8, "median": 1.0, "high": 1.25, "cells": ((0.0, 1.0),), "spoke": 3}
    proof = Snapshot(machine="m", made="x", capacities=tuple(
        Capacity(limit=name, process="side", cutter_kind="end mill", **cells) for name in ("chatter", "spindle-torque")
    ))  # fmt: skip
    found = figures(torque=1.0, power=58.6, spindle_speed=560 / 60, cutting_stiffness=3e6)
    told = {one.name: one.learned for one in limits_of(found, around(proof=proof), FIELDS, "side")}
    untold = {one.name: one.learned for one in limits_of(found, around(proof=proof), FIELDS)}
    assert {name for name, learned in told.items() if learned} == {
        "chatter",
        "spindle-torque",
        "spindle-power",
    }
    assert not any(untold.values())


@pytest.mark.parametrize("part", sorted(register.READS))
def test_only_limits_that_read_what_changed_are_asked_again(part):
    """What stands already stays as it is, wrong or right, where its limit does not read what changed."""
    found = figures(
        torque=1.0, power=58.6, spindle_speed=560 / 60, handle_pace=20 / 60, cutting_stiffness=3e6
    )
    before = tuple(made(f"was {place}", "expected", 0.1) for place in range(len(LIMITS)))
    after = asked_again(before, frozenset({part}), found, around(), FIELDS, "side")
    whole = asked(found, around(), FIELDS, "side")
    for module, was, now, fresh in zip(LIMITS, before, after, whole, strict=True):
        assert now == (fresh if part in module.READS else was), module.__name__


def test_where_nothing_changed_nothing_is_asked_again():
    found, setting = figures(torque=1.0, spindle_speed=560 / 60), around()
    before = asked(found, setting, FIELDS)
    assert asked_again(before, frozenset(), replace(found, items=()), setting, FIELDS, "") == before
    assert (
        asked_again(before, frozenset({"extent.z"}), replace(found, items=()), setting, FIELDS, "") == before
    )


def test_what_was_said_of_other_limits_is_refused():
    with pytest.raises(ValueError, match="shorter"):
        asked_again((None,) * (len(LIMITS) - 1), frozenset(), Figures(), around(), FIELDS, "")
