"""Values that cannot be changed: made once, whole, and equal by what they hold."""

import pytest

from jobsheet.cutting.formula import Outside
from jobsheet.cutting.stability import Lobe, Mode


def test_it_is_made_by_place_or_by_name():
    assert Lobe(1.0, 2.0) == Lobe(depth=1.0, frequency=2.0) == Lobe(1.0, frequency=2.0)
    assert hash(Lobe(1.0, 2.0)) == hash(Lobe(1.0, frequency=2.0))
    assert repr(Lobe(1.0, 2.0)) == "Lobe(depth=1.0, frequency=2.0)"


def test_values_of_two_kinds_are_not_equal():
    assert Mode(1.0, 2.0, 3.0) != Outside("a", 1.0, 2.0, 3.0, "m")
    assert Lobe(1.0, 2.0) != Lobe(1.0, 3.0)
    assert Lobe(1.0, 2.0) != (1.0, 2.0)


@pytest.mark.parametrize(
    ("given", "named"),
    [((), {}), ((1.0,), {}), ((1.0, 2.0, 3.0), {}), ((1.0,), {"depth": 2.0}), ((1.0,), {"height": 2.0})],
)
def test_every_field_is_given_once(given, named):
    with pytest.raises(TypeError, match="depth, frequency"):
        Lobe(*given, **named)


def test_it_cannot_be_changed():
    lobe = Lobe(1.0, 2.0)
    with pytest.raises(AttributeError):
        lobe.depth = 3.0
    with pytest.raises(AttributeError):
        del lobe.depth
    assert lobe == Lobe(1.0, 2.0)
