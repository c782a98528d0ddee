"""The form that starts a ladder: as the chosen step cuts, where such cuts grow on a ladder."""

from __future__ import annotations

import pytest

from jobsheet.gui.desk.desk import Desk
from jobsheet.gui.places.proving.ladder_asked import Asked, asked_at, entries
from jobsheet.paths import sample_jobs
from jobsheet.storage.card_files import card_names
from jobsheet.storage.job_file import read_job


@pytest.fixture
def desk(qapp):
    return Desk(read_job(sample_jobs() / "hm-103-pivot-block.yaml"))


def test_every_entry_is_a_value_that_is_asked(qapp):
    names = {entry.name for entry in entries()}
    assert names == set(Asked.__struct_fields__)
    assert next(entry for entry in entries() if entry.name == "machine").choices == card_names()


def test_a_step_without_figures_has_none(desk):
    assert asked_at(desk, "") is None
    assert asked_at(desk, "gone") is None
    bench = next((one.key for _, one in desk.job.operations() if one.kind == "bench-step"), "")
    assert asked_at(desk, bench) is None


def test_a_cut_that_grows_has_its_own_machine_cutter_and_metal(desk):
    found = {one.key: asked_at(desk, one.key) for _, one in desk.job.operations()}
    asked = {key: one for key, one in found.items() if one is not None}
    assert asked
    for key, one in asked.items():
        assert one.machine == desk.job.machine
        assert one.material == desk.job.material
        assert one.cutter == desk.filled(key).fields.cutter.text
        assert one.kind in ("face", "side", "slot", "drill", "tap")
        assert bool(one.width) == (one.kind in ("face", "side"))
