"""Labels find a place where nothing else stands."""

from __future__ import annotations

from jobsheet.drawing.drawn import Text
from jobsheet.drawing.placing import Placer, box_of


def test_a_label_takes_the_first_free_place():
    placer = Placer((0.0, 0.0, 100.0, 100.0))
    first = (Text(10, 20, "here", "caption"),)
    assert placer.put((first,)) == first
    assert placer.put((first,)) == ()
    elsewhere = (Text(10, 60, "here", "caption"),)
    assert placer.put((first, elsewhere)) == elsewhere
    assert box_of(elsewhere)[0] == 10
