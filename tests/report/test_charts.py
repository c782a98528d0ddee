"""Charts as values: every mark stands at its size, no word lies on another or
over the edge, at every size there is.
"""

from __future__ import annotations

from itertools import pairwise

import pytest

from jobsheet.drawing.drawn import Drawing, Ellipse, Line, Text
from jobsheet.reckoning.known_capacity import prior, snapshot_of
from jobsheet.reckoning.ladder.ladders import plan, rung_at, trial_of
from jobsheet.report.charts import chance_chart, torque_chart, trial_mark
from jobsheet.sheet.fonts import width as printed_width
from jobsheet.sheet.styles import STYLES
from jobsheet.storage.card_files import find_card

SIZES = ((330.0, 300.0), (440.0, 360.0), (560.0, 420.0))
MACHINE = "bench-mill-b-1"


@pytest.fixture(scope="module")
def side():
    """The ladder of demo-scenario section 3 and its five trials."""
    ladder = plan(
        MACHINE, cutter="end mill 12 mm, 4 teeth, 30 mm out", material="S235", kind="side", trials=(),
        texts={"width": "6 mm", "feed_per_tooth": "0.04 mm", "spindle": "560 rpm"},
    )  # fmt: skip
    told = ((0.5, "clean"), (1.0, "clean"), (1.5, "clean"), (2.0, "clean"), (2.5, "chatter"))
    trials = tuple(
        trial_of(ladder, rung_at(ladder, {"depth": f"{deep} mm"}), outcome=outcome, date="2026-11-12")
        for deep, outcome in told
    )
    return ladder, trials


def chart(side, size, outcome="chatter", *, tried=True):
    ladder, trials = side
    trials = (
        *trials[:4],
        trial_of(ladder, rung_at(ladder, {"depth": "2.5 mm"}), outcome=outcome, date="2026-11-12"),
    )
    known = snapshot_of(MACHINE, trials, "2026-11-25", ladder.setting.shop).find(
        "chatter", "side", "end mill"
    )
    return chance_chart(
        ladder, prior("chatter", "side", "end mill"), known if tried else None, trials if tried else (), *size,
        planned=known.planned if tried else None,
    )  # fmt: skip


def printed_box(text: Text):
    """Where the words really stand, by the letters of the sheet's own face."""
    style = STYLES[text.style]
    wide = printed_width(text.words, style.size, bold=style.bold)
    left = text.x - {"start": 0.0, "middle": 0.5, "end": 1.0}[text.anchor] * wide
    return left, text.y - style.size * 0.75, left + wide, text.y + style.size * 0.2


def overlaps(drawing: Drawing):
    boxes = [(item.words, printed_box(item)) for item in drawing.items if isinstance(item, Text)]
    return [
        (one, other)
        for index, (one, a) in enumerate(boxes)
        for other, b in boxes[index + 1 :]
        if a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]
    ]


def words(drawing: Drawing):
    return [item.words for item in drawing.items if isinstance(item, Text)]


@pytest.mark.parametrize("outcome", ["chatter", "noisy", "clean"])
@pytest.mark.parametrize("size", SIZES)
def test_no_word_lies_on_another_or_over_the_edge(side, size, outcome):
    drawing = chart(side, size, outcome)
    assert overlaps(drawing) == []
    for item in drawing.items:
        if isinstance(item, Text):
            left, top, right, bottom = printed_box(item)
            assert left >= -0.5, item.words
            assert top >= -0.5, item.words
            assert right <= size[0] + 0.5, item.words
            assert bottom <= size[1] + 0.5, item.words


@pytest.mark.parametrize("size", SIZES)
def test_it_says_what_was_learned_and_what_to_plan_to(side, size):
    """Section 3: the largest demand at no more than 10 % is 1.76 mm at 6 wide; a plan
    is rounded down to what a hand sets.
    """
    said = words(chart(side, size))
    assert "plan to 1.75 mm" in said
    assert "learned: about 2.3 mm" in said  # 6.81 N/µm over 3.02 N/µm a millimetre = 2.25
    assert "before any trial," in said


def test_trials_stand_under_their_size_on_one_scale(side):
    """Half a millimetre apart in the cut is the same distance apart on the chart,
    for the demand goes with the depth.
    """
    drawing = chart(side, (440.0, 360.0))
    size = 5.9 * 9 / 16  # the ring of a mark of 9 points on its grid of 16
    axis = max(item.points[0][1] for item in drawing.items if isinstance(item, Line) and item.ink == "edge")
    discs = [item for item in drawing.items if isinstance(item, Ellipse) and item.a == pytest.approx(size)]
    clean = sorted({round(item.x, 3) for item in discs if item.y < axis + 15})[:4]
    steps = [b - a for a, b in pairwise(clean)]
    assert len(steps) == 3
    assert max(steps) == pytest.approx(min(steps), abs=0.05)


def test_nothing_tried_is_the_card_alone(side):
    drawing = chart(side, (440.0, 360.0), tried=False)
    assert "nothing tried yet:" in words(drawing)
    assert not any("plan to" in one for one in words(drawing))
    assert not any(isinstance(item, Line) and item.fill == "band" for item in drawing.items)


def test_outcomes_are_told_apart_by_shape():
    shapes = {trial_mark(outcome, 9.0) for outcome in ("clean", "noisy", "chatter", "slipped")}
    assert len(shapes) == 4
    assert trial_mark("noisy", 9.0) == trial_mark("slowed", 9.0)
    assert trial_mark("chatter", 9.0) == trial_mark("stalled", 9.0) == trial_mark("broke", 9.0)


@pytest.mark.parametrize("machine", ["bench-mill-b-1", "bench-mill-b-2", "knee-mill-k-2"])
@pytest.mark.parametrize("factor", [None, 0.7, 1.3])
def test_torque_against_speed_has_its_speeds_and_cuts(machine, factor):
    card = find_card(machine)
    cuts = (("20", 560 / 60, 1.2), ("30", 560 / 60, 0.25), ("50", 15.0, 1.81), ("60", 15.0, 1.69))
    for size in ((246.0, 150.0), (330.0, 240.0), (470.0, 300.0)):
        drawing = torque_chart(card, cuts, *size, factor=factor)
        assert overlaps(drawing) == []
        said = ", ".join(words(drawing))
        assert all(number in said for number in ("20", "30"))
        if machine == "bench-mill-b-1":
            assert {"180", "320", "560", "900", "1450", "2300"} <= set(words(drawing))
        if machine == "bench-mill-b-2":
            assert {"50", "2500"} <= set(words(drawing))


def test_the_curve_goes_through_the_torques_of_the_card():
    """B-1 at 180: 15.0 for seconds; at 2300: 1.85 for long and 3.33 for seconds (demo-scenario section 2)."""
    drawing = torque_chart(find_card("bench-mill-b-1"), (), 330.0, 240.0)
    long, short = (item for item in drawing.items if isinstance(item, Line) and len(item.points) == 6)
    high = 240.0 - 40.0 - 16.0
    assert (200.0 - long.points[-1][1]) / high * 15 == pytest.approx(1.85, abs=0.01)
    assert (200.0 - short.points[-1][1]) / high * 15 == pytest.approx(3.33, abs=0.01)
    assert (200.0 - short.points[0][1]) / high * 15 == pytest.approx(15.0, abs=0.01)
