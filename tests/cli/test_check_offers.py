"""`jobsheet check` tells of each remark what a fix changes, ends and leaves, or why none is offered."""

from __future__ import annotations

import json

import pytest

from jobsheet.__main__ import main
from jobsheet.storage.job_file import read_job
from jobsheet.storage.job_writing import write_job
from tests.review.test_rules import edited


@pytest.fixture
def written(samples, tmp_path):
    def write(edits):
        path = tmp_path / "plan.yaml"
        path.write_text(
            write_job(edited(read_job(samples / "hm-101-setting-block.yaml"), edits)), encoding="utf-8"
        )
        return str(path)

    return write


def test_an_offer_says_what_it_changes_ends_and_leaves(written, capsys):
    main(["check", written([("face-4-rough", "layer", "")])])
    said = capsys.readouterr().out
    assert "can be mended: Take the best cut here" in said
    assert "step 50, depth per layer: – → " in said
    assert "ends this" in said
    assert "leaves no remark" in said


def test_what_is_not_offered_says_why(written, capsys):
    path = written([("face-3-rough", "measure", "25 ±0.03")])
    main(["check", path])
    assert "by hand: write the size at step 65, which cuts this face last." in capsys.readouterr().out
    main(["check", path, "--json"])
    remarks = json.loads(capsys.readouterr().out)["remarks"]
    remark = next(one for one in remarks if one["rule"] == "passes-reach-the-size")
    assert remark["fix"] is None
    assert "step 65" in remark["by hand"]
