"""Two programs save one part at random and are killed in the middle of it: nothing that was said to
be saved is lost, no file is half.
"""

from __future__ import annotations

import subprocess
import sys

import pytest


def rounds(tmp_path, count, seed):
    """What the rounds have to say: one line where nothing is wrong."""
    done = subprocess.run(
        [sys.executable, "-m", "tests.storage.two_hands", str(tmp_path), str(count), str(seed)],
        capture_output=True, text=True, check=False, timeout=600,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    return done.stdout.splitlines()


@pytest.mark.skipif(sys.platform == "win32", reason="the rounds fork")
def test_forty_rounds_lose_nothing(tmp_path):
    said = rounds(tmp_path, 40, 1)
    assert len(said) == 1, said
    assert said[0].startswith("40 rounds, ")


@pytest.mark.long
@pytest.mark.skipif(sys.platform == "win32", reason="the rounds fork")
@pytest.mark.parametrize("lot", range(20))
def test_a_thousand_rounds_lose_nothing(tmp_path, lot):
    """In lots of fifty, each with seeds of its own: one that was stopped is taken up again by its number."""
    assert len(said := rounds(tmp_path, 50, 1000 + 50 * lot)) == 1, said
