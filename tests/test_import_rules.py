"""The import rules of pyproject.toml hold, and notice what they are for."""

from __future__ import annotations

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

HERE = Path(__file__).resolve().parent.parent
LINTER = Path(sys.executable).parent / "lint-imports"
#: What is planted where, and the contract that has to break.
PLANTED = (
    ("limits/each/chatter.py", "from jobsheet.limits.each import travel", "two limits do not know each other"),
    (
        "review/rules/machine/chip_thick_enough.py",
        "from jobsheet.review.rules.holes import spot_before_drilling",
        "two rules do not know each other",
    ),
    ("cli/verbs/dials.py", "from jobsheet.cli.verbs import check", "two verbs do not know each other"),
    ("report/cover.py", "import manifold3d", "only stages imports the solid modeller"),
    ("review/engine.py", "import yaml", "files are read strictly: only the readers import yaml"),
    ("proving/rungs.py", "from PySide6 import QtCore", "only gui imports the toolkit"),
    ("operations/kinds/drill.py", "from jobsheet.operations.kinds import tap", "two kinds of operation do not know each other"),
    ("edit/history.py", "import numpy", "only proving and stages import numpy"),
    ("storage/versions.py", "import reportlab", "only sheet imports reportlab"),
    ("machine/handles.py", "import pint", "only units imports pint, and late"),
    ("model/job.py", "from jobsheet.edit import history", "imports run down the list of layers, never up"),
    ("gui/column/open_row.py", "from jobsheet.gui.desk.desk import Desk", "inside the window too, imports run down"),
    ("gui/places/fits/fits_window.py", "from jobsheet.gui.places.card import card_window", "two places do not know each other"),
    ("catalog/reading/sources.py", "import sqlite3", "only the shelf keeps an index"),
)  # fmt: skip


def _lint(folder: Path) -> subprocess.CompletedProcess[str]:
    """What the linter says of the package in a folder."""
    command = [str(LINTER), "--config", "pyproject.toml", "--no-cache"]
    return subprocess.run(command, cwd=folder, capture_output=True, text=True, check=False)


def test_import_rules():
    """Layers and who may import what: pyproject.toml, [tool.importlinter]."""
    done = _lint(HERE)
    assert done.returncode == 0, done.stdout + done.stderr


@pytest.fixture(scope="module")
def broken(tmp_path_factory):
    """What the linter says of a copy with everything planted at once, also where it is imported late."""
    copy = tmp_path_factory.mktemp("planted")
    shutil.copytree(HERE / "jobsheet", copy / "jobsheet", ignore=shutil.ignore_patterns("__pycache__"))
    shutil.copy(HERE / "pyproject.toml", copy)
    for index, (name, line, _) in enumerate(PLANTED):
        path = copy / "jobsheet" / name
        late = f"\n\ndef _planted() -> None:\n    {line}\n" if index % 2 else f"\n\n{line}\n"
        path.write_text(path.read_text(encoding="utf-8") + late, encoding="utf-8")
    return _lint(copy).stdout


@pytest.mark.parametrize(("name", "line", "contract"), PLANTED, ids=lambda one: str(one).split("/")[-1])
def test_a_planted_violation_is_noticed(broken, name, line, contract):
    del line
    assert any(contract in said and said.endswith("BROKEN") for said in broken.splitlines()), broken[-3000:]
    assert f"jobsheet.{name.removesuffix('.py').replace('/', '.')}" in broken


def test_the_circle_that_one_of_them_makes_is_noticed(broken):
    """A panel that knows the desk is known by the desk: the linter names the two folders."""
    assert any(one.endswith("no circle of imports anywhere BROKEN") for one in broken.splitlines())
    assert "- .column -> .desk (1 import)" in broken
