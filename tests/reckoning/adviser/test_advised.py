"""What the adviser answers says of itself: whether it clears, whether it is easy, and what stays wrong."""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.reckoning.adviser.advised import Changed
from jobsheet.reckoning.adviser.best_cut import advice_on, best_cut
from tests.reckoning.steps import around, step

FACE = {"cutter": "face mill 50 mm, 4 teeth, carbide", "depth": "0.5", "width": "30"}


def test_a_light_face_clears_and_nothing_of_it_is_beyond():
    found = best_cut(step("face", **FACE), around("knee-mill-k-2"))
    assert found.clears
    assert not any(limit.verdict == "beyond" for limit in found.stays)


def test_what_stays_are_limits_beyond_or_else_at_their_edge():
    found = best_cut(step("face", **FACE), around("bench-mill-b-1"))
    worst = replace(
        found.found,
        limits=tuple(replace(one, verdict="beyond") for one in found.found.limits[:1])
        + found.found.limits[1:],
    )
    assert replace(found, found=worst).stays == worst.limits[:1]
    assert not replace(found, found=worst).clears
    assert not replace(found, found=worst).easy


def test_what_is_typed_is_what_the_values_say():
    changed = advice_on(
        step("face", **FACE, feed_per_tooth="0.4", spindle="180 rpm"), around("bench-mill-b-1")
    )
    assert isinstance(changed, Changed)
    assert changed.edits == tuple((one.name, one.text) for one in changed.values)
    assert changed.edits
