"""A list of places as rows: taken apart and put together again, and what is done with a row."""

import pytest

from jobsheet.operations import place_rows as rows
from jobsheet.operations.place_rows import Made, Single, pieces_of, rows_of, text_of

CIRCLE = "circle of 6 on 40 around 40, 25"


def spots(pieces):
    return [(row.x, row.y) for row in rows_of(pieces)]


@pytest.mark.parametrize(
    "text",
    [
        "14, 12", "14, 12; 66, 12; 66, 38; 14, 38", f"14, 12; {CIRCLE}; 70, 45", CIRCLE, "12,5, 7,25", "1/2 in, 3/4 in", "circle of six; 3, 4", "",
        "14, 12; 3z, 4; 5, ",
    ],
)  # fmt: skip
def test_a_text_is_its_pieces(text):
    pieces = pieces_of(text, "mm")
    assert text_of(pieces) == text.rstrip() or text_of(pieces) == text
    assert pieces_of(text_of(pieces), "mm") == pieces


@pytest.mark.parametrize(
    ("x", "y", "means"),
    [
        ("40; 20, 20", "25", "40, 25; 20, 20"), ("14, 12; 66, 12", "25", "14, 12; 66, 12"), ("14", "12; 66, 12", "14, 12; 66, 12"),
        (CIRCLE, "25", CIRCLE), ("40 | 25", "9", "40, 25"), ("", "", ""), (" ", "3", ", 3"),
    ],
)  # fmt: skip
def test_more_than_a_number_typed_into_one_box(x, y, means):
    typed = (Single(x, y),)
    assert text_of(pieces_of(text_of(typed), "mm")) == means


def test_a_generator_is_rows_and_stays_one_piece():
    pieces = pieces_of(f"14, 12; {CIRCLE}", "mm")
    assert [type(piece) for piece in pieces] == [Single, Made]
    # The circle of issue and drawing: radius 20 round 40, 25, the first hole along x.
    assert spots(pieces)[:3] == [("14", "12"), ("60", "25"), ("50", "42.321")]


@pytest.mark.parametrize(
    "edit",
    [
        lambda pieces: rows.with_cell(pieces, 2, "x", "51"), lambda pieces: rows.taken_out(pieces, 2), lambda pieces: rows.inserted(pieces, 2),
        lambda pieces: rows.moved(pieces, 2, 1), lambda pieces: rows.moved(pieces, 0, 1),
    ],
)  # fmt: skip
def test_a_row_of_a_generator_done_by_hand_makes_plain_rows_of_it_and_says_so(edit):
    pieces, name = edit(pieces_of(f"14, 12; {CIRCLE}", "mm"))
    assert name in ("circle of 6", ("circle of 6",))
    assert all(isinstance(piece, Single) for piece in pieces)


def test_rows_before_behind_and_between_generators_leave_them_alone():
    pieces = pieces_of(f"14, 12; {CIRCLE}; 70, 45", "mm")
    for done in (
        rows.with_cell(pieces, 0, "y", "13"), rows.taken_out(pieces, 7), rows.inserted(pieces, 1), rows.inserted(pieces, 7), rows.inserted(pieces, 8),
    ):  # fmt: skip
        assert done[1] == ""
        assert any(isinstance(piece, Made) for piece in done[0])


def test_the_order_of_rows_is_the_order_of_walking():
    pieces = pieces_of("1, 1; 2, 2; 3, 3", "mm")
    assert spots(rows.moved(pieces, 2, -1)[0]) == [("1", "1"), ("3", "3"), ("2", "2")]
    assert rows.moved(pieces, 0, -1) == (pieces, ())
    assert rows.moved(pieces, 2, 1) == (pieces, ())


def test_put_in_replaces_only_what_it_made():
    pieces = pieces_of(f"14, 12; {CIRCLE}; row of 2 from 1, 1, step 5", "mm")
    other = rows.put_in(pieces, "circle of 8 on 40 around 40, 25", CIRCLE, "mm")
    assert text_of(other) == "14, 12; circle of 8 on 40 around 40, 25; row of 2 from 1, 1, step 5"
    more = rows.put_in(pieces, "row of 3 from 1, 1, step 5", "row of 9 from 1, 1, step 5", "mm")
    assert text_of(more).startswith(text_of(pieces))


def test_blank_rows_say_nothing():
    assert rows.same((Single("1", "2"), Single()), pieces_of("1, 2", "mm"))
    assert rows.same((Single("40, 25;", "9"),), pieces_of("40, 25", "mm"))
    assert not rows.same((Single("40", "2"),), pieces_of("40, 25", "mm"))
