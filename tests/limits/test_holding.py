"""Work that tips in what holds it: vice, chuck and what stands behind."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.limits.each import holding
from jobsheet.model.setting import Grip
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.job_file import read_job


def judged(samples, pull, tall, **grip):
    """The holding of one milling step with this grip, its figures pulling with so many newtons."""
    job = read_job(samples / "hm-100-drilled-plate-b1.yaml")
    found = Reckoner().reckon(job)
    setting = replace(found.settings["face-rough"], extent=(0.08, 0.05, tall), grip=Grip(**grip))

    class Figures:
        def value(self, name):
            return {"in_plane_peak": pull, "lift": 0.0}.get(name)

        def number(self, name):
            return self.value(name) or 0.0

    return holding.limit(Figures(), setting, job.find("face-rough")[1].fields)


VICE = {"kind": "vice", "force": 7540.0, "low": 5000.0, "high": 10000.0, "friction": 0.12, "above": 0.025}


def test_what_tips_in_a_vice(samples):
    """holding-and-more-kinds A2: gripped over 10 µ F g is 9.0 N·m, not enough; SF is 4 for
    work that stands higher than its jaws.
    """
    one = judged(samples, 324.0, 0.035, **VICE, jaw_depth=0.010)
    assert (one.demand, one.capacity) == pytest.approx((4 * 324 * 0.025, 9.05), abs=0.1)
    assert one.verdict == "beyond"
    assert "tips out" in one.sentence


def test_gripped_as_deep_as_it_stands_out_it_is_enough(samples):
    """The other line of the same example: gripped over 25, 22.6 N·m for 20.3 asked."""
    assert "tip" not in judged(samples, 324.0, 0.050, **VICE, jaw_depth=0.025).sentence


def test_what_is_held_up_behind_does_not_tip(samples):
    assert "tip" not in judged(samples, 324.0, 0.035, **VICE, jaw_depth=0.010, held_up=True).sentence


def test_a_short_grip_in_a_chuck_tips(samples):
    """12 kN at all jaws, gripped over 10: 12000 × 10 / 6 = 20 N·m; 300 N at 60 out, 2.5 times: 45 N·m."""
    chuck = {
        "kind": "chuck",
        "force": 6000.0,
        "low": 4200.0,
        "high": 7800.0,
        "friction": 0.12,
        "around": True,
    }
    one = judged(samples, 300.0, 0.040, **chuck, out=0.060, gripped=0.010, turning=100.0, radius=0.020)
    assert (one.demand, one.capacity, one.verdict) == (pytest.approx(45.0), pytest.approx(20.0), "beyond")
    held = judged(samples, 300.0, 0.040, **chuck, out=None, gripped=0.010, turning=100.0, radius=0.020)
    assert "tip" not in held.sentence  # a tailstock holds its end
