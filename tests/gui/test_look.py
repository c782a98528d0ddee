"""A look of the window is put on as a whole."""

import pytest

from jobsheet.gui.ink import look


def test_bench_size_is_half_as_large_again_and_keeps_the_open_row(window):
    window.open_key("drill")
    before = look.look().px(100)
    window.looks.bench_size()
    assert look.look().px(100) == pytest.approx(1.5 * before, abs=1)
    assert window.opened_key == "drill"
    window.looks.bench_size()


def test_dark_and_back(window):
    window.looks.dark()
    assert look.look().tokens.name == "dark"
    window.looks.light()
    assert look.look().tokens.name == "light"
