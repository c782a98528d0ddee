"""What hangs on a change: each kind of change names the steps that stand on it, and no other does."""

from __future__ import annotations

from pathlib import Path

from msgspec.structs import replace

from jobsheet.edit.commands import SetField
from jobsheet.edit.made_from import made_from
from jobsheet.model.quantity import Quantity
from jobsheet.reckoning.answers.fits_answer import for_card
from jobsheet.review.hanging import hangs_on
from jobsheet.storage.card_files import find_card
from jobsheet.storage.job_file import read_job

SAMPLES = Path(__file__).parents[2] / "sample_jobs"
PLATE = read_job(SAMPLES / "hm-100-drilled-plate-b1.yaml")


def copied(**more):
    given = {
        "number": "HM-9",
        "name": "Other",
        "material": PLATE.material,
        "stock": None,
        "day": "2026-11-30",
    }
    return made_from(PLATE, **{**given, **more})


def whys(new, old=PLATE):
    return {one.number: one.why for one in hangs_on(old, new)}


def test_what_is_of_the_old_part_alone_is_left_behind():
    numbered = replace(PLATE, photographs=(), dismissed=())
    made = made_from(numbered, number="HM-9", name="Other", material="S235", stock=None, day="2026-11-30")
    assert (made.part.number, made.part.revision, made.part.drawing) == ("HM-9", "", "")
    assert (made.revisions, made.dismissed, made.photographs, made.planned_on) == ((), (), (), "2026-11-30")
    assert made.set_ups == PLATE.set_ups


def test_a_copy_of_the_same_hangs_on_nothing_but_its_words():
    found = whys(copied())
    assert set(found) == {0}
    assert "words on the order" in found[0]


def test_another_metal_names_what_was_typed_for_the_old_one():
    found = whys(copied(material="304"))
    typed = {number for number, why in found.items() if "Typed for S235" in why}
    assert typed == {20, 30, 50, 60}  # not the edge finder, nor the tap that is turned by hand


def test_other_stock_names_places_and_what_the_part_shall_be():
    stock = replace(PLATE.stock, length=Quantity(0.070, "70"))
    found = whys(copied(stock=stock))
    assert "still says the sizes of the old one, made of 80 × 50 × 12" in found[0]
    drilled = [one.number for _, one in PLATE.operations() if one.kind in ("spot-drill", "drill", "hand-tap")]
    assert all("Stands where it was typed for the other stock: places" in found[number] for number in drilled)


def test_a_plate_too_thin_is_said_by_the_review():
    stock = replace(PLATE.stock, height=Quantity(0.008, "8"))
    found = whys(copied(stock=stock))
    assert any("11.5" in why and number for number, why in found.items())


def test_another_machine_names_its_steps():
    other, _ = for_card(copied(), find_card("knee-mill-k-2"))
    assert any("Typed for the other machine" in why for why in whys(other).values())


def test_a_field_that_is_mended_is_no_longer_listed():
    made = copied(material="304")
    before = whys(made)[60]
    assert "spindle 900 rpm" in before
    made = SetField("drill", "spindle", "").apply(made)
    assert "spindle" not in whys(made)[60].partition("Typed for S235")[2]


def test_words_and_sizes_of_the_old_part_are_said_of_the_job_only_where_there_are_any():
    stock = replace(PLATE.stock, length=Quantity(0.070, "70"))
    bare = replace(PLATE, why="", note="", finished=None)
    assert 0 not in whys(replace(bare, stock=stock), bare)
    assert "words on the order" in whys(replace(bare, why="for its holes"), bare)[0]
    assert "words on the order" in whys(replace(bare, note="look"), bare)[0]
    drawn = replace(bare, finished=PLATE.finished)
    assert "still says the sizes" in whys(replace(drawn, stock=stock), drawn)[0]
    assert "still says the sizes" not in whys(drawn, drawn).get(0, "")


def test_each_size_of_the_stock_names_what_stands_on_it():
    """Places hang on length and width, depths on the height."""
    places, depths = (
        "Stands where it was typed for the other stock",
        "As deep as it was typed for the other height",
    )
    for name, value, text in (("length", 0.079, "79"), ("width", 0.049, "49"), ("height", 0.013, "13")):
        found = whys(replace(PLATE, stock=replace(PLATE.stock, **{name: Quantity(value, text)})))
        assert (places in found.get(60, "")) is (name != "height")
        assert (depths in found.get(50, "")) is (name == "height")
        assert depths not in found.get(60, "")  # through is through
    assert "depth" not in whys(PLATE).get(50, "")


def test_what_was_typed_for_another_metal_is_told_with_its_titles():
    found = whys(replace(PLATE, material="304"))
    assert "Typed for S235: feed per tooth 0.05, spindle 560 rpm." in found[20]
    assert all("Typed for" not in why for number, why in found.items() if number in (10, 40, 70, 80))


def test_limits_that_come_out_tight_are_said_and_those_that_were_so_before_are_not():
    """Thrice the depth of the rough face; what is beyond the review says itself."""
    deeper = SetField("face-rough", "depth", "1.2").apply(PLATE)
    assert not any(": tight" in why or ", tight" in why for why in whys(deeper, deeper).values())


def test_steps_stand_in_cutting_order_behind_the_job_and_each_is_said_once():
    found = [one.number for one in hangs_on(PLATE, copied(material="304"))]
    assert found == sorted(found)
    assert len(found) == len(set(found))
    assert all(
        one.why.endswith(".") and not one.why.endswith("..")
        for one in hangs_on(PLATE, copied(material="304"))
    )


def test_a_machine_that_is_gone_is_said_of_the_job_alone():
    gone = replace(PLATE, machine="gone")
    assert [(one.key, one.number) for one in hangs_on(PLATE, gone)] == [("", 0)]
    assert hangs_on(gone, PLATE)
