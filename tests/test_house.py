"""The house rules that a reader would otherwise have to watch for."""

from __future__ import annotations

import re
import subprocess
from pathlib import Path

import pytest

import jobsheet

HERE = Path(__file__).resolve().parent.parent
SOURCE = sorted(Path(jobsheet.__file__).parent.rglob("*.py"))
#: What must never be printed of a plan, a cut or a figure (design.md).
NEVER = re.compile(r"\b(safe|approved|guaranteed)\b", re.IGNORECASE)


def test_import_rules():
    """Layers and who may import what: pyproject.toml, [tool.importlinter]."""
    import sys

    linter = Path(sys.executable).parent / "lint-imports"
    done = subprocess.run(
        [str(linter), "--config", "pyproject.toml"], cwd=HERE, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stdout + done.stderr


@pytest.mark.parametrize("path", SOURCE, ids=lambda path: str(path.name))
def test_words_that_are_never_printed(path):
    for line in path.read_text(encoding="utf-8").splitlines():
        if "NEVER" in line or line.strip().startswith("#"):
            continue
        strings = re.findall(r'"([^"]*)"', line)
        assert not any(NEVER.search(one) for one in strings), line


def test_only_the_agreed_entries_at_the_top():
    done = subprocess.run(["git", "ls-files"], cwd=HERE, capture_output=True, text=True, check=False)
    if done.returncode:
        pytest.skip("not a checkout")
    visible = {line.split("/")[0] for line in done.stdout.splitlines() if not line.startswith(".")}
    assert visible <= {
        "README.md",
        "DEVELOPERS.md",
        "pyproject.toml",
        "jobsheet",
        "resources",
        "tests",
        "sample_jobs",
        "packaging",
    }


def test_every_kind_stands_in_the_contract_of_independence():
    from jobsheet.operations.registry import kinds

    contract = (HERE / "pyproject.toml").read_text(encoding="utf-8")
    for name in kinds():
        assert f'"jobsheet.operations.kinds.{name.replace("-", "_")}"' in contract, name
