"""Every example of the list and the help is read as what it is called, in both units."""

from __future__ import annotations

import pytest

from jobsheet.finished.feature_line import read_feature
from jobsheet.finished.forms_of_line import FEATURES, SHAPES
from jobsheet.finished.sizes_line import read_shape
from jobsheet.finished.told_back import shape_told, told
from jobsheet.model.finished import KINDS, MOUTHS

#: What each title must have been read as.
MEANT = {
    "Hole": "hole", "Blind hole": "hole", "Close hole": "hole", "Tapped": "tapped hole", "Slot": "slot", "Keyway": "keyway",
    "Pocket": "pocket", "Window": "window", "Step": "step", "T-slot": "T-slot", "Dovetail": "dovetail", "Chamfer": "chamfer", "Edges": "chamfer",
}  # fmt: skip


@pytest.mark.parametrize("units", ["mm", "in"])
@pytest.mark.parametrize("form", FEATURES, ids=lambda form: form.title)
def test_a_line_is_read_and_told_back(form, units):
    text, (start, end) = form.marked(units)
    feature = read_feature(text, units)
    assert told(feature, units)
    assert 0 <= start < end <= len(text)
    assert any(sign.isdigit() for sign in text[start:end])
    meant = next((what for title, what in MEANT.items() if form.title.startswith(title)), None)
    assert meant is None or feature.what == meant


@pytest.mark.parametrize("units", ["mm", "in"])
@pytest.mark.parametrize("form", SHAPES, ids=lambda form: form.title)
def test_a_line_of_sizes_is_read_and_told_back(form, units):
    text, (start, _) = form.marked(units)
    assert shape_told(read_shape(text, units), units)
    assert text[start].isdigit()


def test_the_two_examples_of_a_form_say_the_same_kind_of_thing():
    for form in FEATURES:
        one, other = (read_feature(form.marked(units)[0], units) for units in ("mm", "in"))
        assert (one.what, one.face, one.count, one.opens, one.counted) == (
            other.what, other.face, other.count, other.opens, other.counted,
        ), form.title  # fmt: skip
        assert (one.mouth is None) == (other.mouth is None), form.title


def test_nothing_that_a_line_can_say_has_no_form():
    every = [read_feature(form.marked("mm")[0], "mm") for form in FEATURES]
    assert {one.what for one in every} == set(KINDS)
    assert {one.mouth.what for one in every if one.mouth} == set(MOUTHS)
    said = {
        name
        for one in every
        for name in one.__struct_fields__
        if getattr(one, name) not in (None, (), "", False)
    }
    assert said >= set(every[0].__struct_fields__)
    shapes = [read_shape(form.marked("mm")[0], "mm") for form in SHAPES]
    assert {asked.form for one in shapes for asked in one.forms} == {"square", "parallel", "flat"}
    assert any(one.as_bought for one in shapes)
    assert any(one.finishes for one in shapes)


def test_the_pages_of_the_help_show_every_form_with_what_is_understood():
    from jobsheet.review.pages.help_pages import page

    for name, forms, told_back in (
        ("feature", FEATURES, lambda text: told(read_feature(text, "mm"), "mm")),
        ("sizes", SHAPES, lambda text: shape_told(read_shape(text, "mm"), "mm")),
    ):
        said = dict(page(f"field:job:finished/{name}").lines)
        for form in forms:
            text = form.marked("mm")[0]
            assert said[form.title].splitlines() == [text, told_back(text)]


def test_the_next_letter_is_offered_for_every_face_without_one():
    from jobsheet.finished.datums_line import next_datums, read_datums

    assert next_datums(())[0] == ("A: bottom", "A: bottom")
    offered = dict(next_datums((("A", "bottom"), ("C", "left"))))
    assert set(offered) == {"B: top", "B: front", "B: rear", "B: right"}
    for whole in offered.values():
        assert read_datums(whole)[:2] == (("A", "bottom"), ("C", "left"))
