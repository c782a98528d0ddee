"""What is asked of every kind of operation, whatever it does."""

from __future__ import annotations

from pathlib import Path

import pytest

from jobsheet.model.setting import Setting
from jobsheet.operations.names import FIGURES
from jobsheet.operations.registry import kind, kinds
from jobsheet.paths import resources, sample_jobs
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.card_files import card_digest, find_card
from jobsheet.storage.job_file import read_job
from jobsheet.storage.job_writing import write_job
from jobsheet.units.table import KINDS

ASKS = {
    *KINDS,
    "text",
    "choice",
    "count",
    "flag",
    "cutter",
    "thread",
    "hole size",
    "depth",
    "places",
    "several",
    "size",
    "measure",
    "tolerances",
    "material",
    "machine",
}


def setting(units: str = "mm") -> Setting:
    from jobsheet.catalog.metals.materials import find

    return Setting(
        machine=find_card("bench-mill-b-1"), material=find("S235"), units=units, extent=(0.08, 0.05, 0.012), thickness=0.012, pilot=0.005
    )  # fmt: skip


@pytest.mark.parametrize("name", kinds())
class TestEveryKind:
    def test_each_field_stands_in_the_form_once(self, name):
        found = kind(name)
        assert sorted(entry.name for entry in found.entries) == sorted(found.fields.__struct_fields__)

    def test_entries_are_whole(self, name):
        for entry in kind(name).entries:
            assert entry.title
            assert entry.asks in ASKS
            for bound in (entry.low, entry.high):
                if bound is not None and entry.asks != "count":
                    measures = "length" if entry.asks in ("depth", "hole size") else entry.asks
                    from jobsheet.units.grammar import read

                    assert read(bound, measures) >= 0
            if entry.asks == "choice":
                assert entry.choices

    def test_optional_entries_are_those_with_a_default(self, name):
        found = kind(name)
        defaults = len(found.fields.__struct_defaults__)
        required = set(found.fields.__struct_fields__[: len(found.fields.__struct_fields__) - defaults])
        for entry in found.entries:
            if entry.optional:
                assert entry.name not in required, entry.name

    @pytest.mark.parametrize("units", ["mm", "in"])
    def test_a_blank_one_can_be_reckoned_and_worded(self, name, units):
        found = kind(name)
        fields = found.blank(units)
        here = setting(units)
        figures = found.figures(fields, here)
        assert all(figure.name in FIGURES and figure.shown for figure in figures.items)
        for row in found.rows(fields, figures, here):
            assert row.do
        assert found.dials(fields, figures, here)
        assert found.title_of(fields)
        hash(fields)
        for entry in found.entries:
            value = getattr(fields, entry.name)
            assert (
                entry.read(entry.text(value), units) == value
                or (value == "" and entry.optional)
                or entry.optional
            )

    def test_its_icon_is_there(self, name):
        assert (resources() / "icons" / f"op-{kind(name).icon}.svg").is_file()

    def test_a_sample_uses_it_and_saves_back_byte_for_byte(self, name, samples):
        used = False
        # The shipped samples, and a small job for each kind that none of them needs.
        jobs = Path(__file__).parent / "jobs"
        for path in sorted((*samples.glob("*.yaml"), *jobs.glob("*.yaml"))):
            job = read_job(path)
            assert write_job(job) == path.read_text(encoding="utf-8"), path.name
            used = used or any(operation.kind == name for _, operation in job.operations())
        assert used

    def test_sweep_stays_inside_its_own_depth(self, name):
        found = kind(name)
        for shape in found.sweep(found.blank("mm"), setting()):
            depth = getattr(shape, "depth", None)
            assert depth is None or depth >= 0


@pytest.mark.parametrize(
    "path",
    sorted(sample_jobs().glob("*.yaml")),
    ids=lambda path: path.stem,
)
def test_every_sample_is_reckoned_without_a_problem_and_was_planned_for_its_card(path):
    job = read_job(path)
    assert card_digest(job.machine) == job.card_hash
    for outcome in Reckoner().reckon(job).operations.values():
        assert not outcome.problem
    assert "invented" in job.workshop
