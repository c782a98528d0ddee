"""From a double click to a file on the disk, with the keys a person presses."""

import shutil

import pytest

from jobsheet import paths
from jobsheet.storage.job_file import read_job

pytestmark = pytest.mark.e2e

SAMPLE = "hm-100-drilled-plate-b1.yaml"


@pytest.fixture
def plate(tmp_path):
    """The sample as a file of one's own."""
    copy = tmp_path / "plate.yaml"
    shutil.copy(paths.sample_jobs() / SAMPLE, copy)
    return copy


def test_a_field_is_typed_saved_and_stands_in_the_file(program, plate):
    running = program(plate)
    # From the first step down to step 20, open it, Tab to the depth, write over it.
    running.keys("Down", "Return", "Tab")
    running.type("25 thou")
    running.keeps("25 thou")
    running.keys("ctrl+s")
    running.until(lambda: "25 thou" in plate.read_text(encoding="utf-8"))
    assert read_job(plate).find("face-rough")[1].fields.depth.text == "25 thou"
    running.keys("ctrl+z", "ctrl+s")
    running.until(lambda: "25 thou" not in plate.read_text(encoding="utf-8"))
    running.keys("ctrl+q")
    assert running.wait() == 0


def test_the_sample_asks_where_to_save_and_stays_as_it_was(program, tmp_path):
    before = (paths.sample_jobs() / SAMPLE).read_bytes()
    running = program()
    running.keys("ctrl+s")
    running.take_keys("Save the job")
    running.keys("ctrl+a")
    running.type(str(tmp_path / "mine"))
    running.keys("Return")
    running.until((tmp_path / "mine.yaml").exists)
    assert read_job(tmp_path / "mine.yaml") == read_job(paths.sample_jobs() / SAMPLE)
    assert (paths.sample_jobs() / SAMPLE).read_bytes() == before
    running.until(lambda: not running.windows("Save the job"))
    running.take_keys("job sheet")
    running.keys("ctrl+q")
    assert running.wait() == 0


def test_a_kill_loses_nothing(program, plate):
    running = program(plate)
    running.keys("Down", "Return", "Tab")
    running.type("0.35")
    running.keeps("0.35")
    running.kill()
    again = program()
    # The line that offers it stands above the first row; its button is the way back.
    (kept,) = again.journal()
    assert "0.35" in kept
    assert again.process.poll() is None
    assert read_job(plate).find("face-rough")[1].fields.depth.text == "0.4"


def test_a_file_that_cannot_be_used_is_said(program, tmp_path):
    bad = tmp_path / "bad.yaml"
    bad.write_text("format: 1\nmachine: [1, 2]\n", encoding="utf-8")
    running = program(bad)
    running.take_keys("^Job sheet$")
    running.keys("Return")
    running.until(lambda: not running.windows("^Job sheet$"))
    running.take_keys("HM-100")
    running.keys("ctrl+q")
    assert running.wait() == 0
