"""Places of a cabinet, however they are spelled."""

from __future__ import annotations

from jobsheet.catalog.tools.places import in_order, lies_in, parted


def test_a_place_is_its_drawer_and_its_number():
    assert (
        parted("Drawer 2  No. 7")
        == parted("drawer 2, number 7")
        == parted("drawer 2 place 7")
        == ("drawer 2", "7")
    )
    assert parted("shelf 3") == ("shelf 3", "")
    assert parted(" ") == ("", "")


def test_who_was_told_the_drawer_alone_finds_it():
    assert lies_in("drawer 2 no. 7", "Drawer 2")
    assert lies_in("drawer 2 no. 7", "drawer 2 no 7")
    assert not lies_in("drawer 2 no. 7", "drawer 2 no. 8")
    assert not lies_in("drawer 2 no. 7", "drawer 22")


def test_drawers_go_by_their_numbers_and_nothing_comes_last():
    places = ["", "drawer 10", "drawer 2 no. 11", "drawer 2 no. 3"]
    assert sorted(places, key=in_order) == ["drawer 2 no. 3", "drawer 2 no. 11", "drawer 10", ""]
