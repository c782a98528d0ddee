"""What a field with a list can be filled with, and what is offered where that does not do."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.gui.choosing.listed import Listed
from jobsheet.gui.desk.desk import Desk
from jobsheet.gui.edits.pick_sources import WAY, Source, several_of, source_of
from jobsheet.operations.entry import Entry
from jobsheet.paths import sample_jobs
from jobsheet.storage.card_files import card_names
from jobsheet.storage.job_file import read_job

CUTTER = Entry(name="cutter", title="Cutter", asks="text")
SEVERAL = Entry(
    name="faces", title="Faces", asks="several", choices=("top", "front", "left end", "right end")
)


@pytest.fixture
def desk(qapp):
    return Desk(read_job(sample_jobs() / "hm-104-cover-plate.yaml"))


def test_what_is_typed_narrows_the_list(qapp):
    source = Source(
        (Listed(key="a", title="end mill 12 mm", under="drawer 1"), Listed(key="b", title="drill 6 mm"))
    )
    assert [one.key for one in source.found("12 end")] == ["a"]
    assert [one.key for one in source.found("")] == ["a", "b"]
    assert source.found("end")[0].hit == (0, 3)
    assert source.found("drawer")[0].under_hit == (0, 6)
    assert source.found("reamer") == ()


@pytest.mark.parametrize(
    ("typed", "keys"),
    [
        ("", ["top", "front", "left end", "right end"]),
        ("top, ", ["top, front", "top, left end", "top, right end"]),
        ("top, ri", ["top, right end"]),
        ("fr", ["front"]),
        ("top, front, left end, right end,", []),
    ],
)
def test_behind_the_last_comma_stands_what_is_not_in_it_yet(typed, keys):
    assert [one.key for one in several_of(SEVERAL, typed)] == keys


def test_opened_by_hand_all_that_is_not_in_it_stands_behind_it():
    assert [one.key for one in several_of(SEVERAL, "top", all_of_them=True)] == [
        "top, front",
        "top, left end",
        "top, right end",
    ]


def test_a_machine_is_one_of_the_cards_or_a_new_one(desk):
    source = source_of(desk, "job", Entry(name="machine", title="Machine", asks="machine"))
    assert tuple(one.key for one in source.things) == card_names()
    assert [one.key for one in source.offers] == [f"{WAY}new-card"]


def test_a_material_is_one_of_the_table(desk):
    source = source_of(desk, "job", Entry(name="material", title="Material", asks="material"))
    assert any(one.beside == "planned" for one in source.things)


def test_a_vice_is_one_of_the_card(desk):
    source = source_of(
        desk, f"holding:{desk.job.set_ups[0].key}", Entry(name="vice", title="Vice", asks="text")
    )
    assert all(one.key == one.title for one in source.things)
    assert source.offers[-1].key.startswith(WAY)


def test_a_cutter_is_one_of_the_cabinet_of_the_workshop(desk):
    source = source_of(desk, "drill", CUTTER)
    assert len(source.things) > 3
    assert all(one.key and one.title for one in source.things)
    assert source.offers == (), "it is not the person's own"


def test_without_a_cabinet_it_says_so_and_offers_a_new_one(qapp):
    desk = Desk(replace(read_job(sample_jobs() / "hm-104-cover-plate.yaml"), workshop="Another workshop"))
    source = source_of(desk, "drill", CUTTER)
    said, way = source.offers
    assert source.things == ()
    assert (said.title, said.key) == ("There is no cabinet yet.", "")
    assert said.away
    assert way.key == f"{WAY}cabinet"
