"""Names that the program proposes can be held by any system; an export takes the
place of an older export only.
"""

from __future__ import annotations

import pytest

from jobsheet.errors import CannotWrite
from jobsheet.storage.exporting_files import export_file, file_name, free_file, same_name


@pytest.mark.parametrize(
    ("words", "name"),
    [
        ("HM-100", "HM-100.pdf"), ("", "job.pdf"), ('a/b\\c:d*e?f"g<h>i|j', "a-b-c-d-e-f-g-h-i-j.pdf"), ("con", "-con.pdf"),
        ("COM1", "-COM1.pdf"), ("nul.x", "-nul.x.pdf"), ("context", "context.pdf"), (" HM 1 . ", "HM 1.pdf"), ("..", "job.pdf"),
        ("a\x1bb\x85\nc", "a-b--c.pdf"), ("HM-100.pdf", "HM-100.pdf"), ("Führung ½", "Führung ½.pdf"), ("\ud800", "-.pdf"),
    ],
)  # fmt: skip
def test_a_name_that_is_proposed(words, name):
    assert file_name(words, ".pdf") == name


@pytest.mark.parametrize("letter", ["n", "ä", "漢", "😀"])
def test_a_long_name_is_cut_between_letters(letter):
    name = file_name(letter * 400, ".yaml")
    assert 190 < len(name.encode()) <= 200
    assert set(name.removesuffix(".yaml")) == {letter}


def test_an_export_replaces_an_older_one_and_nothing_else(tmp_path):
    place = tmp_path / "one.pdf"
    export_file(place, b"%PDF-1 old")
    export_file(place, b"%PDF-1 new")
    assert place.read_bytes() == b"%PDF-1 new"
    for other in (b"my notes", b"<svg/>", b"format: 1"):
        place.write_bytes(other)
        with pytest.raises(CannotWrite, match="is no PDF"):
            export_file(place, b"%PDF-1 new")
        assert place.read_bytes() == other
    place.write_bytes(b"")
    export_file(place, b"%PDF-1 new")


def test_names_that_differ_by_case_or_by_how_a_letter_is_composed_are_one_name(tmp_path):
    (tmp_path / "hm-100.YAML").write_text("mine", encoding="utf-8")
    (tmp_path / "fu\u0308hrung.yaml").write_text("mine", encoding="utf-8")
    assert free_file(tmp_path, "HM-100", ".yaml").name == "HM-100-2.yaml"
    assert free_file(tmp_path, "F\u00fchrung", ".yaml").name == "F\u00fchrung-2.yaml"
    assert free_file(tmp_path, "HM-101", ".yaml").name == "HM-101.yaml"
    assert free_file(tmp_path / "gone", "HM-101", ".yaml").name == "HM-101.yaml"
    assert same_name(tmp_path / "HM-100.yaml") == "hm-100.YAML"
    assert same_name(tmp_path / "hm-100.YAML") == ""
    assert same_name(tmp_path / "HM-101.yaml") == ""
