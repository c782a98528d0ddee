"""Slow rounds, only with --long: which lines the tests run, and whether they notice a change in a formula."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from .mutation import key_of_line

ROOT = Path(__file__).parents[2]
pytestmark = pytest.mark.long

#: Changes that no test can notice, and why; found in a run of all, and looked for again by this test.
EXPLAINED = {
    "chip max_chip_thickness: part >= 0.5 -> part > 0.5": "at half the cutter both lines give the full feed",
    "chip feed_for_chip: part >= 0.5 -> part > 0.5": "the same: 2 (0.5 0.5)^0.5 is 1",
    "times side_approach: width >= diameter / 2 -> width > diameter / 2": "at half the cutter both lines give its radius",
    "hand past_last_turn: rest > 0 -> rest >= 0": "a rest of nothing is nothing either way",
    "quill feed_from_thrust: 0 * reference.FEED -> 0 / reference.FEED": "no feed, which only has to have its unit",
}


@pytest.fixture(scope="module")
def lines(tmp_path_factory) -> dict[str, tuple[int, int]]:
    """Lines and lines that were run, for each file of both packages, by the tests of these two alone."""
    folder = tmp_path_factory.mktemp("lines")
    report = folder / "lines.json"
    packages = ("cutting", "operations")
    command = [
        *(sys.executable, "-m", "pytest", "-q", "-p", "no:cacheprovider", "-p", "no:xdist"),
        *(f"tests/{name}" for name in packages),
        *(f"--cov=jobsheet.{name}" for name in packages),
        f"--cov-report=json:{report}",
    ]
    variables = {**os.environ, "COVERAGE_FILE": str(folder / "data")}
    done = subprocess.run(command, cwd=ROOT, env=variables, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout[-4000:]
    found = json.loads(report.read_text("utf-8"))["files"]
    return {
        Path(name).as_posix(): (one["summary"]["num_statements"], one["summary"]["covered_lines"])
        for name, one in found.items()
    }


@pytest.mark.parametrize("package", ["cutting", "operations"])
def test_95_of_100_lines_are_run(lines, package):
    counted = {name: pair for name, pair in lines.items() if f"jobsheet/{package}/" in name}
    every, run = (sum(column) for column in zip(*counted.values(), strict=True))
    least = sorted((ran / count, name) for name, (count, ran) in counted.items() if ran < 0.95 * count)
    assert run / every >= 0.95, [f"{share:.0%} {name}" for share, name in least]


@pytest.mark.skipif(not hasattr(os, "fork"), reason="each change is made in a forked process")
def test_85_of_100_changes_are_noticed():
    """Changes one thing at a time in `jobsheet/cutting`; about ten minutes on one processor."""
    command = [sys.executable, "-m", "tests.cutting.mutation"]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    *survived, last = done.stdout.strip().splitlines()
    noticed, made = (int(last.split()[position]) for position in (0, 2))
    assert noticed / made >= 0.85, done.stdout
    assert len(EXPLAINED) <= 5
    assert set(EXPLAINED) <= {key_of_line(line) for line in survived}, (
        "noticed now: take the explanation away"
    )
