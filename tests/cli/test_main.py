"""The command line: verbs found by their files, a file without one opened, and an
expected failure a line with exit code 2.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from jobsheet.cli import verbs
from jobsheet.cli.main import Verbs, run


@pytest.fixture
def opened():
    """The window in its place: what it was asked to open."""
    asked = []

    def window(job):
        asked.append(job)
        return 0

    window.asked = asked
    return window


def test_verbs_are_the_files_of_their_folder():
    names = Verbs().list_commands(None)
    assert names == sorted(
        path.stem.replace("_", "-") for path in Path(verbs.__file__).parent.glob("[!_]*.py")
    )
    for name in names:
        assert Verbs().get_command(None, name).name == name
    assert Verbs().get_command(None, "no-such") is None


def test_a_file_without_a_verb_is_opened(samples, opened):
    path = str(samples / "hm-100-drilled-plate-b1.yaml")
    assert run([path], opened) == 0
    assert run(["open", path], opened) == 0
    assert opened.asked == [path, path]


def test_a_slip_is_a_line_and_never_a_traceback(capsys, opened):
    for arguments in (["chek", "x"], ["figures"], ["figures", "no-such-file.yaml"]):
        assert run(arguments, opened) == 2
    said = capsys.readouterr().err
    assert "Traceback" not in said
    assert said.strip()
    assert opened.asked == []


def test_help_is_no_failure(capsys, opened):
    assert run(["--help"], opened) == 0
    assert "Exit codes" in capsys.readouterr().out
