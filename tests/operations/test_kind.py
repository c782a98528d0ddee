"""What a kind of step is: its form, its blank, and words of a person before its own."""

from __future__ import annotations

import pytest

from jobsheet.operations.kind import Aim, fields_from
from jobsheet.operations.registry import kind, kinds


def test_entries_are_found_by_their_names():
    slot = kind("slot")
    for entry in slot.entries:
        assert slot.entry(entry.name) is entry
    assert slot.entry("no such") is None


@pytest.mark.parametrize("name", kinds())
def test_what_it_plays_and_reads_is_known_for_a_new_one(name):
    found = kind(name)
    fields = found.blank("mm")
    assert isinstance(found.looks_at(fields), frozenset)
    assert found.plays(fields).name or found.plays(fields).does or name == "bench-step"


def test_what_is_left_out_keeps_its_default():
    saw = kind("saw-cut")
    fields = fields_from(saw.fields, saw.entries, {"off": "10 mm"}, "mm")
    assert fields.off.text == "10 mm"
    assert fields.minutes is None
    assert fields == fields_from(saw.fields, saw.entries, {"off": "10 mm", "minutes": ""}, "mm")


def test_a_person_s_own_words_stand_alone():
    drill = kind("drill")
    fields = fields_from(drill.fields, drill.entries, {**drill.example, "what": "Poke a hole"}, "mm")
    assert drill.row_words(fields, Aim()) == ("Poke a hole",)
