"""Five drawings said in one line a feature, in the real window at a hand's pace: each line begins with a
form from the list under its field.

What it costs is counted and printed: keys, seconds a drawing. Each of them takes under a
minute; what the program understood is compared with the drawing's own figures, and the review
finds the feature that no step makes.
"""

import time

import pytest

from jobsheet.finished.finished_part import finished_part
from jobsheet.storage.job_file import read_job
from tests.e2e.counted_hand import CountedHand
from tests.e2e.test_by_hand import PACE, picture

pytestmark = pytest.mark.e2e

#: A drawing: what it is called, its stock, and each line as the words that find its form, what is typed over
#: the sizes, and over the rest of the example behind them (so many of its characters go).
DRAWINGS = (
    ("TP-1 Tapped plate", "80 x 50 x 12", [
        ("stay as bought", "80 x 50", "11.5 ±0.1; bottom as bought", "11.5 ±0.1; bottom as bought"),
        ("thread so deep", "M6 blind 10", "20, 15; 60, 15; 60, 35; 20, 35", "14, 12; 66, 12; 66, 38; 14, 38"),
    ]),
    ("RB-2 Reamed block", "60 x 40 x 30", [
        ("limits of their own", "60 ±0.1 x 40 ±0.1 x 30", "", ""),
        ("reamed", "12 H7", "40, 25 within 0.05", "30, 20 within 0.05"),
        ("countersink", "6.6 through csk 12.6 x 90", "10, 10", "8, 8"),
    ]),
    ("SP-3 Slotted plate", "100 x 60 x 12", [
        ("length x width", "100 x 60 x 12", "", ""),
        ("closed at both", "10 +0.05/0", "25, 30 to 75, 30", "30, 30 to 70, 30"),
        ("counterbore", "6.6 through cbore 11 x 6.5", "10, 10", "12, 12"),
    ]),
    ("ST-4 Stepped block", "80 x 50 x 40", [
        ("square to another", "80 x 50 x 40", "", ""),
        ("so wide and", "20 x 12", "", ""),
        ("edges broken", "0.3", "", ""),
    ]),
    ("PL-5 Pocketed lid", "90 x 60 x 15", [
        ("length x width", "90 x 60 x 15", "", ""),
        ("pocket", "50 x 30 x 6", "40, 25", "45, 30"),
        ("holes in a grid", "5 through", "10, 10, step 20 × 15", "10, 10, step 35 × 20"),
    ]),
)  # fmt: skip
#: What each drawing asks, by its own figures: feature, how many places, size and depth [mm], how deep a
#: thread goes or how wide a step is.
ASKED = {
    "TP-1": [("tapped hole", 4, 6.0, 10.0)],
    "RB-2": [("hole", 1, 12.0, None), ("hole", 1, 6.6, None)],
    "SP-3": [("slot", 1, 10.0, None), ("hole", 1, 6.6, None)],
    "ST-4": [("step", 1, 20.0, 12.0), ("chamfer", 1, 0.3, None)],
    "PL-5": [("pocket", 1, None, 6.0), ("hole", 6, 5.0, None)],
}
#: What the review says of each where the only step faces the top.
LEFT_OUT = {
    "TP-1": ["hole-missing"],
    "RB-2": ["hole-missing"],
    "SP-3": ["hole-missing", "slots-and-steps-as-drawn"],
    "ST-4": ["slots-and-steps-as-drawn"],
    "PL-5": ["hole-missing", "slots-and-steps-as-drawn"],
}
#: Tabs from the first field of the job's form to that of the finished sizes.
TO_SIZES = 17
MINUTE = 60


def test_five_drawings_a_line_a_feature(program, tmp_path, capsys):
    hand = CountedHand(program(), pace=int(PACE))
    told = []
    for name, stock, lines in DRAWINGS:
        new_job(hand, name, stock)
        begun, keys = time.monotonic(), hand.pressed
        for index, line in enumerate(lines):
            say(hand, *line, last=index == len(lines) - 1)
        told.append((name, len(lines), hand.pressed - keys, time.monotonic() - begun))
        picture(hand.running, name.split()[0])
        code = name.split()[0]
        hand.keys("Escape")
        hand.insert("face")
        hand.keys("Escape")
        for rule in LEFT_OUT[code]:
            hand.running.remarks(rule)
        hand.save_as(tmp_path / f"{code}.yaml", code)
        understood(read_job(tmp_path / f"{code}.yaml"), ASKED[code])
    hand.keys("ctrl+q")
    assert hand.running.wait() == 0
    with capsys.disabled():
        for name, lines, keys, seconds in told:
            print(f"\n{name}: {lines} lines, {keys} keys, {seconds:.0f} s", end="")
        print()
    assert all(seconds < MINUTE for *_, seconds in told)


def new_job(hand, name, stock):
    """Part, metal, stock and machine; then to the field of the finished sizes."""
    hand.keys("ctrl+n")
    hand.fill(name, "S235", stock, "knee-mill-k-2")
    hand.keys("Return")
    hand.asked(name.split()[0])
    hand.running.keeps("machine: knee-mill-k-2")
    hand.keys("Escape", "F2")
    hand.tabs(TO_SIZES)


def say(hand, words, sizes, of_example, rest, *, last):
    """One line: a form that its words find, its sizes typed over, what stands behind them written anew."""
    hand.type(words)
    hand.keys("Down", "Return")
    hand.type(sizes)
    hand.keys("End")
    if rest:
        hand.keys(*["BackSpace"] * len(of_example))
        hand.type(rest)
    hand.running.keeps((rest or sizes).split(";")[0].strip())
    if not last:
        hand.keys("Return")


def understood(job, asked):
    part = finished_part(job)
    assert not part.unread
    assert part.shape is not None
    for (_, feature), (what, count, size, depth) in zip(part.features, asked, strict=True):
        assert feature.what == what
        assert feature.count == count
        if size is not None:
            assert feature.size.nominal * 1e3 == pytest.approx(size)
        if depth is not None:
            assert feature.depth.nominal * 1e3 == pytest.approx(depth)
