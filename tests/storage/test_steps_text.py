"""Steps as a text of their own: what is copied comes back the same, and what is not
understood refuses in one sentence.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.errors import CommandError
from jobsheet.paths import sample_jobs
from jobsheet.storage.job_file import read_job
from jobsheet.storage.steps_text import Copied, looks_copied, read_copied, write_copied

SAMPLES = sorted(sample_jobs().glob("*.yaml"))
ONE = """format: 1
units: mm
steps:
  - kind: drill
    cutter: drill 6.8
    depth: 12
    at:
      - [10, 12]
"""


def bare(step):
    return (step.kind, step.fields)


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_what_is_copied_comes_back_the_same(path):
    job = read_job(path)
    steps = tuple(operation for _, operation in job.operations())
    back = read_copied(write_copied(Copied(units=job.units, steps=steps)))
    assert (back.units, back.set_ups) == (job.units, ())
    assert list(map(bare, back.steps)) == list(map(bare, steps))
    back = read_copied(write_copied(Copied(units=job.units, set_ups=job.set_ups)))
    for one, other in zip(back.set_ups, job.set_ups, strict=True):
        assert replace(one, key="", number=0, operations=()) == replace(
            other, key="", number=0, operations=()
        )
        assert list(map(bare, one.operations)) == list(map(bare, other.operations))


def test_a_text_that_is_ours_is_known_and_others_are_not():
    assert looks_copied(ONE)
    for text in ("", "10 Drill it", "format: 1\npart: x", "Dear all,\nsteps: none", "a: 1\nb: 2"):
        assert not looks_copied(text)


@pytest.mark.parametrize(
    ("before", "after", "said"),
    [
        ("depth: 12", "depht: 12", "line 6: steps[0].depht: unknown field; did you mean depth?"),
        ("kind: drill", "kind: laser", "There is no kind of operation called “laser”."),
        ("units: mm", "units: ells", "line 2: units: write units: mm or units: in"),
        ("units: mm", "units: mm\npart: x", "part: unknown field"),
        ("format: 1", "format: 99", "newer than this program knows"),
        ("depth: 12", "depth: tall", "line 6: steps[0].depth"),
        (ONE[ONE.index("steps") :], "steps: []\n", "there are no steps"),
        ("  - kind: drill\n    cutter: drill 6.8", "  - !!python/object kind: drill", "line 4"),
    ],
)
def test_what_is_not_understood_refuses_in_one_sentence(before, after, said):
    assert before in ONE
    with pytest.raises(CommandError) as refused:
        read_copied(ONE.replace(before, after))
    sentence = str(refused.value)
    assert sentence.startswith("Nothing was pasted: ")
    assert said in sentence
    assert "\n" not in sentence


def test_more_than_anybody_copies_is_not_read():
    with pytest.raises(CommandError, match="copy fewer"):
        read_copied(ONE + "#" * 2_000_001)
