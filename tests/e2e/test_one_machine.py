"""One machine from its first cut to its repair, in the real window and by key: a ladder,
three jobs, a wrong entry, new gibs.

What the machine would carry is fixed beforehand; the hand presses what such a machine
would do, but for one wrong digit.
"""

import re

import pytest

from jobsheet.storage.records.proof_log import records_from
from tests.e2e import test_one_thread as thread
from tests.e2e.counted_hand import CountedHand

pytestmark = pytest.mark.e2e

#: The part's wall is 1 mm a cut, 6 mm deep; this machine rings from here on at such a width [mm].
RINGS_FROM = 8.0


@pytest.fixture
def hand(program):
    return CountedHand(program())


def test_a_ladder_three_jobs_a_wrong_entry_and_a_repair(hand, tmp_path, capsys):
    log = Log(hand, hand.running.home / "proof" / "corner-mill.txt")
    thread.new_machine(hand, hand.running.home)
    thread.new_job(hand)
    thread.set_up(hand)
    hand.insert("side")
    hand.keys("ctrl+a")
    hand.fill("end mill 12 mm, 4 teeth, 30 mm out")
    hand.keys("Escape")
    hand.save_as(tmp_path / "guide.yaml", "OT-1")
    clean, rang = ladder(hand, log)
    assert clean < RINGS_FROM <= rang
    for day in range(3):
        job(hand, log, day)
    wrong_entry(hand, log)
    repair(hand, log)
    hand.keys("ctrl+w")
    hand.running.take_keys("OT-1")
    hand.keys("ctrl+q")
    assert hand.running.wait() == 0
    with capsys.disabled():
        print(f"\none machine: {hand.told()}")


class Log:
    """The proof log as it stands, read when something is expected of it."""

    def __init__(self, hand, path):
        self.hand, self.path = hand, path

    def records(self):
        if not self.path.exists():
            return []
        found, problems = records_from(self.path.read_bytes(), "corner-mill")
        assert not problems
        return found

    def grows(self, count):
        """Wait until it has so many records; the newest."""
        self.hand.running.until(lambda: len(self.records()) >= count)
        return self.records()[-1]


def said(hand, part):
    """A name on the screen that has these words in it; waits for it."""
    return hand.running.until(lambda: next((one[0] for one in hand.running.seen() if part in one[0]), ""))


def to_proving(hand):
    hand.keys("F6")
    hand.asked("Proving")


def ladder(hand, log):
    """The ladder begins with the very cut of the chosen step; the last clean and the first bad depth [mm]."""
    to_proving(hand)
    hand.click("Plan the ladder")
    hand.fill("AA", "TR")
    hand.keys("Return")
    sizes = [
        float(size) for size in re.findall(r"([0-9.]+) mm: not cut", said(hand, "Ladder from the bottom"))
    ]
    done = 0
    for size in sizes:
        hand.keys("1" if size < RINGS_FROM else "4")
        done += 1
        newest = log.grows(done)
        if newest.outcome != "clean":
            break
    conclusion = said(hand, "Stop here.")
    most = float(re.search(r"up to ([0-9.]+) mm deep", conclusion)[1])
    assert most < RINGS_FROM  # what it plans to holds on this machine
    hand.keys("ctrl+w")
    hand.running.take_keys("OT-1")
    return sizes[done - 2], sizes[done - 1]


def job(hand, log, day):
    """The part was cut once more, each on a day of its own; it ran clean."""
    before = len(log.records())
    hand.keys("ctrl+h")
    hand.asked("What happened")
    for _ in range(2 - day):
        hand.click("a day earlier")
    hand.keys("1", "ctrl+Return")
    newest = log.grows(before + 1)
    assert (newest.outcome, newest.process, newest.job) == ("clean", "side", "OT-1, step 10")
    hand.keys("ctrl+w")
    hand.running.take_keys("OT-1")


def wrong_entry(hand, log):
    """5 for 1 on the first rung of a finer ladder: it is named as what does not
    fit, and struck with a reason.
    """
    before = len(log.records())
    to_proving(hand)
    hand.click("Plan the ladder")
    hand.click("Narrow it")
    hand.fill("AA", "TR")
    hand.keys("Return", "5")
    assert log.grows(before + 1).outcome == "stalled"
    said(hand, "This does not fit the others")
    hand.keys("ctrl+t")
    sentence = said(hand, "stalled does not fit the others")
    assert "a slip of the pen, or was something loose?" in sentence
    hand.keys("Return")  # strike it
    said(hand, "Strike out no.")
    hand.type("5 for 1")
    hand.keys("Tab", "Return")
    strike = log.grows(before + 2)
    assert (strike.note, bool(strike.strikes)) == ("5 for 1", True)


def repair(hand, log):
    """New gibs: what was known of chatter says less from then on; nothing is thrown away."""
    before = len(log.records())
    hand.keys("ctrl+m")
    said(hand, "nothing is thrown away")
    hand.keys("Tab", "Tab")
    hand.type("gibs adjusted")
    hand.keys("Tab", "Return")
    mark = log.grows(before + 1)
    assert (mark.changed, mark.note) == ("gibs", "gibs adjusted")
    assert hand.running.place_of("Plan the ladder")  # what was foreseen rested on the old gibs
