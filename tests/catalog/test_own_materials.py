"""A person's own materials: they join or refine, lose no hazard, and say clearly what is wrong."""

from __future__ import annotations

import os
import textwrap

import pytest

from jobsheet.catalog.metals import own_materials
from jobsheet.catalog.metals.materials import all_materials, find, names, own_names, refined
from jobsheet.catalog.reading import strict_yaml
from jobsheet.errors import DocumentError, NoSuchEntry

WHOLE = """
    materials:
      Bronze from the shelf:
        also: [shelf bronze]
        family: copper
        iso: N
        kc11: 900 MPa
        mc: 0.27
        kd: {value: 14000, source: mh-m, trust: interpolated}
        speeds: {mill: 25 m/min}
"""


@pytest.fixture
def write(own_home):
    def written(text: str, name: str = "mine.yaml"):
        folder = own_home / "materials"
        folder.mkdir(exist_ok=True)
        path = folder / name
        path.write_text(textwrap.dedent(text), encoding="utf-8")
        return path

    return written


def refused(write, text: str) -> str:
    write(text)
    with pytest.raises(DocumentError) as error:
        find("S235")
    assert str(error.value).startswith("mine.yaml cannot be used")
    return str(error.value)


def test_no_folder_is_no_trouble():
    assert refined() == {}
    assert not any(material.own for material in all_materials())


def test_a_row_joins(write):
    write(WHOLE)
    found = find("Shelf Bronze")
    assert found is find("bronze from the shelf")
    assert found.own
    assert found.kc11.value == pytest.approx(900e6)
    assert (found.kc11.source, found.kc11.trust) == ("own file", "own")
    assert found.kd_torque.trust == "interpolated"
    assert found.speed("mill") * 60 == pytest.approx(25)
    assert found.speed("drill") is None
    assert own_names()[-1] == "Bronze from the shelf"
    assert "shelf bronze" in names()
    assert refined() == {}


def test_a_row_refines_and_inherits_the_rest(write):
    shipped, count = find("1045"), len(own_names())
    write(
        "materials: {C45: {kc11: 1900 MPa, speeds: {drill: 20 m/min}, also: [crank steel], note: from Jones}}"
    )
    found = find("1045")
    assert found is find("crank steel") is find("1.0503")
    assert found.name == "1045"
    assert found.own
    assert found.kc11.value == pytest.approx(1900e6)
    assert found.speed("drill") * 60 == pytest.approx(20)
    assert found.speed("mill") == shipped.speed("mill")
    assert found.mc == shipped.mc
    assert found.kp == shipped.kp
    assert found.note == "from Jones"
    assert set(shipped.also) < set(found.also)
    assert len(own_names()) == count
    assert refined() == {"1045": ()}


@pytest.mark.parametrize("hazards", ["[]", "[graphite]", "lead"])
@pytest.mark.parametrize("name", ["AZ91", "mgal3zn1", "AZ31/AZ91 magnesium"])
def test_a_refined_row_never_loses_a_hazard(write, name, hazards):
    write(f"materials: {{{name}: {{hazards: {hazards}}}}}")
    for called in ("AZ91", "AZ31", name):
        assert "magnesium" in find(called).hazards
    assert refined() == {"AZ91": ("magnesium",)}


def test_the_end_of_a_published_range_goes_with_its_start(write):
    """Who starts an alloy slower than the shipped row does not get the shipped row's fastest speed."""
    write("materials:\n  S235:\n    speeds: {mill: 20 m/min}\n    fastest: {drill: 30 m/min}\n")
    found = find("S235")
    assert found.fastest_of("mill") is None
    assert found.fastest_of("drill").value == pytest.approx(0.5)
    assert found.fastest_of("carbide mill").value == pytest.approx(5.0)


def test_a_hazard_that_a_file_adds_stays_when_the_next_leaves_it_out(write):
    write("materials: {C110: {hazards: [beryllium]}}", "a.yaml")
    write("materials: {C110: {hazards: [plated]}}", "b.yaml")
    assert set(find("C110").hazards) == {"beryllium", "plated"}


def test_a_hazard_named_again_is_not_kept_against_the_file(write):
    write("materials: {AZ91: {hazards: [magnesium, plated]}}")
    assert refined() == {"AZ91": ()}
    assert find("AZ91").hazards == ("magnesium", "plated")


@pytest.mark.parametrize(("family", "hazard"), [("magnesium", "magnesium"), ("titanium", "titanium")])
def test_a_family_that_burns_is_a_hazard_without_being_told(write, family, hazard):
    write(WHOLE.replace("family: copper", f"family: {family}"))
    assert find("shelf bronze").hazards == (hazard,)


def test_no_family_stays_unknown_so_that_the_stop_note_asks(write):
    write(WHOLE.replace("        family: copper\n", ""))
    assert find("shelf bronze").family == ""


def test_a_files_family_is_for_its_new_rows_only(write):
    write("family: steel" + textwrap.dedent(WHOLE.replace("        family: copper\n", "")))
    assert find("shelf bronze").family == "steel"
    write("family: steel\nmaterials: {AZ91: {note: mine}}")
    assert find("AZ91").family == "magnesium"


