"""Second files of one plan, as services leave them that copy files between computers: known by
what they say, not by their names.
"""

from __future__ import annotations

import shutil

import pytest

from jobsheet.edit.commands import SetField
from jobsheet.edit.revision_commands import AddRevision
from jobsheet.shelf.checking import checked
from jobsheet.shelf.shelf_index import Index
from jobsheet.shelf.shelf_questions import find
from jobsheet.storage.job_file import read_job
from jobsheet.storage.job_writing import save_job

NAME = "hm-102-slide-plate.yaml"


@pytest.fixture
def folder(samples, tmp_path, own_home):
    there = tmp_path / "shelf"
    there.mkdir()
    shutil.copy(samples / NAME, there / NAME)
    return there


def twins(folder):
    index = Index(folder)
    index.refresh()
    try:
        wrong = [str(one) for one in checked(index) if not isinstance(one, int)]
        return {hit.path: hit.twins for hit in find(index, "").hits}, wrong
    finally:
        index.close()


def another(folder, name, *commands):
    job = read_job(folder / NAME)
    for command in commands:
        job = command.apply(job)
    (folder / name).parent.mkdir(exist_ok=True)
    save_job(job, folder / name)


# The first is how one service calls it, the second another, the third says nothing by its
# name (lessons-and-shelf section 7).
@pytest.mark.parametrize(
    "name",
    ["hm-102-slide-plate (B's conflicted copy 2026-11-30).yaml", "hm-102-slide-plate-DESKTOP-4K2.yaml", "x.yaml"],
)  # fmt: skip
def test_two_files_of_one_plan_are_said_whatever_they_are_called(folder, name):
    another(
        folder,
        name,
        SetField("job:part", "name", "Slide plate, wider"),
        AddRevision("wider", "B", "2026-11-30"),
    )
    found, wrong = twins(folder)
    assert found == {NAME: (name,), name: (NAME,)}
    assert len(wrong) == 1
    assert "a second copy of HM-102" in wrong[0]


def test_two_plans_of_one_part_are_no_second_files(folder):
    another(folder, "b-1.yaml", SetField("job", "machine", "bench-mill-b-1"))
    another(folder, "later.yaml", SetField("job", "planned_on", "2026-11-29"))
    another(folder, "old/kept.yaml", AddRevision("kept apart", "B", "2026-11-30"))
    found, wrong = twins(folder)
    assert not any(found.values())
    assert not [line for line in wrong if "second copy" in line]


def test_plans_whose_revisions_began_otherwise_are_two_plans(folder):
    another(folder, "one.yaml", AddRevision("first plan", "A", "2026-11-01"))
    another(folder, "two.yaml", AddRevision("first plan", "B", "2026-11-20"))
    (folder / NAME).unlink()
    found, _ = twins(folder)
    assert found == {"one.yaml": (), "two.yaml": ()}


def test_plans_of_one_part_stand_together_whenever_they_were_made(folder, samples):
    another(
        folder,
        "b-1.yaml",
        SetField("job", "machine", "bench-mill-b-1"),
        SetField("job", "planned_on", "2020-01-01"),
    )
    shutil.copy(samples / "hm-103-pivot-block.yaml", folder)
    index = Index(folder)
    index.refresh()
    numbers = [hit.number for hit in find(index, "").hits]
    assert sorted(numbers) == ["HM-102", "HM-102", "HM-103"]
    assert numbers in (["HM-102", "HM-102", "HM-103"], ["HM-103", "HM-102", "HM-102"])
    assert index.other_plans(NAME) == ("b-1.yaml",)
    index.close()
