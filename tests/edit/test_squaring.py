"""Six faces squared as one insertion: a sound order, one undo, and a review that has
nothing grave to say of a plain block.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.catalog.tools.measuring import read_measure
from jobsheet.catalog.trade.surfaces import read_faces, read_surfaces
from jobsheet.edit.history import History
from jobsheet.edit.squaring import SquareAllSix
from jobsheet.errors import CommandError
from jobsheet.model.job import Job, SetUp
from jobsheet.model.lying import NORMALS, OPPOSITE, lying, stock_box
from jobsheet.model.quantity import Quantity
from jobsheet.model.stock import Stock
from jobsheet.paths import own_folder, sample_jobs
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.engine import review
from jobsheet.stages.course import course_of
from jobsheet.storage.card_files import card_names
from jobsheet.storage.job_file import job_from_text, read_job
from jobsheet.storage.job_writing import write_job

SHOP = "Harrowmoss Training Workshop (invented)"
BLOCKS = [((64, 45, 30), (60, 40, 25)), ((86, 56, 46), (80, 50, 40)), ((30, 40, 150), (28, 38, 146))]


def long(millimetres):
    return Quantity(millimetres * 1e-3, f"{millimetres} mm")


def block(stock=(64, 45, 30), machine="bench-mill-b-1", workshop=SHOP, material="S235"):
    length, width, height = map(long, stock)
    return Job(
        machine=machine,
        material=material,
        workshop=workshop,
        stock=Stock(length=length, width=width, height=height, surfaces=read_surfaces("black, ends sawn")),
        set_ups=(SetUp(key="set-up-1", number=1),),
    )


def squared(job, size=(60, 40, 25), cutter=""):
    return SquareAllSix(*(str(one) for one in size), cutter).apply(job)


@pytest.mark.parametrize(
    ("machine", "workshop"),
    [
        pytest.param(machine, workshop, marks=[pytest.mark.long] if index % 2 and not workshop else [])
        for index, machine in enumerate(card_names())
        for workshop in (SHOP, "")
    ],
)
@pytest.mark.parametrize(("stock", "size"), BLOCKS)
def test_the_review_has_nothing_grave_to_say_of_a_plain_block(machine, workshop, stock, size):
    job = squared(block(stock, machine, workshop), size)
    reckoned = Reckoner().reckon(job)
    assert all(not one.problem for one in reckoned.operations.values())
    remarks = review(job, reckoned)
    assert [one for one in remarks if one.severity in ("hazard", "scrap")] == []
    assert job_from_text(write_job(job), "squared") == job


@pytest.mark.parametrize(("stock", "size"), BLOCKS)
def test_the_block_has_its_finished_size_in_the_end(stock, size):
    job = squared(block(stock, "knee-mill-k-2"), size)
    box = stock_box(job)
    off = [0.0, 0.0, 0.0]
    for set_up, operation in job.operations():
        lie = lying(set_up, box)
        flat = operation.kind == "face"
        face = set_up.up if flat else lie.right
        axis = next(index for index, part in enumerate(NORMALS[face]) if part)
        off[axis] += operation.fields.depth.value if flat else operation.fields.width.value
    assert [
        one - gone for one, gone in zip((wide * 1e-3 for wide in stock), off, strict=True)
    ] == pytest.approx([one * 1e-3 for one in size])


def test_the_order_is_that_of_the_trade():
    """Published notes on squaring a block: best face first, then to the fixed
    jaw with a round bar, ends last.
    """
    job = squared(block())
    ups = [one.up for one in job.set_ups]
    assert ups == ["top", "front", "rear", "bottom", "left", "right"]
    assert [one.fixed_jaw for one in job.set_ups[:4]] == ["front", "top", "top", "front"]
    bars = [bool(one.holding.bar) for one in job.set_ups]
    assert bars == [True, True, True, False, False, False]
    assert all(one.holding.rests_on == "parallels" for one in job.set_ups[2:4])
    assert all("square" in one.operations[-1].fields.note for one in job.set_ups[4:])
    measured = [one.fields.measure for _, one in job.operations() if one.fields.measure is not None]
    assert [round(one.nominal * 1e3) for one in measured] == [40, 25, 60]
    assert len(course_of(job, Reckoner().reckon(job).settings).cuts) == len(job.operations())


def test_a_long_bar_has_its_ends_cut_lying():
    job = squared(block((150, 40, 30)), (146, 38, 28))
    ends = [step for one in job.set_ups[4:] for step in one.operations]
    assert [one.kind for one in ends] == ["side-mill", "side-mill"]
    rights = [lying(one, stock_box(job)).right for one in job.set_ups[4:]]
    assert rights == ["left", OPPOSITE["left"]]


def test_a_datum_comes_before_the_face_opposite_it():
    job = squared(replace(block(), datums=(("A", "bottom"), ("B", "rear"), ("C", "right"))))
    assert [one.up for one in job.set_ups] == ["bottom", "rear", "front", "top", "right", "left"]


def test_what_was_assumed_is_said_and_what_was_typed_is_kept():
    job = squared(block(), ("60 ±0.05", "40", "25"))
    assert "general limits ISO 2768-1 m for width, height" in job.set_ups[0].note
    ends = [one.fields.measure for _, one in job.operations() if one.fields.measure is not None]
    assert ends[-1] == read_measure("60 ±0.05")
    job = squared(block(), cutter="end mill 16, 4 teeth, HSS")
    assert {one.fields.cutter.text for _, one in job.operations()} == {"end mill 16, 4 teeth, HSS"}


def test_steps_that_are_there_stay_behind_and_empty_set_ups_give_way():
    plate = read_job(sample_jobs() / "hm-100-drilled-plate-b1.yaml")
    size = [one.value * 1e3 - 2 for one in (plate.stock.length, plate.stock.width, plate.stock.height)]
    made = squared(replace(plate, set_ups=(*plate.set_ups, SetUp(key="empty", number=2))), size)
    assert made.set_ups[6:] == tuple(replace(one, number=7) for one in plate.set_ups)
    assert [one.number for one in made.set_ups] == list(range(1, 8))
    assert job_from_text(write_job(made), "made") == made


def test_it_is_one_undo():
    job = block()
    history = History(job)
    history.do(SquareAllSix("60", "40", "25"))
    made = history.job
    assert history.undo_label == "square all six faces"
    history.undo()
    assert history.job is job
    history.redo()
    assert history.job == made


@pytest.mark.parametrize(
    ("size", "sentence"),
    [
        (("60", "", "25"), "Write the finished width"),
        (
            ("64", "40", "25"),
            "The finished length is 64 and the stock has 64 mm: nothing is left to come off",
        ),
        (("60", "40", "tall"), "Finished height: "),
    ],
)
def test_what_cannot_be_finished_is_said(size, sentence):
    with pytest.raises(CommandError, match=sentence):
        SquareAllSix(*size).apply(block())


def test_faces_that_stay_as_bought_are_not_squared():
    job = block()
    with pytest.raises(CommandError, match="stay as bought"):
        SquareAllSix("60", "40", "25").apply(
            replace(job, stock=replace(job.stock, as_bought=read_faces("top, bottom")))
        )


def test_the_workshop_chooses_which_side_comes_third():
    usual = [one.up for one in squared(block()).set_ups[:4]]
    assert usual[2] == OPPOSITE[usual[1]]
    own_folder().mkdir(parents=True, exist_ok=True)
    (own_folder() / "workshop.yaml").write_text("format: 1\nthird side: next face round\n", encoding="utf-8")
    job = squared(block())
    faces = [one.up for one in job.set_ups[:4]]
    assert faces[2] == OPPOSITE[faces[0]]
    assert job.set_ups[2].fixed_jaw == faces[1]
    assert [one for one in review(job, Reckoner().reckon(job)) if one.severity in ("hazard", "scrap")] == []
