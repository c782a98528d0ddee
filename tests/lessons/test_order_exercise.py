"""An exercise is the same whenever it is made, gives nothing away, and its answers are read as a hand writes them."""

from __future__ import annotations

from collections import Counter

import pytest

from jobsheet.lessons.order_exercise import NoExercise, order_exercise, order_marked
from jobsheet.lessons.said_of_an_order import result_lines
from jobsheet.lessons.seeds import Draws
from jobsheet.lessons.slips import LETTERS, WrongAnswer
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.job_file import blank_job, read_job


def sheet_with(reckoned, level, *set_ups):
    """The first sheet of seed 37 that asks these set-ups: which one it is hangs on every word of the job."""
    for sheet in range(1, 60):
        found = order_exercise(reckoned, level, 37, sheet)
        if set(set_ups) <= set(found.asked.steps):
            return found
    raise AssertionError(set_ups)


# --- draws ---


def test_every_order_of_three_is_as_likely():
    """6,000 shuffles: each of six orders a thousand times; the share of one is out by more than 120 once in 40,000 tries."""
    counted = Counter("".join(Draws("x", str(seed)).shuffled("abc")) for seed in range(6000))
    assert len(counted) == 6
    assert all(abs(count - 1000) < 120 for count in counted.values())


def test_the_stream_is_that_of_the_published_hash():
    """The first draw from below 2^64 is the first eight bytes of SHA-256 of the seed's SHA-256 and a counter of nought."""
    from hashlib import sha256

    seed = sha256(b"one\x1ftwo").digest()
    assert Draws("one", "two").below(1 << 64) == int.from_bytes(sha256(seed + bytes(8)).digest()[:8], "big")


# --- the exercise ---


def test_the_same_seed_gives_the_same_exercise(pivot):
    again = Reckoner().reckon(pivot.job)
    for level in (1, 2, 3):
        first, other = (order_exercise(one, level, 37, 4) for one in (pivot, again))
        assert [block.slips for block in first.blocks] == [block.slips for block in other.blocks]


def test_a_class_gets_different_sheets_that_are_all_far_from_right(pivot):
    made = [order_exercise(pivot, 3, 37, sheet) for sheet in range(1, 13)]
    assert len({tuple(slip.key for block in one.blocks for slip in block.slips) for one in made}) == 12
    for one in made:
        assert order_marked(one, one.example).total >= one.asked.worst / 2


def test_letters_are_none_that_is_taken_for_another():
    assert not set(LETTERS) & set("ijlo")
    assert len(LETTERS) == len(set(LETTERS)) == 22


def test_no_slip_says_where_it_stands(pivot):
    numbers = {str(operation.number) for _, operation in pivot.job.operations()}
    for block in order_exercise(pivot, 3, 1, 1).blocks:
        for slip in block.slips:
            assert not [one for one in numbers if f"step {one}" in slip.words.casefold()]
    # Of two cuts of one face only the one with the size says it: two sizes beside each other would be the order.
    words = [slip.words for block in order_exercise(pivot, 3, 1, 1).blocks for slip in block.slips]
    assert "Rear to 50.0, 0.4 off" in words
    assert "Face 3 off" in words


def test_what_must_come_first_of_all_is_given_at_the_first_level(pivot):
    found = sheet_with(pivot, 1, "set-up-5")
    assert found.given == ("find-b-c", "")


def test_a_job_without_steps_says_so():
    with pytest.raises(NoExercise, match="no order worth asking at level 1"):
        order_exercise(Reckoner().reckon(blank_job("bench-mill-b-1")), 1, 1, 1)


# --- answers ---


def letters(exercise, *keys):
    known = {slip.key: slip.letter for block in exercise.blocks for slip in block.slips}
    return "".join(known[key] for key in keys)


def test_capitals_blanks_and_commas_are_read(pivot):
    found = sheet_with(pivot, 1, "set-up-5")
    right = letters(found, "find-b-c", "end-right", "step", "spot-threads", "drill-threads", "tap")
    for typed in (right, right.upper(), ", ".join(right)):
        assert order_marked(found, typed).total == 0
    other = letters(found, "find-b-c", "spot-threads", "end-right", "drill-threads", "step", "tap")
    assert order_marked(found, other).total == 0


def test_set_ups_and_their_steps_in_one_answer(pivot):
    found = order_exercise(pivot, 3, 37, 2)
    heads = {block.set_up.key: block for block in found.blocks}
    right = " ".join(
        heads[one.key].letter + letters(found, *(step.key for step in one.operations))
        for one in pivot.job.set_ups
        if one.key in heads
    )
    assert order_marked(found, right).total == 0
    first, second, *rest = right.split()
    assert order_marked(found, " ".join((second, first, *rest))).astray == 1


def test_what_cannot_be_read_is_said(pivot):
    one, several = sheet_with(pivot, 1, "set-up-5"), order_exercise(pivot, 3, 37, 2)
    with pytest.raises(WrongAnswer, match=r"“z” is no slip of sheet \d+; its letters are a b c d e f"):
        order_marked(one, "abz")
    with pytest.raises(WrongAnswer, match="“a” stands there more than once"):
        order_marked(one, "aba")
    with pytest.raises(WrongAnswer, match="begins with no set-up of sheet 2"):
        order_marked(several, "abc")


def test_the_result_says_rules_and_never_that_a_step_is_wrong(pivot):
    found = sheet_with(pivot, 1, "set-up-5")
    answer = letters(found, "find-b-c", "end-right", "drill-threads", "spot-threads", "tap", "step")
    said = result_lines(found, order_marked(found, answer))
    assert said[0] == "Nearly there: 1 move away from a right order."
    assert any("A long drill walks before it bites" in line for line in said)
    assert "Would the part be good: no, it would be scrap." in said
    assert not any("is wrong" in line for line in said)
    right = letters(found, "find-b-c", "end-right", "step", "spot-threads", "drill-threads", "tap")
    assert result_lines(found, order_marked(found, right))[0] == "Right. 10 orders are right, yours is one."


def test_a_run_of_steps_begins_before_the_holding_changes(samples):
    """The cover plate is screwed down after its first six steps: a run that began behind that would be said to lie under straps."""
    reckoned = Reckoner().reckon(read_job(samples / "hm-104-cover-plate.yaml"))
    keys = [operation.key for _, operation in reckoned.job.operations()]
    for sheet in range(1, 12):
        asked = order_exercise(reckoned, 1, 37, sheet).asked.steps["set-up-1"]
        assert keys.index(asked[0]) <= keys.index("screw")
