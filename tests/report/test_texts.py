"""Every text of a job with its field, and writing that runs from the right."""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.edit.commands import SetField
from jobsheet.report.texts import texts_of, typed_order
from jobsheet.report.wording import TYPED_ORDER

from .plans import plate


def test_a_text_is_found_with_the_name_of_its_field():
    job = SetField("drill", "note", "gently ⌀").apply(plate())
    number = job.find("drill")[1].number
    found = {text: field for field, text in texts_of(job)}
    assert found["gently ⌀"] == f"step {number}, note"
    assert found[job.part.number].startswith("part, ")


def test_nothing_empty_is_told():
    assert all(text for _, text in texts_of(plate()))


def test_only_writing_from_the_right_is_said():
    assert typed_order(plate()) == ()
    assert typed_order(replace(plate(), why="Плита ⌀ 12 µm")) == ()
    assert typed_order(replace(plate(), why="plate לוח")) == (TYPED_ORDER,)
