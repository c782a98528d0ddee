"""The fields that are filled most, in the real window at a hand's pace: a
cutter, a depth with a slip, two places.
"""

import os
import subprocess
from pathlib import Path

import pytest

from jobsheet.storage.job_file import read_job
from tests.e2e.test_window import plate

pytestmark = pytest.mark.e2e
__all__ = ["plate"]

#: A hand's pace [ms a key] (estimate: somebody who looks at the drawing between two words).
PACE = "120"
#: Pictures of the screen go here, where somebody wants to look at them.
PICTURES = os.environ.get("JOBSHEET_TEST_PICTURES", "")


def by_hand(running, text):
    running.xdotool("type", "--delay", PACE, text)


def picture(running, name):
    if PICTURES:
        place = Path(PICTURES) / f"{name}.png"
        subprocess.run(["import", "-window", "root", str(place)], env=running.env, check=True)


def test_a_cutter_a_depth_with_a_slip_and_two_places(program, plate):
    running = program(plate)
    running.keys("Down", "Return", "ctrl+a")
    by_hand(running, "face mill 10 m")
    picture(running, "cutter-on-the-way")
    by_hand(running, "m, 4 teeth, HSS")
    running.keeps("face mill 10 mm, 4 teeth, HSS")
    picture(running, "cutter")
    running.keys("Tab")
    by_hand(running, "0.7")
    running.keys("BackSpace")
    by_hand(running, "6 m")
    picture(running, "depth-unread")
    by_hand(running, "m")
    running.keeps("0.6 mm")
    running.keys("Escape", "Down", "Down", "Down", "Down", "Return", "Tab")
    by_hand(running, "40, 25;")
    picture(running, "places-on-the-way")
    by_hand(running, " 20, 20")
    running.until(lambda: any("[20, 20]" in kept for kept in running.journal()))
    picture(running, "places")
    running.keys("ctrl+s")
    running.until(lambda: "[20, 20]" in plate.read_text(encoding="utf-8"))
    job = read_job(plate)
    assert job.find("face-rough")[1].fields.cutter.text == "face mill 10 mm, 4 teeth, HSS"
    assert job.find("face-rough")[1].fields.depth.text == "0.6 mm"
    assert [place.text for place in job.find("drill")[1].fields.at][:2] == ["40, 25", "20, 20"]
    assert not (running.home / "problems.log").exists()
    running.keys("ctrl+q")
    assert running.wait() == 0
