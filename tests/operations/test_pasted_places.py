"""Lines of two numbers from anywhere: every usual way of parting them, and what
can be read in two ways is not.
"""

import pytest

from jobsheet.operations.pasted_places import is_list, pasted


@pytest.mark.parametrize(
    ("line", "x", "y"),
    [
        ("14\t12", "14", "12"), ("14.5\t12,5", "14.5", "12,5"), ("14 12", "14", "12"), ("14,5 12,3", "14,5", "12,3"), ("14; 12", "14", "12"),
        ("14,5;12,3", "14,5", "12,3"), ("14,12", "14", "12"), ("14.5,12.3", "14.5", "12.3"), ("14,5,12,3", "14,5", "12,3"), ("14, 12", "14", "12"),
        ("14, 12;", "14", "12"), ("14 mm 12 mm", "14 mm", "12 mm"), ("1 1/8 2 1/2", "1 1/8", "2 1/2"), ("-5  -6", "-5", "-6"), ("14 | 12", "14", "12"),
        ("  14.5   12  ", "14.5", "12"), ("0.5 in\t12 mm", "0.5 in", "12 mm"),
    ],
)  # fmt: skip
def test_two_numbers(line, x, y):
    (one,) = pasted(line, "mm")
    assert (one.x, one.y, one.problem) == (x, y, "")


@pytest.mark.parametrize("line", ["14,5,12", "14 12 6", "X Y", "14", "1\t14\t12", "fourteen, twelve"])
def test_a_bad_line_keeps_its_text_and_says_what_to_write(line):
    (one,) = pasted(line, "mm")
    assert one.x == " ".join(line.split())
    assert one.y == ""
    assert "write x, a comma, a blank and y" in one.problem


def test_lines_of_every_system_and_no_blank_ones():
    assert [(one.x, one.y) for one in pasted("1 2\r\n\r\n3 4\n5 6\r7 8", "mm")] == [
        ("1", "2"), ("3", "4"), ("5", "6"), ("7", "8"),
    ]  # fmt: skip


def test_what_is_a_list():
    assert is_list("1 2\n3 4")
    assert is_list("1\t2\n")
    assert not is_list("12.5\n")
    assert not is_list("12.5")
