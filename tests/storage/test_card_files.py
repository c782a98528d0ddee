"""Machine cards by name: one's own before the shipped ones, and the nearest name where there is none."""

from __future__ import annotations

import pytest

from jobsheet.errors import NoSuchEntry
from jobsheet.paths import own_folder, resources
from jobsheet.storage.card_files import LONGEST, card_digest, card_names, card_path, find_card, planned_for

B1 = "bench-mill-b-1"


def own_copy(change=("", "")):
    folder = own_folder() / "machines"
    folder.mkdir(parents=True, exist_ok=True)
    text = (resources() / "machines" / f"{B1}.yaml").read_text(encoding="utf-8")
    (folder / f"{B1}.yaml").write_text(text.replace(*change), encoding="utf-8")
    return folder


def test_a_card_of_one_s_own_goes_before_the_shipped_one_and_is_named_once():
    shipped, before = card_path(B1), card_digest(B1)
    folder = own_copy(("title:", "# mine\ntitle:"))
    assert card_path(B1) == folder / f"{B1}.yaml" != shipped
    assert card_digest(B1) != before
    assert card_names().count(B1) == 1
    assert card_names()[0] == B1


def test_a_job_planned_for_a_card_keeps_what_the_card_was(hm100):
    job = planned_for(hm100, "knee-mill-k-2")
    assert (job.machine, job.card_hash) == ("knee-mill-k-2", card_digest("knee-mill-k-2"))
    assert job.set_ups is hm100.set_ups


@pytest.mark.parametrize(
    "name", ["../machines/bench-mill-b-1", "Bench mill", "", "-x", "x" * (LONGEST + 1), "a/b"]
)
def test_what_is_no_name_of_a_file_is_looked_for_nowhere(name):
    with pytest.raises(NoSuchEntry):
        find_card(name)


def test_the_nearest_name_is_offered():
    with pytest.raises(NoSuchEntry, match="knee-mill-k-2"):
        card_path("Knee mill K 2")


@pytest.mark.parametrize(("letters", "found"), [(61, True), (62, False)])
def test_the_name_of_a_card_has_61_letters_at_most(own_home, letters, found):
    name = "a" * letters
    folder = own_home / "machines"
    folder.mkdir(parents=True)
    (folder / f"{name}.yaml").write_bytes(card_path("bench-mill-b-1").read_bytes())
    if found:
        assert card_path(name).parent == folder
    else:
        with pytest.raises(NoSuchEntry):
            card_path(name)