def test_kd_for_both_replaces_torque_and_thrust(write):
    write("materials: {304: {kd: 30000}}")
    assert (find("304").kd_torque.value, find("304").kd_thrust.value) == (30000, 30000)
    write("materials: {304: {kd thrust: 40000}}")
    assert (find("304").kd_torque.value, find("304").kd_thrust.value) == (24000, 40000)


def test_a_change_is_seen_at_once_and_a_row_that_is_gone_is_gone(write):
    path = write(WHOLE)
    assert find("shelf bronze").speed("mill") * 60 == pytest.approx(25)
    path.write_text(path.read_text("utf-8").replace("25 m/min", "26 m/min"), encoding="utf-8")
    os.utime(path, ns=(1, 1))
    assert find("shelf bronze").speed("mill") * 60 == pytest.approx(26)
    path.unlink()
    with pytest.raises(NoSuchEntry):
        find("shelf bronze")


def test_a_file_is_read_once_while_it_stays_as_it_is(write, monkeypatch):
    write(WHOLE)
    find("shelf bronze")
    monkeypatch.setattr(own_materials, "read_own", None)
    assert find("shelf bronze").own


@pytest.mark.parametrize(
    ("field", "says"),
    [
        ("hazard: [lead]", "did you mean hazards"),
        ("hazards: [lea]", "did you mean lead"),
        ("hazards: {lead: yes}", "write a list"),
        ("family: stel", "did you mean steel"),
        ("iso: X", "write P, M, K, N, S, H or plastic"),
        ("kc11: much", "“much” is not a stress"),
        ("kc11: 900 mm", "“mm” is a"),
        ("kc11: 900 GPa", "not a likely size"),
        ("mc: 27", "not a likely size"),
        ("mc: 0.27 MPa", "without a unit"),
        ("mc: {worth: 0.2}", "write {value: …, source: …, trust: …}"),
        ("mc: {value: [1]}", "one line of text"),
        ("speeds: 30", "one line a kind of work"),
        ("speeds: {mil: 30 m/min}", "did you mean mill"),
        ('speeds: {mill: "1,000"}', "1000"),
        ("work hardens: perhaps", "write yes or no"),
        ("note: [a, b]", "one line of text"),
        ("also: [A36]", "already a name of S235"),
    ],
)
def test_what_is_wrong_in_a_row_is_said_with_its_line(write, field, says):
    text = refused(write, f"materials:\n  1045:\n    title: mine\n    {field}\n")
    assert says in text
    assert "line 4" in text
    assert "1045" in text


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "empty"),
        ("- a\n", "write materials:"),
        ("materials: all\n", "write materials:"),
        ("material:\n  X: {}\n", "not known here"),
        ("family: wood\nmaterials: {}\n", "“wood”"),
        ("materials: {X: all}\n", "fields below it"),
        ("materials: {'': {}}\n", "name"),
        ("materials: {Own: {iso: P, mc: 0.2}}\n", "needs kc11, kd too"),
        ("materials: {'4140': {kc11: 1800 MPa}}\n", "4140 annealed or 4140 prehard"),
        ("materials:\n  A: {mc: 0.2}\n  A: {mc: 0.2}\n", "stands twice in the same place"),
        ("materials: &all {A: *all}\n", "references (& and *)"),
        ("materials: &x\n  A: &b {note: a}\n  B: *b\n", "references (& and *)"),
        ("materials: !!python/object:os.system {}\n", "tag"),
        ("materials: {A: [}\n", "line 1"),
        ("a: 1\n---\nb: 2\n", "document"),
        ("? [a]\n: b\n", "a word, not a list"),
        ("materials: {a\x01: 1}\n", "character"),
        ("materials: " + "[" * 30 + "]" * 30, "deep"),
        ("materials: " + "[" * 20000 + "]" * 20000, "cannot be used"),
    ],
)
def test_a_file_that_is_none_says_why(write, text, says):
    assert says in refused(write, text)


def test_every_problem_of_a_file_is_said_at_once(write):
    text = refused(write, "materials:\n  1045: {mc: 9}\n  304: {iso: Q}\n  303: {titel: x}\n")
    assert all(f"line {line}" in text for line in (2, 3, 4))


def test_other_bytes_and_too_many_of_them(write):
    path = write("")
    path.write_bytes(b"\xff\xfe\x00m")
    with pytest.raises(DocumentError, match="UTF-8"):
        find("S235")
    path.write_bytes(b"#" * (strict_yaml.LARGEST_FILE + 1))
    with pytest.raises(DocumentError, match="too large"):
        find("S235")


def test_a_folder_with_a_files_name_and_other_files_beside(write, own_home):
    write("not yaml at all: [", "notes.txt")
    write("[", ".hidden.yaml")
    assert find("S235")
    (own_home / "materials" / "folder.yaml").mkdir()
    with pytest.raises(DocumentError, match="this is a folder"):
        find("S235")
