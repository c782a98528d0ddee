"""`jobsheet ran` as a shell sees it: a run written down, what it teaches of the
machine, and all of it taken back.
"""

from __future__ import annotations

import json
import shutil

import pytest

from jobsheet.__main__ import main
from jobsheet.reckoning.asked import asked_of
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.job_file import read_job
from jobsheet.storage.records.proof_log import read_log
from jobsheet.storage.records.run_log import path_beside

MACHINE = "knee-mill-k-2"


@pytest.fixture
def job(samples, tmp_path, own_home):
    return shutil.copy(samples / "hm-103-pivot-block.yaml", tmp_path / "pivot.yaml")


def told(capsys, *arguments):
    code = main(["ran", *(str(one) for one in arguments)])
    found = capsys.readouterr()
    return code, found.out, found.err


def test_a_run_is_written_down_counts_and_is_taken_back(capsys, job):
    code, out, _ = told(capsys, job)
    assert (code, "Nothing is recorded of this job yet" in out) == (0, True)
    code, out, _ = told(
        capsys, job, "60=1", "70=noisy", "80=0", "--role", "Apprentice B", "--size", "80.0=80.02 mm", "--setting-up", "35",
        "--cutting", "21", "--change", "lighter", "--note", "rang at 4", "--date", "2026-11-28",
    )  # fmt: skip
    assert code == 0
    assert "6 entries are in pivot.ran.txt" in out
    assert "Step 60, clean: counts in the proof log of knee-mill-k-2" in out
    assert "Step 80" not in out  # finding an edge asks nothing of the machine, and was not cut
    trials = {one.outcome: one for one in read_log(MACHINE).standing}
    assert set(trials) == {"clean", "noisy"}
    reckoned = Reckoner().reckon(read_job(job))
    for trial, number in ((trials["clean"], 60), (trials["noisy"], 70)):
        step = next(one for _, one in reckoned.job.operations() if one.number == number)
        planned = asked_of(reckoned.operations[step.key].figures, reckoned.settings[step.key])
        assert [(one.limit, one.share) for one in trial.asked] == [
            (one.limit, pytest.approx(one.share, rel=1e-5)) for one in planned
        ]
        assert trial.job == f"HM-103, step {number}"
        assert (trial.process, trial.cutter_kind, trial.holding) == ("side", "end mill", "as in the plan")
    _, out, _ = told(capsys, job)
    for words in (
        "2026-11-28, knee-mill-k-2",
        "noisy",
        "found 80.02 mm",
        "35 min to set up, 21 min to cut",
        "lighter: rang at 4",
    ):
        assert words in out
    data = json.loads(told(capsys, job, "--json")[1])
    noisy = next(one for one in data["entries"] if one["outcome"] == "noisy")
    code, out, _ = told(capsys, job, "--take-back", noisy["id"][:6])
    assert code == 0
    assert "is struck out" in out
    assert [one.outcome for one in read_log(MACHINE).standing] == ["clean"]
    assert "noisy" not in told(capsys, job)[1]


def test_what_really_ran_is_what_counts(capsys, job):
    """Half the depth of a layer asks half of the frame; twice the seconds for the length half the chip."""
    told(capsys, job, "70=1", "--date", "2026-11-20")
    told(capsys, job, "70=1", "--depth", "4 mm", "--date", "2026-11-21")
    told(capsys, job, "70=1", "--depth", "8 mm", "--date", "2026-11-22")
    planned, four, eight = (one.of("chatter").share for one in read_log(MACHINE).standing)
    assert eight == pytest.approx(2 * four, rel=0.01)
    assert planned > 0
    assert dict(read_log(MACHINE).standing[1].step)["depth"] == "4 mm"


def test_it_is_kept_with_the_job_alone_where_that_is_asked(capsys, job):
    code, out, _ = told(capsys, job, "60=4", "--not-proof")
    assert code == 0
    assert "proof" not in out
    assert read_log(MACHINE).standing == ()


@pytest.mark.parametrize(
    ("arguments", "sentence"),
    [
        (("65=1",), "There is no step 65"), (("60",), "is not STEP=OUTCOME"), (("60=9",), "“9” is no outcome"),
        (("60=1", "70=1", "--depth", "4 mm"), "--depth belongs to one step"), (("60=6",), "Say what slipped"),
        (("60=1", "--slipped", "vice"), "slipped, but the outcome is clean"), (("--size", "80"), "is not SIZE=FOUND"),
        (("60=1", "--date", "soon"), "is not a date"), (("--take-back", "abc"), "here is no entry"),
    ],
)  # fmt: skip
def test_a_slip_of_the_pen_is_one_sentence_and_nothing_is_written(capsys, job, arguments, sentence):
    code, out, err = told(capsys, job, *arguments)
    assert code != 0
    assert sentence in out + err
    assert "Traceback" not in err
    assert not path_beside(job).exists()
    assert read_log(MACHINE).standing == ()


def test_the_same_step_twice_on_one_day_is_refused_with_the_way_out(capsys, job):
    told(capsys, job, "60=1", "--date", "2026-11-28")
    code, _, err = told(capsys, job, "60=2", "--date", "2026-11-28")
    assert code != 0
    assert "take that back first" in err
    assert len(read_log(MACHINE).standing) == 1
