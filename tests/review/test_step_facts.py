"""What reminders and safety notes ask of a job, a set-up and a step: each fact right at its limit,
by the sample jobs and their cards.
"""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.edit.commands import SetField
from jobsheet.edit.step_commands import AddOperation
from jobsheet.paths import sample_jobs
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.notes import notes, reminders
from jobsheet.storage.job_file import read_job

PLATE, BLOCK, SLIDE, PIVOT, COVER = (
    read_job(sample_jobs() / f"{name}.yaml")
    for name in (
        "hm-100-drilled-plate-b1", "hm-101-setting-block", "hm-102-slide-plate", "hm-103-pivot-block", "hm-104-cover-plate",
    )
)  # fmt: skip


def with_field(job, *edits):
    for owner, name, text in edits:
        job = SetField(owner, name, text).apply(job)
    return job


def of_job(job):
    return reminders._job_facts(job)


def of_set_up(job, index):
    return reminders._set_up_facts(job, index)


def of_step(job, key):
    return reminders._step_facts(job.find(key)[1], Reckoner().reckon(job))


def test_three_faces_that_are_faced_are_a_squaring_and_two_are_none():
    assert of_job(BLOCK)["job.squaring"]
    three = replace(BLOCK, set_ups=BLOCK.set_ups[:3])
    assert of_job(three)["job.squaring"]
    assert not of_job(replace(BLOCK, set_ups=BLOCK.set_ups[:2]))["job.squaring"]
    assert not of_job(PLATE)["job.squaring"]


def test_one_part_is_not_many_and_two_are():
    assert not of_job(with_field(PLATE, ("job:part", "quantity", "1")))["job.many"]
    assert of_job(with_field(PLATE, ("job:part", "quantity", "2")))["job.many"]


def test_dials_in_another_unit_than_the_job_differ():
    """The dials of the bench machine are marked in millimetres, those of the
    knee mill in inches (their cards).
    """
    assert not of_job(PLATE)["job.units-differ"]
    assert of_job(replace(PLATE, units="in"))["job.units-differ"]
    assert of_job(PIVOT)["job.units-differ"]
    assert "job.units-differ" not in of_job(replace(PLATE, machine="a-machine-that-is-gone"))


def test_the_third_face_is_opposite_the_first_or_the_second():
    """HM-101: the top, then the front, then the rear, which is opposite the second."""
    assert [of_set_up(BLOCK, index)["set-up.third"] for index in range(4)] == ["", "", "opposite-second", ""]
    turned = with_field(BLOCK, ("setup:set-up-3", "up", "bottom"))
    assert of_set_up(turned, 2)["set-up.third"] == "opposite-first"
    assert of_set_up(with_field(BLOCK, ("setup:set-up-3", "up", "left")), 2)["set-up.third"] == ""


def test_what_holds_has_a_word_for_the_reminders():
    for kind, word in (("vice", "vice"), ("straps", "straps"), ("chuck", "other"), ("", "")):
        held = with_field(PLATE, ("holding:set-up-1", "kind", kind))
        assert of_set_up(held, 0)["holding.kind"] == word
    assert of_set_up(PLATE, 0)["holding.parallels"]
    assert not of_set_up(with_field(PLATE, ("holding:set-up-1", "rests_on", "bed")), 0)["holding.parallels"]


def test_work_stands_upright_where_an_end_is_up_in_the_vice():
    """HM-101 faces its ends in set-ups 5 and 6, upright in the vice."""
    assert [of_set_up(BLOCK, index)["set-up.upright"] for index in range(7)][:6] == [
        False,
        False,
        False,
        False,
        True,
        True,
    ]
    strapped = with_field(BLOCK, ("holding:set-up-5", "kind", "straps"))
    assert not of_set_up(strapped, 4)["set-up.upright"]


def test_a_set_up_knows_what_was_before_it_and_whether_it_is_the_last():
    last = len(BLOCK.set_ups) - 1
    assert [of_set_up(BLOCK, index)["set-up.last"] for index in (0, last - 1, last)] == [False, False, True]
    assert [of_set_up(BLOCK, index)["set-up.after-a-cut"] for index in (0, 1)] == [False, True]
    assert of_set_up(PLATE, 0)["set-up.positions"]
    assert not of_set_up(BLOCK, 0)["set-up.positions"]


