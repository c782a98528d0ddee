"""`jobsheet figures --json` lists the limits of every operation of all samples."""

from __future__ import annotations

import json

import pytest

from jobsheet.__main__ import main
from jobsheet.operations.registry import kind as kind_of
from jobsheet.paths import sample_jobs
from jobsheet.storage.job_file import read_job

SAMPLES = sorted(sample_jobs().glob("*.yaml"))
#: What must be asked of a step by its group: these can give out whatever is cut.
MILLING = {"spindle-torque", "spindle-power", "hand-pace", "table-push", "chatter", "speed-range", "holding"}
DRILLING = {"spindle-torque", "spindle-power", "quill-push", "speed-range", "travel"}
TAPPING = {"wrench", "tap-torsion"}
#: How each stands in the file.
KEYS = {"name", "demand", "capacity", "unit", "share", "verdict"}


def listed(path, capsys):
    assert main(["figures", str(path), "--json"]) == 0
    return json.loads(capsys.readouterr().out)["operations"]


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_every_operation_is_there_with_its_limits(path, capsys):
    job = read_job(path)
    found = listed(path, capsys)
    assert [one["key"] for one in found] == [operation.key for _, operation in job.operations()]
    for one in found:
        names = [limit["name"] for limit in one["limits"]]
        assert len(names) == len(set(names))
        groups = set(kind_of(one["kind"]).groups)
        figures = one["figures"]
        wanted = set()
        if "handle_pace" in figures:  # fed by a handle; a plunge is milling too, but by the lever
            wanted = MILLING
        elif "lever_push" in figures:
            wanted = DRILLING
        elif "tapping" in groups and "spindle_speed" not in figures:
            wanted = TAPPING
        assert wanted <= set(names), (one["key"], wanted - set(names))
        for limit in one["limits"]:
            assert limit.keys() >= KEYS
            assert limit["share"] == pytest.approx(limit["demand"] / limit["capacity"])
            assert limit["verdict"] in ("cut before", "expected", "not tried", "tight", "beyond")
        if "bench" not in groups:
            assert names, one["key"]


def test_every_limit_of_the_program_is_met_by_a_sample_or_says_why_not(capsys):
    from jobsheet.limits.register import LIMITS

    met = {limit["name"] for path in SAMPLES for one in listed(path, capsys) for limit in one["limits"]}
    asked = {module.__name__.rpartition(".")[2].replace("_", "-"): module for module in LIMITS}
    torsion = {"drill-torsion", "tap-torsion"}
    unmet = {name for name, module in asked.items() if getattr(module, "UNMET", "")}
    assert {"holder-grip", "reverse", "torsion"} <= unmet
    assert set(asked) - met == unmet
    assert torsion <= met


def test_the_text_names_them_too(capsys):
    for path in SAMPLES:
        main(["figures", str(path)])
        text = capsys.readouterr().out
        for _, operation in read_job(path).operations():
            assert f"{operation.number:>5}  " in text
        assert text.count("limits, the nearest to giving out first") > 5
