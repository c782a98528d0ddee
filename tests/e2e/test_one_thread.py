"""One thread through the whole: a new machine, a plan, advice, paper, what
happened; typed in the real window.

Every later piece of work adds its own step here. What it costs a person is counted and printed: keys,
questions that had to be answered, seconds.
"""

import re

import pytest

from jobsheet.storage.card_files import card_names
from jobsheet.storage.kept.closed_plans import closed_plans
from jobsheet.storage.records.proof_log import records_from
from jobsheet.storage.records.run_log import path_beside, runs_from
from tests.e2e.counted_hand import CountedHand

pytestmark = pytest.mark.e2e


@pytest.fixture
def thread(program):
    return CountedHand(program())


def test_one_part_from_a_new_machine_to_what_happened(thread, tmp_path, capsys):
    home = thread.running.home
    (home / "shelf.json").write_text(f'{{"folder": "{tmp_path}"}}\n', encoding="utf-8")
    new_machine(thread, home)
    new_job(thread)
    set_up(thread)
    plan(thread)
    advice(thread)
    drawing(thread)
    left_empty(thread)
    thread.save_as(tmp_path / "guide.yaml", "OT-1")
    paper(thread, tmp_path / "guide.pdf")
    next_plan(thread, tmp_path / "guide.yaml")
    how_it_went(thread, tmp_path / "guide.yaml")
    what_happened(thread, home)
    on_the_shelf(thread)
    thread.keys("ctrl+q")
    assert thread.running.wait() == 0
    with capsys.disabled():
        print(f"\none thread: {thread.told()}")


def new_machine(thread, home):
    """A bench mill of one's own, as one knows it: name, belts with the chart's speeds,
    the plate of its motor, its dials.
    """
    thread.keys("alt+m", "n")
    thread.asked("Bench mill")
    thread.fill("Corner mill", None, None, "200 350 600 950 1500 2200", "0.55 kW", None, "2.5 mm", "125")
    thread.keys("ctrl+s")
    thread.running.until((home / "machines" / "corner-mill.yaml").exists)
    thread.keys("ctrl+w")
    thread.running.take_keys("job sheet")
    assert "corner-mill" not in card_names()  # in the program's own home, not in this one


def new_job(thread):
    """Part, metal, stock and machine on a line each; the rest of the stock in the job's form."""
    thread.keys("ctrl+n")
    thread.fill("OT-1 Guide strip", "S235", "60 x 30 x 14", "corner-mill")
    thread.keys("Return")
    thread.asked("OT-1")
    thread.running.keeps("machine: corner-mill")
    thread.keys("Escape", "F2")
    thread.fill(*[None] * 12, "bright, ends sawn")  # behind the shape and its three sizes
    thread.running.keeps("surfaces: bright, ends sawn")
    thread.keys("Escape")


def set_up(thread):
    """How the work lies and is held, and where zero is."""
    thread.keys("Return")
    thread.fill(
        "Top",
        *[None] * 6,
        "80 mm vice",
        "2",  # on parallels
        None,
        None,
        "8 mm",
        None,
        "6",
        "20 N*m",
        None,
        None,
        "1",  # a stop at the left
        *[None] * 7,
        "A and B",
    )
    thread.tabs(4)
    thread.fill("edge finder")
    thread.running.keeps("found: edge finder")
    thread.keys("Escape")


def plan(thread):
    """Face it, then two holes; a slip in the places is put right with Backspace."""
    thread.insert("face")
    thread.keys("ctrl+a")
    thread.fill("end mill 20 mm, 4 teeth, 45 mm out", "0.5")
    thread.running.keeps("depth: 0.5")
    thread.keys("Escape")
    thread.insert("edge")
    thread.keys("Escape")
    thread.insert("drill")
    thread.keys("ctrl+a")
    thread.fill("drill 5")
    thread.type("10, 15; 40")
    thread.keys("BackSpace", "BackSpace")
    thread.fill("50, 15")
    thread.running.keeps("[50, 15]")


def advice(thread):
    """The remark that the drill will wander is mended by its fix: a spot at both places."""
    thread.running.remarks("spot-before-drilling")
    thread.keys("ctrl+Down", "Tab", "Return")
    thread.running.keeps("kind: spot-drill")
    (kept,) = thread.running.journal()
    assert kept.count("[50, 15]") == 2
    thread.keys("Escape")