def test_limits_places_and_tolerances_of_a_step():
    assert of_step(PLATE, "face-finish")["sizes.limits"]
    assert not of_step(PLATE, "face-rough")["sizes.limits"]
    assert not of_step(with_field(PLATE, ("face-finish", "measure", "11.5")), "face-finish")["sizes.limits"]
    assert of_step(PLATE, "drill")["sizes.positions"]
    assert not of_step(PLATE, "face-finish")["sizes.positions"]
    flat = of_step(with_field(PLATE, ("face-finish", "tolerances", "flat 0.02")), "face-finish")
    assert (flat["sizes.flatness"], flat["sizes.finish"]) == (True, False)
    fine = of_step(with_field(PLATE, ("face-finish", "tolerances", "finish Ra 0.8")), "face-finish")
    assert (fine["sizes.flatness"], fine["sizes.finish"]) == (False, True)


def test_the_second_side_of_a_slot_is_the_rear_one_along_a_path():
    assert of_step(SLIDE, "slot-rear")["slot.second-side"]
    assert not of_step(SLIDE, "slot-front")["slot.second-side"]
    assert not of_step(SLIDE, "slot")["slot.second-side"]


def test_passes_are_those_of_the_figures():
    """30 of 50 wide in one layer are two passes; a slot in layers counts its layers, a drill one."""
    assert of_step(PLATE, "face-rough")["step.passes"] == 2
    assert of_step(PLATE, "drill")["step.passes"] == 1
    slotted = with_field(SLIDE, ("slot", "depth", "12"), ("slot", "layer", "4"))
    assert of_step(slotted, "slot")["step.passes"] == 3
    assert of_step(with_field(PLATE, ("drill", "spindle", "")), "clamp")["step.passes"] == 1


def test_a_hole_is_deep_from_eight_diameters():
    for depth, deep in (("40", False), ("40.1", True), ("through", False)):
        job = with_field(PLATE, ("drill", "depth", depth), ("job:stock", "height", "50"))
        assert of_step(job, "drill")["hole.deep"] is (deep or depth == "through")
    assert not of_step(PLATE, "drill")["hole.deep"]


def test_a_place_asks_for_the_turn_from_one_whole_turn_on():
    """A turn of the bench machine's handle moves 2.5 mm (its card)."""
    turn = Reckoner().reckon(PLATE).settings["drill"].machine.handle("x").travel * 1e3
    for far, asked in ((turn - 0.01, False), (turn, True), (-turn, True)):
        job = with_field(PLATE, ("drill", "at", f"{far:.3f}, 12; 0, 12"))
        assert of_step(job, "drill")["position.turns"] is asked
    assert "position.turns" not in of_step(PLATE, "face-rough")


def test_notes_ask_the_stock_the_machine_and_the_people():
    """HM-100: bright steel, 12 thick, on a machine that is belted, with no trainee."""
    facts = notes.sheet_facts(PLATE)
    assert facts["person"] == frozenset()
    assert (facts["machine.air-line"], facts["machine.voice-raised"]) == (False, False)
    assert facts["stock.thickness"] == 0.012
    assert facts["material.family"] == "steel"
    assert facts["fluid"] == "brush-on oil"
    assert "stock.edges" not in facts
    assert notes.sheet_facts(with_field(PLATE, ("job", "trainee", "yes")))["person"] == {"trainee"}
    assert notes.sheet_facts(with_field(PLATE, ("job", "fluid", "dry")))["fluid"] == "dry"
    for words in ("sheared", "bright, ends sheared"):
        assert (
            notes.sheet_facts(with_field(PLATE, ("job:stock", "surfaces", words)))["stock.edges"] == "sharp"
        )
    assert (
        notes.sheet_facts(with_field(PLATE, ("job:stock", "condition", "sharp edges")))["stock.edges"]
        == "sharp"
    )
    gone = notes.sheet_facts(replace(PLATE, machine="gone", material="gone"))
    assert not {"material.family", "machine.drive"} & set(gone)


def test_stock_is_weighed_by_its_box_and_a_vice_where_it_is_put_on():
    """80 x 50 x 12 of steel, 7850 kg/m3: 0.377 kg. The vice of the knee mill weighs
    32 kg and stays for the next set-up.
    """
    masses = notes.masses_by_set_up(PLATE)["set-up-1"]
    assert abs(masses["stock.mass"] - 0.0377 * 10) < 0.002
    slide = notes.masses_by_set_up(SLIDE)
    put_on = [key for key, one in slide.items() if "holding.mass" in one]
    assert put_on == [SLIDE.set_ups[0].key]
    assert slide[put_on[0]]["holding.mass"] == 32
    assert notes.masses_by_set_up(replace(PLATE, material="gone"))["set-up-1"].keys() <= {"holding.mass"}


