"""Whatever is left out of a good plan, done twice or done elsewhere, the review says so: against the
drawing, or by what follows from it.
"""

from __future__ import annotations

import random

import pytest
from msgspec.structs import replace

from jobsheet.edit.commands import SetField
from jobsheet.edit.several_steps import DeleteSteps
from jobsheet.operations.registry import roles
from jobsheet.paths import sample_jobs
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.engine import reviewed
from jobsheet.review.plan.solid_facts import facts_of
from jobsheet.storage.job_file import read_job

#: The plate is the same on three machines.
SAMPLES = [path for path in sorted(sample_jobs().glob("*.yaml")) if not path.stem.endswith(("b2", "k2"))]
#: So many are tried in the plain suite, all of them with --long.
SHORT = 16
#: What may be left out: these make nothing of the part. Clamping and filing before the first cut, edges
#: that each cut breaks itself, a second look at sizes that the steps measured, and the screw holes in the
#: piece that falls out of the window.
MAKES_NOTHING = {
    ("hm-100-drilled-plate-b1", "clamp"), ("hm-101-setting-block", "deburr"), ("hm-102-slide-plate", "deburr"),
    ("hm-104-cover-plate", "strap"), ("hm-104-cover-plate", "spot-middle"), ("hm-104-cover-plate", "drill-middle"),
}  # fmt: skip
#: Filing, measuring, finding a zero and tapping once more leave the part as it is.
ONCE_MORE = ("bench", "find")


def left_out(job, step):
    return DeleteSteps((step.key,)).apply(job)


def doubled(job, step):
    again = replace(step, key=f"{step.key}-again", number=step.number + 1)
    home, _ = job.find(step.key)
    index = home.operations.index(step) + 1
    twice = replace(home, operations=(*home.operations[:index], again, *home.operations[index:]))
    return replace(job, set_ups=tuple(twice if one is home else one for one in job.set_ups))


def shifted(job, step):
    """1.5 mm aside, or where a face or wall has no place four tenths further in."""
    for name in ("at", "centre", "ends", "path"):
        if places := getattr(step.fields, name, None):
            text = "; ".join(
                f"{place.x.value * 1e3 + 1.5:.4f} mm, {place.y.value * 1e3:.4f} mm" for place in places.points
            )
            return SetField(step.key, name, text).apply(job)
    name = "depth" if roles(step).mills == "flat" else "width"
    return SetField(step.key, name, f"{getattr(step.fields, name).value * 1e3 + 0.4:.4f} mm").apply(job)


CHANGES = {"left out": left_out, "twice": doubled, "shifted": shifted}


def changes():
    found = []
    for path in SAMPLES:
        for _, step in read_job(path).operations():
            does = roles(step)
            if (path.stem, step.key) not in MAKES_NOTHING:
                found.append((path, step.key, "left out"))
            if does.beside not in ONCE_MORE and does.hole != "tap":
                found.append((path, step.key, "twice"))
            if does.hole or does.sizes:
                found.append((path, step.key, "shifted"))
    short = random.Random("against the drawing").sample(range(len(found)), SHORT)
    for index, (path, key, how) in enumerate(found):
        marks = () if index in short else pytest.mark.long
        yield pytest.param(path, key, how, id=f"{path.stem}-{key}-{how.replace(' ', '-')}", marks=marks)


@pytest.mark.parametrize(("path", "key", "how"), list(changes()))
def test_every_change_of_a_step_brings_a_remark(path, key, how):
    job = read_job(path)
    changed = CHANGES[how](job, job.find(key)[1])
    reckoned = Reckoner().reckon(changed)
    read = reviewed(reckoned.job, reckoned, facts_of(reckoned.job, reckoned))
    assert any(one.line is not None or one.operations for one in read.open)
