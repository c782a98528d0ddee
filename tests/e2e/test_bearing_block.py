"""A bearing block from nothing to paper: a machine made new, the block squared, bored,
tapped and slotted; by keys, by mouse.

Typed at a hand's pace and slower, in small and large windows, dark, at 150 and 200 %: the variants wait for
`--long`. What it costs is counted: at most 900 keys, and nothing is pasted.
"""

import pytest

from jobsheet.storage.job_file import read_job
from tests.e2e.counted_hand import CountedHand, words_of

pytestmark = pytest.mark.e2e

MOST_KEYS = 900
#: What the sheets must say.
ON_PAPER = ("BB-1 Bearing block", "Corner mill", "Bore one hole", "Tap 4 × M6", "Slot 8 wide", "80 mm vice")


def machine(hand, home):
    """As one knows it: name, the chart of its belts, the plate of its motor, its dials."""
    hand.keys("alt+m", "n")
    hand.asked("Bench mill")
    hand.fill("Corner mill", None, None, "200 350 600 950 1500 2200", "0.75 kW", None, "2.5 mm", "125")
    hand.keys("ctrl+s")
    hand.running.until((home / "machines" / "corner-mill.yaml").exists)
    hand.keys("ctrl+w")
    hand.running.take_keys("job sheet")


def job(hand):
    """Part, metal, stock and machine, the metal and the machine from their lists."""
    hand.keys("ctrl+n")
    hand.running.place_of("Part", "EditableText")
    hand.keys("ctrl+a")
    hand.fill("BB-1 Bearing block")
    hand.type("mild steel")
    hand.keys("Return", "Tab")
    hand.fill("82 x 52 x 42")
    hand.type("corner")
    hand.keys("Return", "Return", "Return")
    hand.running.keeps("machine: corner-mill")
    hand.keys("Escape")


def squared(hand):
    hand.keys("alt+j", "q")
    hand.asked("Square all six")
    hand.fill("80 mm", "50 mm", "40 mm")
    hand.keys("Return")
    hand.running.take_keys("BB-1")
    hand.running.keeps("Right end")


def set_up(hand):
    """One more, for what is cut into the top."""
    hand.keys("End", "alt+j", "a")
    hand.fill(
        "Bore and holes",
        *[None] * 6,
        "80 mm vice",
        "2",  # on parallels
        None,
        None,
        "8 mm",
        None,
        "8 mm",
        "20 N*m",
        None,
        None,
        "1",  # a stop at the left
        *[None] * 7,
    )
    hand.fill("A and B", *[None] * 4, "edge finder")
    hand.running.keeps("found: edge finder")
    hand.keys("Escape")


def holes(hand):
    """Five spots, four of them tapped; the deep holes are drilled in pecks, as the review proposes."""
    hand.insert("edge")
    hand.keys("Escape")
    hand.insert("spot")
    hand.keys("Tab")
    hand.fill("40", "25", "12", "10", "68", "10", "68", "40", "12", "40")
    hand.running.keeps("[12, 40]")
    hand.keys("Escape")
    hand.insert("drill 5")
    hand.keys("Tab", "ctrl+Delete", "Escape")
    hand.insert("m6")
    hand.running.keeps("thread: M6")
    hand.keys("Escape")


def bored(hand):
    """Drilled as large as the machine drills, then bored to size."""
    hand.insert("drill 10")
    hand.keys("Tab")
    hand.fill("40", "25")
    hand.keys("Escape")
    hand.insert("bore")
    hand.keys("ctrl+a")
    hand.fill("boring bar 8 mm, 45 mm out", "40", "25", None, None, None, "16 H7")
    hand.running.keeps("16 H7")
    hand.keys("Escape")


def slotted(hand):
    hand.insert("8 slot")
    hand.keys("Tab", "ctrl+a")
    hand.fill("0, 30; 80, 30", "3")
    hand.running.keeps("80, 30")
    hand.keys("Escape")


