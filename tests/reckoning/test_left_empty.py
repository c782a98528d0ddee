"""What a step leaves empty is filled in as recommended, in one place, and follows; what is typed stays."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.catalog.trade.surfaces import read_surfaces
from jobsheet.edit.commands import GiveBack, SetField, SetFields
from jobsheet.model.job import AS_RECOMMENDED
from jobsheet.paths import sample_jobs
from jobsheet.reckoning.adviser import left_empty
from jobsheet.reckoning.adviser.best_cut import advice_on
from jobsheet.reckoning.adviser.left_empty import filled_texts, given_back, left_of
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.job_file import job_from_text, read_job
from jobsheet.storage.job_writing import write_job

JOBS = sorted(sample_jobs().glob("*.yaml"))


def given(job, *names):
    """The job with every step's speed, feed, layers, width and pecks left empty."""
    return replace(
        job,
        set_ups=tuple(
            replace(one, operations=tuple(given_back(step, *names) or step for step in one.operations))
            for one in job.set_ups
        ),
    )


@pytest.mark.parametrize("path", JOBS, ids=lambda path: path.stem)
def test_a_job_that_states_its_values_is_not_touched(path):
    job = read_job(path)
    assert Reckoner().reckon(job).job is job


@pytest.mark.parametrize("path", JOBS[2:4], ids=lambda path: path.stem)
def test_what_is_left_empty_is_the_best_cut_and_nothing_more_is_recommended(path):
    job = given(read_job(path))
    again = job_from_text(write_job(job), path.name)
    assert again == job
    found = Reckoner().reckon(again)
    for _, step in found.job.operations():
        if not left_of(job.find(step.key)[1]).names:
            continue
        assert not found.operations[step.key].problem
        changed = advice_on(step, found.settings[step.key])
        assert changed is None or changed.edits == ()


def left_slot():
    job = read_job(sample_jobs() / "hm-102-slide-plate.yaml")
    key = next(step.key for _, step in job.operations() if step.kind == "slot")
    return GiveBack(key, "feed").apply(
        SetFields(key, (("layer", ""), ("spindle", ""), ("cutting_speed", ""))).apply(job)
    ), key


def values(job, key):
    return Reckoner().reckon(job).job.find(key)[1].fields


def test_cutter_place_and_depth_are_enough():
    job, key = left_slot()
    fields = values(job, key)
    assert fields.spindle
    assert fields.feed_per_tooth
    assert fields.layer


def test_it_follows_machine_and_metal():
    job, key = left_slot()
    known = values(job, key)
    other = values(replace(job, material="316L"), key)
    assert other.spindle.value < known.spindle.value
    assert values(replace(job, machine="bench-mill-b-1"), key) != known


def test_what_is_typed_stays_and_the_rest_goes_round_it():
    job, key = left_slot()
    job = replace(job, machine="bench-mill-b-1")
    free = values(job, key)
    typed = SetField(key, "feed_per_tooth", "0.08 mm").apply(job)
    pinned = values(typed, key)
    assert pinned.feed_per_tooth.text == "0.08 mm"
    assert pinned.layer is not None
    assert not [one for one in Reckoner().reckon(typed).operations[key].limits if one.verdict == "beyond"]
    back = GiveBack(key, "feed_per_tooth").apply(typed)
    assert values(back, key) == free


def test_a_file_says_it_where_the_feed_is_stated():
    job, key = left_slot()
    typed = SetField(key, "feed_per_tooth", "0.03").apply(job)
    assert typed.find(key)[1].empty == AS_RECOMMENDED
    text = write_job(typed)
    assert f"empty: {AS_RECOMMENDED}" in text
    assert job_from_text(text, "x") == typed
    assert values(job_from_text(text, "x"), key).layer is not None
    # Without these words the step means what it always meant: all at once.
    before = job_from_text(text.replace(f"        empty: {AS_RECOMMENDED}\n", ""), "x")
    assert values(before, key).layer is None


def test_an_edit_shows_the_last_recommendation_and_the_new_one_follows():
    job, key = left_slot()
    left_empty._KNOWN.clear()
    reckoner = Reckoner()
    reckoner.patience = 0
    first = reckoner.reckon(job).job.find(key)[1].fields
    assert not reckoner.behind
    harder = replace(job, material="316L")
    assert reckoner.reckon(harder).job.find(key)[1].fields == first
    assert reckoner.behind
    reckoner.patience = 1
    after = reckoner.reckon(harder).job.find(key)[1].fields
    assert after != first
    assert not reckoner.behind
    assert after == values(harder, key)


