"""The stock of a file: its shape says what is asked, and what makes no piece of metal is said by its line."""

from __future__ import annotations

import pytest

from jobsheet.errors import DocumentError
from jobsheet.storage.job_file import job_from_text

HEAD = "format: 2\nunits: mm\nmaterial: S235\nmachine: bench-mill-b-1\nstock:\n"
TAIL = "set-ups:\n  - key: one\n    number: 1\n    up: top\n    operator: front\n    operations: []\n"


def stock(*lines):
    return job_from_text(HEAD + "".join(f"  {line}\n" for line in lines) + TAIL, "job").stock


def test_a_block_without_a_word_of_its_shape():
    found = stock("length: 80", "width: 50", "height: 12")
    assert [one.text for one in (found.length, found.width, found.height)] == ["80", "50", "12"]


def test_a_bar_has_its_box_from_its_diameter():
    found = stock("shape: round bar", "diameter: 40", "bar length: 90")
    assert found.sizes == pytest.approx((0.09, 0.04, 0.04))


@pytest.mark.parametrize(
    ("lines", "says"),
    [
        (("length: 80", "width: 50"), "height"), (("shape: egg", "length: 80"), "egg"), (("shape: round bar", "bar length: 90"), "diameter"),
        (("length: 80", "width: 50", "height: 12", "wobble: 3"), "wobble"),
        (("shape: casting", "length: 80", "width: 50", "height: 12", "skin: 6"), "skin"),
    ],
)  # fmt: skip
def test_what_is_missing_strange_or_impossible_is_named(lines, says):
    with pytest.raises(DocumentError, match=says):
        stock(*lines)
