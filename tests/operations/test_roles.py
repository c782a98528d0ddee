"""Roles: a kind is one thing to others, and which things it is follows from that."""

from __future__ import annotations

import pytest

from jobsheet.operations.roles import BESIDE, HOLES, MILLS, NEEDS, Roles


@pytest.mark.parametrize(
    ("roles", "name"),
    [
        (Roles(mills="wall"), "wall"),
        (Roles(hole="ream"), "ream"),
        (Roles(beside="saw"), "saw"),
        (Roles(), ""),
    ],
)
def test_its_name_is_the_one_that_it_is(roles, name):
    assert roles.name == name


def test_a_broken_edge_is_no_size():
    assert {one for one in MILLS if Roles(mills=one).sizes} == {"flat", "wall", "groove", "recess"}
    assert not Roles(hole="drill").sizes


def test_walls_of_its_own_are_those_of_grooves_and_pockets():
    assert {one for one in MILLS if Roles(mills=one).between_walls} == {"groove", "recess"}


def test_every_role_says_which_fields_it_is_read_by():
    assert set(MILLS) | set(HOLES) <= set(NEEDS)
    assert not set(MILLS) & set(HOLES)
    assert not set(BESIDE) & (set(MILLS) | set(HOLES))