def test_where_nothing_is_known_the_sentence_says_what_to_do():
    job = read_job(JOBS[0])
    text = write_job(job)
    drill = next(step for _, step in job.operations() if step.kind == "drill")
    bored = text.replace(
        "kind: drill\n        cutter: " + drill.fields.cutter.text,
        "kind: bore\n        cutter: boring bar 8 mm, 30 mm out\n        to: 20 mm",
        1,
    )
    lines = [line for line in bored.splitlines() if not line.startswith(("        feed:", "        peck:"))]
    found = Reckoner().reckon(job_from_text("\n".join(lines), "x"))
    said = found.operations[drill.key].problem
    assert "feed per turn" in said.lower() or "hole" in said.lower()


def test_a_field_that_nobody_recommends_is_not_given_back():
    job, key = left_slot()
    with pytest.raises(Exception, match="speed, feed, layer, width and pecks"):
        GiveBack(key, "depth").apply(job)


def test_what_was_filled_in_is_said_in_words():
    job, key = left_slot()
    found = Reckoner().reckon(job)
    said = filled_texts(job.find(key)[1], found.job.find(key)[1])
    assert set(said) == {"spindle", "feed_per_tooth", "layer"}
    assert all(said.values())


def test_the_first_cut_of_a_casting_goes_under_its_skin_and_the_next_need_not():
    job = given(read_job(sample_jobs() / "hm-103-pivot-block.yaml"))
    found = Reckoner().reckon(job)
    skins = {key: setting.skin for key, setting in found.settings.items()}
    assert (skins["base-skin"], skins["base-clean"], skins["front-skin"]) == (1e-3, 0.0, 1e-3)
    first = found.job.find("base-skin")[1]
    layers = found.operations["base-skin"].figures.value("layers")
    assert first.fields.depth.value / layers >= 1e-3 * (1 - 1e-9)
    bright = replace(job, stock=replace(job.stock, surfaces=read_surfaces("bright")))
    assert not any(setting.skin for setting in Reckoner().reckon(bright).settings.values())
    # The same job typed into: what was seen before is not taken for what is now.
    reckoner = Reckoner()
    reckoner.reckon(job)
    assert not any(setting.skin for setting in reckoner.reckon(bright).settings.values())


def test_where_no_width_goes_under_the_skin_it_is_said():
    from jobsheet.reckoning.adviser.best_cut import best_cut
    from tests.reckoning.steps import around, step

    one = step("face", cutter="end mill 20 mm, 4 teeth, 45 mm out, HSS", depth="1.2 mm")
    setting = around("bench-mill-b-1", "304", extent=(0.08, 0.05, 0.03))
    narrow = best_cut(one, replace(setting, skin=1e-3))
    assert narrow.found.value("layers") == 1
    assert narrow.found.value("width_of_cut") <= best_cut(one, setting).found.value("width_of_cut") * (
        1 + 1e-9
    )
    hard = best_cut(
        step("face", cutter="end mill 25 mm, 2 teeth, 120 mm out, HSS", depth="1.2 mm"),
        replace(around("bench-mill-b-1", "Ti-6Al-4V", extent=(0.08, 0.05, 0.03)), skin=1e-3),
    )
    assert hard.clears or "skin" in hard.other_way


def test_speeds_beside_are_judged_at_the_feed_that_is_recommended_there():
    from jobsheet.reckoning.answers.speeds import neighbours_of

    job, key = left_slot()
    job = replace(job, machine="bench-mill-b-1")
    found = Reckoner().reckon(job)
    step, typed, setting = found.job.find(key)[1], job.find(key)[1], found.settings[key]
    beside = neighbours_of(step, setting, typed)
    for one in (beside.below, beside.above):
        if one is None:
            continue
        pressed = SetField(key, "spindle", f"{one.marked} rpm").apply(job)
        outcome = Reckoner().reckon(pressed).operations[key]
        assert one.worst_verdict == outcome.governing.verdict
        assert one.pace == pytest.approx(outcome.figures.value("handle_pace"))
