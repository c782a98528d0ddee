"""Edits as values: each is undone, and none changes the job it was given."""

from __future__ import annotations

import pytest

from jobsheet.edit.commands import ChooseMachine, SetField, entry_of, value_of
from jobsheet.edit.history import History
from jobsheet.errors import QuantityError
from jobsheet.holdings.all_holdings import entries_of

from .job_edited import JOB


def test_typing_elsewhere_or_leaving_the_field_begins_a_new_step():
    history = History(JOB)
    history.type(SetField("face-rough", "depth", "0.5"))
    history.type(SetField("face-rough", "width", "25"))
    history.undo()
    assert history.job.find("face-rough")[1].fields.depth.text == "0.5"
    history.break_merge()
    history.type(SetField("face-rough", "depth", "0.6"))
    history.undo()
    assert history.job.find("face-rough")[1].fields.depth.text == "0.5"


def test_an_optional_field_left_empty_goes_back_to_its_default():
    job = SetField("face-rough", "along", "").apply(SetField("face-rough", "along", "y").apply(JOB))
    assert job.find("face-rough")[1].fields.along == "x"
    assert SetField("job", "fluid", "").apply(JOB).fluid == ""


def test_choosing_a_machine_keeps_the_hash_of_its_card():
    from jobsheet.storage.card_files import card_digest

    job = ChooseMachine("knee-mill-k-2").apply(JOB)
    assert job.card_hash == card_digest("knee-mill-k-2")
    with pytest.raises(QuantityError, match="did you mean knee-mill-k-2"):
        SetField("job", "machine", "knee mill k2").apply(JOB)


def test_every_field_can_be_asked_for():
    for owner in ("job", "job:part", "job:stock", "setup:set-up-1", "holding:set-up-1", "zero:set-up-1"):
        from jobsheet.edit.commands import SECTIONS, SET_UP_SECTIONS
        from jobsheet.stock.all_shapes import entries_of as stock_entries

        section, _, key = owner.partition(":")
        known = SECTIONS | {"stock": stock_entries(JOB.stock)}
        entries = known[key or "job"] if section == "job" else SET_UP_SECTIONS[section]
        if section == "holding":
            entries = entries_of(JOB.set_ups[0].holding)
        for entry in entries:
            assert (entry_of(JOB, owner, entry.name).name, entry_of(JOB, owner, entry.name).title) == (
                entry.name,
                entry.title,
            )
            text = entry.text(value_of(JOB, owner, entry.name))
            if entry.name not in ("units", "machine"):
                assert value_of(SetField(owner, entry.name, text).apply(JOB), owner, entry.name) == value_of(
                    JOB, owner, entry.name
                )
