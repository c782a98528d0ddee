"""Each kind of holding: its facts are written and read back, its form has each once, its
bodies stand where its numbers say.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.catalog.metals.materials import find
from jobsheet.errors import DocumentError, NoSuchEntry
from jobsheet.holdings.all_holdings import (
    changed_to,
    entries_of,
    holding_kind,
    holdings,
    kind_of,
    roles_of,
    words_of,
)
from jobsheet.holdings.placed import own_vice
from jobsheet.model.held_work import NOTHING, Around
from jobsheet.model.shop import Shop
from jobsheet.storage.card_files import find_card
from jobsheet.storage.job_file import blank_job, job_from_text
from jobsheet.storage.job_writing import write_job

from .bodies_placed import B1, with_holding

#: What is typed for each way of asking, to fill every field of every kind.
TYPED = {
    "force": "12 kN",
    "length": "12 mm", "torque": "20 N·m", "thread": "M12", "angle": "30°", "count": "2", "flag": "yes", "text": "words",
    "places": "10, 5; 70, 5",
}  # fmt: skip


def full(name):
    """A holding of that kind with every fact said."""
    kind = holding_kind(name)
    values = {
        entry.name: entry.read(entry.choices[0] if entry.choices else TYPED[entry.asks], "mm")
        for entry in kind.entries
    }
    return kind.fields(**values)


def test_there_are_as_many_as_the_design_asks():
    wanted = {
        "vice",
        "straps",
        "angle plate",
        "vee block",
        "fixture plate",
        "chuck",
        "centres",
        "sine plate",
        "hand vice",
    }
    assert wanted | {"other words"} <= set(holdings())


@pytest.mark.parametrize("name", holdings())
def test_every_fact_is_written_and_read_back(name):
    job = with_holding(full(name))
    text = write_job(job)
    assert f"kind: {name}" in text
    assert job_from_text(text, "x") == job
    assert write_job(job_from_text(text, "x")) == text


@pytest.mark.parametrize("name", holdings())
def test_the_form_has_each_fact_once(name):
    kind = holding_kind(name)
    names = [entry.name for entry in kind.entries]
    assert sorted(names) == sorted(set(names))
    assert set(names) == set(kind.fields.__struct_fields__)
    assert all(entry.title for entry in kind.entries)


@pytest.mark.parametrize("name", holdings())
def test_nothing_said_is_a_holding_too(name):
    """Only its kind was chosen: words, bodies and grip ask nothing that is not there."""
    holding = changed_to(NOTHING, name, "mm")
    kind = kind_of(holding)
    around = Around(size=(0.08, 0.05, 0.02))
    assert words_of(holding)
    kind.bodies(holding, around)
    kind.rests(holding)
    assert kind.mass(holding, find_card(B1)) >= 0


def test_by_hand_cannot_be_chosen():
    with pytest.raises(NoSuchEntry):
        holding_kind("by hand")
    text = write_job(with_holding(own_vice(find_card(B1)))).replace("kind: vice", "kind: by hand")
    with pytest.raises(DocumentError) as told:
        job_from_text(text, "x")
    assert "no way of holding called “by hand”" in str(told.value)


def test_a_vise_is_a_vice():
    text = write_job(with_holding(own_vice(find_card(B1)))).replace("kind: vice", "kind: vise")
    assert job_from_text(text, "x").set_ups[0].holding.kind == "vice"


def test_another_kind_keeps_what_both_ask():
    straps = full("straps")
    angle = changed_to(straps, "angle plate", "mm")
    assert angle.bolt == straps.bolt
    assert angle.tighten == straps.tighten
    assert angle.note == straps.note
    assert not hasattr(angle, "at")
    assert changed_to(angle, "nothing yet", "mm").kind == ""


def test_nothing_holds_nothing():
    assert not roles_of(NOTHING).holds
    assert [entry.name for entry in entries_of(NOTHING)] == ["kind", "note"]


def test_a_preview_names_the_facts_that_another_kind_loses():
    from jobsheet.edit.commands import SetField
    from jobsheet.edit.difference import changes

    before = SetField("holding:set-up-1", "over_left", "6").apply(blank_job(B1))
    said = changes(before, SetField("holding:set-up-1", "kind", "straps").apply(before))
    assert "set-up 1, held by: vice → straps" in said
    assert "set-up 1, over the left end: 6 → –" in said


@pytest.mark.parametrize("name", holdings())
def test_no_figure_rests_on_a_fact_that_is_not_declared(name):
    """Half-typed text in a field dims the figures that rest on it, and no others."""
    kind, machine, metal = holding_kind(name), find_card(B1), find("S235")
    start = full(name)

    def reckoned(fields):
        grip = kind.grip(fields, machine, metal, Shop())
        return grip, kind.top(fields, machine, 0.03), kind.mass(fields, machine)

    for entry in kind.entries:
        if entry.name in kind.reckons:
            continue
        others = [None, *entry.choices[1:]] if entry.name != "note" else ["other words"]
        for value in others:
            assert reckoned(replace(start, **{entry.name: value})) == reckoned(start), entry.name