def made_right(home, tmp_path, monkeypatch):
    """The file and the paper say what was meant."""
    monkeypatch.setenv("JOBSHEET_HOME", str(home))  # its machine is known there
    made = read_job(tmp_path / "b.yaml")
    assert len(made.set_ups) == 7
    kinds = [operation.kind for operation in made.set_ups[-1].operations]
    assert kinds == ["pick-up-edge", "spot-drill", "drill", "tap", "drill", "bore", "slot"]
    places = [
        len(operation.fields.at)
        for operation in made.set_ups[-1].operations
        if hasattr(operation.fields, "at")
    ]
    assert places == [5, 4, 4, 1, 1]
    words = words_of(tmp_path / "b.pdf")
    for said in ON_PAPER:
        assert said in words, said


def typed(hand, tmp_path, monkeypatch):
    """All of it by the keyboard alone."""
    machine(hand, hand.running.home)
    job(hand)
    squared(hand)
    set_up(hand)
    holes(hand)
    bored(hand)
    slotted(hand)
    hand.save_as(tmp_path / "b.yaml", "BB-1")
    hand.export(tmp_path / "b.pdf", "BB-1")
    made_right(hand.running.home, tmp_path, monkeypatch)
    assert hand.pressed <= MOST_KEYS


def test_by_keys(program, tmp_path, capsys, monkeypatch):
    hand = CountedHand(program())
    typed(hand, tmp_path, monkeypatch)
    with capsys.disabled():
        print(f"\nbearing block by keys: {hand.told()}")


@pytest.mark.long
@pytest.mark.parametrize("pace", [120, 300])
def test_by_slower_keys(program, tmp_path, monkeypatch, pace):
    typed(CountedHand(program(), pace), tmp_path, monkeypatch)


