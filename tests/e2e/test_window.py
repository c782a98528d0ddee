"""From a double click to a file on the disk, with the keys a person presses."""

import shutil
import time

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


def settled(path, want):
    end = time.monotonic() + 10
    while time.monotonic() < end:
        if want(path.read_text(encoding="utf-8")):
            return True
        time.sleep(0.1)
    return False


def test_a_field_is_typed_saved_and_stands_in_the_file(program, plate):
    running = program(plate)
    # From the first step down to step 20, open it, Tab to the depth, write over it.
    running.keys("Down", "Return", "Tab")
    running.type("25 thou")
    running.keys("ctrl+s")
    assert settled(plate, lambda text: "25 thou" in text)
    assert read_job(plate).find("face-rough")[1].fields.depth.text == "25 thou"
    running.keys("ctrl+z", "ctrl+s")
    assert settled(plate, lambda text: "25 thou" not in text)
    running.keys("ctrl+q")
    assert running.wait() == 0


def test_the_sample_asks_where_to_save_and_stays_as_it_was(program, tmp_path):
    before = (paths.sample_jobs() / SAMPLE).read_bytes()
    running = program()
    running.keys("ctrl+s")
    running.until(lambda: running.windows("Save the job"))
    time.sleep(0.3)
    running.keys("ctrl+a")
    running.type(str(tmp_path / "mine"))
    running.keys("Return")
    running.until((tmp_path / "mine.yaml").exists)
    assert read_job(tmp_path / "mine.yaml") == read_job(paths.sample_jobs() / SAMPLE)
    assert (paths.sample_jobs() / SAMPLE).read_bytes() == before
    running.keys("ctrl+q")
    assert running.wait() == 0


def test_a_kill_loses_nothing(program, plate):
    running = program(plate)
    running.keys("Down", "Return", "Tab")
    running.type("0.35")
    time.sleep(1.5)
    running.kill()
    again = program()
    # The line that offers it stands above the first row; its button is the way back.
    time.sleep(0.5)
    journal = list((plate.parent / "home" / "journal").glob("*.json"))
    assert len(journal) == 1
    assert "0.35" in journal[0].read_text(encoding="utf-8")
    assert again.process.poll() is None
    assert read_job(plate).find("face-rough")[1].fields.depth.text == "0.4"


def test_a_file_that_cannot_be_used_is_said(program, tmp_path):
    bad = tmp_path / "bad.yaml"
    bad.write_text("format: 1\nmachine: [1, 2]\n", encoding="utf-8")
    code_window = program(bad)
    assert code_window.windows("Job sheet")
    code_window.keys("Return")
    code_window.until(lambda: code_window.windows("HM-100"))
    code_window.keys("ctrl+q")
    assert code_window.wait() == 0
