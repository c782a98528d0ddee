"""Words of format 1 become facts: kinds of holding, what the vice stands on, and nothing is lost."""

from __future__ import annotations

import pytest

from jobsheet.storage.job_file import job_from_text

JOB = """format: 1
units: mm
material: S235
machine: bench-mill-b-1
stock: {{length: 80, width: 50, height: 12}}
set-ups:
  - key: one
    number: 1
    up: top
    operator: front
    holding: {{{holding}}}
    operations: []
"""


def held(holding):
    return job_from_text(JOB.format(holding=holding), "job").set_ups[0].holding


@pytest.mark.parametrize(
    ("device", "kind"),
    [
        ("80 mm vise", "vice"), ("vice, straps over it", "vice"), ("straps on the table", "straps"), ("V-blocks", "vee block"), ("3-jaw chuck on the dividing head", "chuck"),
        ("between centers", "centres"), ("angle plate", "angle plate"), ("sine bar", "sine plate"), ("hand vise", "hand vice"), ("magnetic table", "other words"),
        ("screwed to a plate", "fixture plate"),
    ],
)  # fmt: skip
def test_a_kind_is_known_by_its_words(device, kind):
    assert held(f"device: '{device}'").kind == kind


def test_what_no_kind_says_stays_in_words():
    found = held("device: 'a lump of wax'")
    assert found.kind == "other words"
    assert found.device == "a lump of wax"


def test_more_words_than_facts_stay_in_the_note():
    found = held("device: '80 mm vise', packing: 'parallels 6 x 20, wrapped in paper', note: 'Go gently.'")
    assert found.kind == "vice"
    assert found.rests_on == "parallels"
    assert "Go gently." in found.note
