"""A drawing as SVG: well-formed, in the sheet's weights, and with whatever words it holds."""

from xml.etree import ElementTree as ET

from jobsheet.drawing.drawn import Drawing, Ellipse, Line, Text
from jobsheet.drawing.svg import svg_text

SVG = "{http://www.w3.org/2000/svg}"


def test_lines_ellipses_and_words_are_there():
    drawing = Drawing(
        100, 50,
        (
            Line(((0, 0), (10, 5)), "cut"), Line(((0, 0), (10, 0), (5, 5)), closed=True, fill="paper", dash="removed"),
            Ellipse(20, 20, 5, 3, turn=0.5), Text(1, 2, "⌀ 6 <& 7>", "size"),
        ),
    )  # fmt: skip
    root = ET.fromstring(svg_text(drawing, "A & B"))
    assert root.attrib["width"] == "100pt"
    assert root.find(f"{SVG}title").text == "A & B"
    assert root.find(f"{SVG}text").text == "⌀ 6 <& 7>"
    assert root.find(f"{SVG}polyline").attrib["stroke-width"] == "2.6"
    assert root.find(f"{SVG}polygon").attrib["stroke-dasharray"] == "4 2.5"
    assert root.find(f"{SVG}ellipse").attrib["rx"] == "5.00"
