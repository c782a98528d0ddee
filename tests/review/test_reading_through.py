"""Reading a plan through: the order of remarks, what a failing rule leaves
behind, and that nothing is said twice.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.model.job import Dismissed
from jobsheet.model.remark import SEVERITIES, Remark
from jobsheet.paths import sample_jobs
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review import engine
from jobsheet.review.engine import about, counts, reviewed, rules, severity_of, title_of
from jobsheet.review.rule import Needs, Rule, View, rule
from jobsheet.stages.checks import Fact
from jobsheet.storage.job_file import read_job
from tests.review.test_rules import edited

PLATE, COVER = (
    read_job(sample_jobs() / f"{name}.yaml") for name in ("hm-100-drilled-plate-b1", "hm-104-cover-plate")
)
UPSIDE = [
    ("tap", "method", "under power"),
    ("drill", "cutter", "drill 5.5"),
    ("face-rough", "spindle", "900 rpm"),
    ("drill", "move to", "1"),
]


def read(job, facts=None):
    return reviewed(job, Reckoner().reckon(job), facts)


def said(**more):
    return Remark(rule="r", severity=more.pop("severity", "scrap"), message="m", why="w", **more)


def made(name, severity, check, needs=Needs.ORDER):
    return Rule(id=name, title=name.title(), severity=severity, needs=needs, check=check)


@pytest.mark.parametrize(
    "job",
    [
        edited(PLATE, UPSIDE),
        edited(
            COVER,
            [
                ("slug", "take out", ""),
                ("pilot", "take out", ""),
                ("spot", "take out", ""),
                ("holding:set-up-1", "rests_on", ""),
            ],
        ),
    ],
)
def test_the_worst_stand_first_and_those_of_one_severity_in_cutting_order(job):
    place = {operation.key: index for index, (_, operation) in enumerate(job.operations())}
    ranks = [
        (SEVERITIES.index(one.severity), min((place[key] for key in one.operations), default=-1))
        for one in read(job).open
    ]
    assert len(ranks) >= 3
    assert ranks == sorted(ranks)


def test_a_rule_that_fails_is_named_and_the_others_speak(monkeypatch):
    def fails(view):
        raise ValueError(view.job.units)

    monkeypatch.setattr(
        engine,
        "rules",
        lambda: (made("broken", "habit", fails), made("whole", "habit", lambda _: iter((said(),)))),
    )
    found = read(PLATE)
    assert [one.what for one in found.not_checked] == ["“Broken”"]
    assert [one.message for one in found.open] == ["m"]


def test_a_fact_that_is_repeated_is_said_once():
    facts = [Fact(kind="not-checked", key="drill", found=0.0, against=0.0, about="it fell over")] * 3
    other = replace(facts[0], key="tap")
    told = [(one.what, one.operation, one.why) for one in read(PLATE, [*facts, other, *facts]).not_checked]
    assert told == [("solids", "drill", "it fell over"), ("solids", "tap", "it fell over")]


def test_a_rule_that_needs_solids_waits_for_them(monkeypatch):
    asked = []

    def check(view):
        asked.append(view.facts)
        return iter(())

    monkeypatch.setattr(engine, "rules", lambda: (made("solid", "habit", check, Needs.STAGES),))
    read(PLATE)
    assert asked == []
    read(PLATE, [])
    assert asked == [()]


def test_facts_are_told_by_their_kind():
    facts = tuple(
        Fact(kind=kind, key="drill", found=0.0, against=0.0, about="")
        for kind in ("cuts-air", "left-on", "cuts-air")
    )
    view = View(PLATE, Reckoner().reckon(PLATE), facts)
    assert list(view.facts_of("cuts-air")) == [facts[0], facts[2]]
    assert list(view.facts_of("none")) == []


def test_a_dismissal_is_about_the_first_step_else_the_set_up_else_the_line():
    assert about(said(operations=("drill", "tap"), set_up="set-up-1", line=2)) == "drill"
    assert about(said(set_up="set-up-1", line=2)) == "set-up-1"
    assert about(said(line=0)) == "line 0"
    assert about(said()) == ""


def test_a_dismissal_needs_a_reason_and_of_a_hazard_for_a_trainee_initials():
    hazard, scrap = said(severity="hazard"), said()
    trained, trainee = PLATE, replace(PLATE, trainee=True)
    for reason, initials, remark, job, holds in (
        ("yes", "", scrap, trained, True), (" ", "TR", scrap, trained, False), ("yes", "", scrap, trainee, True),
        ("yes", "", hazard, trained, True), ("yes", "", hazard, trainee, False), ("yes", " ", hazard, trainee, False),
        ("yes", "TR", hazard, trainee, True), ("", "TR", hazard, trainee, False),
    ):  # fmt: skip
        assert counts(Dismissed(rule="r", about="", reason=reason, initials=initials), remark, job) is holds


def test_what_is_set_aside_is_told_by_rule_and_step(monkeypatch):
    remarks = (said(operations=("drill",)), said(operations=("tap",)))
    monkeypatch.setattr(engine, "rules", lambda: (made("r", "scrap", lambda _: iter(remarks)),))
    aside = replace(
        PLATE,
        dismissed=(
            Dismissed(rule="r", about="tap", reason="yes"),
            Dismissed(rule="other", about="drill", reason="yes"),
        ),
    )
    found = read(aside)
    assert found.open == remarks[:1]
    assert [one for one, _ in found.aside] == [remarks[1]]


def test_a_rule_that_is_gone_is_called_by_its_id_and_is_a_habit():
    assert (title_of("gone"), severity_of("gone")) == ("gone", "habit")
    first = rules()[0]
    assert (title_of(first.id), severity_of(first.id)) == (first.title, first.severity)
    assert severity_of("clamps-out-of-the-path") == "hazard"
    assert [one.id for one in rules()] == sorted(one.id for one in rules())


def test_no_rule_has_the_id_or_the_severity_of_none():
    with pytest.raises(ValueError, match="two rules are called"):
        rule(rules()[0].id, "Again", "habit")(lambda _: iter(()))
    with pytest.raises(ValueError, match="is not a severity"):
        rule("new", "New", "dreadful")
