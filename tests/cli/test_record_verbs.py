"""What is done to a record of test cuts from the shell: a wrong machine or trial is
a sentence, and nothing is written.
"""

from __future__ import annotations

import pytest

from jobsheet.__main__ import main
from jobsheet.cli.record_verbs import RECORD_VERBS
from jobsheet.paths import own_folder


def test_each_has_a_name_of_its_own():
    assert sorted(one.name for one in RECORD_VERBS) == ["changed", "give-back", "keep", "merge", "strike"]


def test_a_change_is_marked_and_kept(capsys):
    assert main(["prove", "changed", "bench-mill-b-1", "gibs", "--note", "adjusted"]) == 0
    assert capsys.readouterr().out.strip()
    assert any(own_folder().rglob("*"))


@pytest.mark.parametrize(
    "arguments",
    [["strike", "bench-mill-b-1", "abcdef", "--note", "x"], ["strike", "no-mill", "abcdef", "--note", "x"], ["strike", "bench-mill-b-1", "abcdef"], ["changed", "bench-mill-b-1", "paint"], ["merge", "bench-mill-b-1", "no-such-file"]],
)  # fmt: skip
def test_what_is_not_there_is_said(arguments, capsys):
    assert main(["prove", *arguments]) == 2
    said = capsys.readouterr().err
    assert said.strip()
    assert "Traceback" not in said
