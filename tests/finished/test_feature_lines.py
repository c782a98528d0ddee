"""Lines as people type them from a drawing: what is understood, what is asked, and that nothing half-typed does harm."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from jobsheet.errors import QuantityError
from jobsheet.finished.feature_line import read_feature
from jobsheet.finished.finished_part import finished_part
from jobsheet.finished.sizes_line import read_shape
from jobsheet.finished.told_back import shape_told, told
from jobsheet.finished.unit_written import with_units
from jobsheet.finished.written_line import written
from jobsheet.model.finished import Finished

DATUMS = (("A", "bottom"), ("B", "front"), ("C", "left"))
#: Lines as the reference on planning from a drawing has them ("As typed"), and others of our own invention.
LINES = (
    "4 x M8 blind 16 at 20, 15; 60, 15; 60, 35; 20, 35",
    "4 × M8 x 16/20 at grid of 2 × 2 from 20, 15, step 40 × 20",
    "M10 x 25/30 at 20, 20",
    "16 H7 through at 40, 25",
    "16 H7 through at 40 ±0.05 from C, 22 ±0.05 from A from front",
    "hole 6.8 through at 20, 15",
    "hole 10 x 25",
    "6.6 cbore 11 x 6.5",
    "6.6 csk 12.6 x 90",
    "6.6 through spot face 14 at 10, 10",
    "6 x M6 through on PCD 60, first at 30",
    "6 x M6 through on PCD 60 around 50, 30, first at 15",
    "slot 12 H9 x 6 deep from left edge",
    "slot 12 H9 x 6 deep from left edge, 40 long, at 25 from B",
    "slot 10 +0.05/0 through from 25, 30 to 75, 30 within 0.05",
    "slot 12 x 6 deep left to right at 25",
    "keyway 8 P9 x 4 +0.2, 32 long, shaft 25",
    "window 50 x 30 R5 at 60, 40",
    "pocket 30 x 20 x 6 deep R4 at 40, 25 (for the plate)",
    "step 20 x 12 right end",
    "cham 0.5 x 45",
    "edges broken 0.3",
    "chamfer 1 x 30 top edges",
    "T-slot 12 for M10",
    "T-slot 12 H12 recess 20 x 9 x 22 deep left to right at 25",
    "dovetail 20 x 8 x 60 left to right at 25",
    "#7 through at 10, 10",
    "1/4-20 UNC x 12 deep at 10, 10",
    "M8x1.25 through",
    "16,5 through at 20, 15 Ra 1.6",
    "2 holes 0.266 in through at 1/2 in, 3/4 in; 1-1/4 in, 3/4 in",
)
SIZES = (
    "80 ±0.1 x 50 x 30; A square to B 0.03",
    "60 ±0.05 × 40 ±0.03 × 25 ±0.03; all square 0.03; opposite parallel 0.03",
    "80 x 50 as bought x 11.5 ±0.1; top flat 0.02; top Ra 1.6",
    "height 11.5 ±0.1; bottom as bought",
    "84 × 50 ±0.05 × 40 ±0.05; square 0.05; parallel 0.03; flat 0.02",
)


def read(text, units="mm"):
    return read_feature(text, units, DATUMS)


def alike(one, other):
    """Whether two features say the same, however they are written."""
    return replace(one, text="") == replace(other, text="")


def test_a_tapped_hole_with_its_hole_below():
    """ISO 15786 writes thread and hole with a slash: M10 x 25/30 (planning from a drawing, I57)."""
    found = read("M10 x 25/30 at 20, 20")
    assert found.what == "tapped hole"
    assert found.thread.pitch == pytest.approx(1.5e-3)  # ISO 261
    assert (found.depth.nominal, found.hole_depth.nominal) == pytest.approx((25e-3, 30e-3))


def test_four_threads_at_their_places():
    found = read("4 x M8 blind 16 at 20, 15; 60, 15; 60, 35; 20, 35")
    assert (found.count, found.depth.nominal) == (4, pytest.approx(16e-3))
    assert [point.text for point in found.places.points] == ["20, 15", "60, 15", "60, 35", "20, 35"]
    assert found.counted == ("left", "front")


def test_a_keyway_as_the_tables_have_it():
    """8 P9 is 7.949 to 7.985 (ISO 286-2), 4 +0.2 deep (DIN 6885)."""
    found = read("keyway 8 P9 x 4 +0.2, 32 long, shaft 25")
    assert (found.size.low * 1e3, found.size.high * 1e3) == pytest.approx((7.949, 7.985))
    assert (found.depth.low * 1e3, found.depth.high * 1e3) == pytest.approx((4.0, 4.2))
    assert found.shaft.nominal == pytest.approx(25e-3)


def test_places_count_from_the_faces_that_stand_beside_them():
    found = read("16 H7 through at 22 from A, 40 from C from front")
    assert (found.face, found.counted) == ("front", ("left", "bottom"))
    assert found.places.points[0].text == "40, 22"


def test_a_pitch_circle_begins_where_it_says():
    found = read("6 x M6 through on PCD 60, first at 30")
    assert found.count == 6
    assert found.circle.diameter.value == pytest.approx(60e-3)
    assert math.degrees(found.circle.first) == pytest.approx(30)


@pytest.mark.parametrize(
    ("text", "both"),
    [
        ("M10x1", ("M10x1 through", "M10 blind 1")),
        ("6 x 25", ("6 x 25 through", "hole 6 x 25")),
        ("slot 12 x 6 deep from left", ("from left edge", "from left face")),
        ("16 H7 through at 40, 22 from front", ("from front face", "from left")),
        ("1,000 through", ("1000", "1.000")),
    ],
)
def test_two_readings_are_answered_with_both(text, both):
    with pytest.raises(QuantityError, match="two ways") as caught:
        read(text)
    assert all(one in str(caught.value) for one in both)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("16 h7 through", "16 H7"),
        ("6.8 at 20, 15", "how deep"),
        ("M8 at 20, 15", "how deep"),
        ("window 50 x 30", "R5"),
        ("4 x 6.6 through at 10, 10; 20, 20", "2 places are"),
        ("6 through at 20", "two numbers"),
        ("6 through 5 deep", "take one out"),
        ("M10 blind 30/25", "25/30"),
        ("80 x 50 x 30", "line of the sizes"),
        ("6 through at 10, 10 from E, B", "no face"),
        ("6 through at 10, 10, 20, 20", "semicolons"),
        ("on PCD 60", "no feature"),
        ("M6 through on PCD 60", "how many"),
    ],
)
def test_what_is_missing_or_wrong_is_asked_in_one_sentence(text, says):
    with pytest.raises(QuantityError, match=says):
        read(text)


@pytest.mark.parametrize("text", LINES)
def test_a_line_is_written_and_read_again(text):
    found = read(text)
    line = written(found)
    again = read(line)
    assert alike(again, found)
    assert written(again) == line
    assert told(found, "mm")


@pytest.mark.parametrize("text", LINES + SIZES)
@pytest.mark.parametrize("units", ["mm", "in"])
def test_every_beginning_of_a_line_is_read_or_answered(text, units):
    answered = []
    for end in range(len(text) + 1):
        for reader in (read_feature, read_shape):
            try:
                reader(text[:end], units, DATUMS)
            except QuantityError as error:
                answered.append((str(error), error.start, end))
    assert all(sentence.strip() and 0 <= start <= max(end, 1) for sentence, start, end in answered)


@settings(max_examples=150, deadline=None)
@given(
    st.lists(st.sampled_from([*" ".join(LINES).split(), ";", ",", "x", "±", "Ø", "−"]), max_size=9),
    st.sampled_from(["mm", "in"]),
)
def test_any_words_in_any_order_are_read_or_answered(words, units):
    text = " ".join(words)
    try:
        found = read(text, units)
    except QuantityError:
        return
    line = written(found)
    assert written(read(line, units)) == line


@settings(max_examples=100, deadline=None)
@given(
    st.integers(1, 6), st.sampled_from(["6.8", "16 H7", "0.5 in", "M8", "12 ±0.1"]),
    st.sampled_from(["through", "x 12 deep", "blind 9.5"]), st.integers(0, 500), st.integers(0, 500),
    st.sampled_from(["", " from C, B", " within 0.05", " Ra 3.2"]),
)  # fmt: skip
def test_places_come_back_as_they_were_said(count, size, depth, x, y, behind):
    at = "; ".join(f"{x / 10:g}, {(y + 10 * n) / 10:g}" for n in range(count))
    text = f"{f'{count} x ' if count > 1 else ''}{size} {depth} at {at}{behind}"
    found = read(text)
    assert found.count == len(found.places) == count
    assert found.places.points[0].x.value == pytest.approx(x * 1e-4)
    assert found.places.points[-1].y.value == pytest.approx((y + 10 * count - 10) * 1e-4)
    assert alike(read(written(found)), found)


def test_sizes_with_squareness():
    shape = read_shape(SIZES[0], "mm", DATUMS)
    assert [size.nominal * 1e3 for size in shape.sizes] == pytest.approx([80, 50, 30])
    assert (shape.length.low * 1e3, shape.length.high * 1e3) == pytest.approx((79.9, 80.1))
    assert (shape.forms[0].face, shape.forms[0].to) == ("bottom", ("front",))
    assert shape.forms[0].within == pytest.approx(0.03e-3)
    assert "bottom square to front within 0.03 mm" in shape_told(shape, "mm")


def test_as_bought_is_chosen_for_both_faces_of_a_size():
    assert read_shape(SIZES[2], "mm", DATUMS).as_bought == ("front", "rear")


@pytest.mark.parametrize(
    ("text", "says"),
    [("80 x 50", "Three sizes"), ("80 x 50 x 30 x 2", "fourth"), ("A square to top 0.03", "cannot be square"),
     ("A parallel to B 0.02", "parallel to the top"), ("A square to B", "within how much"), ("wide", "width is missing")],
)  # fmt: skip
def test_what_is_wrong_in_the_sizes_is_said(text, says):
    with pytest.raises(QuantityError, match=says):
        read_shape(text, "mm", DATUMS)


@pytest.mark.parametrize("text", LINES)
def test_units_written_change_no_size(text):
    changed = with_units(Finished(features=(text,)), "mm", DATUMS).features[0]
    before, after = read(text), read_feature(changed, "in", DATUMS)
    for name in ("size", "depth", "other", "length", "radius", "across", "hole_depth", "within"):
        one, other = getattr(before, name), getattr(after, name)
        if one is not None:
            assert getattr(other, "nominal", other) == pytest.approx(getattr(one, "nominal", one)), name
    if before.places is not None:
        assert [p.spot for p in after.places.points] == [p.spot for p in before.places.points]


def test_a_line_that_cannot_be_read_is_kept_beside_the_others():
    from jobsheet.storage.job_file import blank_job

    job = replace(
        blank_job("bench-mill-b-1"),
        finished=Finished(sizes="80 x 50", features=("16 h7 through", "6 through")),
    )
    part = finished_part(job)
    assert [(one.line, one.text) for one in part.unread] == [(0, "80 x 50"), (1, "16 h7 through")]
    assert [number for number, _ in part.features] == [2]


def test_general_limits_stand_for_sizes_without_their_own():
    """ISO 2768-1 m: ±0.3 from 30 to 120 (ISO 2768-1:1989 table 1)."""
    from jobsheet.storage.job_file import blank_job

    job = blank_job("bench-mill-b-1")
    job = replace(
        job,
        part=replace(job.part, general_limits="ISO 2768-mK"),
        finished=Finished(sizes="80 x 50 ±0.1 x 12"),
    )
    part = finished_part(job)
    assert part.limits(part.shape.length) == pytest.approx((79.7e-3, 80.3e-3))
    assert part.limits(part.shape.width) == pytest.approx((49.9e-3, 50.1e-3))


def test_an_end_is_square_to_the_sides_where_nobody_says_to_what():
    shape = read_shape("109 x 30 x 16; right end square 0.05", "mm", DATUMS)
    assert shape.forms[0].face == "right"
    assert sorted(shape.forms[0].to) == ["bottom", "front", "rear", "top"]
    with pytest.raises(QuantityError, match="which face it is square to"):
        read_shape("109 x 30 x 16; right square 0.05", "mm", DATUMS)
