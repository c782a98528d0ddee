"""What differs between two plans beside steps and fields is named, whatever of a job it is."""

from __future__ import annotations

import random

import pytest
from msgspec.structs import replace

from jobsheet.edit.commands import SetField
from jobsheet.edit.difference import changes
from jobsheet.model.finished import Finished
from jobsheet.model.job import Dismissed, Photograph
from tests.edit.jobs_edited import JOB, PLATE


def said(**changed):
    return changes(PLATE, replace(PLATE, **changed), most=None)


def test_datums():
    first, second = PLATE.datums
    assert said(datums=((first[0], "rear"), second)) == (f"datum {first[0]}: {first[1]} → rear",)
    assert said(datums=(second, first)) == (f"datums in another order: {second[0]}, {first[0]}",)
    assert said(datums=(first,)) == (f"datum {second[0]}: {second[1]} → –",)


def test_the_finished_part():
    with_lines = replace(
        PLATE, finished=Finished(sizes="80 x 50 x 10", features=("hole 8 at 10, 10", "slot 6"))
    )
    now = replace(
        PLATE, finished=Finished(sizes="80 x 50 x 10 ±0.1", features=("hole 8 H7 at 10, 10", "slot 6"))
    )
    assert changes(with_lines, now, most=None) == (
        "finished sizes: 80 x 50 x 10 → 80 x 50 x 10 ±0.1", "finished part, line 1: hole 8 at 10, 10 → hole 8 H7 at 10, 10",
    )  # fmt: skip
    fewer = replace(with_lines, finished=replace(with_lines.finished, features=("slot 6",)))
    assert changes(with_lines, fewer, most=None) == ("finished part without: hole 8 at 10, 10",)
    assert changes(fewer, with_lines, most=None) == ("finished part with: hole 8 at 10, 10",)


def test_photographs_and_what_was_set_aside():
    shot = Photograph(content="ab" * 32, shows="the stop")
    aside = Dismissed(rule="name-the-datum", reason="known")
    assert said(photographs=(shot,)) == ("photograph put in: the stop",)
    (line,) = said(dismissed=(aside,))
    assert line.startswith("sets aside: ")
    assert line.endswith(" (known)")
    back = changes(replace(PLATE, dismissed=(aside,), photographs=(shot,)), PLATE, most=None)
    assert [one.split(":")[0] for one in back] == ["no longer set aside", "photograph taken out"]


def test_a_step_at_the_edge_of_two_set_ups_goes_to_the_next():
    first, second, *others = JOB.set_ups
    step = first.operations[-1]
    after = replace(
        JOB,
        set_ups=(
            replace(first, operations=first.operations[:-1]),
            replace(second, operations=(step, *second.operations)),
            *others,
        ),
    )
    assert changes(JOB, after, most=None) == (f"step {step.number} goes to set-up {second.number}",)


@pytest.mark.parametrize("seed", range(40))
def test_no_field_of_a_job_changes_without_a_word(seed):
    """One field of the job, of a set-up or of a step is another: something is said."""
    draw = random.Random(seed)
    other = random.Random(seed + 1)
    owner = draw.choice(("job", "set-up", "step"))
    if owner == "job":
        name = draw.choice([one for one in JOB.__struct_fields__ if one != "revisions"])
        value = getattr(PLATE, name)
        if value == getattr(JOB, name):
            return
        after = replace(JOB, **{name: value})
    elif owner == "set-up":
        at = draw.randrange(len(JOB.set_ups))
        name = draw.choice(
            [one for one in JOB.set_ups[0].__struct_fields__ if one not in ("key", "operations")]
        )
        value = getattr(other.choice(JOB.set_ups), name)
        if value == getattr(JOB.set_ups[at], name):
            return
        changed = [
            replace(one, **{name: value}) if index == at else one for index, one in enumerate(JOB.set_ups)
        ]
        after = replace(JOB, set_ups=tuple(changed))
    else:
        key = draw.choice([one.key for _, one in JOB.operations()])
        after = SetField(key, "note", f"note {seed}").apply(JOB)
    assert changes(JOB, after, most=None)
