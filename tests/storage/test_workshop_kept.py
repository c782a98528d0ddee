"""What a workshop always prints, written beside all that stands in its file already."""

from __future__ import annotations

import pytest

from jobsheet.errors import DocumentError
from jobsheet.model.prints import PRINTS, prints
from jobsheet.paths import own_folder
from jobsheet.storage.kept.workshop_kept import keep_prints
from jobsheet.storage.shop_file import NAME, workshop


def test_what_is_kept_is_what_the_workshop_prints():
    keep_prints(prints(["route"]), "letter")
    assert workshop().prints.pages == prints(["route"]).pages
    assert workshop().paper == "letter"


def test_what_stood_there_stays_with_its_remarks():
    own_folder().mkdir(parents=True, exist_ok=True)
    path = own_folder() / NAME
    keep_prints(prints(["route"]), "a4")
    text = path.read_text(encoding="utf-8")
    path.write_text(f"# ours\n{text}", encoding="utf-8")
    keep_prints(prints(PRINTS), "a4")
    assert path.read_text(encoding="utf-8").startswith("# ours\n")
    assert set(workshop().prints.pages) == set(PRINTS)


def test_a_file_that_cannot_be_used_stays_as_it_is():
    own_folder().mkdir(parents=True, exist_ok=True)
    path = own_folder() / NAME
    path.write_text("wobble: [", encoding="utf-8")
    with pytest.raises(DocumentError):
        keep_prints(prints(PRINTS), "a4")
    assert path.read_text(encoding="utf-8") == "wobble: ["


def at(text):
    own_folder().mkdir(parents=True, exist_ok=True)
    path = own_folder() / NAME
    path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return path


def test_a_first_file_begins_with_its_format():
    """And each kind of page has one line, said or not."""
    keep_prints(prints(["route"]), "a4")
    lines = (own_folder() / NAME).read_text(encoding="utf-8").splitlines()
    assert lines[0] == "format: 1"
    assert sorted(lines[1:]) == sorted(
        [f"print {name}: {'yes' if name == 'route' else 'no'}" for name in PRINTS] + ["paper: a4"]
    )


def test_an_empty_file_is_as_good_as_none():
    path = at("")
    keep_prints(prints(["route"]), "a4")
    assert path.read_text(encoding="utf-8").startswith("format: 1\n")
    assert workshop().paper == "a4"


def test_a_name_with_a_line_below_is_said_again_and_not_twice():
    path = at("format: 1\nprint_route: no\npaper: a4\n")
    keep_prints(prints(["route"]), "letter")
    text = path.read_text(encoding="utf-8")
    assert "print_route: yes" in text
    assert "print route" not in text
    assert text.count("paper: ") == 1
    assert workshop().paper == "letter"


@pytest.mark.parametrize("text", ["- a list\n", b"format: 1\n# Fr\xe4serei\n", "format: 99\n", "wobble: 1\n"])
def test_what_cannot_be_read_whole_is_not_written(text):
    """Signs of another encoding would come back as question marks."""
    path = at(text)
    before = path.read_bytes()
    with pytest.raises(DocumentError):
        keep_prints(prints(PRINTS), "a4")
    assert path.read_bytes() == before
