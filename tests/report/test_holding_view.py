"""The holding drawn: every kind at three sizes stays in its picture, true to its
numbers, and says what it cannot draw.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.drawing.drawn import Ellipse, Line, Text
from jobsheet.holdings.all_holdings import changed_to, holdings
from jobsheet.model.held_work import NOTHING
from jobsheet.report.holding_view import holding_picture
from jobsheet.report.zero_view import zero_picture

from .holdings_drawn import CARD, HIGH, WIDE, held, outlines, said

SIZES = [(60, 40, 12), (120, 60, 30), (180, 25, 25)]


def inside(drawing, slack=12.0):
    for item in drawing.items:
        if isinstance(item, Line):
            yield from (-slack <= x <= WIDE + slack and -slack <= y <= HIGH + slack for x, y in item.points)
        elif isinstance(item, Ellipse):
            yield -slack <= item.x <= WIDE + slack and -slack <= item.y <= HIGH + slack


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("name", holdings())
def test_every_kind_at_three_sizes(name, size):
    set_up, lie = held(changed_to(NOTHING, name, "mm"), size)
    for drawing in (
        holding_picture(set_up, lie, (("A", "front"),), WIDE, HIGH, CARD),
        zero_picture(set_up, lie, (), (("A", "front"),), WIDE, HIGH, machine=CARD),
    ):
        assert all(inside(drawing))


def test_jaws_are_as_deep_as_their_card_says():
    """B-1's jaws are 25 deep, the work 20 high and 8 above them: in the picture 25 to
    20, and 8 of the work stands over.
    """
    set_up, lie = held(said("vice", above_jaws="8", rests_on="packing"), fixed_jaw="rear")
    drawing = holding_picture(set_up, lie, (), WIDE, HIGH, CARD)
    boxes = outlines(drawing)
    (work,) = [one for one in boxes if one.fill == "paper" and one.weight == "outline"]
    high = work.points[2][1] - work.points[0][1]
    tall = {round((one.points[2][1] - one.points[0][1]) / high * 20, 1) for one in boxes}
    assert 25.0 in tall
    top = min(y for _, y in work.points)
    jaw = next(one for one in boxes if round((one.points[2][1] - one.points[0][1]) / high * 20, 1) == 25.0)
    assert (min(y for _, y in jaw.points) - top) / high * 20 == pytest.approx(8, abs=0.1)


def test_nothing_and_words_are_said():
    for holding, words in (
        (NOTHING, "nothing holds it yet"),
        (said("other words", device="a fixture"), "held as the words say"),
    ):
        set_up, lie = held(holding)
        drawing = holding_picture(set_up, lie, (), WIDE, HIGH, CARD)
        assert any(words in item.words for item in drawing.items if isinstance(item, Text))
        assert len(outlines(drawing)) == 1  # the work alone


@pytest.mark.parametrize("jaw", ["rear", "front", "left", "right"])
def test_the_moving_jaw_is_seen_behind_its_bar(jaw):
    """From above: two hatched jaws with their outlines, and the bar between the work and one of
    them, all in the room that there is.
    """
    bar = said("vice", rests_on="bed", bar="yes", bar_size="12")
    set_up, lie = held(bar, fixed_jaw=jaw)
    with_bar, without = (
        zero_picture(one, lie, (), (), WIDE, HIGH, machine=CARD)
        for one in (set_up, replace(set_up, holding=replace(bar, bar=None)))
    )

    def closed(drawing):
        return [
            item for item in drawing.items if isinstance(item, Line) and item.closed and len(item.points) == 4
        ]

    assert len(closed(with_bar)) == len(closed(without)) + 1
    assert all(inside(with_bar, slack=0))
