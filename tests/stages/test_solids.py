"""Volumes of solids against closed forms, to 0.1 %, and what must hold whatever the shapes."""

import math
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from jobsheet.model.lying import lying, stock_box
from jobsheet.model.shape import Bevel, Edge, Groove, Hole, Recess, Slab
from jobsheet.paths import sample_jobs
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.stages.course import Course, Cut, Sized, course_of
from jobsheet.stages.solids import ROUND, Modeller
from jobsheet.storage.job_file import read_job

BOX = ((0.0, 0.08), (0.0, 0.05), (0.0, 0.03))


class UpTop:
    """A set-up with the top up and the front to the operator."""

    up, operator, fixed_jaw = "top", "front", "rear"


def cut(key, *shapes, box=BOX):
    lie = lying(UpTop, box)
    return Cut(key=key, number=10, set_up="one", before=lie, after=lie, shapes=tuple(shapes))


def removed(*shapes):
    """What is taken off a block of 80 x 50 x 30 [m³]."""
    stages = Modeller().stages(Course(BOX, (cut("a", *shapes),)))
    return stages[-1].removed


def hole(x=0.04, y=0.025, diameter=0.012, depth=0.02, angle=None):
    return Sized(shape=Hole(x, y, diameter, depth, angle), corners=((x, y),), depth=depth)


#: A circle is drawn with flats: its area is that of the polygon, 0.3 % less; the
#: closed form is of the polygon.
def polygon(diameter, sides=ROUND):
    return sides / 8 * diameter**2 * math.sin(2 * math.pi / sides)


def test_a_drilled_hole_with_its_point():
    """Cylinder and cone of 118°: π/4 d² (h + d / (6 tan 59°))."""
    d, h, angle = 0.014, 0.02, math.radians(118)
    tip = d / 2 / math.tan(angle / 2)
    assert removed(hole(diameter=d, depth=h, angle=angle)) == pytest.approx(
        polygon(d) * (h + tip / 3), rel=1e-3
    )


def test_a_hole_through_ends_at_the_bottom():
    assert removed(hole(diameter=0.014, depth=None)) == pytest.approx(polygon(0.014) * 0.03, rel=1e-3)


def test_a_countersink_is_a_cone():
    """π/12 d² d/2 for 90°."""
    d = 0.016
    assert removed(hole(diameter=d, depth=0.0, angle=math.pi / 2)) == pytest.approx(
        polygon(d) * d / 6, rel=1e-3
    )


def test_a_slot_with_round_ends():
    w, length, depth = 0.016, 0.03, 0.005
    groove = Sized(
        shape=Groove(0.02, 0.025, 0.02 + length, 0.025, w, depth),
        corners=((0.02, 0.025), (0.02 + length, 0.025)), depth=depth,
    )  # fmt: skip
    assert removed(groove) == pytest.approx((w * length + polygon(w)) * depth, rel=1e-3)


def test_a_pocket_with_rounded_corners():
    length, width, r, depth = 0.03, 0.02, 0.008, 0.004
    pocket = Sized(shape=Recess(0.04, 0.025, length, width, r, depth), corners=((0.04, 0.025),), depth=depth)
    flat = length * width - 4 * r**2 + polygon(2 * r)
    assert removed(pocket) == pytest.approx(flat * depth, rel=1e-3)


@pytest.mark.parametrize(
    ("side", "across"), [("left", 0.05), ("right", 0.05), ("front", 0.08), ("rear", 0.08)]
)
def test_a_step_along_each_side(side, across):
    assert removed(Sized(shape=Edge(side, 0.01, 0.012), depth=0.012)) == pytest.approx(0.01 * 0.012 * across)


def test_a_layer_off_the_top():
    assert removed(Sized(shape=Slab(0.002), depth=0.002)) == pytest.approx(0.08 * 0.05 * 0.002)


def test_edges_broken_all_round():
    """Four prisms of half c², less what two of them share at each corner: c³/3 four times."""
    c = 0.001
    assert removed(Sized(shape=Bevel(c))) == pytest.approx(
        c**2 / 2 * 2 * (0.08 + 0.05) - 4 * c**3 / 3, rel=1e-3
    )


sizes = st.floats(0.001, 0.012)
places = st.tuples(st.floats(0.0, 0.08), st.floats(0.0, 0.05))
holes = st.builds(
    lambda at, d, h: hole(*at, diameter=d, depth=h, angle=math.radians(118)),
    places,
    sizes,
    st.floats(0.001, 0.04),
)


@settings(max_examples=40, deadline=None)
@given(st.lists(holes, min_size=2, max_size=6))
def test_the_order_of_the_sweeps_does_not_matter(shapes):
    def volume(order):
        cuts = tuple(cut(str(index), shape) for index, shape in enumerate(order))
        return Modeller().stages(Course(BOX, cuts))[-1].volume

    assert volume(shapes) == pytest.approx(volume(shapes[::-1]), rel=1e-6)


