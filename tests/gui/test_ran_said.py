"""What was said of a run, and what of it is new beside the record: the same again writes nothing."""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.gui.places.ran.ran_asked import RanAsked, SizeAsked, StepAsked
from jobsheet.gui.places.ran.ran_said import Said, as_said, difference, matter, standing
from jobsheet.model.what_ran import Entry
from jobsheet.paths import sample_jobs
from jobsheet.storage.job_file import read_job


def _entry(**more):
    usual = {
        "job": "HM-103",
        "plan": "D495",
        "revision": 2,
        "machine": "m",
        "date": "2026-12-02",
        "about": "step",
    }
    return Entry(**(usual | more))


CLEAN = _entry(key="face", number=10, outcome="clean")
SIZE = _entry(about="size", key="bore", size="16 H7", found=0.016)
MINUTES = _entry(about="minutes", set_up=1, cutting=1260.0)
ASKED = RanAsked(
    set_up=read_job(sample_jobs() / "hm-104-cover-plate.yaml").set_ups[0], numbers=(1,), to_set=10, to_cut=20,
    steps=(StepAsked(key="face", number=10, icon="", words="", named=""),),
    sizes=(SizeAsked(key="bore", number=20, size="16 H7", low=0.016, high=0.01602, words=""),),
)  # fmt: skip


def test_they_are_written_steps_first_then_sizes_and_minutes():
    said = Said(minutes=MINUTES, sizes={"bore": SIZE}, steps={"face": CLEAN})
    assert said.all() == (CLEAN, SIZE, MINUTES)
    assert Said().all() == ()


def test_of_each_matter_there_is_one():
    assert matter(CLEAN) == ("step", "face")
    assert matter(MINUTES) == ("minutes", "")


def test_what_stands_in_the_record_is_taken_by_step_size_and_set_up():
    strange = _entry(key="gone", outcome="clean")
    elsewhere = replace(MINUTES, set_up=2)
    by_name = replace(SIZE, key="")
    found = standing(ASKED, (CLEAN, strange, by_name, elsewhere, MINUTES))
    assert found == {("step", "face"): (CLEAN,), ("size", "bore"): (by_name,), ("minutes", ""): (MINUTES,)}
    shown = as_said(found)
    assert shown.steps == {"face": CLEAN}
    assert shown.sizes["bore"].key == "bore"
    assert shown.minutes == MINUTES


def test_the_same_again_writes_nothing_whoever_says_it_and_when():
    kept = {("step", "face"): (CLEAN,)}
    later = replace(CLEAN, role="Trainer", time="15:00", plan="other", revision=3)
    assert difference(Said(steps={"face": later}), kept) == ((), ())


def test_what_is_other_is_written_and_the_old_one_taken_back():
    kept = {("step", "face"): (CLEAN, replace(CLEAN, outcome="noisy")), ("minutes", ""): (MINUTES,)}
    said = Said(steps={"face": CLEAN}, minutes=MINUTES)
    fresh, back = difference(said, kept)
    assert fresh == (CLEAN,)
    assert back == kept["step", "face"]


def test_what_is_gone_is_taken_back_and_what_is_new_takes_nothing_back():
    assert difference(Said(), {("step", "face"): (CLEAN,)}) == ((), (CLEAN,))
    assert difference(Said(sizes={"bore": SIZE}), {}) == ((SIZE,), ())