@pytest.mark.long
@pytest.mark.parametrize("share", [150, 200])
def test_by_keys_in_large_type(program, tmp_path, monkeypatch, share):
    typed(CountedHand(program(QT_FONT_DPI=str(96 * share // 100))), tmp_path, monkeypatch)


def in_the_small(running):
    """The window of a small screen, in the dark."""
    (window, *_) = running.windows("job sheet")
    running.xdotool("windowsize", "--sync", window, "1024", "700")
    running.keys("alt+v", "d")
    return running


@pytest.mark.long
def test_by_keys_small_and_dark(program, tmp_path, monkeypatch):
    typed(CountedHand(in_the_small(program())), tmp_path, monkeypatch)


# --- by the mouse: keys only for what stands in a box ---


def menu(hand, name, entry):
    hand.click(name, "MenuItem")
    hand.click(entry, "MenuItem")


def machine_pressed(hand, home):
    menu(hand, "Machine", "New machine…")
    hand.asked("Bench mill")
    for name, text in (
        ("Name of the machine", "Corner mill"),
        ("Speeds", "200 350 600 950 1500 2200"),
        ("Motor gives out", "0.75 kW"),
        ("Table, one turn", "2.5 mm"),
        ("Lines on its dial", "125"),
    ):
        hand.write_in(name, text)
    hand.click("Save", "Button")
    hand.running.until((home / "machines" / "corner-mill.yaml").exists)
    hand.click("Close", "Button")
    hand.running.take_keys("job sheet")


def job_pressed(hand):
    menu(hand, "File", "New…")
    hand.write_in("Part", "BB-1 Bearing block")
    hand.write_in("Metal", "mild steel")
    hand.click("Mild steel S235...")
    hand.write_in("Stock", "82 x 52 x 42")
    hand.write_in("Machine", "corner")
    hand.click("Corner mill...")
    hand.click("Begin", "Button")
    hand.running.keeps("machine: corner-mill")


def squared_pressed(hand):
    menu(hand, "Job", "Square all six faces…")
    hand.asked("Square all six")
    for name, text in (
        ("Finished length", "80 mm"),
        ("Finished width", "50 mm"),
        ("Finished height", "40 mm"),
    ):
        hand.write_in(name, text)
    hand.click("OK", "Button")
    hand.running.take_keys("BB-1")
    hand.running.keeps("Right end")


def set_up_pressed(hand):
    hand.click("80 Right end...", "ListItem")
    menu(hand, "Job", "Add a set-up")
    for name, text in (
        ("Set-up", "Bore and holes"),
        ("Which vice", "80 mm vice"),
        ("Above the jaws", "8 mm"),
        ("Tighten to", "20 N*m"),
    ):
        hand.write_in(name, text)
    hand.click("Rests on: parallels")
    hand.write_in("Each so thick", "8 mm")
    for name, text in (("Zero at", "A and B"), ("Found with", "edge finder")):
        hand.write_in(name, text)
    hand.running.keeps("found: edge finder")
    hand.click("Close", "Button")


def inserted(hand, words, offered):
    before = hand.steps()
    menu(hand, "Operation", "Insert below…")
    hand.write_in("Kind of the new step: type to find", words)
    hand.click(offered)
    hand.running.until(lambda: hand.steps() > before)


def holes_pressed(hand):
    hand.click("Set-up 7...", "ListItem")
    inserted(hand, "edge", "Find an edge...")
    inserted(hand, "spot", "Spot drill...")
    for row, (x, y) in enumerate((("40", "25"), ("12", "10"), ("68", "10"), ("68", "40"), ("12", "40")), 1):
        hand.write_in(f"Place {row}, X", x)
        hand.write_in(f"Place {row}, Y", y)
    hand.running.keeps("[12, 40]")
    inserted(hand, "drill 5", "Drill, 5...")
    hand.click("Place 1, X", "EditableText")
    hand.click("Take place 1 out")
    hand.running.keeps("[12, 40]")
    inserted(hand, "m6", "Tap, M6...")


def bored_pressed(hand):
    inserted(hand, "drill 10", "Drill, 10...")
    hand.write_in("Place 1, X", "40")
    hand.write_in("Place 1, Y", "25")
    inserted(hand, "bore", "Bore...")
    hand.write_in("Boring bar", "boring bar 8 mm, 45 mm out")
    hand.write_in("Finished diameter", "16 H7")
    hand.running.keeps("16 H7")


def slotted_pressed(hand):
    inserted(hand, "8 slot", "Slot, 8...")
    hand.write_in("Ends, x and y", "0, 30; 80, 30")
    hand.write_in("Depth", "3")
    hand.running.keeps("80, 30")


def saved_pressed(hand, path):
    menu(hand, "File", "Save")
    hand.asked("Save the job")
    hand.write_in("File name:", str(path))
    hand.click("Save", "Button")
    hand.running.until(path.exists)
    hand.running.take_keys("BB-1")


def on_paper_pressed(hand, path):
    menu(hand, "File", "Export sheets as PDF…")
    hand.asked("Export the sheets")
    hand.write_in("File name:", str(path))
    hand.click("Save", "Button")
    hand.running.until(path.exists)


def pressed(hand, tmp_path, monkeypatch):
    """All of it by the mouse; only what stands in a box is typed."""
    machine_pressed(hand, hand.running.home)
    job_pressed(hand)
    squared_pressed(hand)
    set_up_pressed(hand)
    holes_pressed(hand)
    bored_pressed(hand)
    slotted_pressed(hand)
    saved_pressed(hand, tmp_path / "b.yaml")
    on_paper_pressed(hand, tmp_path / "b.pdf")
    made_right(hand.running.home, tmp_path, monkeypatch)


def test_by_the_mouse(program, tmp_path, capsys, monkeypatch):
    hand = CountedHand(program())
    pressed(hand, tmp_path, monkeypatch)
    with capsys.disabled():
        print(f"\nbearing block by the mouse: {hand.told()}")


@pytest.mark.long
def test_by_the_mouse_small_and_dark(program, tmp_path, monkeypatch):
    pressed(CountedHand(in_the_small(program())), tmp_path, monkeypatch)
