"""Which kind is meant by what is typed."""

import pytest

from jobsheet.operations.choosing.found import kinds_found, taken_apart


def first(typed, units="mm"):
    return kinds_found(typed, units, None)[0]


@pytest.mark.parametrize(
    ("typed", "name"),
    [("sl", "slot"), ("SLOT", "slot"), ("m6", "tap"), ("10 slot", "slot"), ("slot 10 mm", "slot"), ("1/4-20 unc", "tap"),
     ("csk", "countersink"), ("deburr", "bench-step"), ("reamer", "ream"), ("fly", "fly-cut"), ("end mill", "side-mill"), ("groove", "keyway")],
)  # fmt: skip
def test_what_is_typed_finds_the_kind(typed, name):
    assert first(typed).kind == name


@pytest.mark.parametrize("typed", ["", "  ", "zz", "slot zz", "10 tram"])
def test_what_nothing_is_called_finds_nothing(typed):
    assert kinds_found(typed, "mm", None) == ()


def test_words_thread_and_size_are_told_apart():
    asked = taken_apart("tap m6x1", "mm")
    assert (asked.words, asked.thread, asked.size) == (("tap",), "M6x1", "")
    asked = taken_apart("slot 3/8", "in")
    assert (asked.words, asked.size) == (("slot",), "3/8")
    assert taken_apart("¤$ %", "mm").words == ("¤$", "%")
