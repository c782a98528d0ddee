"""Drawings become operators of a page: numbers without an exponent, letters that cannot end a text."""

from __future__ import annotations

import io

import pytest
from reportlab.pdfgen.canvas import Canvas

from jobsheet.drawing.drawn import Drawing, Ellipse, Line, Text
from jobsheet.sheet.painter import number, paint


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (0.0, "0"),
        (-0.0, "0"),
        (-1e-9, "0"),
        (12.5, "12.5"),
        (1e-7, "0"),
        (123456.789, "123456.789"),
        (-3.00004, "-3"),
    ],
)
def test_numbers_have_no_exponent_and_nought_no_sign(value, text):
    assert number(value) == text


def painted(*items):
    raw = io.BytesIO()
    canvas = Canvas(raw, pageCompression=0)
    paint(canvas, Drawing(100, 100, items), 0, 100)
    canvas.save()
    return raw.getvalue()


def test_a_line_is_stroked_from_point_to_point():
    page = painted(Line(((10, 20), (30, 20))))
    assert b"10 -20 m" in page
    assert b"30 -20 l" in page


def test_what_has_a_bracket_in_it_does_not_end_its_text():
    page = painted(Text(0, 0, "a)b(c\\"))
    assert b"a)b" not in page
    assert page.startswith(b"%PDF")


def test_a_circle_is_four_curves():
    assert (
        painted(Ellipse(50, 50, 10, 10)).count(b" c\n") + painted(Ellipse(50, 50, 10, 10)).count(b" c ") >= 3
    )
