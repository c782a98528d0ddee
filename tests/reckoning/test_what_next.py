"""What to try next: never tried before wide still, the widest first, nothing where
test cuts have no say, three at most.
"""

import pytest

from jobsheet.model.capacity import Capacity, Snapshot
from jobsheet.reckoning.answers.what_next import Answered, Shown, shown_by, what_next


def row(name, ratio, cuts=0):
    shown = Shown(
        process=name, cutter_kind="end mill", cuts=cuts, newest="2026-11-12" if cuts else "", ratio=ratio
    )
    return Answered(name=name, low="1 mm", high="4 mm", plan="1.2 mm", shown=shown)


def test_what_was_never_tried_goes_before_what_is_wide_still_and_the_widest_first():
    said = what_next([row("side cut", 9.0, 5), row("slot", 3.0), row("facing", 12.0)])
    assert [one.partition(":")[0] for one in said] == ["Facing", "Slot", "Side cut"]
    assert (
        said[0] == "Facing: never tried, nine in ten between 1 mm and 4 mm. A ladder begins at about 1.2 mm."
    )
    assert (
        said[2]
        == "Side cut: 5 cuts, the newest 2026-11-12, and still nine in ten between 1 mm and 4 mm. A finer ladder narrows it."
    )


def test_what_is_narrow_or_not_learned_is_not_proposed():
    assert what_next([row("side cut", 1.9, 5), row("drill from solid", 0.0)]) == ()


def test_an_afternoon_has_room_for_three():
    assert len(what_next([row(f"cut {number}", 4.0) for number in range(7)])) == 3


@pytest.mark.parametrize(
    ("ratio", "cuts", "proposed"),
    [(2.0, 5, False), (2.01, 5, True), (2.01, 1, True), (1.0, 0, False), (1.01, 0, True), (0.0, 0, False)],
)
def test_a_band_is_wide_beyond_two_and_of_what_was_never_tried_any_band_is(ratio, cuts, proposed):
    assert bool(what_next([row("slot", ratio, cuts)])) == proposed


def test_of_one_cut_it_is_said_in_words():
    assert row("slot", 3.0, 1).shown.words() == "one cut, the newest 2026-11-12"
    assert row("slot", 3.0, 2).shown.words() == "2 cuts, the newest 2026-11-12"
    assert row("slot", 3.0).shown.words() == "never tried"


def capacity(limit="chatter", process="side", **more):
    return Capacity(limit=limit, process=process, cutter_kind="end mill", **{"low": 1.0, "median": 2.0, "high": 3.0} | more)  # fmt: skip


def test_what_stands_behind_a_row():
    """High over low: 3 / 1. Only cuts of that very process and kind of cutter count, and only of the limit they are about."""
    own = capacity(spoke=4, newest="2026-11-12")
    proof = Snapshot(
        machine="m",
        made="",
        capacities=(capacity("spindle-torque", spoke=9), capacity(process="face", spoke=8), own),
    )
    found = shown_by(proof, "side", "end mill", (capacity("spindle-torque", high=9.0), own), learned=True)
    assert (found.cuts, found.newest, found.ratio, found.turns) == (4, "2026-11-12", 3.0, True)
    assert shown_by(proof, "side", "end mill", (own,), learned=False).ratio == 0.0
    assert shown_by(proof, "side", "slot drill", (own,), learned=True).cuts == 0
    nothing = shown_by(None, "side", "end mill", (), learned=True, turns=False)
    assert (nothing.cuts, nothing.newest, nothing.ratio, nothing.turns) == (0, "", 0.0, False)
