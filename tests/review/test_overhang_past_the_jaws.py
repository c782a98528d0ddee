"""What hangs over where no jaws hold the work: by what is said of either end."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from jobsheet.review.rules.gripping import overhang_past_the_jaws as rule


@pytest.mark.parametrize(
    ("left", "right", "hangs"),
    [
        (None, None, None),
        (20, None, (20, 60)),
        (None, 30, (30, 50)),
        (20, 30, (30, 30)),
        (35, 30, (35, 15)),
        (50, 40, (50, 0)),
        (0, None, (0, 80)),
    ],
)
def test_the_worse_end_and_what_is_held_of_eighty(monkeypatch, left, right, hangs):
    monkeypatch.setattr(rule, "sits", lambda _set_up, _first: None)
    said = {
        name: None if value is None else SimpleNamespace(value=value * 1e-3)
        for name, value in (("over_left", left), ("over_right", right))
    }
    set_up = SimpleNamespace(holding=SimpleNamespace(kind="vee block", **said))
    found = rule._hangs(set_up, SimpleNamespace(lie=SimpleNamespace(size=(0.080, 0.050, 0.012))))
    if hangs is None:
        assert found is None
    else:
        assert found[:2] == pytest.approx(tuple(one * 1e-3 for one in hangs))
        assert found[2] == "vee block"


def test_in_jaws_it_is_what_must_hang_over_at_least(monkeypatch):
    monkeypatch.setattr(
        rule, "sits", lambda _set_up, _first: SimpleNamespace(least=(0.010, 0.025), held=0.080)
    )
    assert rule._hangs(SimpleNamespace(), SimpleNamespace()) == (0.025, 0.080, "jaws")
