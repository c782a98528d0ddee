"""The lines *Not so* and *So* of a rule, run where they are a list of steps: the one
gets its remark, the other does not.

Most lines say a fact of the drawing, the holding or the machine in words; those
are tried by the cases of their rule.
"""

from __future__ import annotations

import re

import pytest

from jobsheet.edit.commands import SetField
from jobsheet.edit.step_commands import AddOperation
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review import engine
from jobsheet.review.engine import rules
from jobsheet.storage.job_file import blank_job

#: A phrase of a line -> kind and what is typed; `at` is the one place of the plate.
PHRASES = (
    (r"face", "face", {}),
    (r"(?P<depth>[\d.]+) off(?: the top)?", "face", {"depth": "{depth} mm"}),
    (r"(?:the )?pocket(?: (?P<depth>[\d.]+) deep)?", "pocket", {"depth": "{depth} mm"}),
    (r"deburr", "bench-step", {"does": "deburr"}),
    (r"clamp", "bench-step", {"does": "clamp"}),
    (r"find the edges", "pick-up-edge", {}),
    (r"spot(?: to (?P<to>[\d.]+))?", "spot-drill", {"to": "{to} mm"}),
    (r"drill(?: (?P<size>[\d.]+))?(?P<limits> H7)?(?: at (?P<rpm>\d+) rpm)?", "drill", {"cutter": "drill {size} mm", "spindle": "{rpm} rpm", "measure": "{size} H7"}),
    (r"ream(?: (?P<size>[\d.]+))?(?P<limits> H7)?(?: at (?P<rpm>\d+)(?: rpm)?)?", "ream", {"cutter": "reamer {size} H7, 6 edges", "spindle": "{rpm} rpm"}),
    (r"counterbore (?P<size>[\d.]+)", "counterbore", {"cutter": "counterbore {size} mm, 3 edges"}),
    (r"tap(?: (?P<thread>M\d+))?", "tap", {"thread": "{thread}", "cutter": "taps {thread}, taper and plug"}),
)  # fmt: skip
PLACE = "40, 25"
ZERO = {"named": "A and B", "x_from": "left", "y_from": "front"}
#: The rules whose two lines are lists of steps that can be made so: nobody may fall out of it unseen.
RUN = {
    "chamfer-before-tap", "deburr-after-last-cut", "enough-left-for-the-drill", "face-before-holes", "find-the-zero-here",
    "hole-before-its-counterbore", "hole-steps-in-rising-order", "open-cuts-before-pockets", "ream-or-bore-a-close-hole",
    "reamer-slower-than-the-drill", "reaming-allowance", "rough-before-finish", "small-step-before-the-reamer",
    "spot-before-drilling", "tap-after-the-last-cut", "tap-drill-before-tap", "thread-height-in-bounds",
}  # fmt: skip


def step(phrase):
    """Kind and texts of one phrase, or None where it is no step."""
    for pattern, kind, texts in PHRASES:
        found = re.fullmatch(pattern, phrase)
        if found:
            said = found.groupdict()
            limits = bool(said.pop("limits", None))
            typed = {}
            for name, text in texts.items():
                fields = re.findall(r"{(\w+)}", text)
                if all(said.get(field) for field in fields) and (name != "measure" or limits):
                    typed[name] = text.format(**said)
            return kind, typed
    return None


def line(rule, word):
    """The steps of one of its lines, as far as its first alternative; None where a phrase is none."""
    text = re.search(rf"^\s*{word}: (.*)$", rule.explanation, re.MULTILINE)[1].split("; ")[0]
    steps = [step(phrase) for phrase in re.split(r", then |, ", text)]
    return None if None in steps else steps


def plan(steps):
    """A plate with these steps, one behind the other, all holes at one place."""
    job = blank_job("knee-mill-k-2")
    for name, text in ZERO.items():
        job = SetField("zero:set-up-1", name, text).apply(job)
    for kind, texts in steps:
        has = [("at", PLACE)] if kind not in ("face", "pocket", "bench-step", "pick-up-edge") else []
        job = AddOperation("set-up-1", kind, None, texts=(*has, *texts.items())).apply(job)
    return job


def told(rule, steps, monkeypatch):
    """What this rule alone says of the plan."""
    monkeypatch.setattr(engine, "rules", lambda: (rule,))
    job = plan(steps)
    read = engine.reviewed(job, Reckoner().reckon(job))
    assert not read.not_checked
    return read.open


PAIRS = [(one, line(one, "Not so"), line(one, "So")) for one in rules()]
PAIRS = [pair for pair in PAIRS if None not in pair]


@pytest.mark.parametrize(("rule", "wrong", "right"), [pytest.param(*pair, id=pair[0].id) for pair in PAIRS])
def test_the_one_line_is_remarked_and_the_other_is_not(rule, wrong, right, monkeypatch):
    assert told(rule, wrong, monkeypatch)
    assert not told(rule, right, monkeypatch)


def test_which_lines_are_run():
    assert {rule.id for rule, _, _ in PAIRS} == RUN
