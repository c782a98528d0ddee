"""Entries that several kinds share: form, finish and gauge in one line of words."""

import pytest

from jobsheet.errors import QuantityError
from jobsheet.operations.shared.common import TOLERANCES


def test_each_word_with_its_value():
    found = TOLERANCES.read(
        "square 0.03; flat 0.02 mm; finish Ra 1.6; position ±0.05; gauge 25 mm micrometer", "mm"
    )
    assert (found.square, found.flat, found.position) == pytest.approx((30e-6, 20e-6, 50e-6))
    assert found.finish == pytest.approx(1.6e-6)  # roughness is in micrometres (ISO 21920)
    assert found.gauge == "25 mm micrometer"


def test_inches_are_inches_and_the_finish_stays_in_micrometres():
    found = TOLERANCES.read("square 0.001; finish 1.6", "in")
    assert found.square == pytest.approx(25.4e-6)
    assert found.finish == pytest.approx(1.6e-6)


@pytest.mark.parametrize(
    ("text", "start", "words"),
    [("square", 0, "square"), ("flat 0.02; sqare 0.03", 11, "did you mean square"), ("flat wide", 5, "wide")],
)
def test_what_cannot_be_read_is_pointed_at(text, start, words):
    with pytest.raises(QuantityError) as caught:
        TOLERANCES.read(text, "mm")
    assert caught.value.start == start
    assert words in str(caught.value)