def drawing(thread):
    """What the part shall be, a line each; the review misses the hole that no
    step makes, until it is struck again.
    """
    thread.keys("F2")
    thread.write_in("Finished sizes", "60 as bought x 30 as bought x 13.5 ±0.1")
    thread.keys("Return")
    thread.type("2 x 5 through at 10, 15; 50, 15")
    thread.keys("Return")
    thread.type("6.6 through at 30, 15")
    thread.keys("Return")
    thread.running.keeps("6.6 through at 30, 15")
    thread.running.remarks("hole-missing")
    thread.keys("shift+Tab", "ctrl+a", "BackSpace", "BackSpace")
    thread.running.until(lambda: all("6.6 through" not in text for text in thread.running.journal()))
    thread.keys("Escape")


def left_empty(thread):
    """A slot with cutter, ends and depth is complete: the rest is the adviser's. What is
    typed is pinned; F8 gives it back.
    """
    thread.insert("slot")
    thread.keys("ctrl+a")
    thread.fill("slot drill 8 mm, 2 teeth, 25 mm out", "20, 22; 40, 22", "3")
    thread.running.keeps("depth: 3")
    (kept,) = thread.running.journal()
    assert "feed" not in kept[kept.index("kind: slot") :].split("kind:")[1]
    thread.write_in("Feed per tooth", "0.012")
    thread.keys("Tab")
    thread.running.keeps("feed per tooth: 0.012")
    thread.keys("shift+Tab", "F8")
    thread.running.until(lambda: all("0.012" not in text for text in thread.running.journal()))
    thread.keys("Escape")


def paper(thread, path):
    """The sheets say what is set at the machine."""
    words = thread.export(path, "OT-1")
    for said in (
        "OT-1 Guide strip",
        "Corner mill",
        "80 mm vice",
        "Face 0.5 mm off",
        "Drill 2 holes 5",
        "Spot 2 holes",
        "Slot 8",
    ):
        assert said in words, said


def next_plan(thread, job):
    """The printed plan is closed: what is changed after it is saved as plan 2, in words, and
    the first is still there to look at.
    """
    (kept,) = closed_plans(job)
    thread.keys("Return")
    thread.write_in("Depth", "2.5")
    thread.keys("Tab")
    thread.running.keeps("depth: 2.5")
    thread.keys("Escape", "ctrl+s")
    thread.asked("New revision")
    thread.keys("Tab")
    thread.type("RK")
    thread.keys("Return")
    thread.running.take_keys("OT-1")
    thread.running.until(lambda: "number: 2" in job.read_text(encoding="utf-8"))
    (changed,) = re.findall(
        r"  - number: 2\n    changed: (.*)\n    who: (.*)\n", job.read_text(encoding="utf-8")
    )
    assert changed[0].strip('"').endswith("depth: 3 → 2.5")
    assert changed[1] == "RK"
    thread.keys("ctrl+shift+p")
    thread.asked("Earlier plans")
    thread.keys("Escape")
    thread.running.take_keys("OT-1")
    assert kept.path.exists()


def what_happened(thread, home):
    """A ladder is planned, and its first test cut ran clean."""
    thread.keys("F6")
    thread.asked("Proving")
    thread.click("Plan the ladder")
    thread.fill("AA", "TR")  # who has read the stop notes
    thread.keys("Return", "1")
    log = home / "proof" / "corner-mill.txt"
    thread.running.until(lambda: len(records_from(log.read_bytes(), "corner-mill")[0]) > 2)
    trials, problems = records_from(log.read_bytes(), "corner-mill")
    assert not problems
    assert [one.outcome for one in trials] == ["clean"] * 3  # two of ordinary work before it
    thread.keys("ctrl+w")
    thread.running.take_keys("OT-1")


def how_it_went(thread, job):
    """The job was cut: a digit a step for two of them, kept beside the job."""
    thread.keys("ctrl+h")
    thread.asked("What happened")
    thread.keys("1", "1", "ctrl+Return")
    record = path_beside(job)
    thread.running.until(record.exists)
    runs, problems = runs_from(record.read_bytes())
    assert not problems
    assert [(one.about, one.outcome) for one in runs.standing] == [("step", "clean")] * 2
    thread.keys("ctrl+w")
    thread.running.take_keys("OT-1")


def on_the_shelf(thread):
    """It is found again by a size while that is typed, and opened from there."""
    thread.keys("ctrl+shift+o")
    thread.asked("The shelf")
    thread.type("OT-1 slot 8")
    thread.running.place_of("understood: slot 8...")
    thread.keys("Return")
    thread.running.take_keys("OT-1")
