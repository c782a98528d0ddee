"""Safety notes by trigger: what HM-100 calls up, and that nothing is lost."""

from __future__ import annotations

import pytest

from jobsheet.edit.commands import SetField
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.notes import notes as module
from jobsheet.review.notes.notes import BESIDE, NoteRow, notes_for


def notes(job):
    return notes_for(job, Reckoner().reckon(job))


def ids(found):
    return {one.id for one in found}


def test_hm_100_prints_the_reminders_that_are_notes(hm100):
    """Demo scenario section 3b, "Reminders printed", as far as they are safety notes."""
    found = notes(hm100)
    assert "no-gloves-while-it-turns" in ids(found.steps["drill"])
    assert "ease-off-at-breakthrough" in ids(found.steps["drill"])
    assert "isolate-for-hand-tapping" in ids(found.steps["tap"])
    assert "read-the-marked-speed" in ids(found.steps["face-rough"])
    assert "quill-locked-for-milling" in ids(found.set_ups["set-up-1"])
    assert "wrench-out-before-start" in ids(found.set_ups["set-up-1"])
    assert "room-under-the-hole" in ids(found.set_ups["set-up-1"])
    assert found.stops == ()


def test_at_most_two_beside_a_step_and_the_rest_at_the_head(hm100):
    found = notes(hm100)
    everything = (
        ids(found.sheet)
        | {i for head in found.set_ups.values() for i in ids(head)}
        | {i for step in found.steps.values() for i in ids(step)}
    )
    assert all(len(step) <= BESIDE for step in found.steps.values())
    for wanted in (
        "clamp-against-turning",
        "let-go-when-it-spins",
        "free-a-jam-by-hand",
        "tap-pieces-fly",
        "chips-thrown-flat",
    ):
        assert wanted in everything


def test_power_tapping_is_a_stop_note(samples):
    from jobsheet.storage.job_file import read_job

    found = notes(read_job(samples / "hm-100-drilled-plate-b2.yaml"))
    assert [one.id for one in found.stops] == ["power-tap-agreed"]
    assert found.stops[0].initials == "person in charge"
    assert "lowest-speed-before-start" in ids(found.set_ups["set-up-1"])


def test_a_trainee_s_job_needs_the_person_in_charge(hm100):
    assert "trainee-with-permission" in ids(notes(SetField("job", "trainee", "yes").apply(hm100)).stops)


def test_thin_sheet_is_a_stop_note(hm100):
    assert "back-thin-sheet-down" in ids(notes(SetField("job:stock", "height", "4").apply(hm100)).stops)


def test_a_warning_is_said_once_for_a_cutter_in_a_set_up(hm100):
    found = notes(hm100)
    assert ids(found.steps["face-rough"]) == {"chips-thrown-flat", "read-the-marked-speed"}
    assert ids(found.steps["face-finish"]) == set()
    assert "no-gloves-while-it-turns" in ids(found.steps["spot"]) & ids(found.steps["drill"])


def everywhere(found):
    placed = (*found.set_ups.values(), *found.steps.values())
    return ids(found.sheet) | {one for some in placed for one in ids(some)}


def test_a_heavy_vice_is_lifted_with_help_where_it_is_put_on_and_not_again(samples):
    """The vice of the knee mill is 32 kg by its card; it stays on the table for what follows."""
    from jobsheet.storage.job_file import read_job

    found = notes(read_job(samples / "hm-102-slide-plate.yaml"))
    lifted = [key for key, some in found.set_ups.items() if "lift-with-help" in ids(some)]
    assert lifted == [next(iter(found.set_ups))]


@pytest.mark.parametrize(
    ("size", "wanted"),
    [
        # Steel of 7850 kg/m³: 4.7, 11.8, 21.2 and 47.1 kg; the vice of this bench
        # machine is 8 kg, so parts are slid on.
        (("200", "100", "30"), {"slide-do-not-drop"}),
        (("250", "200", "30"), {"slide-do-not-drop"}),
        (("300", "150", "60"), {"slide-do-not-drop", "lift-with-help"}),
        (("400", "250", "60"), {"slide-do-not-drop", "lift-with-help", "rated-lifting-gear"}),
    ],
)
def test_stock_is_lifted_by_its_mass(hm100, size, wanted):
    for name, text in zip(("length", "width", "height"), size, strict=True):
        hm100 = SetField("job:stock", name, text).apply(hm100)
    lifting = {"slide-do-not-drop", "lift-with-help", "rated-lifting-gear"}
    assert everywhere(notes(hm100)) & lifting == wanted


def test_what_is_true_of_the_place_calls_its_notes_up(hm100):
    from jobsheet.model.shop import Shop

    said = {"no-blowing-chips", "no-air-on-wet-work", "hearing-protection-on", "tell-someone"}
    shop = Shop(air_line="yes", raised_voices="yes", works_alone="yes")
    assert everywhere(notes(hm100)) & said == set()
    assert everywhere(notes_for(hm100, Reckoner(shop).reckon(hm100))) >= said


def test_a_drill_chuck_is_a_stop_note_for_milling_and_asks_for_its_guard_in_drilling(hm100):
    milled = SetField("face-rough", "cutter", "end mill 12 mm, 4 teeth, in a drill chuck").apply(hm100)
    found = notes(milled)
    assert [(one.id, one.operation) for one in found.stops] == [("chuck-works-loose", "face-rough")]
    drilled = SetField("drill", "cutter", "drill 6.8 mm, in a drill chuck").apply(hm100)
    assert "chuck-guard-down" in everywhere(notes(drilled))
    assert "chuck-guard-down" not in everywhere(notes(hm100))
    held = SetField("face-rough", "cutter", "end mill 12 mm, 4 teeth, in a collet").apply(hm100)
    assert "collet-fits-the-shank" in everywhere(notes(held))


def test_a_fly_cutter_is_kept_out_of_line(hm100):
    from jobsheet.edit.step_commands import AddOperation

    flown = AddOperation("set-up-1", "fly-cut").apply(hm100)
    assert everywhere(notes(flown)) >= {"out-of-the-plane", "chips-thrown-flat", "read-the-marked-speed"}


def row(name, level, *, beside=9, trigger="kind in drilling"):
    return NoteRow(
        id=name, trigger=trigger, level=level, text=name, source="", initials="", back=False, beside=beside
    )


def test_beside_a_step_stand_what_must_be_read_then_the_nearest_warnings_and_last_what_is_only_noted(
    hm100, monkeypatch
):
    """Two at most; what is not beside a step stands at the head, and what is only noted once on the sheet."""
    rows = [
        row("late", "warn", beside=3),
        row("noted", "note", beside=1),
        row("soon", "warn", beside=2),
        row("never", "warn"),
        row("stop", "stop"),
    ]
    monkeypatch.setattr(module, "rows", lambda: tuple(rows))
    found = notes(hm100)
    assert [one.id for one in found.steps["drill"]] == ["stop", "soon"]
    assert ids(found.stops) == {"stop"}
    assert [one.id for one in found.set_ups["set-up-1"]] == ["late", "never"]
    assert [one.id for one in found.sheet] == ["noted"]
    rows[-1:] = []
    found = notes(hm100)
    assert [one.id for one in found.steps["drill"]] == ["soon", "late"]
    assert found.stops == ()
    assert [one.id for one in found.set_ups["set-up-1"]] == ["never"]
    assert [one.id for one in found.sheet] == ["noted"]
    rows[:] = [row("noted", "note", beside=8), row("other", "note", beside=9)]
    found = notes(hm100)
    assert [one.id for one in found.steps["drill"]] == ["noted"]
    assert [one.id for one in found.sheet] == ["other"]
