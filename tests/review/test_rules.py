"""Every rule has a case that remarks and one that does not; the planted mistakes of HM-100 give theirs."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest
import yaml
from msgspec.structs import replace

from jobsheet.edit.commands import SetField
from jobsheet.edit.several_steps import DeleteSteps, MoveSteps
from jobsheet.edit.step_commands import AddOperation, MoveSetUp
from jobsheet.errors import DocumentError, Problem
from jobsheet.model.remark import SEVERITIES
from jobsheet.model.shop import Shop
from jobsheet.paths import sample_jobs
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review import engine
from jobsheet.review.engine import rules
from jobsheet.review.mending.fix_tried import fix_tried
from jobsheet.review.mending.fixes import NotMended
from jobsheet.review.plan.solid_facts import facts_of
from jobsheet.review.rules.tools import in_the_cabinet, place_as_in_the_cabinet
from jobsheet.stages.checks import Fact
from jobsheet.storage.job_file import read_job
from tests.review.what_changed import what_changed

CASES = Path(__file__).parent / "cases"
LIMITS = yaml.load((CASES.parent / "right_at_the_limit.yaml").read_text(encoding="utf-8"), yaml.CBaseLoader)


def remarks(job, *, solids=False, facts=None, shop=None):
    """What is said of a plan; that a rule fails is kept apart there, and here it fails its case."""
    reckoned = Reckoner(shop).reckon(job)
    read = engine.reviewed(job, reckoned, facts_of(job, reckoned) if solids else facts)
    assert not [one for one in read.not_checked if one.what.startswith("“")]
    return read.open


@cache
def start_of(case):
    """The job that a case begins with, read once: it is a value."""
    own = CASES.parent / "jobs" / f"{case}.yaml"
    return read_job(own if own.exists() else sample_jobs() / own.name)


def cases_of(path):
    """The cases of one rule, in the order of its file."""
    return yaml.load(path.read_text(encoding="utf-8"), yaml.CBaseLoader)


#: Rules that speak of the whole job: what they say stands at a step and in no set-up.
OF_THE_JOB = {
    "allowance-for-the-later-process", "card-as-planned", "drawing-as-planned", "in-the-cabinet", "place-as-in-the-cabinet",
}  # fmt: skip
#: Rules that speak of the hold that comes next.
OF_ANOTHER_HOLD = {"burrs-off-before-the-next-hold"}
#: What a case says beside its remark: of edits left out, of one edit more, of another workshop.
SAYS = {"needs", "quiet-with", "still-with", "says-without", "says-with", "in-shop"}
#: By rule, the cases that say what else is needed, what ends the remark and what does not.
WITH_ONE_THING_OTHERWISE = {
    path.stem: found
    for path in sorted(CASES.glob("*.yaml"))
    if (found := [one for one in cases_of(path) if SAYS & set(one)])
}


@pytest.fixture
def told(monkeypatch):
    """What one rule alone says of a plan: sixteen hundred plans are read
    here, and no rule hears of another.
    """

    def ask(rule, job, **how):
        with monkeypatch.context() as alone:
            alone.setattr(engine, "rules", lambda: tuple(one for one in rules() if one.id == rule))
            # What is not compared is asked of whole plans (`test_not_compared.py`); here it would double the work.
            alone.setattr(engine, "lines_not_compared", lambda _view: ())
            return remarks(job, **how)

    return ask


def home_of(rule, job, said):
    """The set-up that a remark is about: that of its first step, but for what is about the whole job."""
    if rule in OF_THE_JOB or not said.operations:
        return ""
    return job.find(said.operations[0])[0].key


def facts_named(case):
    """What the solids are said to have found: kind, step, found, against, about."""
    if "facts" not in case:
        return None
    return [
        Fact(kind=kind, key=key, found=float(found), against=float(against), about=about)
        for kind, key, found, against, about in case["facts"]
    ]


def edited(job, edits):
    """A job after edits: [owner, field, text], or [key, move to, index], [key, take out, ""], [key,
    do, what a step by hand behind it does], [key, add side-mill, ""] (its key is
    side-mill-1), [set-up-1, set-up to, index].
    """
    for owner, name, text in edits:
        job = edit(job, owner, name, text).apply(job)
        if name == "do":
            made = max((one.key for _, one in job.operations() if one.key.startswith("bench-step-")), key=len)
            job = SetField(made, "does", text).apply(job)
    return job


def edit(job, owner, name, text):
    if name == "move to":
        return MoveSteps((owner,), job.find(owner)[0].key, int(text))
    if name == "take out":
        return DeleteSteps((owner,))
    if name == "set-up to":
        return MoveSetUp(owner, int(text))
    if name == "do" or name.startswith("add "):
        kind = "bench-step" if name == "do" else name.removeprefix("add ")
        return AddOperation(job.find(owner)[0].key, kind, owner)
    return SetField(owner, name, text)


def cases():
    for path in sorted(CASES.glob("*.yaml")):
        for index, case in enumerate(cases_of(path)):
            yield pytest.param(path.stem, case, id=f"{path.stem}-{index + 1}")


@pytest.mark.parametrize(("rule", "case"), list(cases()))
def test_case(hm100, told, rule, case):
    """A remark is asked for whole: its words, the steps it names, how many there are,
    and every field that its fix changes.
    """
    start = start_of(case["job"]) if "job" in case else hm100
    job = edited(start, [tuple(one) for one in case["edits"]])
    solids = "solids" in case
    found = told(rule, job, solids=solids, facts=facts_named(case))
    if case["remark"] == "none":
        assert not found
        return
    assert found
    said = found[0]
    assert said.message == case["remark"]
    assert said.why
    assert not [one for one in (said.message, said.why) if not begins_a_sentence(one)]
    assert list(said.operations) == case["steps"]
    assert len(found) == int(case.get("remarks", 1))
    assert said.line == (int(case["line"]) if "line" in case else None)
    assert said.set_up == case.get("set-up", home_of(rule, job, said))
    assert (said.by_hand if isinstance(said.by_hand, str) else said.by_hand()) == case.get("hand", "")
    assert (said.fix and said.fix.label) == case.get("fix")
    assert [one.label for one in said.others] == case.get("others", [])
    if "changes" in case:
        assert what_changed(job, said.fix.mend(job)) == case["changes"]
    for owner, name, text in case.get("sets", ()):
        assert set_by(said.fix.mend(job), owner, name) == text
    if "mended" in case:
        assert found[0].fix is not None
        mended = found[0].fix.mend(job)
        assert mended != job
        assert not told(rule, mended, solids=solids, facts=facts_named(case))
        if "facts" not in case:
            assert offered(job, found[0]) == (case["mended"] != "not offered")


@pytest.mark.parametrize("rule", WITH_ONE_THING_OTHERWISE)
def test_one_thing_otherwise(hm100, told, rule):
    """Each edit is needed for the remark where `needs` has it; one more of `quiet-with` ends it, one of
    `still-with` changes no word of it, and `says-with` has the words that one more edit makes of it;
    `in-shop` those in a workshop with another number.
    """
    for case in WITH_ONE_THING_OTHERWISE[rule]:
        start = start_of(case["job"]) if "job" in case else hm100
        edits, solids = [tuple(one) for one in case["edits"]], "solids" in case
        for one in case.get("needs", ()):
            left = edited(start, [edit for edit in edits if edit != tuple(one)])
            assert not told(rule, left, solids=solids), (edits, one)
        job = edited(start, edits)
        for one in case.get("quiet-with", ()):
            assert not told(rule, edited(job, [tuple(one)]), solids=solids), (edits, one)
        for one in case.get("still-with", ()):
            found = told(rule, edited(job, [tuple(one)]), solids=solids)
            assert found, (edits, one)
            assert (found[0].message, list(found[0].operations)) == (case["remark"], case["steps"]), (
                edits,
                one,
            )
        for *one, words, steps in case.get("says-without", ()):
            left = edited(start, [edit for edit in edits if edit != tuple(one)])
            assert said_of(told(rule, left, solids=solids)) == (words, steps), (edits, one)
        for *one, words, steps in case.get("says-with", ()):
            other = edited(job, [tuple(one)])
            found = told(rule, other, solids=solids)
            assert said_of(found) == (words, steps), (edits, one)
            if found and found[0].operations and rule not in OF_ANOTHER_HOLD:
                assert found[0].set_up == home_of(rule, other, found[0]), (edits, one)
        for number, value, words in case.get("in-shop", ()):
            shop = replace(
                Shop(), **{number: value if isinstance(getattr(Shop(), number), str) else float(value)}
            )
            assert said_of(told(rule, job, solids=solids, shop=shop))[0] == words, (edits, number, value)


@pytest.mark.parametrize("rule", [one.id for one in rules()])
def test_what_a_fix_writes_ends_its_remark(told, rule):
    """Each fix of each case, the first and those that are tried after it: the same is not said again at that place."""
    for case in cases_of(CASES / f"{rule}.yaml"):
        if case["remark"] == "none" or "facts" in case or "solids" in case:
            continue
        start = start_of(case.get("job", "hm-100-drilled-plate-k2"))
        job = edited(start, [tuple(one) for one in case["edits"]])
        found = told(rule, job)
        for fix in found[0].fixes if found else ():
            try:
                mended = fix.mend(job)
            except NotMended:
                continue
            again = [(one.message, one.operations) for one in told(rule, mended)]
            assert (found[0].message, found[0].operations) not in again or mended == job, (
                case["edits"],
                fix.label,
            )


def said_of(found):
    """The words of the first remark and the steps that it names; nothing where there is none."""
    return (found[0].message, " ".join(found[0].operations)) if found else ("", "")


@pytest.mark.parametrize("rule", LIMITS)
def test_right_at_the_limit(hm100, told, rule):
    """At the limit itself nothing is said, one figure beyond it is."""
    for case in LIMITS[rule]:
        start = edited(start_of(case["job"]) if "job" in case else hm100, case["edits"])
        quiet, loud = (SetField(*case["field"], case[one]).apply(start) for one in ("quiet", "told"))
        assert not told(rule, quiet, solids="solids" in case), case
        assert told(rule, loud, solids="solids" in case), case


def begins_a_sentence(words):
    """One capital at its beginning, or a word that has no small letters anyway: `M12`, `X`, `HSS`; a line of
    a drawing begins as it is written.
    """
    first = words.split()[0]
    return first == first.upper() or first[1:] == first[1:].lower() or "-" in first


def set_by(job, owner, name):
    """What a field of a step holds once a fix has mended the job."""
    found = getattr(job.find(owner)[1].fields, name)
    return getattr(found, "text", found)


def offered(job, remark):
    """Whether its fix stands up to being tried, with the solids."""
    reckoned = Reckoner().reckon(job)
    tried = fix_tried(remark, job, reckoned, facts_of(job, reckoned))
    return tried is not None and tried.offered


def test_every_rule_has_a_case_that_remarks_and_one_that_does_not():
    for rule in rules():
        told = [case["remark"] for case in cases_of(CASES / f"{rule.id}.yaml")]
        assert "none" in told, rule.id
        assert any(one != "none" for one in told), rule.id


def test_every_rule_explains_itself():
    for rule in rules():
        assert rule.severity in SEVERITIES
        for word in ("Because: ", "Not so: ", "So: ", "From: "):
            assert word in rule.explanation, rule.id
        assert rule.id == rule.id.lower()
        assert not any(letter.isdigit() for letter in rule.id)


@pytest.mark.parametrize("name", ["b1", "b2", "k2"])
def test_a_good_plan_has_no_remark(samples, name):
    assert remarks(read_job(samples / f"hm-100-drilled-plate-{name}.yaml")) == ()


def test_the_worst_comes_first(hm100):
    job = edited(
        hm100,
        [
            ("tap", "method", "under power"),
            ("drill", "cutter", "drill 5.5"),
            ("face-rough", "spindle", "900 rpm"),
        ],
    )
    # The second rework: the cabinet of the workshop has no drill 5.5.
    assert [one.severity for one in remarks(job)] == ["hazard", "scrap", "rework", "rework"]


#: What works at the one bore of HM-103, and where a second is put.
BORE, SECOND = ("spot-bore", "pilot", "bore-12", "bore-15-7", "chamfer", "ream"), "40, 22; 65, 35"


@pytest.mark.parametrize(
    "rule", [one.id for one in rules() if one.check.__module__.split(".")[3] in ("holes", "threads")]
)
def test_a_step_with_two_places_is_told_once(told, rule):
    """A second bore like the first, cut by the same steps: the same remarks, as often, of the same steps."""
    for case in cases_of(CASES / f"{rule}.yaml"):
        if case.get("job") != "hm-103-pivot-block":
            continue
        one = edited(start_of(case["job"]), [tuple(edit) for edit in case["edits"]])
        there = {key.key for _, key in one.operations()}
        if any(getattr(one.find(key)[1].fields.at, "text", "") != "40, 22" for key in BORE if key in there):
            continue
        two = edited(one, [(key, "at", SECOND) for key in BORE if key in there])
        first, second = told(rule, one), told(rule, two)
        assert [each.operations for each in second] == [each.operations for each in first], case["edits"]


@pytest.mark.parametrize(("count", "more"), [(1, ""), (2, " (and 1 more)"), (3, " (and 2 more)")])
def test_in_the_cabinet_and_place_as_in_the_cabinet_say_once_that_it_cannot_be_used(
    hm100, told, monkeypatch, count, more
):
    """By `in-the-cabinet`, at the first step; `place-as-in-the-cabinet` looks up nothing then."""

    def broken(_workshop):
        raise DocumentError("mine.yaml", (Problem(3, "drills", "no size"),) * count)

    for rule in (in_the_cabinet, place_as_in_the_cabinet):
        monkeypatch.setattr(rule, "cabinet_for", broken)
    (found,) = told("in-the-cabinet", hm100)
    assert (
        found.message
        == f"mine.yaml cannot be used, so nothing is looked up in it: line 3: drills: no size{more}"
    )
    assert found.operations == (hm100.set_ups[0].operations[0].key,)
    assert not told("place-as-in-the-cabinet", hm100)
