"""Files as people write them: all text, each with its line; what could do harm or
hide something is refused by its line.
"""

from __future__ import annotations

import pytest

from jobsheet.catalog.reading.strict_yaml import DEEPEST, parse, read_file
from jobsheet.errors import DocumentError


def refused(text):
    with pytest.raises(DocumentError) as caught:
        parse(text, "file.yaml")
    return caught.value.problems[0]


def test_every_value_is_text_and_knows_its_line():
    node = parse("a: No\nb:\n  - 1\n  - c: 12:30\n", "file.yaml")
    assert (node.what, node.fields["a"].text, node.fields["a"].line) == ("a group of fields", "No", 1)
    assert (node.fields["b"].what, node.fields["b"].items[0].text) == ("a list", "1")
    assert (node.fields["b"].items[1].fields["c"].text, node.fields["b"].items[1].fields["c"].line) == (
        "12:30",
        4,
    )


@pytest.mark.parametrize(
    ("text", "line", "says"),
    [
        ("a: 1\na: 2\n", 2, "stands twice"), ("a: &x 1\nb: *x\n", 2, "references"), ("a: !!python/object:os.system x\n", 1, "tag"),
        ("a: 1\n---\nb: 2\n", 2, "one document"), ("a: 'x\n", 2, "quote"), ("a: [1, 2\n", 2, "bracket"),
        ("? [a, b]\n: 1\n", 1, "not a list"),
        ("a: 1\n<<<<<<< mine\nb: 2\n=======\nb: 3\n>>>>>>> theirs\n", 2, "two revisions"),
    ],
)  # fmt: skip
def test_what_is_refused_says_its_line_and_what_to_do(text, line, says):
    problem = refused(text)
    assert says in problem.sentence
    assert problem.line in (line, line - 1)


def test_a_file_may_nest_only_so_deep():
    assert parse("[" * (DEEPEST - 1) + "]" * (DEEPEST - 1), "file.yaml").items is not None
    assert "nests too deep" in refused("[" * (DEEPEST + 2) + "]" * (DEEPEST + 2)).sentence


def test_a_number_sign_that_hides_a_value_is_noticed():
    """`drill #7` loses its size: YAML takes it for a comment."""
    assert parse("cutter: drill #7\n", "file.yaml").fields["cutter"].comment
    assert parse("note: # nothing\n", "file.yaml").fields["note"].comment
    assert not parse('cutter: "drill #7"\n', "file.yaml").fields["cutter"].comment


def test_what_is_no_file_is_refused_before_it_is_opened(tmp_path):
    with pytest.raises(DocumentError, match="this is a folder"):
        read_file(tmp_path)
    with pytest.raises(DocumentError, match="cannot be used"):
        read_file(tmp_path / "none.yaml")
    (tmp_path / "raw.yaml").write_bytes(b"\xff\xfe\x00a")
    with pytest.raises(DocumentError):
        read_file(tmp_path / "raw.yaml")
