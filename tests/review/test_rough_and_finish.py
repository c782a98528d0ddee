"""Roughing and finishing of a face: which pass is the last, and how much it takes."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from jobsheet.edit.commands import SetField
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.rough_and_finish import close, finishes, last_pass, length_text, only_wall

from .views_read import sample, steps_of, view_of


def last_of(job, key):
    plan = plan_of(view_of(job))
    return last_pass(plan, next(step for step in plan.steps if step.key == key))


def test_the_second_face_finishes_what_the_first_roughed():
    last = last_of(sample(100), "face-finish")
    assert last.rough.key == "face-rough"
    assert last.thick == pytest.approx(last.step.fields.depth.value)
    assert last_of(sample(100), "face-rough").rough is None
    assert last_of(sample(100), "drill") is None


def test_limits_are_close_by_their_whole_width():
    step = steps_of(SetField("face-finish", "measure", "11.5 ±0.05").apply(sample(100)))["face-finish"]
    assert close(step, 0.11e-3)
    assert not close(step, 0.1e-3)
    assert finishes(step, 0.11e-3)
    assert not close(steps_of(sample(100))["clamp"], 1.0)
    assert not only_wall(step)


def test_a_length_as_it_is_typed():
    assert length_text(0.3e-3, "mm") == "0.3 mm"
    assert length_text(0.3048e-3, "in") == "0.0120 in"


def fake(mills, *, key="one", makes=(), index=1, **fields):
    """A step that mills so, with those fields [mm]; what is not said is None."""
    known = {"path": None, "leave": None, "cut": None, "width": None, "depth": None, "layer": None, **fields}
    values = {
        name: value if value is None or name == "path" else SimpleNamespace(value=value * 1e-3)
        for name, value in known.items()
    }
    return SimpleNamespace(
        roles=SimpleNamespace(mills=mills, sizes=True), fields=SimpleNamespace(**values), makes=makes, index=index,
        lie=SimpleNamespace(up="top", size=(0.08, 0.05, 0.012)), set_up=SimpleNamespace(key=key),
    )  # fmt: skip


@pytest.mark.parametrize(
    ("step", "thick", "rough"),
    [
        (fake("wall", width=10, makes=("left",)), 10, None), (fake("wall", width=10, cut=3, makes=("left",)), 3, None),
        (fake("wall", width=2, cut=3, makes=("left",)), 2, None), (fake("wall", width=10, leave=0.3, makes=("left",)), 0.3, "itself"),
        (fake("wall", width=10), 10, None), (fake("recess", leave=0.2), 0.2, "itself"), (fake("flat", depth=1), 1, None),
        (fake("flat", depth=3, layer=1), 1, None),
    ],
)  # fmt: skip
def test_how_thick_the_last_pass_is_and_whether_it_roughed_itself(step, thick, rough):
    last = last_pass(SimpleNamespace(steps=()), step)
    assert last.thick == pytest.approx(thick * 1e-3)
    assert (last.rough is step) is (rough == "itself")


def test_what_makes_no_face_and_no_wall_has_no_last_pass():
    for step in (fake("wall", width=10, path=("a", "b")), fake("recess"), fake("groove", width=10), fake("")):
        assert last_pass(SimpleNamespace(steps=()), step) is None


@pytest.mark.parametrize("mills", ["wall", "flat"])
def test_what_roughed_it_is_the_last_before_it_in_its_set_up_on_its_face(mills):
    face = "left" if mills == "wall" else "top"
    size = {"width": 10} if mills == "wall" else {"depth": 1}
    me = fake(mills, makes=(face,), index=4, **size)
    early, late = (fake("wall", makes=(face,), index=index) for index in (0, 1))
    elsewhere, other = (
        fake("wall", key="two", makes=(face,), index=2),
        fake("wall", makes=("right",), index=3),
    )
    behind = fake("wall", makes=(face,), index=5)
    plan = SimpleNamespace(steps=(early, late, elsewhere, other, me, behind))
    assert last_pass(plan, me).rough is late
    nothing = fake("wall", index=4, width=10)
    assert last_pass(SimpleNamespace(steps=(early, late, elsewhere, other, nothing)), nothing).rough is None
