"""A cabinet is read strictly, every problem with its line and what to write;
one's own goes before the shipped one.
"""

from __future__ import annotations

import pytest

from jobsheet.errors import DocumentError
from jobsheet.storage.cabinet_file import (
    NAME,
    cabinet_for,
    cabinet_from_text,
    own_path,
    read_cabinet,
    shipped,
)
from jobsheet.storage.paper_file import paper_from_text
from jobsheet.storage.paper_text import paper_text

from .cabinet_entries import entry

OWN = (
    "format: 1\nname: The shed\ncutters:\n  - what: end mill 6 mm, 2 teeth, carbide\n    place: box 1 no. 1\n"
)


def problems(text: str) -> list[tuple[int | None, str, str]]:
    with pytest.raises(DocumentError) as raised:
        cabinet_from_text(text, "cabinet.yaml")
    return [(one.line, one.path, one.sentence) for one in raised.value.problems]


def test_the_shipped_one_says_that_it_is_invented_and_saves_back_byte_for_byte():
    for path in shipped():
        text = path.read_text(encoding="utf-8")
        cabinet = cabinet_from_text(text, path.name)
        assert cabinet.invented
        assert "invented" in cabinet.note.casefold()
        assert paper_text(paper_from_text(text, path.name)) == text


def test_the_shipped_one_holds_what_the_scenario_lists():
    """Demo scenario section 2, "Tool cabinet", by place."""
    lines = {thing.place: thing.what for thing in read_cabinet(shipped()[0]).things}
    assert lines["drawer 1 no. 2"] == "end mill 20 mm, 4 teeth, HSS, flutes 55 mm"
    assert lines["drawer 2 no. 7"].startswith("face mill 50 mm, 4 teeth")
    drills = [t for t in read_cabinet(shipped()[0]).things if t.name == "drill"]
    sizes = sorted(round(t.cutter.diameter * 1e3, 3) for t in drills)
    # No. 7 = 0.201 in, F = 0.257 in, H = 0.266 in (ASME B94.11M).
    assert sizes == [3.0, 5.0, 5.105, 6.0, 6.5, 6.528, 6.6, 6.756, 6.8, 9.0, 12.0, 15.7]


def test_every_line_of_the_cabinet_fills_the_field_of_a_job_in_both_systems():
    from jobsheet.catalog.tools.cutters import read_cutter

    for thing in read_cabinet(shipped()[0]).things:
        if thing.cutter is not None:
            for units in ("mm", "in"):
                cutter = read_cutter(thing.line, units)
                assert cutter.place == thing.place
                assert cutter.diameter == thing.cutter.diameter


def test_all_problems_at_once_each_with_its_line_and_what_to_write():
    found = problems(
        "format: 2\ncuters: []\ncutters:\n  - what: end mill 20\n    place: drawer 1 no. 1\n  - what: drill 5 mm\n"
        "    place: drawer 1 no. 2\n  - what: end mill 5 mm\n    place: drawer 1 no. 4\n    cuont: 2\n"
    )
    assert [(line, path) for line, path, _ in found] == [
        (1, "format"), (2, "cuters"), (4, "cutters[0].what"), (6, "cutters[1].what"), (10, "cutters[2].cuont"),
    ]  # fmt: skip
    sentences = [sentence for *_, sentence in found]
    for words, sentence in zip(
        (
            "newer than this program knows",
            "did you mean cutters",
            "without its unit",
            "stands under drills",
            "did you mean count",
        ),
        sentences,
        strict=True,
    ):
        assert words in sentence


@pytest.mark.parametrize(
    ("text", "line", "says"),
    [
        (entry("cutters", "end mill 6 mm", "count: many"), 5, "not a number of things"),
        (entry("cutters", "end mill 6 mm, drawer 2 no. 1"), 3, "write place: drawer 2 no. 1"),
        ("format: 1\ncutters:\n  - what: end mill 6 mm\n", 3, "write where it lies"),
        (entry("drills", "drill #7"), 3, "quotes"),
        (entry("drills", "drills 1 to 10 mm by 0.4"), 3, "does not come to 10 mm"),
        (entry("drills", "drills 1 to 10 by 0.5"), 3, "write drills 1 mm to 10 mm by 0.5 mm"),
        (entry("drills", "drills 0.001 to 10 mm by 0.001"), 3, "in at most"),
        (
            entry("drills", "drills 1 to 10 mm by 0.5", "missing: 3.3 mm"),
            3,
            "not all of these are in the set",
        ),
        (entry("drills", "drill 5 mm", "missing: 5 mm"), 3, "only a set"),
        (entry("taps", "taps"), 3, "write, for example, tap M6"),
        (entry("holders", "colet chuck"), 3, "did you mean collet chuck"),
        (entry("parallels", "parallels 6 mm"), 3, "thickness, height and length"),
        (entry("gauges", "micrometer 0 to x"), 3, "is no size of a gauge"),
        (entry("gauges", "meter"), 3, "names no gauge"),
        (entry("wrenches", "tap wrench"), 3, "write tap wrench 180 mm"),
        ("format: 1\ncutters:\n  - end mill 6 mm\n", 3, "write what: and place:"),
        ("format: 1\ncutters: end mill\n", 2, "a list belongs here"),
        ("- end mill\n", 1, "a cabinet begins with format: 1"),
        ("name: x\n", 1, "write format: 1"),
        ("format: 1\ninvented: maybe\n", 2, "neither yes nor no"),
    ],
)
def test_what_is_wrong_is_said_where_it_stands(text, line, says):
    found = problems(text)
    assert (found[0][0], says in found[0][2]) == (line, True), found


