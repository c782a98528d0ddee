"""Story 1 of the demonstration: what B-1's log says of HM-101, and how a trial that is entered changes it."""

from __future__ import annotations

import pytest

from jobsheet.edit.commands import SetField
from jobsheet.model.trials import Asked, Trial
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.reckoning.taught import proof_of
from jobsheet.storage.job_file import read_job
from jobsheet.storage.records.proof_log import append, strike

KEY = "face-1-rough"


def limit(reckoner, job, key=KEY, name="chatter"):
    return next(one for one in reckoner.reckon(job).operations[key].limits if one.name == name)


def test_2_5_deep_is_beyond_with_what_the_machine_did(samples):
    """Planted in HM-101: asks 9.22 N/µm; it chattered at 7.55 / 1.32 (date, cutter): `beyond`."""
    job = SetField(KEY, "depth", "2.5").apply(read_job(samples / "hm-101-setting-block.yaml"))
    found = limit(Reckoner(learns=True), job)
    assert found.verdict == "beyond"
    assert found.demand * 1e-6 == pytest.approx(9.22, abs=0.005)
    assert (
        found.sentence
        == "it chattered at what 1.55 mm asks (2026-11-12, end mill 12 mm, drawer 1 no. 4): less depth"
    )


def test_the_plan_as_it_stands_is_expected(samples):
    """3.18 N/µm asked; the record of section 3 rang at 7.55."""
    found = limit(Reckoner(learns=True), read_job(samples / "hm-101-setting-block.yaml"))
    assert (found.verdict, found.learned) == ("expected", True)


def test_hm_100_is_well_under_the_record(samples):
    """Section 3b: op 20 asks 1.05 N/µm, well under the record of section 3."""
    job = read_job(samples / "hm-100-drilled-plate-b1.yaml")
    found = limit(Reckoner(learns=True), job, "face-rough")
    assert (found.verdict, found.demand * 1e-6) == ("expected", pytest.approx(1.045, abs=0.005))


def test_the_shares_of_the_scenario_are_by_the_card_with_and_without_trials(samples):
    """Its tables give shares of the card's continuous torque, which seconds of cutting do not move."""
    for path in sorted(samples.glob("hm-1*.yaml")):
        job = read_job(path)
        by_card, learned = Reckoner().reckon(job), Reckoner(learns=True).reckon(job)
        for key, outcome in by_card.operations.items():
            shares = [one.share for one in outcome.limits if one.name == "spindle-torque"]
            again = [one.share for one in learned.operations[key].limits if one.name == "spindle-torque"]
            assert shares == again


def test_story_8_the_tap_on_b2_after_the_proving(samples):
    """M6 under power asks 1.92 N·m: below 1 % after the two taps of section 3a."""
    job = read_job(samples / "hm-100-drilled-plate-b2.yaml")
    key = next(operation.key for _, operation in job.operations() if operation.kind == "tap")
    found = limit(Reckoner(learns=True), job, key, "spindle-torque")
    assert found.chance < 0.01
    assert found.verdict == "cut before"  # 3/8-24 at 3.14 N·m ran clean on 2026-11-17


def trial(share, outcome):
    return Trial(
        machine="knee-mill-k-2", date="2026-11-24", time="10:00", process="face", kind="face",
        cutter="end mill 20 mm, 4 teeth, 40 mm out", cutter_kind="end mill", material="S235", outcome=outcome,
        asked=(Asked("chatter", share * 20e6, share),), holding="150 mm vice", stick_out=0.040, length=0.08,
        step=(("depth", "2 mm"),),
    )  # fmt: skip


def test_a_trial_that_is_entered_changes_the_verdict_and_striking_it_takes_that_back(samples):
    """By the files: K-2 knows nothing, then it rings three times at less than a
    tenth of what its class carries.
    """
    job = SetField("job", "machine", "knee-mill-k-2").apply(read_job(samples / "hm-101-setting-block.yaml"))
    reckoner = Reckoner(learns=True)
    assert proof_of("knee-mill-k-2") is None
    assert limit(reckoner, job).from_class
    written = [append("knee-mill-k-2", trial(share, "chatter")) for share in (0.06, 0.07, 0.08)]
    assert limit(reckoner, job).from_class  # asked once; the window says when a log has grown
    reckoner.forget_proof()
    found = limit(reckoner, job)
    assert (found.verdict, found.learned) == ("beyond", True)
    assert "2026-11-24, end mill 20 mm" in found.sentence
    for one in written:
        strike("knee-mill-k-2", one.id, "2026-11-25", note="another machine")
    reckoner.forget_proof()
    assert limit(reckoner, job).from_class


def test_what_is_known_of_one_machine_says_nothing_of_another(samples):
    reckoner = Reckoner()
    reckoner.take_proof("bench-mill-b-1", proof_of("bench-mill-b-1"))
    job = read_job(samples / "hm-101-setting-block.yaml")
    assert limit(reckoner, job).learned
    other = SetField("job", "machine", "bench-mill-b-2").apply(job)
    assert not limit(reckoner, other).learned


def test_an_edit_costs_one_operation_also_with_proof(samples):
    """The snapshot is the same object in every setting: an untouched operation is taken over as it is."""
    job = read_job(samples / "hm-101-setting-block.yaml")
    reckoner = Reckoner(learns=True)
    before = reckoner.reckon(job)
    after = reckoner.reckon(SetField(KEY, "feed_per_tooth", "0.06").apply(job))
    changed = [key for key, one in after.operations.items() if one is not before.operations[key]]
    assert changed == [KEY]


def test_a_log_that_cannot_be_read_leaves_the_figures_by_the_card(samples, tmp_path, monkeypatch):
    monkeypatch.setenv("JOBSHEET_HOME", str(tmp_path))
    (tmp_path / "proof").mkdir()
    (tmp_path / "proof" / "knee-mill-k-2.txt").mkdir()
    assert proof_of("knee-mill-k-2") is None