def test_speeds_change_in_a_set_up_where_two_are_turned():
    reckoned = Reckoner().reckon(PLATE)
    assert notes.set_up_facts(PLATE.set_ups[0], reckoned)["set-up.speed-changes"]
    one = replace(PLATE.set_ups[0], operations=PLATE.set_ups[0].operations[:3])
    assert not notes.set_up_facts(one, reckoned)["set-up.speed-changes"]
    assert notes.set_up_facts(one, reckoned)["tool-change"]
    bench = replace(PLATE.set_ups[0], operations=PLATE.set_ups[0].operations[:1])
    assert not notes.set_up_facts(bench, reckoned)["tool-change"]


def test_notes_ask_what_a_step_is_and_what_it_is_cut_with():
    face = notes.step_facts(PLATE.find("face-rough")[1])
    assert face["cutter.inserts"]
    assert (face["cutter.kind"], face["cutter.material"], face["direction"]) == (
        "face mill",
        "carbide",
        "against-rotation",
    )
    assert face["cutter.diameter"] == 0.05
    spot, drill, tap = (notes.step_facts(PLATE.find(key)[1]) for key in ("spot", "drill", "tap"))
    assert "spot" in spot["kind"]
    assert "drill" not in spot["kind"]
    assert not drill["cutter.inserts"]
    assert (drill["hole.through"], drill["hole.blind"]) == (True, False)
    assert (spot["hole.through"], spot["hole.blind"]) == (False, True)
    assert tap["method"] == "hand-in-spindle"
    assert (
        notes.step_facts(with_field(PLATE, ("tap", "method", "under power")).find("tap")[1])["method"]
        == "power"
    )
    assert "method" not in drill
    hss = with_field(PLATE, ("face-rough", "cutter", "face mill 50 mm, 4 teeth, HSS")).find("face-rough")[1]
    assert not notes.step_facts(hss)["cutter.inserts"]
    ended = with_field(PLATE, ("face-rough", "cutter", "end mill 50 mm, 4 teeth, carbide")).find(
        "face-rough"
    )[1]
    assert not notes.step_facts(ended)["cutter.inserts"]
    climbs = with_field(PIVOT, ("end-right", "way", "climb")).find("end-right")[1]
    assert notes.step_facts(climbs)["direction"] == "with-rotation"


def test_a_pocket_through_the_work_is_a_window():
    assert "window" in notes.step_facts(COVER.find("window")[1])["kind"]
    blind = with_field(COVER, ("window", "depth", "2")).find("window")[1]
    assert "window" not in notes.step_facts(blind)["kind"]


def test_a_fly_cutter_is_spelt_as_the_triggers_spell_it():
    flown = AddOperation("set-up-1", "fly-cut").apply(PLATE)
    step = next(one for _, one in flown.operations() if one.kind == "fly-cut")
    assert notes.step_facts(step)["cutter.kind"] == "fly-cutter"


def test_a_note_stands_against_what_its_trigger_asks():
    """A step's words make it a step's, what is lifted a set-up's, all else the sheet's."""
    row = notes.rows()[0]
    for trigger, scope in (
        ("kind in drilling", "step"),
        ("stock.mass > 20 kg and cutter.kind = drill", "set-up"),
        ("set-up.speed-changes", "set-up"),
        ("person = trainee", "sheet"),
    ):
        assert replace(row, trigger=trigger).scope == scope


def test_at_most_three_reminders_stand_beside_a_step_and_none_twice_in_a_set_up(monkeypatch):
    few = reminders.reminders_for(PIVOT, Reckoner().reckon(PIVOT))
    monkeypatch.setattr(reminders, "BESIDE", 99)
    all_ = reminders.reminders_for(PIVOT, Reckoner().reckon(PIVOT))
    beside = {key: [row.id for row in rows] for key, rows in all_.steps.items()}
    assert any(len(rows) > 3 for rows in beside.values())
    assert max(len(rows) for rows in few.steps.values()) == 3
    for set_up in PIVOT.set_ups:
        said = [one for step in set_up.operations for one in beside[step.key]]
        assert len(said) == len(set(said))
    assert all(row.where in ("step", "trainee") for rows in all_.steps.values() for row in rows)
    assert all(row.where == "tick" for rows in all_.ticks.values() for row in rows)
    assert all(row.where in ("set-up", "trainee") for rows in all_.set_ups.values() for row in rows)
    assert all(row.where == "sheet" for row in all_.sheet)


def test_tools_are_fetched_once_for_a_job():
    ticks = reminders.reminders_for(BLOCK, Reckoner().reckon(BLOCK)).ticks
    fetched = [key for key, rows in ticks.items() if "fetch-all-tools-first" in {row.id for row in rows}]
    assert fetched == [BLOCK.set_ups[0].key]
