"""What is said to a learner of an answer."""

from __future__ import annotations

from jobsheet.lessons.order_exercise import order_marked
from jobsheet.lessons.said_of_an_order import result_lines

from .answers_given import letters, sheet_with


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
