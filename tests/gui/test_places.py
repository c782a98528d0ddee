"""A place is found by walking its folder, has its way in the menu, and is read only when menus are made."""

import subprocess
import sys

import pytest
from PySide6.QtWidgets import QDialog


def test_the_list_of_keys_has_those_of_the_places(window):
    window.actions_by_id["keys"].trigger()
    shown = next(one for one in window.findChildren(QDialog) if one.isVisible()).shown.text
    assert (
        "Ctrl + Down, Ctrl + Up: next or previous remark or problem\nF6: prove the machine\nF7: what it will carry\n"
        "Ctrl + M: the job on another machine\nCtrl + H: what happened at the machine\nCtrl + Shift + O: the shelf: find a job again\n"
        "Ctrl + Shift + P: plans of this job that were printed or made\n"
        "Ctrl + Shift + L: a lesson: put the steps in order\n"
        "F9: the work after, before, as stock\n" in shown
    )


@pytest.mark.parametrize("code", ["found_places.names()", "found_places.ways()"])
def test_to_find_a_place_is_not_to_load_what_it_shows(code):
    script = f"import sys; from jobsheet.gui.window import found_places; {code}; print(*sys.modules)"
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    loaded = set(done.stdout.split())
    assert not {name for name in loaded if name.startswith("jobsheet.gui.") and name.endswith("_window")}
    if "names" in code:
        assert "jobsheet.gui.places.fits" not in loaded
