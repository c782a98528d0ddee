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