def test_two_things_in_one_place_and_the_same_line_twice():
    two = (
        entry("cutters", "end mill 6 mm", place="drawer 1 no. 4")
        + "drills:\n  - what: drill 5 mm\n    place: Drawer 1, no. 4\n"
    )
    assert problems(two) == [
        (7, "drills[0].place", "Drawer 1, no. 4 holds end mill 6 mm already (line 4); one place, one thing: number them apart")
    ]  # fmt: skip
    twice = entry("drills", "drill 5 mm") + "  - what: drill 5 mm\n    place: drawer 9\n"
    assert "write count: 2" in problems(twice)[0][2]
    # A drawer without a number holds many.
    assert (
        len(
            cabinet_from_text(
                entry("drills", "drill 5 mm") + "  - what: drill 6 mm\n    place: drawer 9\n", "x"
            ).things
        )
        == 2
    )


@pytest.mark.parametrize(
    ("what", "count", "first", "last"),
    [
        ("drills 1 to 10 mm by 0.5 mm", 19, "drill 1 mm", "drill 10 mm"),
        ("drills 1 mm to 13 mm by 0.5 mm, cobalt", 25, "drill 1 mm, cobalt", "drill 13 mm, cobalt"),
        ("drills 1/16 to 1/2 in by 1/64", 29, "drill 1/16 in", "drill 1/2 in"),
        ('"drills #1 to #60"', 60, "drill #60", "drill #1"),
        ("drills A to Z", 26, "drill A", "drill Z"),
    ],
)
def test_a_set_of_drills_is_one_line(what, count, first, last):
    things = cabinet_from_text(entry("drills", what), "x").things
    assert (len(things), things[0].what, things[-1].what) == (count, first, last)
    assert {thing.row for thing in things} == {0}


def test_missing_ones_of_a_set_are_not_there():
    things = cabinet_from_text(
        entry("drills", "drills 1 to 10 mm by 0.5 mm", "missing: 3.5 mm, 7 mm"), "x"
    ).things
    sizes = {round(thing.cutter.diameter * 1e3, 1) for thing in things}
    assert len(things) == 17
    assert not sizes & {3.5, 7.0}


def test_out_or_none_left_is_not_there_now():
    here, out, none = cabinet_from_text(
        entry("cutters", "end mill 6 mm")
        + "  - what: end mill 8 mm\n    place: drawer 9\n    out: at the grinder\n"
        + "  - what: end mill 9 mm\n    place: drawer 9\n    count: 0\n",
        "x",
    ).things
    assert (here.here, out.here, none.here) == (True, False, False)
    assert (out.away, none.away) == ("at the grinder", "none left")


# --- which cabinet counts ---


def test_without_one_s_own_only_a_job_of_the_invented_workshop_has_a_cabinet():
    assert cabinet_for("Harrowmoss Training Workshop (invented)").invented
    assert cabinet_for("") is None
    assert cabinet_for("The shed") is None


def test_one_s_own_goes_before_and_is_read_anew_when_it_changes(own_home):
    import os

    (own_home / NAME).write_text(OWN, encoding="utf-8")
    assert own_path() == own_home / NAME
    for workshop in ("", "The shed", "Harrowmoss Training Workshop (invented)"):
        cabinet = cabinet_for(workshop)
        assert cabinet.own
        assert cabinet.name == "The shed"
    assert cabinet_for("") is cabinet_for("x")
    (own_home / NAME).write_text(OWN.replace("The shed", "The barn"), encoding="utf-8")
    os.utime(own_home / NAME, ns=(1, 1))
    assert cabinet_for("").name == "The barn"
