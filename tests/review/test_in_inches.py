"""A plan in inches is told in inches: no limit, remark, fix or hand's work of any case says a length in millimetres of its own."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

import pytest
from msgspec import Struct
from msgspec.structs import replace

from jobsheet.edit.commands import ChangeUnits
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review import engine
from jobsheet.review.engine import rules
from jobsheet.review.mending.fixes import NotMended
from jobsheet.review.plan.solid_facts import facts_of
from jobsheet.storage.cabinet_file import cabinet_for
from tests.review.test_rules import CASES, cases_of, edited, facts_named, start_of

#: A length as the program writes it; what a person typed stands here without the blank.
OURS = re.compile(r"\d mm\b")
#: Things are called as card, cabinet and log have them; a layer is typed as the dial that sets it is divided.
CALLED = re.compile(r"\b\d+ mm vice\b|\blayers? (?:of )?[\d.]+ mm\b")
#: Other units of a metric job; what a frame gives way is said in N/µm everywhere.
NOT_INCH = re.compile(r"(?<!N/)µm|\d m/min")
#: The drill of a metric thread is metric, and these name it.
OF_A_THREAD, DRILL_OF_A_THREAD = (
    ("tap-drill-before-tap", "thread-height-in-bounds"),
    re.compile(r"\b(?:[Dd]rill )?\d[\d.]* mm\b"),
)
AS_WRITTEN = ("in-the-cabinet", "not-again-at-chatter-settings", "place-as-in-the-cabinet")


def _tools() -> frozenset[str]:
    """Lines and sizes of the cabinet: what was bought in millimetres is."""
    cabinet = cabinet_for(start_of("hm-100-drilled-plate-k2").workshop)
    lines = {thing.line for thing in cabinet.things}
    return frozenset(lines | {thing.cutter.size for thing in cabinet.things if thing.cutter is not None})


TOOLS = _tools()


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


def written(job: Any, remark: Any) -> list[str]:
    """All texts that its fixes put into the plan; nothing where one finds nothing to put."""
    there, found = set(texts(job)), []
    for fix in remark.fixes:
        try:
            found += [one for one in texts(fix.mend(job)) if one not in there]
        except NotMended as refused:
            found.append(str(refused))
    return found


def texts(value: Any) -> Iterator[str]:
    """Every text of a plan: sizes as they were typed, tools, words; a layer is typed as the dial is divided."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, Struct | tuple):
        parts = (
            value
            if isinstance(value, tuple)
            else (getattr(value, one) for one in value.__struct_fields__ if one != "layer")
        )
        for part in parts:
            yield from texts(part)


def metric(words: str) -> bool:
    """Whether a length of the program's own in it is in millimetres."""
    return bool(OURS.search(CALLED.sub("", words)))


def judged(rule: Any, case: dict[str, Any], workshop: str | None) -> Iterator[tuple[str, str]]:
    """What a case in inches is told of: by whom, and the words; all of its limits, remarks and what their fixes write."""
    start = start_of(case.get("job", "hm-100-drilled-plate-k2"))
    job = in_inches(edited(start, [tuple(one) for one in case["edits"]]))
    if workshop is not None:
        job = replace(job, workshop=workshop)
    reckoned = Reckoner().reckon(job)
    for outcome in reckoned.operations.values():
        for limit in outcome.limits:
            yield from ((limit.name, words) for words in (limit.shown, limit.sentence, limit.working))
    facts = facts_of(job, reckoned) if "solids" in case else facts_named(case)
    for remark in engine.reviewed(job, reckoned, facts).open:
        yield from ((rule.id, words) for words in said(remark) if rule.id not in AS_WRITTEN)
        yield from ((f"{rule.id} writes", words) for words in written(job, remark) if words not in TOOLS)


@pytest.mark.parametrize("workshop", [None, ""], ids=["its own cabinet", "no cabinet"])
def test_no_case_of_a_plan_in_inches_speaks_of_millimetres(monkeypatch, workshop):
    """No limit, remark or fix, and nothing that a fix writes; nor does `in in` stand anywhere."""
    wrong, asked = set(), 0
    for path in sorted(CASES.glob("*.yaml")):
        rule = next(one for one in rules() if one.id == path.stem)
        monkeypatch.setattr(engine, "rules", lambda rule=rule: (rule,))
        for case in cases_of(path):
            for whose, words in judged(rule, case, workshop):
                asked += 1
                told = DRILL_OF_A_THREAD.sub("", words) if whose.split()[0] in OF_A_THREAD else words
                if metric(told) or NOT_INCH.search(told) or " in in " in told:
                    wrong.add(f"{whose}: {words}")
    assert asked > 10_000
    assert not wrong, "\n".join(sorted(wrong))


def test_what_would_be_found():
    """The measure itself: our millimetres, and not those of a card, a cutter that was typed or a dial."""
    for words, found in (
        ("204 of 420 mm", True), ("drill 8 mm", True), ("drill 8mm", False), ("the 150 mm vice", False), ("2 layers of 0.5 mm", False),
    ):  # fmt: skip
        assert metric(words) == found
    assert NOT_INCH.search("12 of 50 µm")
    assert NOT_INCH.search("it starts at 30 m/min")
    assert not NOT_INCH.search("20.0 N/µm")
