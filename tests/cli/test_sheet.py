"""`jobsheet sheet`: a PDF where it is told to, and never over something else."""

from __future__ import annotations

from pathlib import Path

import pytest

from jobsheet.__main__ import main
from jobsheet.cli.verbs.sheet import is_folder


@pytest.fixture
def plate(samples):
    return str(samples / "hm-100-drilled-plate-b1.yaml")


def test_it_is_written_where_it_is_told_to_and_says_so(plate, tmp_path, capsys):
    target = tmp_path / "plate.pdf"
    assert main(["sheet", plate, "-o", str(target)]) == 0
    assert target.read_bytes().startswith(b"%PDF")
    assert "plate.pdf" in capsys.readouterr().out


def test_a_letter_is_not_written_over(plate, tmp_path, capsys):
    target = tmp_path / "letter.pdf"
    target.write_bytes(b"Dear all")
    assert main(["sheet", plate, "-o", str(target)]) == 2
    assert target.read_bytes() == b"Dear all"
    assert "letter.pdf" in capsys.readouterr().err


@pytest.mark.parametrize("name", ["", "no-such", "a\0b"])
def test_what_is_no_folder(name, tmp_path):
    assert not is_folder(name)
    assert is_folder(str(tmp_path))
    assert not Path("no-such").exists()
