"""What was copied from one job into another keeps its sizes and words."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.edit.pasting import paste_command
from jobsheet.storage.steps_text import Copied

from .jobs_edited import JOB, PLATE, done


def test_what_is_pasted_keeps_its_sizes_in_a_job_of_the_other_unit():
    inches = replace(PLATE, units="in")
    steps = tuple(operation for _, operation in JOB.operations())
    made = paste_command(Copied(units="mm", steps=steps), inches, PLATE.set_ups[0].key, None).apply(inches)
    for old, new in zip(steps, made.set_ups[0].operations, strict=False):
        if getattr(old.fields, "depth", None) is not None:
            assert new.fields.depth.value == pytest.approx(old.fields.depth.value)
        cutter = getattr(old.fields, "cutter", None)
        if cutter is not None and cutter.diameter is not None:
            assert new.fields.cutter.diameter == pytest.approx(cutter.diameter)


def test_set_ups_are_pasted_behind_the_chosen_one():
    made = done(paste_command(Copied(units="mm", set_ups=JOB.set_ups[:2]), PLATE, PLATE.set_ups[0].key, None))
    assert len(made.set_ups) == len(PLATE.set_ups) + 2
    assert [one.title for one in made.set_ups[1:3]] == [one.title for one in JOB.set_ups[:2]]
