"""Bad input gets one clear sentence that names the place and the remedy; a test for each."""

from __future__ import annotations

import sys
import time

import pytest

from jobsheet.errors import DocumentError
from jobsheet.storage.job_file import job_from_text, read_job

GOOD = """\
format: 1
units: mm
material: S235
machine: bench-mill-b-1
stock:
  length: 80
  width: 50
  height: 12
set-ups:
  - key: set-up-1
    number: 1
    operations:
      - key: drill-1
        number: 10
        kind: drill
        cutter: drill 5
        at:
          - [14, 12]
        depth: through
        feed: 0.08
      - key: face-1
        number: 20
        kind: face
        cutter: face mill 50, 4 teeth
        depth: 0.4
        feed per tooth: 0.05
"""


def problems(text: str) -> list[str]:
    with pytest.raises(DocumentError) as caught:
        job_from_text(text, "plate.yaml")
    assert str(caught.value).startswith("plate.yaml cannot be used:")
    return [str(problem) for problem in caught.value.problems]


def said(text: str) -> list[str]:
    with pytest.raises(DocumentError) as caught:
        job_from_text(text, "plate.yaml")
    return str(caught.value).split("\n")


def test_the_good_one_is_good():
    assert len(job_from_text(GOOD, "plate.yaml").operations()) == 2


@pytest.mark.parametrize(
    ("old", "new", "line", "says"),
    [
        ("depth: through", "dept: through", 19, "unknown field; did you mean depth?"),
        ("feed: 0.08", "feed: 0.08 kg", 20, "is a mass, but a feed per turn is asked for"),
        ("length: 80", "length: 0", 6, "must be at least 1 mm"),
        ("length: 80", "length: -80", 6, "must be at least 1 mm"),
        ("length: 80", "length: nan", 6, "is not a length; write 12 mm"),
        ("length: 80", "length: .inf", 6, "is not a length"),
        ("length: 80", "length: 1e308", 6, "too large"),
        ("length: 80", "length: 5 km", 6, "no unit"),
        ("4 teeth", "0 teeth", 24, "a cutter has a whole number of teeth"),
        ("kind: drill", "kind: drilll", 15, "Did you mean drill?"),
        ("kind: drill", "kind: broach", 15, "There is no kind of operation called “broach”"),
        ("machine: bench-mill-b-1", "machine: bench-mill-b-9", 4, "did you mean bench-mill-b-"),
        ("material: S235", "material: S253", 3, "Did you mean S235?"),
        ("- [14, 12]", "- [6,35 mm, 10 mm]", 18, "put the size in quotes"),
        ("- [14, 12]", "- [14]", 18, "a place has two sizes"),
        ("- [14, 12]", "- [14, wide]", 18, "is not a length"),
        ("depth: 0.4", "depth: [6,35 mm]", 25, 'put it in quotes: "6, 35 mm"'),
        ("cutter: drill 5", "cutter: #7", 16, "an unquoted # begins a comment"),
        ("cutter: drill 5", "cutter: drill #7 ", 16, "an unquoted # begins a comment"),
        ("cutter: drill 5", "cutter: end mill 5", 16, "does not do this"),
        ("number: 20", "number: 10", 22, "the number 10 stands twice, first in line 14"),
        ("key: face-1", "key: drill-1", 21, "the key drill-1 stands twice, first in line 13"),
        ("key: face-1", "key: ../face", 21, "a key is a short word"),
        ("number: 20", "number: twenty", 22, "is not a whole number"),
        ("stock:\n  length: 80\n  width: 50\n  height: 12\n", "", 1, "the stock is missing"),
        ("stock:\n", "stock: 80 x 50\nsizes:\n", 5, "a group of fields belongs here"),
        ("    operations:\n", "    operations: none\n    rest:\n", 12, "a list belongs here"),
        ("format: 1", "format: 99", 1, "newer than this program knows"),
        ("format: 1", "format: new", 1, "write format: 2"),
        ("format: 1\n", "", 1, "does not say its format"),
        ("depth: 0.4", "depth: 0.4\n        depth: 0.5", 26, "stands twice"),
        ("material: S235", "material: &a S235\nnote: *a", 3, "references (& and *) are not used here"),
        ("material: S235", "material: !!python/object/apply:os.system [echo]", 3, "the tag"),
        ("material: S235", "material: !!int 5", 3, "the tag int is not used here"),
        ("material: S235", 'material: "S235', 3, "a quote is opened here"),
        ("material: S235", "\tmaterial: S235", 3, "not with a tab"),
        ("material: S235", "material: S235: mild", 3, "a colon too many"),
    ],
)
def test_each_names_its_line_and_the_remedy(old, new, line, says):
    assert old in GOOD
    found = problems(GOOD.replace(old, new, 1))
    assert any(f"line {line}:" in one and says in one for one in found), found


def test_of_a_file_of_nonsense_two_hundred_lines_are_said_and_how_many_more_there_are():
    head, _, _ = GOOD.partition("    operations:\n")
    step = "      - {{kind: dril, key: k{0}, dept{0}: wide}}\n"
    few = head + "    operations:\n" + "".join(step.format(index) for index in range(300))
    assert len(said(few)) <= 200
    assert said(few)[-1] == "  and 102 more"
    many = head + "    operations:\n" + "".join(step.format(index) for index in range(30_000))
    assert len(said(many)) <= 200
    assert said(many)[-1] == "  and at least 1802 more"


def test_what_stands_twice_in_one_line_is_said_too():
    both = "set-ups: [{key: a, number: 1, operations: []}, {key: a, number: 2, operations: []}]\n"
    assert "the key a stands twice, first in line 9" in " ".join(
        problems(GOOD.partition("set-ups:")[0] + both)
    )


