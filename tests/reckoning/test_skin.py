"""Scale and cast skins: which faces have one, how thick, and what nothing lies flat on."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.catalog.trade.surfaces import read_surfaces
from jobsheet.model.quantity import Quantity
from jobsheet.model.shop import Shop
from jobsheet.reckoning.skin import is_cast, is_untrue, made_first, may_bow, skin_of, skins
from jobsheet.storage.job_file import blank_job

SHOP = Shop()


def stock(words, **more):
    return replace(blank_job("bench-mill-b-1").stock, surfaces=read_surfaces(words), **more)


def test_black_stock_has_scale_on_every_face_that_was_not_sawn():
    found = stock("black, ends sawn")
    assert dict(skins(found, SHOP)) == dict.fromkeys(("front", "rear", "top", "bottom"), SHOP.scale_skin)
    assert skin_of(found, "left", SHOP) == (0.0, "")
    assert is_untrue(found, "left"), "a saw leaves nothing flat"


def test_a_casting_has_the_skin_that_is_said_else_the_workshop_s():
    assert skin_of(stock("cast"), "top", SHOP) == (SHOP.casting_skin, "a cast skin")
    said = stock("cast", skin=Quantity(2e-3, "2 mm"))
    assert skin_of(said, "top", SHOP)[0] == 2e-3
    assert is_cast(said, "top")


def test_only_what_was_drawn_cold_may_bow_and_not_once_it_was_relieved():
    assert may_bow(stock("bright"))
    assert not may_bow(stock("bright", relieved=True))
    assert not may_bow(stock("black"))
    assert skins(stock("bright"), SHOP) == ()


def test_a_face_makes_the_top_and_a_wall_its_side(hm100):
    set_up = hm100.set_ups[0]
    made = {one.key: made_first(one, set_up) for one in set_up.operations}
    assert made["face-rough"] == made["face-finish"] == set_up.up
    assert made["drill"] == made["clamp"] == ""


@pytest.mark.parametrize("up", ["top", "bottom", "left"])
def test_what_is_up_is_made_whichever_face_it_is(hm100, up):
    from jobsheet.model.lying import laid

    set_up = laid(replace(hm100.set_ups[0], up=up))
    assert made_first(hm100.find("face-rough")[1], set_up) == up
