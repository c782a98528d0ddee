"""What was learned in sizes of the newest such cut; nothing where no such cut was made."""

from __future__ import annotations

import pytest

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
