"""A few of every kind of round with every run of the tests; many with `--long`,
or by `python -m tests.rounds`.
"""

from __future__ import annotations

from itertools import islice

import pytest

from tests.rounds import sums
from tests.rounds.cut_short import WAYS, killed, refused, two
from tests.rounds.spoilt_files import mutated, through
from tests.rounds.writers import WRITERS

SEED = 22


def failed(rounds):
    return [(what, said) for what, said in rounds if said]


def test_every_writer_meets_a_disk_that_refuses():
    assert not failed(islice(refused(SEED, 0), len(WRITERS) * len(WAYS)))


def test_every_writer_meets_another_at_the_same_file():
    assert not failed(islice(two(SEED, 0), len(WRITERS)))


def test_a_sum_goes_on_where_it_ended(tmp_path, monkeypatch):
    monkeypatch.setattr(sums, "FOLDER", tmp_path / "rounds")
    held = sums.Sum()
    held.count("job", "")
    held.count("card", "torn")
    sums.write("abc", {"killed": held})
    again = sums.read("abc")["killed"]
    assert again.next == 2
    assert again.words() == "2 (card 1, job 1), 1 failed"
    assert again.failed == ["card: torn"]


@pytest.mark.long
@pytest.mark.parametrize(
    ("kind", "count"), [(killed, 1000), (two, 1000), (refused, 2000), (mutated, 100_000), (through, 4000)]
)
def test_many(kind, count):
    assert not failed(islice(kind(SEED, 0), count))
