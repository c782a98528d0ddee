"""Every text of the window goes through `translate()`, and has room where it comes out two fifths longer."""

import os
import re
import subprocess
import sys

import pytest
from PySide6.QtWidgets import QLabel, QPushButton, QWidget

from tests.gui.pseudo_language import Looking, stretched


@pytest.mark.parametrize("sample", ["hm-100-drilled-plate-b1.yaml"])
def test_nothing_is_left_out_or_clipped(sample, tmp_path):
    done = subprocess.run(
        [sys.executable, "-m", "tests.gui.pseudo_language", sample],
        env=os.environ | {"JOBSHEET_HOME": str(tmp_path / "home"), "QT_QPA_PLATFORM": "offscreen"},
        capture_output=True,
        text=True,
        timeout=180,
        check=False,
    )
    assert done.returncode == 0, done.stderr[-3000:]
    assert "Traceback" not in done.stderr
    counts, *wrong = done.stdout.splitlines()
    seen, asked = map(int, counts.split())
    assert seen > 1000
    assert asked > 250
    assert [one for one in wrong if one] == []


def test_the_language_is_longer_and_keeps_fields_and_keys():
    text = stretched("&Save {name} as a new file")
    assert "{name}" in text
    assert text.count("&") == 1
    assert len(re.sub("[⟦⟧]", "", text)) >= 1.3 * len("&Save {name} as a new file")


def test_a_planted_text_and_a_planted_label_are_found(qtbot):
    ground = QWidget()
    qtbot.addWidget(ground)
    ground.resize(300, 100)
    label, button = QLabel(stretched("A long text with no room"), ground), QPushButton("Plain words", ground)
    label.setGeometry(0, 0, 40, 20)
    button.setGeometry(0, 40, 200, 20)
    ground.show()
    looking = Looking()
    looking.ours = {"Plain words"}
    looking.window("planted", ground)
    said = "\n".join(looking.wrong)
    assert "not translated: Plain words" in said
    assert "no room for QLabel" in said
