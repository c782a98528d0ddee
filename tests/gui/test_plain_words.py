"""Words of a file are shown as they stand: no markup, no key, no width;
nothing in the window makes its own.
"""

import ast
import os
import subprocess
import sys
from pathlib import Path

import pytest
from PySide6.QtWidgets import QWidget

import jobsheet.gui
from jobsheet.gui.forms.buttons import Button
from jobsheet.gui.forms.plain_widgets import Choices, Label
from jobsheet.gui.forms.plain_words import LINE, entry, hover, literal, tip, window_title
from jobsheet.gui.ink import look

GUI = Path(jobsheet.gui.__file__).parent
#: The two places where the toolkit's own are made.
SHARED = ("plain_words.py", "plain_widgets.py")
#: Named there for their constants alone, or a list whose names are the program's own.
ALLOWED = {("ask.py", "QMessageBox"), ("pick_box.py", "QComboBox"), ("print_window.py", "QComboBox")}
MARKUP = '<b>x</b> & &amp; <img src="{pipe}"> \u202eturned\u2066 "y" \\n'
#: Where a word is too long for any place.
LONG = "W" * 3000


def calls(path):
    """Every call of a file: its name, and whether all that it is given stands there in letters."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Call):
            name = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
            yield name, node


def test_no_tooltip_label_box_or_list_stands_outside_the_shared_ones():
    found = []
    for path in sorted(GUI.rglob("*.py")):
        if path.name in SHARED:
            continue
        for name, _node in calls(path):
            made = name in {
                "QLabel",
                "QMessageBox",
                "QComboBox",
                "QInputDialog",
                "setToolTip",
                "setWhatsThis",
            }
            if made and (path.name, name) not in ALLOWED:
                found.append(f"{path.relative_to(GUI)}: {name}")
        source = path.read_text(encoding="utf-8")
        if (
            "QToolTip.showText(" in source
            and "tip(" not in source.split("QToolTip.showText(")[1].split("\n")[0]
        ):
            found.append(f"{path.relative_to(GUI)}: a tooltip of its own")
    assert found == []


def test_a_menu_entry_with_more_than_the_programs_own_words_is_made_plain():
    found = []
    for path in sorted(GUI.rglob("*.py")):
        for name, node in calls(path):
            if name not in {"addAction", "addMenu"} or not node.args:
                continue
            words = node.args[0]
            plain = isinstance(words, ast.Call) and getattr(words.func, "id", "") in {"entry", "translate"}
            own = isinstance(words, ast.Name | ast.Subscript)  # an action, or words that went through `entry`
            if not (plain or own or isinstance(words, ast.Constant)):
                found.append(f"{path.relative_to(GUI)}:{node.lineno}")
    assert [one for one in found if not one.startswith("edits/picking")] == []


def test_a_tooltip_is_escaped_only_where_it_would_be_markup():
    assert tip("depth < 3 mm & more") == "depth < 3 mm & more"
    assert "&lt;img" in tip("<b>x</b><img src=y>")
    assert max(map(len, tip(LONG).split("\n"))) <= LINE
    assert tip(LONG).replace("\n", "") == LONG
    assert "\u202e" not in literal("a\u202eb")


def test_no_sign_of_a_name_is_a_key_or_the_mark_of_changes(qtbot):
    assert entry("Mill & Sons\tCtrl+Q\nx") == "Mill && Sons Ctrl+Q x"
    assert window_title("a[*]b") == "a[*][*]b"
    button = Button("Write A&B")
    qtbot.addWidget(button)
    assert button.shortcut().isEmpty()
    assert button.accessibleName() == "Write A&B"


def test_no_width_comes_from_a_long_word(qtbot):
    look.apply("light")
    ground = QWidget()
    qtbot.addWidget(ground)
    label, box, button = Label(LONG, ground), Choices(ground), Button(LONG, ground)
    box.offer(LONG, "")
    assert label.minimumSizeHint().width() < 600
    assert box.minimumSizeHint().width() < 400
    assert button.minimumSizeHint().width() < 400
    assert all(one.toolTip().replace("\n", "") == LONG for one in (label, button))
    hover(ground, "")


@pytest.mark.parametrize("kind", ["markup", "long"])
def test_every_row_box_tooltip_and_place_shows_them_as_they_stand(kind, tmp_path):
    pipe = tmp_path / "pipe"
    os.mkfifo(pipe)
    words = MARKUP.format(pipe=pipe) if kind == "markup" else LONG[:1900]
    done = subprocess.run(
        [sys.executable, "-m", "tests.gui.opens_everything", words],
        env=os.environ | {"JOBSHEET_HOME": str(tmp_path / "home"), "QT_QPA_PLATFORM": "offscreen"},
        capture_output=True,
        text=True,
        timeout=180,  # a window that opens the pipe never comes back
        check=False,
    )
    assert done.returncode == 0, done.stderr[-3000:]
    counts, *wrong = done.stdout.splitlines()
    in_job, in_card, in_cabinet, seen = map(int, counts.split())
    assert in_job > 20
    assert in_card > 3
    assert in_cabinet > 10
    assert seen > 20
    assert [one for one in wrong if one] == []
