"""What an open job needs proved: rungs in its own metal that end at what its steps ask, and settle them."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.edit.commands import SetField
from jobsheet.proving.assumed import FINER_CHANCES
from jobsheet.reckoning.asked import asked_of
from jobsheet.reckoning.ladder.job_needs import job_needs
from jobsheet.reckoning.ladder.ladders import trial_of
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.job_file import read_job
from jobsheet.storage.records.proof_log import append


def needs(job):
    return job_needs(Reckoner(learns=True).reckon(job))


def test_what_is_expected_needs_nothing(samples, own_home):
    assert needs(read_job(samples / "hm-100-drilled-plate-b1.yaml")) == ()


def test_a_slot_that_was_not_tried_is_settled_by_rungs_up_to_it(samples, own_home):
    job = read_job(samples / "hm-102-slide-plate.yaml")
    (need,) = needs(job)
    assert (need.process, need.cutter_kind, need.steps, need.verdicts) == (
        "slot",
        "slot drill",
        (90,),
        ("not tried",),
    )
    ladder = need.ladder
    assert len(ladder.rungs) <= 5
    reckoned = Reckoner().reckon(job)
    step = next(one for _, one in reckoned.job.operations() if one.number == 90)
    wanted = next(
        one.share
        for one in asked_of(reckoned.operations[step.key].figures, reckoned.settings[step.key])
        if one.limit == "chatter"
    )
    assert ladder.rungs[-1].of("chatter").share == pytest.approx(wanted, rel=0.03)
    assert all(rung.chance <= ladder.chance + 1e-4 for rung in ladder.rungs)
    # cut clean, rung by rung, it is cut before and nothing is open any more
    for index, rung in enumerate(ladder.rungs):
        append(job.machine, trial_of(ladder, rung, outcome="clean", date="2026-11-27", note=f"{index}"))
    assert needs(job) == ()


def test_steps_of_one_process_and_cutter_share_a_ladder(samples, own_home):
    job = read_job(samples / "hm-102-slide-plate.yaml")
    deeper = SetField("slot-front", "layer", "3").apply(job)
    found = {(one.process, one.cutter_kind): one for one in needs(deeper)}
    assert set(found) <= {("slot", "slot drill"), ("side", "slot drill")}
    for one in found.values():
        assert len(one.steps) == len(set(one.steps))


def test_a_pocket_is_proved_by_its_own_layers(samples, own_home):
    job = read_job(samples / "hm-104-cover-plate.yaml")
    (need,) = needs(job)
    assert (need.process, need.steps, need.why) == ("pocket", (60,), "")
    ladder = need.ladder
    assert ladder.inside == "HM-104, step 60"
    depths = [dict(rung.texts)["depth"] for rung in ladder.rungs]
    assert sum(float(one.split()[0]) for one in depths) == pytest.approx(4.0)  # the depth of the drawing
    assert all(rung.chance <= ladder.chance + 1e-4 for rung in ladder.rungs)
    before = ladder.capacities
    for rung in ladder.rungs:
        append(job.machine, trial_of(ladder, rung, outcome="clean", date="2026-11-27"))
    (then,) = needs(job) or (None,)
    # what ran clean is known: the next plate begins deeper, or asks nothing any more
    assert then is None or then.ladder is None or then.ladder.rungs[0].asked[0].share > before[0].low


def test_what_is_neither_milled_in_layers_nor_has_a_ladder_says_what_to_do(samples, own_home):
    job = replace(read_job(samples / "hm-104-cover-plate.yaml"), machine="bench-mill-b-2")
    (need,) = (one for one in needs(job) if one.process == "enlarge")
    assert need.ladder is None
    assert need.why.startswith("No ladder is made of enlarge cuts.")


def test_where_such_cuts_gave_out_before_the_finer_ladder_goes_up_to_what_is_asked(samples, own_home):
    job = replace(read_job(samples / "hm-103-pivot-block.yaml"), machine="bench-mill-b-2")
    (need,) = (one for one in needs(job) if one.process == "side")
    assert need.ladder.finer  # the log of the demonstration has an end of side cuts
    assert need.ladder.capacity("chatter").bad
    reckoned = Reckoner(learns=True).reckon(job)
    keys = [one.key for _, one in reckoned.job.operations() if one.number in need.steps]
    wanted = max(
        asked.share
        for key in keys
        for asked in asked_of(reckoned.operations[key].figures, reckoned.settings[key])
        if asked.limit == "chatter"
    )
    shares = [rung.of("chatter").share for rung in need.ladder.rungs]
    assert shares == sorted(shares)
    assert shares[-1] <= wanted * 1.03  # nothing is cut that the job does not ask
    assert all(rung.chance <= FINER_CHANCES * need.ladder.chance + 1e-4 for rung in need.ladder.rungs)


def test_where_no_ladder_can_be_made_the_reason_stands_there(samples, own_home):
    job = read_job(samples / "hm-102-slide-plate.yaml")
    (need,) = needs(replace(job, material="titanium grade 5"))
    assert "titanium" in need.why.lower() or need.ladder is None
