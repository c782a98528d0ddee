"""What is printed: nothing that a terminal acts upon, columns that line up, and
JSON that gives the very text.
"""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest

from jobsheet.cli.output import as_json, columns, printable, refuse_to_overwrite, say
from jobsheet.errors import CannotWrite


@pytest.mark.parametrize("sign", ["\x1b", "\x07", "\u202e", "\u2028", "\ud800", "\ufeff", "\x9b"])
def test_what_a_terminal_acts_upon_shows_as_no_sign(sign, capsys):
    assert printable(f"a{sign}b") == "a\ufffdb"
    say(f"a{sign}b")
    assert capsys.readouterr().out == "a\ufffdb\n"


def test_tabs_line_ends_and_letters_of_all_sorts_stay():
    text = "a\tb\nµm ⌀ Плита"
    assert printable(text) == text


def test_json_is_escaped_and_not_taken_out(capsys):
    as_json({"note": "a\u202eb", "µ": 1.5})
    out = capsys.readouterr().out
    assert "\u202e" not in out
    assert json.loads(out) == {"note": "a\u202eb", "µ": 1.5}
    with pytest.raises(ValueError, match="JSON"):
        as_json({"a": float("nan")})


def test_columns_line_up_and_the_last_is_as_long_as_it_is(capsys):
    columns([("a", "bb", "c"), ("aaa", "b", "")], indent=" ", under=[("below",), ()])
    assert capsys.readouterr().out == " a    bb  c\n     below\n aaa  b\n"
    columns([])
    assert capsys.readouterr().out == ""


def test_a_job_is_never_written_over_by_its_export(tmp_path):
    job, old, other = tmp_path / "job.yaml", tmp_path / "old.pdf", tmp_path / "letter.pdf"
    job.write_text("x", encoding="utf-8")
    old.write_bytes(b"%PDF-1.4")
    other.write_bytes(b"Dear")
    refuse_to_overwrite(tmp_path / "new.pdf", (str(job),))
    refuse_to_overwrite(old, (str(job),))
    for target in (job, other):
        with pytest.raises(CannotWrite):
            refuse_to_overwrite(target, (str(job),))


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="a device that is always full is a thing of Linux")
@pytest.mark.parametrize(
    "words", [("figures",), ("figures", "--json"), ("check",), ("dials",), ("why", "spot before drilling")]
)
def test_what_cannot_be_printed_is_said_in_a_sentence(words, samples):
    """A full disk behind `>`: one line on the other stream, and the exit says it."""
    job = [] if words[0] == "why" else [str(samples / "hm-100-drilled-plate-b1.yaml")]
    with Path("/dev/full").open("w", encoding="utf-8") as full:
        done = subprocess.run(
            [sys.executable, "-m", "jobsheet", *words, *job],
            stdout=full, stderr=subprocess.PIPE, text=True, check=False,
        )  # fmt: skip
    assert done.returncode == 2
    assert done.stderr.startswith("Not all of it could be printed (No space left on device)")
    assert len(done.stderr.splitlines()) == 1
