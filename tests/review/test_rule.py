"""A rule is registered once under its id, with a severity that we have; a view
gives its steps in cutting order.
"""

from __future__ import annotations

import pytest

from jobsheet.review.rule import RULES, Needs, Rule, remark, rule

from .views_read import sample, view_of


def test_no_two_rules_have_one_id_and_none_has_a_severity_of_its_own():
    known = dict(RULES)
    taken = next(iter(known)) if known else None
    if taken:
        with pytest.raises(ValueError, match="two rules"):
            rule(taken, "x", "habit")(lambda _view: iter(()))
    with pytest.raises(ValueError, match="not a severity"):
        rule("never-there", "x", "grave")
    assert dict(RULES) == known


def test_every_rule_reads_one_of_three_things_and_explains_itself():
    from jobsheet.review import engine

    for one in engine.rules():
        assert one.needs in Needs
        assert one.explanation.strip()


def test_steps_come_in_cutting_order_with_what_was_reckoned():
    view = view_of(sample(100))
    keys = [operation.key for _, operation, _ in view.steps()]
    assert keys == [operation.key for _, operation in view.job.operations()]
    assert all(outcome is view.reckoned.operations[operation.key] for _, operation, outcome in view.steps())
    assert list(view.facts_of("clash")) == []


def test_a_check_without_words_explains_nothing():
    assert (
        Rule(id="a", title="A", severity="habit", needs=Needs.ORDER, check=lambda _view: ()).explanation == ""
    )


def test_why_is_the_whole_of_what_stands_behind_because():
    for one in RULES.values():
        (because,) = [
            line.strip() for line in one.explanation.splitlines() if line.strip().startswith("Because: ")
        ]
        assert f"Because: {remark(None, one.id, 'x').why}" == because
