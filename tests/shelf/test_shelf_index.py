"""The shelf finds by words and sizes, follows its files, and can be thrown away: the files are the truth."""

from __future__ import annotations

import os
import random
import shutil
import sqlite3
import time

import pytest

from jobsheet.errors import CannotWrite, NoSuchEntry
from jobsheet.model.what_ran import Entry
from jobsheet.shelf.scanned_job import scanned
from jobsheet.shelf.shelf_index import Index
from jobsheet.shelf.shelf_questions import asked_by, find
from jobsheet.shelf.size_words import sizes
from jobsheet.storage.records.run_log import record


@pytest.fixture
def shelf(samples, tmp_path, own_home):
    """The samples, one of them in a folder of its own."""
    there = tmp_path / "shelf"
    shutil.copytree(
        samples, there, ignore=lambda _, names: [name for name in names if not name.endswith(".yaml")]
    )
    (there / "old").mkdir()
    (there / "hm-104-cover-plate.yaml").rename(there / "old" / "hm-104-cover-plate.yaml")
    return there


@pytest.fixture
def index(shelf):
    made = Index(shelf)
    made.refresh()
    yield made
    made.close()


def numbers(index, question):
    return sorted({hit.number for hit in find(index, question).hits})


@pytest.mark.parametrize(
    ("question", "wanted"),
    [
        ("drill 6.8", ["HM-103"]), ("drill 6.80 mm", ["HM-103"]), ("drill 6,8", ["HM-103"]), ("6.8 drill", ["HM-103"]),
        ("slot 10", ["HM-102"]), ("M8", ["HM-103"]), ("16 H7", ["HM-103"]), ("HM-104", ["HM-104"]), ("hm-10", ["HM-100", "HM-101", "HM-102", "HM-103", "HM-104"]),
        ("pivot", ["HM-103"]), ("PIVOT block", ["HM-103"]), ("6082", ["HM-102"]), ("no such thing", []), ("drill 6.81", []), ("cover plate", ["HM-104"]),
        ("0.2677 in", ["HM-103"]), ("bench-mill-b-2", ["HM-100"]), ('"* AND ( zzz', []), ("%", []), ("'; drop table jobs; --", []),
    ],
)  # fmt: skip
def test_words_and_sizes_find_what_has_them(index, question, wanted):
    assert numbers(index, question) == wanted


def test_nothing_asked_is_all_and_the_last_made_comes_first(index, shelf):
    assert find(index, "").count == 7
    entry = Entry(
        job="HM-102",
        plan="",
        revision=0,
        machine="knee-mill-k-2",
        date="2026-11-20",
        about="step",
        key="a",
        number=90,
        outcome="broke",
    )
    record(shelf / "hm-102-slide-plate.yaml", (entry,))
    entry = Entry(
        job="HM-101",
        plan="",
        revision=0,
        machine="bench-mill-b-1",
        date="2026-11-25",
        about="step",
        key="a",
        number=30,
        outcome="clean",
    )
    record(shelf / "hm-101-setting-block.yaml", (entry,))
    index.refresh()
    assert [hit.number for hit in find(index, "").hits[:2]] == ["HM-101", "HM-102"]
    first = find(index, "trouble first").hits[0]
    assert (first.number, first.went, first.made, first.times) == (
        "HM-102",
        "stopped at 90: broke",
        "2026-11-20",
        1,
    )
    assert find(index, "hm-101").hits[0].went == "clean"


def test_where_it_was_found_stands_beside_it(index):
    (hit,) = find(index, "drill 6.8").hits
    assert hit.where.startswith("cutter: drill 6.8")
    (hit,) = find(index, "slot 10").hits
    assert "slot 10 +0.05/0" in hit.where


def test_the_index_follows_the_files(index, shelf):
    path = shelf / "hm-103-pivot-block.yaml"
    text = path.read_text("utf-8")
    path.write_text(text.replace("drill 6.8", "drill 7.1"), encoding="utf-8")
    assert index.refresh().read >= 1
    assert numbers(index, "drill 6.8") == []
    assert numbers(index, "drill 7.1") == ["HM-103"]
    # the same size and the same time, a moment after it was read: it is looked at again
    stat = path.stat()
    path.write_text(text.replace("drill 6.8", "drill 7.3"), encoding="utf-8")
    os.utime(path, ns=(stat.st_atime_ns, stat.st_mtime_ns))
    index.refresh()
    assert numbers(index, "drill 7.3") == ["HM-103"]
    path.unlink()
    assert index.refresh().gone == 1
    assert numbers(index, "pivot") == []
    assert find(index, "").count == 6


def test_what_did_not_change_is_not_read_again(index, shelf):
    for path in shelf.rglob("*.yaml"):
        os.utime(path, ns=(1_700_000_000_000_000_000,) * 2)
    index.refresh()
    assert index.refresh().read == 0


