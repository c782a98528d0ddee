"""A plan in inches is told in inches: no remark, fix or hand's work of any case says a length in millimetres of its own."""

from __future__ import annotations

import re
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.edit.commands import ChangeUnits
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review import engine
from jobsheet.review.engine import rules
from jobsheet.review.plan.solid_facts import facts_of
from tests.review.test_rules import CASES, cases_of, edited, facts_named, start_of

#: A length as the program writes it; what a person typed stands here without the blank.
OURS = re.compile(r"\d mm\b")
#: Things are called as card, cabinet and log have them; a layer is typed as the dial that sets it is divided.
CALLED = re.compile(r"\b\d+ mm vice\b|\blayers? (?:of )?[\d.]+ mm\b")
AS_WRITTEN = ("in-the-cabinet", "not-again-at-chatter-settings", "place-as-in-the-cabinet")


def typed_close(value: Any) -> Any:
    """The same, each size that is kept as it was typed with its unit right behind the number: `12mm`."""
    if isinstance(value, str):
        return re.sub(r"(\d) mm\b", r"\1mm", value)
    if isinstance(value, tuple):
        return tuple(map(typed_close, value))
    if isinstance(value, Struct):
        changed = {
            name: new
            for name in value.__struct_fields__
            if (new := typed_close(old := getattr(value, name))) is not old and new != old
        }
        return replace(value, **changed) if changed else value
    return value


def in_inches(job: Any) -> Any:
    """The plan of the same sizes, as one that is typed in inches."""
    return typed_close(ChangeUnits("in").apply(job))


def said(remark: Any) -> list[str]:
    """All that a person reads of a remark that was made for this plan."""
    by_hand = remark.by_hand if isinstance(remark.by_hand, str) else remark.by_hand()
    return [remark.message, by_hand, *(fix.label for fix in remark.fixes)]


def test_no_case_of_a_plan_in_inches_speaks_of_millimetres(monkeypatch):
    wrong = []
    for path in sorted(CASES.glob("*.yaml")):
        if path.stem in AS_WRITTEN:
            continue
        rule = next(one for one in rules() if one.id == path.stem)
        monkeypatch.setattr(engine, "rules", lambda rule=rule: (rule,))
        for case in cases_of(path):
            if case["remark"] == "none":
                continue
            start = start_of(case.get("job", "hm-100-drilled-plate-k2"))
            job = in_inches(edited(start, [tuple(one) for one in case["edits"]]))
            reckoned = Reckoner().reckon(job)
            facts = facts_of(job, reckoned) if "solids" in case else facts_named(case)
            for remark in engine.reviewed(job, reckoned, facts).open:
                wrong += [
                    f"{rule.id}: {words}" for words in said(remark) if OURS.search(CALLED.sub("", words))
                ]
    assert not wrong, "\n".join(wrong)
