"""Where figures and solids disagree: what a flat on round stock, a run-out and a tilt
do to a volume is no disagreement.
"""

from __future__ import annotations

import math

import pytest

from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.plan.solid_facts import facts_of
from jobsheet.stages.course import course_of
from jobsheet.stages.solids import shared
from jobsheet.storage.job_file import read_job
from tests.review.test_rules import edited

ROUND = [
    ("job:stock", "shape", "round bar"), ("job:stock", "bar_length", "80 mm"), ("job:stock", "diameter", "30 mm"),
    ("spot", "take out", ""), ("drill", "take out", ""),
]  # fmt: skip
SLOT = [("drill", "add slot", ""), ("slot-1", "open_ends", "both open"), ("slot-1", "depth", "4 mm")]


def told(samples, edits):
    job = edited(read_job(samples / "hm-100-drilled-plate-b1.yaml"), edits)
    found = Reckoner().reckon(job)
    stages = shared().stages(course_of(found.job, found.settings))
    facts = [(one.kind, one.key) for one in facts_of(found.job, found)]
    return {stage.cut.key: stage.removed for stage in stages[1:]}, facts


def test_a_flat_on_round_stock_is_a_segment_and_not_a_box(samples):
    """Area of a segment, closed form: r² acos((r - h) / r) - (r - h) √(2 r h - h²); a box twice as much."""
    removed, facts = told(samples, [*ROUND, ("face-rough", "depth", "2 mm")])
    r, h, long = 0.015, 2e-3, 0.080
    area = r**2 * math.acos((r - h) / r) - (r - h) * math.sqrt(2 * r * h - h**2)
    assert removed["face-rough"] == pytest.approx(area * long, rel=0.02)
    assert not [fact for fact in facts if fact[0] == "volume-differs"]


def test_the_run_out_of_a_slot_is_no_metal(samples):
    _, facts = told(samples, [*SLOT, ("slot-1", "ends", "-30, 25; 110, 25")])
    assert ("volume-differs", "slot-1") not in facts


def test_a_slot_where_most_was_milled_before_is_still_told(samples):
    again = [("slot-1", "add slot", ""), ("slot-2", "open_ends", "closed"), ("slot-2", "depth", "4 mm")]
    edits = [*SLOT, ("slot-1", "ends", "0, 25; 50, 25"), *again, ("slot-2", "ends", "15, 25; 70, 25")]
    _, facts = told(samples, edits)
    assert ("volume-differs", "slot-2") in facts


def test_of_work_that_leans_nothing_is_guessed(samples):
    """Its solid stands upright: what a cut meets on the slope is not checked, and the answers say so."""
    twice = [("drill", "add slot", ""), ("slot-1", "ends", "-30, 80; 20, 80")]
    assert ("off-the-work", "slot-1") in told(samples, twice)[1]
    assert not told(samples, [*twice, ("holding:set-up-1", "kind", "sine plate")])[1]
