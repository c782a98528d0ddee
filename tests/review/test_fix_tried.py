"""A fix is tried once for a plan and remembered, leaves what is empty empty,
and says what speaks against it.
"""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.model.figure import Limit
from jobsheet.model.remark import Fix
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.engine import review
from jobsheet.review.mending import fix_tried as fix_tried_module
from jobsheet.review.mending.fix_tried import fix_tried
from jobsheet.review.mending.fix_words import refusal, together
from jobsheet.review.mending.fixes import NotMended, in_turn, set_field, taken_out
from jobsheet.review.plan.solid_facts import facts_of
from jobsheet.storage.job_file import read_job
from tests.review.test_rules import edited


def spoilt(samples, *edits):
    return edited(read_job(samples / "hm-101-setting-block.yaml"), edits)


def remark_of(job, rule, reckoned):
    return next(one for one in review(job, reckoned, facts_of(reckoned.job, reckoned)) if one.rule == rule)


def tried(job, remark, reckoned):
    return fix_tried(remark, job, reckoned, facts_of(reckoned.job, reckoned))


def with_fix(remark, label, mend):
    return replace(remark, fix=Fix(label, mend), others=())


def test_it_is_tried_once_for_a_plan(samples):
    job = spoilt(samples, ("face-4-rough", "layer", ""))
    reckoned = Reckoner().reckon(job)
    remark = remark_of(job, "nothing-beyond", reckoned)
    asked = []
    counting = with_fix(remark, "count", lambda job: asked.append(1) or remark.fix.mend(job))
    first = fix_tried(counting, job, reckoned, None)
    assert first.offered
    once = len(asked)
    assert fix_tried(counting, replace(job), reckoned, None) is first
    assert len(asked) == once


def test_what_is_left_empty_stays_empty(samples):
    job = spoilt(samples, ("face-4-rough", "layer", ""), ("end-6", "feed", ""), ("end-6", "spindle", ""))
    reckoned = Reckoner().reckon(job)
    found = tried(job, remark_of(job, "nothing-beyond", reckoned), reckoned)
    assert found.offered
    fields = found.job.find("end-6")[1].fields
    assert fields.feed is None
    assert fields.spindle is None


def test_another_part_is_no_fix(samples):
    job = spoilt(samples, ("face-4-rough", "layer", ""))
    reckoned = Reckoner().reckon(job)
    remark = remark_of(job, "nothing-beyond", reckoned)
    thinner = in_turn(remark.fix.mend, set_field("chamfer", "size", "0.6"))
    found = tried(job, with_fix(remark, "thinner", thinner), reckoned)
    assert "the finished part would be another by" in found.why_not


def test_a_tool_is_no_price(samples):
    job = spoilt(samples, ("face-4-rough", "layer", ""))
    reckoned = Reckoner().reckon(job)
    remark = remark_of(job, "nothing-beyond", reckoned)
    found = tried(job, with_fix(remark, "without", in_turn(remark.fix.mend, taken_out("chamfer"))), reckoned)
    assert found.why_not == "a step would lose its tool"


def test_a_limit_may_not_come_out_worse(samples):
    job = spoilt(samples, ("face-4-rough", "layer", ""))
    reckoned = Reckoner().reckon(job)
    remark = remark_of(job, "nothing-beyond", reckoned)
    faster = in_turn(remark.fix.mend, set_field("end-6", "feed", "400"))
    found = tried(job, with_fix(remark, "faster", faster), reckoned)
    assert not found.offered


def test_a_sentence_stands_where_nothing_is_to_be_had(samples):
    job = spoilt(samples, ("face-4-rough", "layer", ""))
    reckoned = Reckoner().reckon(job)
    remark = remark_of(job, "nothing-beyond", reckoned)

    def refuse(_job):
        raise NotMended("no drill is long enough")

    said = refusal(remark, tried(job, with_fix(remark, "refuse", refuse), reckoned))
    assert said.startswith("No fix is offered: no drill is long enough. By hand: ")


def test_changes_of_one_step_stand_together():
    lines = ("step 50, depth per layer: – → 1.3 mm", "step 50, feed: 1 → 2 mm", "adds step 65 Spot")
    assert together(lines) == "Changes step 50: depth per layer – → 1.3 mm, feed 1 → 2 mm; adds step 65 Spot."


def test_a_limit_is_worse_by_its_word_and_what_nobody_knows_lies_between():
    """Cut before and expected are as good as each other; not tried is worse than
    these, tight than that, beyond than all.
    """

    def limit(verdict, **more):
        return Limit(
            name="chatter", title="Chatter", demand=1.0, capacity=1.0, unit="m", share=1.0, verdict=verdict, low=1.0, high=1.0,
            chance=0.5, odds="", shown="", sentence="", **more,
        )  # fmt: skip

    order = (("cut before", "expected"), ("not tried",), ("tight",), ("beyond",))
    rank = {verdict: at for at, same in enumerate(order) for verdict in same}
    for old, before in rank.items():
        for new, after in rank.items():
            was = {"chatter": limit(old)}
            assert fix_tried_module._is_worse(limit(new), was) is (after > before), (old, new)
    # Of a step that is added nothing may be beyond; a limit that was not asked before may not be tight.
    assert [fix_tried_module._is_worse(limit(new), None) for new in rank] == [
        False,
        False,
        False,
        False,
        True,
    ]
    assert [fix_tried_module._is_worse(limit(new), {}) for new in rank] == [False, False, False, True, True]
    # Not tried says where to begin where both rest on the class alone.
    assert not fix_tried_module._is_worse(limit("not tried"), {"chatter": limit("expected", from_class=True)})
