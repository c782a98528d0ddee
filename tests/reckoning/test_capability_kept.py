"""A card that was answered before is the same card, and is worked anew as soon as anything behind it is another."""

from __future__ import annotations

import os
import subprocess
import sys

import pytest
from msgspec.structs import replace

from jobsheet.reckoning.answers import capability_answer, capability_kept
from jobsheet.reckoning.answers.capability_kept import KEPT, capability, program_now
from jobsheet.storage.card_files import find_card

B1 = find_card("bench-mill-b-1")


@pytest.fixture
def worked(monkeypatch):
    """Which cards were worked through, by machine, metal and units; of each the rows of B-1 in S235, to be quick."""
    asked = []
    made = capability_answer.card(B1, "S235")

    def card(machine, material, *, units="mm"):
        asked.append((machine.name, material, units))
        return replace(made, machine=machine, material=material)

    monkeypatch.setattr(capability_answer, "card", card)
    return asked


def test_the_second_time_it_is_the_same_and_nothing_is_tried(worked):
    first = capability([B1], ["S235"])
    again = capability([B1], ["S235"])
    assert worked == [("bench-mill-b-1", "S235", "mm")]
    assert again == first
    assert again.materials[0][0].next == first.materials[0][0].next


def test_another_metal_unit_or_card_is_another_question(worked):
    stiffer = replace(B1, stiffness_class="knee")
    for machine, metal, units in (
        (B1, "S235", "mm"),
        (B1, "6082", "mm"),
        (B1, "S235", "in"),
        (stiffer, "S235", "mm"),
    ):
        capability([machine], [metal], units=units)
        capability([machine], [metal], units=units)
    assert len(worked) == 4


def test_another_program_works_it_anew(worked, monkeypatch):
    capability([B1], ["S235"])
    monkeypatch.setattr(capability_kept, "program_now", lambda: b"newer")
    capability([B1], ["S235"])
    assert len(worked) == 2


def test_where_the_program_does_not_lie_in_files_nothing_is_kept(worked, monkeypatch):
    monkeypatch.setattr(capability_kept, "program_now", lambda: b"")
    capability([B1], ["S235"])
    capability([B1], ["S235"])
    assert len(worked) == 2
    assert not capability_kept._place().exists()


@pytest.mark.parametrize("spoil", [lambda raw: b"", lambda raw: raw[:-9], lambda raw: b"\xc1" + raw])
def test_damage_is_as_good_as_nothing(worked, spoil):
    first = capability([B1], ["S235"])
    place = capability_kept._place()
    place.write_bytes(spoil(place.read_bytes()))
    assert capability([B1], ["S235"]) == first
    assert len(worked) == 2


def test_where_it_cannot_be_written_nothing_happens(worked, tmp_path, monkeypatch):
    (tmp_path / "in-the-way").write_text("")
    monkeypatch.setenv("JOBSHEET_HOME", str(tmp_path / "in-the-way"))
    assert capability([B1], ["S235"]).machines == (B1,)


def test_the_oldest_card_goes(worked):
    for count in range(KEPT + 1):
        capability([replace(B1, title=f"B-1 no. {count}")], ["S235"])
    capability([replace(B1, title=f"B-1 no. {KEPT}")], ["S235"])
    assert len(worked) == KEPT + 1
    capability([replace(B1, title="B-1 no. 0")], ["S235"])
    assert len(worked) == KEPT + 2


def test_a_changed_file_of_program_or_tables_is_another_program(tmp_path, monkeypatch):
    (tmp_path / "materials").mkdir()
    table = tmp_path / "materials" / "steel.yaml"
    table.write_text("a: 1\n")
    monkeypatch.setattr(capability_kept, "resources", lambda: tmp_path)
    before = program_now()
    assert program_now() == before
    os.utime(table, ns=(1, 1))
    assert program_now() != before


def test_what_is_kept_is_said_without_the_adviser():
    script = (
        "import sys; from jobsheet.__main__ import main; main(['capability', 'bench-mill-b-2']);"
        "sys.stderr.write(str('jobsheet.reckoning.adviser.best_cut' in sys.modules))"
    )
    runs = [
        subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
        for _ in range(2)
    ]
    assert [one.stderr for one in runs] == ["True", "False"]
    assert runs[0].stdout == runs[1].stdout
