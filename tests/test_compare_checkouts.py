"""The script that compares two checkouts sees what differs, and where."""

from tests.compare_checkouts import differences


def test_the_same_differs_nowhere():
    assert list(differences({"a": [1, {"b": 2.5}]}, {"a": [1, {"b": 2.5}]})) == []


def test_each_place_that_differs_is_told():
    old = {"figures": [{"power": 0.1, "gone": 1}], "remarks": ["a", "b"]}
    new = {"figures": [{"power": 0.1000000001, "come": 1}], "remarks": ["b", "c", "d"]}
    assert list(differences(old, new)) == [
        ".figures[0].power: 0.1 became 0.1000000001",
        ".figures[0].gone: only in the old one",
        ".figures[0].come: only in the new one",
        ".remarks: 2 became 3",
        ".remarks: gone: a",
        ".remarks: new: c",
        ".remarks: new: d",
    ]
