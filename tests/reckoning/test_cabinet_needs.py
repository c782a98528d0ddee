"""What a job asks of the cabinet, each tool once."""

from __future__ import annotations

from jobsheet.reckoning.cabinet.cabinet_needs import needs_of

from .cabinet_asked import look, plate


def test_of_drills_the_next_below_and_above_are_named_by_size_whatever_they_are_called():
    """Letter A is 0.234 in = 5.944 mm (ASME B94.11M), nearer above 5.7 than 6.0."""
    assert [one.what for one in look("drill 5.7").near] == ["drill 5.5 mm", "drill A"]
    assert look("drill 5.7").sentence == (
        "The cabinet has no drill 5.7; nearest are drill 5.5 mm (drawer 3) and drill A (drawer 4)."
    )


def test_what_lies_in_the_named_place_is_said():
    assert look("end mill 12, 4 teeth, drawer 2 no. 7").sentence == (
        "End mill 12, 4 teeth lies in drawer 1 no. 1, not in drawer 2 no. 7, where face mill 50 mm, 4 teeth, carbide lies."
    )
    assert look("end mill 12, 4 teeth, drawer 1 no. 2").sentence == (
        "End mill 12 mm (drawer 1 no. 2) is not there now: at the grinder; another one lies in drawer 1 no. 1."
    )


def test_the_same_tool_is_asked_once_with_all_its_steps():
    needs = [one for one in needs_of(plate()) if one.name == "face mill"]
    assert [one.operations for one in needs] == [("face-rough", "face-finish")]
