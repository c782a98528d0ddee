"""The picture from above: where the cutter of the first cut begins and which way it goes, handles, zero, numbers of points."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.drawing.drawn import Ellipse, Text
from jobsheet.drawing.mark_shapes import mark
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.blocks import Columns, Picture
from jobsheet.report.job_sheet import always
from jobsheet.report.pictured.cutter_begins import FirstCut, first_cut
from jobsheet.report.pictured.numbered import LEAST, crowds, detail, numbered
from jobsheet.report.pictured.zero_there import zero_there
from jobsheet.report.plan import Plan, courses
from jobsheet.report.points import Point
from jobsheet.review.notes.notes import notes_for
from jobsheet.storage.card_files import find_card
from jobsheet.storage.job_file import read_job
from tests.report.plans import bench, drill, job, pages

MM = 1e-3
FACE = "      - key: face\n        number: 10\n        kind: face\n        cutter: face mill 50 mm, 4 teeth\n        depth: 0.5\n        width: 30\n        along: {along}\n        feed per tooth: 0.05\n"
SIDE = "      - key: side\n        number: 10\n        kind: side-mill\n        cutter: end mill 20, 4 teeth\n        way: {way}\n        side: {side}\n        width: 3\n        depth: 5\n        feed per tooth: 0.04\n"
SLOT = "      - key: slot\n        number: 10\n        kind: slot\n        cutter: slot drill 10, 2 teeth\n        ends:\n          - [20, 25]\n          - [60, 25]\n        depth: 4\n        feed per tooth: 0.03\n"


def plan_of(work) -> Plan:
    found = Reckoner().reckon(work)
    return Plan(
        job=work, reckoned=found, notes=notes_for(work, found), remarks=(), card=find_card(work.machine), acknowledged=(),
        fits=always, courses=courses(work, found.settings),
    )  # fmt: skip


def first_of(step) -> FirstCut | None:
    plan = plan_of(job([bench(5), step]))
    return first_cut(plan, plan.courses[0])


def on_the_left(found: FirstCut, middle: tuple[float, float]) -> bool:
    """Whether a place lies on the left of the way that the cutter goes: the cross product of the two is above nought."""
    way = found.to[0] - found.begins[0], found.to[1] - found.begins[1]
    to = middle[0] - found.begins[0], middle[1] - found.begins[1]
    return way[0] * to[1] - way[1] * to[0] > 0


@pytest.mark.parametrize("along", ["x", "y"])
def test_a_face_begins_with_a_strip_that_has_the_work_on_the_cutter_s_left(along):
    """A right-hand cutter turns clockwise from above: with the work on its left a tooth goes in at no thickness, the conventional way."""
    found = first_of(FACE.format(along=along))
    assert found.radius == pytest.approx(25 * MM)
    assert on_the_left(found, (40 * MM, 25 * MM))
    moved = [abs(to - begins) for begins, to in zip(found.begins, found.to, strict=True)]
    assert moved == pytest.approx([80 * MM, 0] if along == "x" else [0, 50 * MM])
    # 30 of its 50 are in the metal: 20 of it stand out over the side.
    out = -(found.begins[1] - 25 * MM) if along == "x" else found.begins[0] + 25 * MM - 80 * MM
    assert out == pytest.approx(20 * MM)


@pytest.mark.parametrize("side", ["left", "right", "front", "rear"])
@pytest.mark.parametrize("way", ["conventional", "climb"])
def test_a_side_has_the_work_on_the_left_and_climbing_on_the_right(side, way):
    found = first_of(SIDE.format(side=side, way=way))
    assert on_the_left(found, (40 * MM, 25 * MM)) is (way == "conventional")
    # The edge of a 20 mm cutter is 3 in from the side: its middle stands 7 outside of it.
    away = {
        "left": -found.begins[0],
        "right": found.begins[0] - 80 * MM,
        "front": -found.begins[1],
        "rear": found.begins[1] - 50 * MM,
    }
    assert away[side] == pytest.approx(7 * MM)


def test_a_slot_goes_from_its_first_end_to_its_second():
    found = first_of(SLOT)
    assert (found.step, found.radius) == (10, pytest.approx(5 * MM))
    assert found.begins == pytest.approx((20 * MM, 25 * MM))
    assert found.to == pytest.approx((60 * MM, 25 * MM))


def test_a_hole_is_its_own_sign_and_a_bench_step_cuts_nothing():
    assert first_of(drill(10, [(10, 10)])) is None
    assert first_of(bench(10)) is None


def test_a_zero_is_drawn_only_where_something_counts_from_it(samples):
    """The first four set-ups of the pivot block face a casting from a touch, the fifth and sixth find two edges."""
    plan = plan_of(read_job(samples / "hm-103-pivot-block.yaml"))
    assert [zero_there(plan, one) for one in plan.courses] == [False] * 4 + [True] * 2
    ring = next(item for item in mark("zero", 15.0).items if isinstance(item, Ellipse))
    document = pages(read_job(samples / "hm-103-pivot-block.yaml"))
    rings = [
        sum(isinstance(item, Ellipse) and (item.a, item.weight) == (ring.a, ring.weight) for item in picture.drawing.items)
        for page in document.pages if page.kind == "set-up"
        for block in page.blocks if isinstance(block, Columns)
        for part in block.parts for picture in part if isinstance(picture, Picture) and picture.title.startswith("Zero")
    ]  # fmt: skip
    assert rings[:4] == [0] * 4
    assert set(rings[4:]) == {1}


@pytest.mark.parametrize(
    ("x", "y", "said"),
    [("right", "away", ("table ◂", "table ▾")), ("left", "towards", ("table ▸", "table ▴"))],
)
def test_the_table_goes_against_the_way_the_places_count(x, y, said):
    """A cutter stands still: for a place further to the right the table goes to the left."""
    work = job([drill(10, [(10, 10)])])
    (set_up,) = work.set_ups
    work = replace(work, set_ups=(replace(set_up, zero=replace(set_up.zero, x_counts=x, y_counts=y)),))
    words = [
        item.words
        for page in pages(work).pages
        for block in page.blocks if isinstance(block, Columns)
        for part in block.parts for picture in part if isinstance(picture, Picture)
        for item in picture.drawing.items if isinstance(item, Text)
    ]  # fmt: skip
    assert all(one in words for one in said)


def points_at(places, diameter=5.0):
    made = tuple(
        Point(number=number, x=x, y=y, x_text=str(x), y_text=str(y), diameter=diameter * MM)
        for number, (x, y) in enumerate(places, 1)
    )
    return made, {one.number: (one.x, one.y) for one in made}


def clear(items):
    texts = [item for item in items if isinstance(item, Text) and item.words.isdigit()]
    for index, one in enumerate(texts):
        for other in texts[index + 1 :]:
            wide = LEAST * 0.5 * max(len(one.words), len(other.words))
            assert abs(one.x - other.x) >= wide or abs(one.y - other.y) >= LEAST * 0.6, (one, other)
    return texts


def test_every_point_far_from_the_others_has_its_number_and_no_number_meets_another():
    made, spots = points_at([(20 * x, 20 * y) for x in range(6) for y in range(4)])
    items, left_out = numbered(made, spots, 1e3)
    assert left_out == []
    texts = clear(items)
    assert [item.words for item in texts] == [str(one.number) for one in made]
    assert min(item.size for item in texts) >= 7


def test_points_that_crowd_are_drawn_larger_with_all_their_numbers():
    """Nine holes on a grid of 8, and one far away: only the nine are in the detail, larger, and each has its number there."""
    grid = [(50 + 8 * x, 50 + 8 * y) for y in range(3) for x in range(3)]
    made, spots = points_at([*grid, (150, 20)], diameter=3)
    _, left_out = numbered(made, spots, 1e3)
    assert left_out
    (crowd,) = crowds(made, spots, left_out)
    assert [one.number for one in crowd] == list(range(1, 10))
    items, shown = detail(crowd, spots, "detail a", (0, 0), 1e3, 90)
    texts = clear(items)
    assert sorted(item.words for item in texts) == [str(number) for number in range(1, 10)]
    assert all(shown[0] < x < shown[2] and shown[1] < y < shown[3] for x, y in grid)
    (words,) = [item.words for item in items if isinstance(item, Text) and "larger" in item.words]
    assert float(words.split()[2]) > 1


@pytest.mark.parametrize("count", [3, 6, 60])
@pytest.mark.parametrize("apart", [1.5, 8.0])
def test_no_point_is_without_its_number_however_near_the_holes_stand(count, apart):
    """On the sheet of the set-up or on its card: each number stands once beside its point, or in a detail."""
    places = [(2 + apart * (index % 9), 2 + apart * (index // 9)) for index in range(count)]
    numbers: set[int] = set()
    for page in pages(job([drill(10, places, cutter="drill 1.0, drawer 3")])).pages:
        for block in page.blocks:
            parts = block.parts if isinstance(block, Columns) else ()
            for picture in (one for part in parts for one in part if isinstance(one, Picture)):
                texts = [
                    item for item in picture.drawing.items if isinstance(item, Text) and item.words.isdigit()
                ]
                numbers |= {int(item.words) for item in texts}
                assert all((item.size or 9) >= 7 for item in texts)
    assert set(range(1, count + 1)) <= numbers
