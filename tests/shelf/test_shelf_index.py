"""The index of a shelf follows its files, and can be thrown away: the files are the truth."""

from __future__ import annotations

import os
import random
import shutil
import sqlite3
import time

import pytest

from jobsheet.errors import CannotWrite, NoSuchEntry
from jobsheet.shelf.shelf_index import Index
from jobsheet.shelf.shelf_questions import asked_by, find

from .numbers_found import numbers


def test_what_did_not_change_is_not_read_again(index, shelf):
    for path in shelf.rglob("*.yaml"):
        os.utime(path, ns=(1_700_000_000_000_000_000,) * 2)
    index.refresh()
    assert index.refresh().read == 0


def test_a_folder_that_is_not_there_is_one_sentence(tmp_path, own_home):
    with pytest.raises(NoSuchEntry, match="there is no folder"):
        Index(tmp_path / "nowhere")


def test_who_asks_is_not_held_up_by_who_reads_the_folder(shelf, tmp_path):
    """The reading thread has an index of its own, in the middle of a write; a question
    is answered from what stood before.
    """
    place = tmp_path / "index.sqlite"
    reading, asking = Index(shelf, place), Index(shelf, place)
    reading.refresh()
    reading.database.execute("delete from jobs")  # not yet kept
    assert find(asking, "pivot").count == 1
    reading.database.rollback()
    reading.close()
    asking.close()


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


def test_an_index_that_cannot_be_asked_says_so_and_never_that_nothing_is_there(index):
    index.database.execute("drop table sizes")
    with pytest.raises(CannotWrite, match="cannot be read"):
        find(index, "drill 6.8")


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
    assert sorted(index.in_order("trouble first")) == sorted(planned)


def test_an_order_is_asked_in_words(index):
    every = [hit.number for hit in find(index, "by number").hits]
    assert every == sorted(every)
    assert len(every) == 7
    assert [hit.number for hit in find(index, "newest first").hits] == [
        hit.number for hit in find(index, "").hits
    ]
    assert asked_by("By number M8").said == "M8 · by number"
