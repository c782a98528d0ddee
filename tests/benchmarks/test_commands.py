"""Whole commands as a shell starts them, against an interpreter that does nothing."""

from __future__ import annotations

import pytest

from jobsheet.paths import sample_jobs
from tests.benchmarks.fresh import in_turn

PLATE = str(sample_jobs() / "hm-100-drilled-plate-b1.yaml")


@pytest.mark.parametrize(("verb", "more", "limit"), [("figures", [], 0.25), ("sheet", ["-o"], 0.7)])
def test_a_command(verb, more, limit, tmp_path, capsys):
    arguments = ["-m", "jobsheet", verb, PLATE, *more, *([str(tmp_path / "x.pdf")] if more else [])]
    ours, nothing, ratio = in_turn(arguments, ["-c", "pass"])
    with capsys.disabled():
        print(
            f"\njobsheet {verb}: {ours:.3f} s (at most {limit}), {ratio:.1f} times an empty interpreter ({nothing * 1e3:.0f} ms)"
        )
    assert ours <= limit


#: How many times as long as the figures alone: 1.54 to 1.59 in four runs, rules,
#: solids and notes on top of them.
CHECK = 2.0


def test_the_check_against_the_figures(capsys):
    """`check` reads the same job, reckons it, makes its solids and asks every rule: a
    ratio, so that no slow day counts.
    """
    ours, figures, ratio = in_turn(["-m", "jobsheet", "check", PLATE], ["-m", "jobsheet", "figures", PLATE])
    with capsys.disabled():
        print(
            f"\njobsheet check: {ours:.3f} s, {ratio:.2f} times the figures ({figures:.3f} s; at most {CHECK})"
        )
    assert ratio <= CHECK
