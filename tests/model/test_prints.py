"""Which pages are printed: each once, in one order, whatever the order they were named in."""

from __future__ import annotations

from jobsheet.model.prints import PRINTS, WHOLE, prints


def test_each_once_in_the_order_of_the_words():
    assert prints(["step", "route", "step", "whole"], (20, 10)).pages == ("whole", "route", "step")
    assert prints(["step"], (20, 10)).steps == (20, 10)


def test_what_is_no_word_is_left_out_and_the_whole_is_there():
    assert prints(["poster"]).pages == ()
    assert WHOLE.pages == ("whole",)
    assert set(WHOLE.pages) <= set(PRINTS)
