"""How the process of a verb ends: at once, with all that was printed, and what asked to be called is called."""

from __future__ import annotations

import subprocess
import sys

from jobsheet.paths import sample_jobs

PLATE = str(sample_jobs() / "hm-100-drilled-plate-b1.yaml")
#: A value says it when Python takes it down by itself.
SCRIPT = """
import atexit, sys
{before}
class Last:
    def __del__(self, write=sys.stderr.write): write("taken down")
sys.modules["last"] = Last()
atexit.register(lambda: sys.stderr.write("called "))
sys.argv = ["jobsheet", *{arguments!r}]
from jobsheet.__main__ import program
program()
"""


def ended(*arguments, before=""):
    return subprocess.run(
        [sys.executable, "-c", SCRIPT.format(before=before, arguments=arguments)],
        check=False,
        capture_output=True,
        text=True,
    )


def test_what_asked_to_be_called_is_called_and_nothing_is_taken_down_piece_by_piece():
    done = ended("figures", PLATE)
    assert done.returncode == 0
    assert done.stderr == "called "
    assert done.stdout.splitlines()[-1].endswith("watch, listen and feel.")


def test_the_exit_code_is_that_of_the_verb():
    done = ended("figures", "no-such.yaml")
    assert done.returncode == 2
    assert done.stderr.startswith("no-such.yaml cannot be used:")
    assert done.stderr.endswith("called ")


def test_where_an_index_may_be_open_python_ends_as_ever():
    done = ended("work", before="import sqlite3")
    assert done.returncode == 0
    assert done.stderr == "called taken down"


def test_where_nobody_reads_on_the_end_is_quiet():
    verb = subprocess.Popen(
        [sys.executable, "-m", "jobsheet", "figures", PLATE], stdout=subprocess.PIPE, stderr=subprocess.PIPE
    )
    verb.stdout.readline()
    verb.stdout.close()
    assert verb.stderr.read() == b""
    verb.stderr.close()
    assert verb.wait() == 1
