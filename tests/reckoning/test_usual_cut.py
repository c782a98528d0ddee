"""What was learned in sizes of the newest such cut; nothing where no such cut was made."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.model.trials import Asked
from jobsheet.reckoning.known_capacity import prior
from jobsheet.reckoning.ladder.usual_cut import InSizes, in_sizes
from tests.proving.trials import trial


@pytest.mark.parametrize(
    ("fields", "says"),
    [
        ({"middle": "2.3 mm deep", "low": "2 mm", "high": "2.7 mm", "planned": "1.75 mm deep"}, "end mill 12: about 2.3 mm deep, nine in ten 2 mm to 2.7 mm; plan to 1.75 mm deep"),
        ({"middle": "more than 6 mm", "low": "", "high": "6 mm", "planned": "5 mm deep"}, "end mill 12: more than 6 mm, nine in ten less to 6 mm; plan to 5 mm deep"),
        ({"middle": "", "low": "", "high": "", "planned": ""}, "end mill 12: no such cut is so light"),
    ],
)  # fmt: skip
def test_in_one_line(fields, says):
    assert InSizes(cut="end mill 12", **fields).words() == says


def test_nothing_is_said_without_a_cut_of_that_sort():
    known = prior("chatter", "side", "end mill")
    assert in_sizes(known, ()) is None
    assert in_sizes(known, (trial("clean", chatter=0.5, process="face"),)) is None
    assert in_sizes(known, (trial("clean", torque=0.5),)) is None


def cut(day):
    step = (("depth", "1 mm"), ("width", "6 mm"), ("feed_per_tooth", "0.04 mm"))
    made = trial("clean", chatter=0.5, date=day, step=step)
    return replace(made, machine="bench-mill-b-1")


def test_it_is_said_of_the_newest_cut_with_its_width_and_metal():
    known = prior("chatter", "side", "end mill")
    other = replace(cut("2026-11-25"), cutter="end mill 10 mm, 4 teeth, drawer 1 no. 2")
    assert in_sizes(known, (cut("2026-11-20"), other)).cut == "end mill 10 mm, 4 teeth, 6 mm wide in S235"
    assert in_sizes(known, (other, cut("2026-11-26"))).cut == "end mill 12 mm, 4 teeth, 6 mm wide in S235"


def test_an_end_at_nothing_is_no_size():
    """A share of nought is asked by no cut at all, so there is no depth to name."""
    known = prior("chatter", "side", "end mill")
    found = in_sizes(replace(known, low=0.0), (cut("2026-11-20"),))
    assert found.low == ""
    assert found.middle.endswith(" deep")
    assert "nine in ten less to" in found.words()
    assert in_sizes(replace(known, median=0.0), (cut("2026-11-20"),)).middle == ""


def test_a_cutter_that_can_no_longer_be_read_says_nothing():
    lost = replace(cut("2026-11-20"), cutter="wobbler")
    assert in_sizes(prior("chatter", "side", "end mill"), (lost,)) is None
    assert (
        in_sizes(prior("chatter", "side", "end mill"), (replace(cut("2026-11-20"), machine="gone"),)) is None
    )


def test_a_limit_that_the_process_is_not_about_says_nothing():
    both = replace(cut("2026-11-20"), asked=(Asked("spindle-torque", 1.0, 0.3), Asked("chatter", 4e6, 0.5)))
    assert in_sizes(prior("spindle-torque", "side", "end mill"), (both,)) is None
    assert in_sizes(prior("chatter", "side", "end mill"), (both,)) is not None
