"""The holding drawn: every kind at three sizes stays in its picture, true to its numbers, and says what it cannot draw."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.drawing.drawn import Ellipse, Line, Text
from jobsheet.holdings.all_holdings import changed_to, holding_kind, holdings
from jobsheet.model.held_work import NOTHING
from jobsheet.model.lying import lying, stock_box
from jobsheet.model.quantity import Quantity
from jobsheet.report.holding_view import holding_picture
from jobsheet.report.zero_view import zero_picture
from jobsheet.storage.card_files import find_card
from jobsheet.storage.job_file import blank_job

CARD = find_card("bench-mill-b-1")
WIDE, HIGH = 240.0, 150.0
SIZES = [(60, 40, 12), (120, 60, 30), (180, 25, 25)]


def long(value):
    return Quantity(value * 1e-3, f"{value} mm")


def held(holding, size=(80, 50, 20), **laid):
    job = blank_job("bench-mill-b-1")
    length, width, height = map(long, size)
    job = replace(job, stock=replace(job.stock, length=length, width=width, height=height))
    set_up = replace(job.set_ups[0], holding=holding, **laid)
    return set_up, lying(set_up, stock_box(job))


def said(name, **facts):
    kind = holding_kind(name)
    return kind.fields(
        **{entry.name: entry.read(facts[entry.name], "mm") for entry in kind.entries if entry.name in facts}
    )


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


def outlines(drawing):
    return [
        item for item in drawing.items if isinstance(item, Line) and item.closed and len(item.points) == 4
    ]


def test_jaws_are_as_deep_as_their_card_says():
    """B-1's jaws are 25 deep, the work 20 high and 8 above them: in the picture 25 to 20, and 8 of the work stands over."""
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


def test_what_hangs_over_is_drawn_over():
    """100 long, 30 over the left: from above the jaws begin at three tenths of its length."""
    set_up, lie = held(said("vice", above_jaws="8", over_left="30"), (100, 50, 20), fixed_jaw="rear")
    drawing = zero_picture(set_up, lie, (), (), WIDE, HIGH, machine=CARD)
    boxes = outlines(drawing)
    (work,) = [one for one in boxes if one.fill == "paper"]
    left, right = (ends(x for x, _ in work.points) for ends in (min, max))
    jaws = [one for one in boxes if one is not work]
    assert jaws
    assert all(
        (min(x for x, _ in one.points) - left) / (right - left) == pytest.approx(0.3, abs=0.01)
        for one in jaws
    )


def test_what_a_step_took_off_is_not_drawn_on_the_sheets_after_it(tmp_path):
    """The straps of the cover plate come off in step 40; screws hold it from there."""
    from jobsheet.paths import sample_jobs
    from jobsheet.report.held_in_words import changes, gone_by
    from jobsheet.storage.job_file import read_job

    (set_up,) = read_job(next(iter(sample_jobs().glob("hm-104*.yaml")))).set_ups
    assert gone_by(set_up, 34) == frozenset()
    assert changes(set_up, 34) == ""
    assert "strap" in gone_by(set_up, 40)
    assert changes(set_up, 58) == "straps off since 40, screws hold"
    lie = lying(set_up, ((0.0, 0.124), (0.0, 0.084), (0.0, 0.004)))
    counts = [
        len(zero_picture(set_up, lie, (), (), WIDE, HIGH, machine=CARD, without=gone).items)
        for gone in (frozenset(), gone_by(set_up, 40))
    ]
    assert counts[0] - counts[1] >= 4  # four straps


def test_clamps_and_bolts_are_printed_where_the_holding_is_not_named_by_them():
    from jobsheet.report.held_in_words import sits_words

    assert "m10" in sits_words(said("vee block", blocks="2", clamps="2", bolt="M10"), "mm").casefold()
    assert "clamps 3" in sits_words(said("sine plate", clamps="3"), "mm")
    assert "M12" not in sits_words(said("straps", clamps="4", bolt="M12"), "mm")  # 4 strap clamps M12


@pytest.mark.parametrize("jaw", ["rear", "front", "left", "right"])
def test_the_moving_jaw_is_seen_behind_its_bar(jaw):
    """From above: two hatched jaws with their outlines, and the bar between the work and one of them, all in the room that there is."""
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