@pytest.mark.parametrize("harm", ["deleted", "cut", "nonsense", "another version", "a folder"])
def test_a_harmed_index_gives_the_same_answers(shelf, tmp_path, harm):
    place = tmp_path / "index.sqlite"
    first = Index(shelf, place)
    first.refresh()
    wanted = find(first, "drill 6.8").hits
    first.close()
    if harm == "deleted":
        place.unlink()
    elif harm == "cut":
        place.write_bytes(place.read_bytes()[:5000])
    elif harm == "nonsense":
        place.write_bytes(random.Random(3).randbytes(20_000))
    elif harm == "another version":
        with sqlite3.connect(place) as database:
            database.execute("pragma user_version = 99")
    else:
        place.unlink()
        place.mkdir()
    again = Index(shelf, place)
    again.refresh()
    assert find(again, "drill 6.8").hits == wanted
    again.close()


def test_a_folder_that_is_not_there_is_one_sentence(tmp_path, own_home):
    with pytest.raises(NoSuchEntry, match="there is no folder"):
        Index(tmp_path / "nowhere")


def test_broken_files_are_found_by_their_words_and_hide_nothing(shelf):
    (shelf / "torn.yaml").write_bytes(
        b"format: 2\npart:\n  number: HM-9\n  name: T\xff\x00rn gudgeon\n - - : [\n"
    )
    (shelf / "empty.yaml").write_bytes(b"")
    (shelf / "note.txt").write_text("drill 6.8")
    made = Index(shelf)
    made.refresh()
    assert numbers(made, "gudgeon") == ["HM-9"]
    assert find(made, "").count == 9
    made.close()


def test_stopped_half_way_what_was_read_is_found(shelf):
    for count in range(450):
        shutil.copy(shelf / "hm-100-drilled-plate-b1.yaml", shelf / f"copy-{count}.yaml")
    made = Index(shelf)
    done = made.refresh(lambda _: False)
    assert 0 < done.looked < done.of
    assert find(made, "drilled").count >= 100
    made.refresh()
    assert find(made, "").count == 457
    made.close()


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("drill 6.8, drawer 3", [(6800, "drill"), (3000, "drawer")]), ("end mill 1/2 in, 4 teeth", [(12700, "mill"), (4000, "in")]),
        ("ream 16 H7", [(16000, "ream")]), ("Ø6,8 through", [(6800, "Ø")]), ("1-1/4 in wide", [(31750, "")]), ("M8 in #7", [(5105, "in")]),
        ("HM-103", []), ("tap 1/4-20", []), ("25.4 mm = 1 in", [(25400, ""), (25400, "mm")]), ("0/0 1/0 999999999", []),
    ],
)  # fmt: skip
def test_sizes_of_a_line(text, wanted):
    """25.4 mm to the inch; #7 is 0.2010 in (ASME B94.11M)."""
    found = [(one.micrometres, one.before) for one in sizes(text)]
    assert [size for size, _ in found] == [size for size, _ in wanted]


def test_a_job_in_inches_is_found_in_millimetres():
    text = "units: in\npart:\n  number: X\nset-ups:\n  - key: a\n    operations:\n      - key: b\n        kind: slot\n        width: 0.5\n"
    assert [(one.micrometres, one.before, one.kind) for one in scanned(text).sizes] == [
        (12700, "width", "slot")
    ]


def test_the_question_is_told_back():
    assert asked_by("drill 6.8 brass trouble first").said == "drill 6.8 · brass · trouble first"
    assert asked_by("1/4 in M8").said == "6.35 mm · M8"


def test_an_index_that_cannot_be_asked_says_so_and_never_that_nothing_is_there(index):
    index.database.execute("drop table sizes")
    with pytest.raises(CannotWrite, match="cannot be read"):
        find(index, "drill 6.8")


def test_who_asks_is_not_held_up_by_who_reads_the_folder(shelf, tmp_path):
    """The reading thread has an index of its own, in the middle of a write; a question is answered from what stood before."""
    place = tmp_path / "index.sqlite"
    reading, asking = Index(shelf, place), Index(shelf, place)
    reading.refresh()
    reading.database.execute("delete from jobs")  # not yet kept
    assert find(asking, "pivot").count == 1
    reading.database.rollback()
    reading.close()
    asking.close()


def test_an_index_that_is_full_opens_at_once(shelf, tmp_path):
    """Opening asks each table for its first row; counting them together took hours at ten thousand jobs."""
    place = tmp_path / "index.sqlite"
    first = Index(shelf, place)
    for table in ("jobs (path, size)", "sizes (line, job)", "words (text, name)"):
        first.database.executemany(
            f"insert into {table} values (?, ?)", [(f"{number}", number) for number in range(1500)]
        )
    first.database.commit()
    first.close()
    begun = time.monotonic()
    again = Index(shelf, place)
    assert time.monotonic() - begun < 2
    assert len(again.in_order()) == 1500
    again.close()


def test_the_order_is_that_of_the_days_whether_or_not_it_was_asked_before(index):
    rows = index.database.execute("select id, planned_on from jobs").fetchall()
    planned = {str(at): day for at, day in rows}
    assert [planned[at] for at in index.in_order()] == sorted(planned.values(), reverse=True)
    assert sorted(index.in_order(trouble_first=True)) == sorted(planned)
