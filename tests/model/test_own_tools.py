"""Things of a cabinet: the line that a job names them by, and whether they are there."""

from __future__ import annotations

import pytest

from jobsheet.model.own_tools import Cabinet, Thing


def thing(section="cutters", **more):
    return Thing(section=section, what="end mill 12 mm", **{"row": 0, "place": "drawer 1 no. 2", **more})


def test_a_thing_is_named_with_its_place_where_it_has_one():
    assert thing().line == "end mill 12 mm, drawer 1 no. 2"
    assert thing(place="").line == "end mill 12 mm"


@pytest.mark.parametrize(
    ("more", "here", "away"), [({}, True, ""), ({"out": "lent"}, False, "lent"), ({"count": 0}, False, "none left"), ({"count": 0, "out": "lent"}, False, "lent")]
)  # fmt: skip
def test_what_is_lent_or_used_up_is_not_there(more, here, away):
    assert (thing(**more).here, thing(**more).away) == (here, away)


def test_things_of_several_sections_stay_in_the_order_of_the_file():
    things = (thing("taps"), thing("drills", row=1), thing("taps", row=2))
    cabinet = Cabinet(name="own", things=things)
    assert cabinet.of("drills", "taps") == things
    assert cabinet.of("taps") == (things[0], things[2])
    assert cabinet.of() == ()