def test_drill_number_without_quotes_keeps_the_text_that_yaml_left():
    """`drill #7` unquoted reads as `drill`: then the size is missing, and the sentence says so."""
    found = problems(GOOD.replace("cutter: drill 5", "cutter: #7"))
    assert any("#7" in one for one in found)


def test_all_problems_come_at_once():
    text = (
        GOOD.replace("length: 80", "length: wide")
        .replace("depth: 0.4", "dept: 0.4")
        .replace("feed: 0.08", "feed: 1 kg")
    )
    found = problems(text)
    assert len(found) >= 4
    assert [int(one.split()[1].rstrip(":")) for one in found] == sorted(
        int(one.split()[1].rstrip(":")) for one in found
    )


@pytest.mark.parametrize("text", ["", "\n\n", "# only a comment\n", "---\n"])
def test_an_empty_file(text):
    assert "empty" in problems(text)[0] or "group of fields" in problems(text)[0]


@pytest.mark.parametrize("text", ["- a\n- b\n", "just words\n", "42\n"])
def test_a_list_or_a_text_instead_of_a_mapping(text):
    assert "a group of fields belongs here" in problems(text)[0]


def test_two_documents_in_one_file():
    assert "line ---" in problems(GOOD + "---\nformat: 1\n")[0]


@pytest.mark.parametrize("opening", ["[", "{a: ", "- "])
def test_nesting_of_a_hundred_thousand(opening):
    began = time.monotonic()
    assert "nests too deep" in problems(opening * 100_000)[0]
    assert time.monotonic() - began < 10


def test_anchors_that_explode_do_not():
    lines = ["a: &a0 [x, x]"] + [f"b{n}: &a{n} [*a{n - 1}, *a{n - 1}]" for n in range(1, 60)]
    assert "references" in problems("\n".join(lines))[0]


def test_a_binary_file(tmp_path):
    path = tmp_path / "picture.yaml"
    path.write_bytes(bytes(range(256)) * 10)
    with pytest.raises(DocumentError, match="not text"):
        read_job(path)
    path.write_bytes(b"format: 1\x00\n")
    with pytest.raises(DocumentError, match="not a text file"):
        read_job(path)


def test_fifty_megabytes(tmp_path):
    path = tmp_path / "large.yaml"
    path.write_bytes(b"note: x\n" * (50_000_000 // 8))
    with pytest.raises(DocumentError, match="50 MB is too large"):
        read_job(path)


def test_a_folder_and_a_missing_file(tmp_path):
    with pytest.raises(DocumentError, match="this is a folder"):
        read_job(tmp_path)
    with pytest.raises(DocumentError, match="there is no file here"):
        read_job(tmp_path / "none.yaml")


@pytest.mark.skipif(sys.platform == "win32", reason="no such permissions there")
def test_a_name_that_cannot_be_a_file(tmp_path):
    with pytest.raises(DocumentError):
        read_job(tmp_path / ("x" * 300))


@pytest.mark.parametrize(
    "name",
    [
        "<b>bold</b>",
        "AT&T",
        '<img src="secret.png"/>',
        "../../etc/passwd",
        "a: b # c",
        "[x]",
        "{y}",
        "'",
        '"',
        "- x",
        "ends with a colon:",
        "yes",
        "~",
        "100",
        "⌀ ½ Ω Ж",
        " blanks ",
    ],
)
def test_names_are_kept_as_typed(name, hm100, tmp_path):
    from jobsheet.edit.commands import SetField
    from jobsheet.storage.job_writing import save_job

    job = SetField("job:part", "name", name).apply(hm100)
    job = SetField("clamp", "what", name).apply(job)
    save_job(job, tmp_path / "plate.yaml")
    back = read_job(tmp_path / "plate.yaml")
    assert back == job
    assert sorted(path.name for path in tmp_path.iterdir()) == ["plate.yaml"]


@pytest.mark.parametrize(
    ("old", "new", "place"),
    [
        ("  length: 80\n", "  length: 80\n  Length: 81\n", "line 7: stock.Length: this stands in line 6 already, spelled otherwise; take one out"),
        ("units: mm\n", "units: mm\nUnits: in\n", "line 3: Units: this stands in line 2 already, spelled otherwise; take one out"),
    ],
)  # fmt: skip
def test_a_field_that_stands_twice_is_named_with_its_group_and_both_lines(old, new, place):
    assert place in problems(GOOD.replace(old, new, 1))


def aside(lines):
    return GOOD + "dismissed:\n" + lines


def test_remarks_that_were_set_aside_are_read_each_with_its_reason():
    lines = "".join(f"  - rule: r{at}\n    about: drill-1\n    reason: why {at}\n" for at in (1, 2))
    found = job_from_text(aside(lines), "plate.yaml").dismissed
    assert [(one.rule, one.about, one.reason) for one in found] == [
        ("r1", "drill-1", "why 1"),
        ("r2", "drill-1", "why 2"),
    ]
    assert job_from_text(GOOD, "plate.yaml").dismissed == ()


def test_of_a_remark_that_was_set_aside_the_place_is_said_by_its_number():
    good, bad = "  - rule: a\n    reason: b\n", "  - rule: a\n    reason: b\n    wobble: c\n"
    (problem,) = problems(aside(good + bad))
    assert "dismissed[1].wobble: unknown field" in problem
    assert any(
        "dismissed" in one and "a list belongs here" in one for one in problems(GOOD + "dismissed: x\n")
    )
