"""The three invented cards against the scenario's own curves and pushes (demo-scenario section 2)."""

from __future__ import annotations

import pytest

from jobsheet.cutting.quill import thrust_from_push
from jobsheet.errors import DocumentError, NoSuchEntry
from jobsheet.storage.card_files import card_names, find_card
from jobsheet.storage.machine_file import machine_from_text
from tests.machine.text import CARD


@pytest.mark.parametrize(
    ("name", "easy", "strong"),
    [("bench-mill-b-1", 1.27, 2.55), ("bench-mill-b-2", 1.13, 2.28), ("knee-mill-k-2", 1.46, 2.95)],
)
def test_thrust_of_the_lever_as_the_scenario_prints_it(name, easy, strong):
    lever = find_card(name).lever
    for push, kilonewtons in ((100, easy), (200, strong)):
        thrust = thrust_from_push(
            push=push, lever=lever.length, travel=lever.travel, spring=lever.spring, efficiency=0.85
        )
        assert thrust / 1e3 == pytest.approx(kilonewtons, abs=0.006)


def test_an_unknown_card_names_the_nearest():
    with pytest.raises(NoSuchEntry, match="did you mean bench-mill-b-1"):
        find_card("Bench mill B1")
    assert len(card_names()) >= 3


def test_a_person_s_own_card_goes_first(own_home):
    folder = own_home / "machines"
    folder.mkdir()
    (folder / "bench-mill-b-1.yaml").write_text(CARD, encoding="utf-8")
    assert find_card("bench-mill-b-1").title == "Test mill"


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (("power: 500 W, plate", "power: 500 W"), "say where"),
        (("power: 500 W, plate", "power: 500 mm, plate"), "a power is asked for"),
        (("a turn: 2.5 mm", "a turn: 0 mm"), "above zero"),
        (("a turn: 2.5 mm, a line", "a tern: 2.5 mm, a line"), "did you mean a turn"),
        (("reverses: no", "reverses: maybe"), "neither yes nor no"),
        (("- {speed: 320 rpm}", "- {speed: fast}"), "not a spindle speed"),
        (("dial: mm", "dial: furlong"), "not a dial's unit"),
    ],
)
def test_a_card_that_is_wrong_says_where_and_what(change, says):
    assert change[0] in CARD
    with pytest.raises(DocumentError, match=says) as caught:
        machine_from_text(CARD.replace(*change), "mill.yaml", "mill")
    assert all(problem.line for problem in caught.value.problems)