@settings(max_examples=40, deadline=None)
@given(st.lists(holes, min_size=1, max_size=6))
def test_a_step_never_adds_metal(shapes):
    stages = Modeller().stages(
        Course(BOX, tuple(cut(str(index), shape) for index, shape in enumerate(shapes)))
    )
    volumes = [stage.volume for stage in stages]
    assert all(after <= before + 1e-12 for before, after in pairwise(volumes))


@pytest.mark.parametrize(
    "shapes",
    [
        (hole(x=0.0, y=0.0, diameter=0.01),),  # on the corner
        (hole(x=0.2, y=0.2),),  # beside the work
        (hole(diameter=0.05, depth=None),),  # as wide as the work
        (hole(), hole()),  # the same twice
        (hole(x=0.03, diameter=0.01), hole(x=0.04, diameter=0.01)),  # tangent
        (hole(depth=0.03),),  # exactly through
        (Sized(shape=Edge("left", 0.08, 0.03), depth=0.03),),  # all of it
        (Sized(shape=Slab(0.03), depth=0.03),),
        (Sized(shape=Recess(0.04, 0.025, 0.02, 0.02, 0.0, 0.005), corners=((0.04, 0.025),), depth=0.005),),
        (
            Sized(
                shape=Groove(0.04, 0.025, 0.04, 0.025, 0.01, 0.005), corners=((0.04, 0.025),) * 2, depth=0.005
            ),
        ),
        (
            Sized(
                shape=Groove(0.04, 0.025, 0.05, 0.025, 0.01, 0.0),
                corners=((0.04, 0.025), (0.05, 0.025)),
                depth=0.0,
            ),
        ),
    ],
)
def test_what_is_degenerate_is_drawn_and_never_fails(shapes):
    from jobsheet.stages.pictures import VIEWS, picture

    stage = Modeller().stages(Course(BOX, (cut("a", *shapes),)))[-1]
    assert stage.volume >= -1e-15
    for view in VIEWS:
        picture(stage, view, 200, 150, hidden=True)


#: Steps whose figures count a rectangle where a slot's hole is already there, or
#: whose work is shorter than the stock.
_COUNTED_OTHERWISE = {
    (
        "hm-101-setting-block",
        90,
    ): "figures of a chamfer count all edges, top and bottom; the solid the top ones",
    ("hm-102-slide-plate", 90): "the ends of the slot were plunged before",
    ("hm-102-slide-plate", 100): "the ends of the slot were plunged before",
    ("hm-102-slide-plate", 105): "the ends of the slot were plunged before",
    ("hm-103-pivot-block", 40): "the figures count the end as long as the casting was",
    ("hm-103-pivot-block", 50): "the figures count the top as long as the casting was",
    ("hm-103-pivot-block", 52): "the figures count the top as long as the casting was",
    ("hm-104-cover-plate", 60): "the entry hole, and the slug's own width",
    ("hm-104-cover-plate", 82): "two sides share a corner",
    ("hm-104-cover-plate", 84): "two sides share a corner",
    ("hm-104-cover-plate", 86): "two sides share a corner",
}


@pytest.mark.parametrize("path", sorted(sample_jobs().glob("hm-10*.yaml")), ids=lambda path: path.stem)
def test_the_solids_agree_with_the_figures_of_every_sample(path):
    job = read_job(path)
    reckoned = Reckoner().reckon(job)
    for stage in Modeller().stages(course_of(job, reckoned.settings))[1:]:
        figures = reckoned.operations[stage.cut.key].figures
        volume = figures.value("volume") if figures else None
        if volume is None or (path.stem, stage.cut.number) in _COUNTED_OTHERWISE:
            continue
        assert stage.removed == pytest.approx(volume, rel=1e-3), stage.cut.number


def test_an_edit_works_again_only_from_the_step_that_changed():
    modeller = Modeller()
    first = [cut(str(n), hole(x=0.01 + 0.01 * n, diameter=0.005)) for n in range(5)]
    before = modeller.stages(Course(BOX, tuple(first)))
    after = modeller.stages(Course(BOX, (*first[:4], cut("4", hole(x=0.06, diameter=0.006)))))
    assert [one.solid is two.solid for one, two in zip(before, after, strict=True)] == [True] * 5 + [False]


def test_masses_add_up():
    """80 x 50 x 12 of steel at 7850 kg/m³ is 377 g by hand; part and chips are that in all."""
    from jobsheet.stages.checks import masses

    job = read_job(sample_jobs() / "hm-100-drilled-plate-b1.yaml")
    stock, part, chips = masses(Modeller().stages(course_of(job, Reckoner().reckon(job).settings)), 7850)
    assert stock == pytest.approx(0.3768)
    assert part + chips == pytest.approx(stock)
    assert chips == pytest.approx(0.0229, rel=0.01)  # 2.0 cm³ faced, 0.9 cm³ of spots and holes


def test_the_stock_is_the_box_of_the_job():
    job = read_job(sample_jobs() / "hm-100-drilled-plate-b1.yaml")
    stage = next(iter(Modeller().in_turn(course_of(job, Reckoner().reckon(job).settings))))
    (x0, x1), (y0, y1), (z0, z1) = stock_box(job)
    assert stage.volume == pytest.approx((x1 - x0) * (y1 - y0) * (z1 - z0))
