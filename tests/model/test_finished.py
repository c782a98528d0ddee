"""What the part shall be, as values: whether anything is said, and the three sizes in their order."""

from __future__ import annotations

from jobsheet.model.finished import Feature, Finished, Mouth, Shape
from jobsheet.model.quantity import Size


def test_blanks_alone_say_nothing():
    assert not Finished()
    assert not Finished(sizes="  ")
    assert Finished(sizes="80 x 50 x 12")
    assert Finished(features=("",)), "a line that is typed into stands there, though it is empty"


def test_sizes_are_length_width_and_height():
    one, other = Size(0.08, 0.08, 0.08, "80"), Size(0.012, 0.012, 0.012, "12")
    assert Shape(text="", length=one, height=other).sizes == (one, None, other)


def test_a_feature_and_its_mouth_say_what_they_are():
    mouth = Mouth(what="countersink", size=Size(0.01, 0.01, 0.01, "10"))
    assert mouth.kind == "countersink"
    assert Feature(text="6 through", what="hole", mouth=mouth).kind == "hole"
