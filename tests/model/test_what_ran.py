"""What happened with a job: what was taken back counts no more, and days go from the newest."""

from __future__ import annotations

from jobsheet.model.what_ran import Entry, Runs


def entry(name, **more):
    return Entry(**{"id": name, "job": "HM-1", "plan": "x", "revision": 1, "machine": "b-1", "date": "2026-11-02", "about": "step", **more})  # fmt: skip


def test_what_was_taken_back_does_not_count():
    one, other = entry("one", key="slot"), entry("other", key="slot", date="2026-11-05")
    runs = Runs(entries=(one, other), back=(entry("back", takes_back="one"),))
    assert runs.standing == (other,)
    assert runs.of_step("slot") == (other,)
    assert Runs(entries=(one, other)).of_step("slot") == (one, other)


def test_only_steps_are_told_of_a_step():
    runs = Runs(entries=(entry("one", key="slot", about="size"), entry("two", key="face")))
    assert runs.of_step("slot") == ()


def test_each_day_stands_once_the_newest_first():
    runs = Runs(
        entries=(entry("a"), entry("b", date="2026-12-01"), entry("c", date="2025-12-31"), entry("d"))
    )
    assert runs.dates == ("2026-12-01", "2026-11-02", "2025-12-31")
