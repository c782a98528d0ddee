"""Every word and every mark can be told from what lies under it."""

import pytest

from jobsheet.gui.ink.tokens import DARK, LIGHT

GROUNDS = ("paper", "field", "bench", "chosen", "band")


def luminance(colour):
    parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    r, g, b = (p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 0.2126 * r + 0.7152 * g + 0.0722 * b


def contrast(one, other):
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def test_black_on_white_is_twenty_one():
    assert contrast("#000000", "#FFFFFF") == pytest.approx(21)


@pytest.mark.parametrize("tokens", [LIGHT, DARK], ids=["light", "dark"])
@pytest.mark.parametrize("ground", GROUNDS)
@pytest.mark.parametrize("word", ["ink", "pencil", "blue", "purple", "verm"])
def test_words_have_four_and_a_half(tokens, ground, word):
    assert contrast(getattr(tokens, word), getattr(tokens, ground)) >= 4.5


@pytest.mark.parametrize("tokens", [LIGHT, DARK], ids=["light", "dark"])
@pytest.mark.parametrize("ground", GROUNDS)
@pytest.mark.parametrize("mark", ["edge", "bluemark", "purplemark", "vermmark"])
def test_marks_have_three(tokens, ground, mark):
    assert contrast(getattr(tokens, mark), getattr(tokens, ground)) >= 3.0


@pytest.mark.parametrize("tokens", [LIGHT, DARK], ids=["light", "dark"])
def test_filled_buttons_and_chosen_halves(tokens):
    assert contrast(tokens.onblue, tokens.blue) >= 4.5
    assert contrast(tokens.paper, tokens.ink) >= 4.5
