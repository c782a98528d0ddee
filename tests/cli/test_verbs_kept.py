"""What a verb of the command line would compile anew each time is kept for it; what it says is the same."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]


def run(checkout, *arguments):
    environment = {**os.environ, "PYTHONPATH": str(checkout)}
    environment.pop("PYTHONDONTWRITEBYTECODE", None)
    environment.pop("PYTHONPYCACHEPREFIX", None)
    done = subprocess.run(
        [sys.executable, "-m", "jobsheet", *arguments],
        check=False,
        capture_output=True,
        text=True,
        env=environment,
        cwd=checkout,
    )
    return done.returncode, done.stdout, done.stderr


def kept(checkout):
    return sorted(path.name.rpartition(".")[2] for path in checkout.rglob("*.verb-*"))


def test_a_verb_says_the_same_with_what_was_kept_and_a_slip_leaves_nothing(tmp_path):
    for name in ("jobsheet", "resources"):
        shutil.copytree(ROOT / name, tmp_path / name, ignore=shutil.ignore_patterns("__pycache__"))
    asked = ("work", "spindle-speed", "cutting_speed=30 m/min", "diameter=12 mm")
    first = run(tmp_path, *asked)
    assert first[0] == 0
    assert kept(tmp_path) == ["verb-work"]
    assert run(tmp_path, *asked) == first
    assert run(tmp_path, "wrok", "spindle-speed")[0] == 2
    assert run(tmp_path, "../work")[0] == 2
    assert kept(tmp_path) == ["verb-work"]
    (path,) = tmp_path.rglob("*.verb-work")
    path.write_bytes(b"spoilt")
    assert run(tmp_path, *asked) == first
