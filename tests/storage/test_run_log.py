"""What happened with a job only grows, counts whole or not at all, and nothing
is filled in that was not said.
"""

from __future__ import annotations

import os
import subprocess
import sys
import time

import pytest
from msgspec.structs import replace

from jobsheet.errors import CannotWrite, CommandError, DocumentError, NoSuchEntry
from jobsheet.model.what_ran import Entry, Runs
from jobsheet.storage.records import closed_records
from jobsheet.storage.records.run_log import path_beside, read_runs, record, runs_along, take_back


def entry(**more) -> Entry:
    base = Entry(
        job="HM-103", plan="D495-6QV9-7Y6", revision=2, machine="knee-mill-k-2", date="2026-12-02", time="14:05:30",
        role="Apprentice B", about="step", key="step-right", number=70, step="Step on the right end", outcome="noisy", layer=2,
        depth=4e-3, speed=5.0, note="rang\nat 4",
    )  # fmt: skip
    return replace(base, **more)


def test_what_is_written_is_what_is_read_and_a_person_can_read_it(tmp_path):
    job = tmp_path / "HM-103.yaml"
    (written,) = record(job, (entry(),))
    found, problems = read_runs(job)
    assert (found.entries, problems) == ((written,), ())
    assert replace(written, id="") == entry()
    text = path_beside(job).read_text(encoding="utf-8")
    assert path_beside(job).name == "HM-103.ran.txt"
    assert "depth: 4 mm" in text
    assert "speed: 300 rpm" in text
    assert "note: rang\nnote: at 4" in text
    assert text.endswith(f"\nend: {written.id}\n")
    # nothing that was not said has a line
    record(job, (entry(about="minutes", key="", number=0, step="", outcome="", layer=0, depth=None, speed=None, note="", cutting=1260.0),))  # fmt: skip
    last = path_beside(job).read_text("utf-8").rpartition("about: minutes\n")[2].split("\n")
    assert last[:2] == ["revision: 2", "minutes to cut: 21 min"]
    assert last[2].startswith("end: ")


def test_one_step_on_one_day_is_one_entry(tmp_path):
    job = tmp_path / "a.yaml"
    (first,) = record(job, (entry(),))
    with pytest.raises(
        CommandError, match=f"Step 70 was entered for 2026-12-02 already .noisy, {first.id[:6]}"
    ):
        record(job, (entry(outcome="clean"),))
    record(job, (entry(outcome="clean", date="2026-12-03"),))
    take_back(job, first.id[:5], "2026-12-03", note="wrong step")
    record(job, (entry(outcome="clean"),))
    found, _ = read_runs(job)
    assert [one.outcome for one in found.of_step("step-right")] == ["clean", "clean"]
    assert len(found.entries) == 3
    assert found.dates == ("2026-12-03", "2026-12-02")


def test_all_or_none_are_written(tmp_path):
    job = tmp_path / "a.yaml"
    record(job, (entry(),))
    before = path_beside(job).read_bytes()
    for wrong in (
        entry(key="other", outcome="superb"),
        entry(key="other", date="soon"),
        entry(key="", date="2026-12-04"),
        entry(),
    ):
        with pytest.raises((CommandError, DocumentError)):
            record(job, (entry(key="new"), wrong))
    assert path_beside(job).read_bytes() == before


@pytest.mark.parametrize(
    ("wrong", "sentence"),
    [
        ({"outcome": "superb"}, "outcome: “superb” is unknown"), ({"slipped": "the foot"}, "slipped: “the foot” is unknown"),
        ({"date": "2026-13-01"}, "is not a date"), ({"about": "weather"}, "about: “weather” is unknown"),
        ({"outcome": ""}, "outcome: this is missing"), ({"depth": -1e-3}, "must be above zero"),
        ({"about": "size", "size": "80"}, "found: this is missing"),
    ],
)  # fmt: skip
def test_what_makes_no_sense_is_not_written(tmp_path, wrong, sentence):
    with pytest.raises(DocumentError) as error:
        record(tmp_path / "a.yaml", (entry(**wrong),))
    assert sentence in str(error.value)
    assert not path_beside(tmp_path / "a.yaml").exists()


def test_a_torn_or_changed_entry_is_said_with_its_line_and_hides_no_other(tmp_path):
    job = tmp_path / "a.yaml"
    first, second = record(job, (entry(), entry(key="b", number=80)))
    path = path_beside(job)
    whole = path.read_text("utf-8")
    torn = whole[: whole.rindex("end:") - 1]
    path.write_text(torn, encoding="utf-8")
    found, problems = read_runs(job)
    assert found.entries == (first,)
    assert "never finished" in str(problems[0])
    assert "line" in str(problems[0])
    (third,) = record(job, (entry(key="c", number=90),))
    assert {one.id for one in read_runs(job)[0].entries} == {first.id, third.id}
    path.write_text(whole.replace("outcome: noisy", "outcome: clean", 1), encoding="utf-8")
    found, problems = read_runs(job)
    assert found.entries == (second,)
    assert "was changed after it was written" in str(problems[0])
    path.write_text("format: 99\n\n" + whole, encoding="utf-8")
    found, problems = read_runs(job)
    assert found.entries == ()
    assert "format" in str(problems[0])


def test_a_disk_that_refuses_says_so_and_keeps_what_was_there(tmp_path, monkeypatch):
    job = tmp_path / "a.yaml"
    (written,) = record(job, (entry(),))
    monkeypatch.setattr(
        closed_records.os, "fsync", lambda _: (_ for _ in ()).throw(OSError(28, "No space left on device"))
    )
    with pytest.raises(CannotWrite, match="still there"):
        record(job, (entry(key="b"),))
    assert written in read_runs(job)[0].entries


def test_nobody_is_taken_back_by_half_a_name(tmp_path):
    job = tmp_path / "a.yaml"
    record(job, (entry(),))
    for start in ("", "zzz"):
        with pytest.raises(NoSuchEntry):
            take_back(job, start, "2026-12-03")


def test_killed_while_writing_no_entry_that_was_said_to_be_kept_is_lost(tmp_path):
    job = tmp_path / "a.yaml"
    code = (
        "import sys\nfrom tests.storage.test_run_log import entry\nfrom jobsheet.storage.records.run_log import runs_along, record\n"
        "for n in range(10000):\n"
        "    (one,) = record(sys.argv[1], (entry(key=f'k{n}', number=n + 1),))\n    print(one.id, flush=True)\n"
    )
    for _ in range(2):
        child = subprocess.Popen(
            [sys.executable, "-c", code, str(job)], stdout=subprocess.PIPE, env={**os.environ}, text=True
        )
        time.sleep(1.2)
        child.kill()
        said = [line for line in child.communicate()[0].split("\n")[:-1] if line]
        found, _ = read_runs(job)
        assert set(said) <= {one.id for one in found.entries}
        if path_beside(job).exists():
            path_beside(job).unlink()


# --- saved as another file ---


def test_the_record_comes_along_where_the_same_part_is_saved_as_another_file(tmp_path):
    old, new = tmp_path / "plate.yaml", tmp_path / "shelf" / "plate-2.yaml"
    new.parent.mkdir()
    (kept,) = record(old, (entry(job="HM-1"),))
    assert runs_along("HM-1", old, new) == ""
    assert read_runs(new)[0].standing == (kept,)
    assert runs_along("HM-1", old, new) == ""  # once more changes nothing
    assert path_beside(old).exists()


def test_a_record_of_another_part_stays_and_is_said_to(tmp_path):
    old, new = tmp_path / "plate.yaml", tmp_path / "bracket.yaml"
    record(old, (entry(job="HM-1"),))
    assert runs_along("HM-2", old, new) == "What happened stays beside plate.yaml: it is of another part."
    assert not path_beside(new).exists()


def test_a_record_that_lies_there_already_is_left_as_it_is(tmp_path):
    old, new = tmp_path / "plate.yaml", tmp_path / "other.yaml"
    record(old, (entry(job="HM-1"),))
    record(new, (entry(job="HM-1", key="face-9"),))
    before = path_beside(new).read_bytes()
    assert "other.ran.txt is there already" in runs_along("HM-1", old, new)
    assert path_beside(new).read_bytes() == before


# --- one entry for one step on one day ---


def test_another_step_day_or_machine_is_another_entry_and_so_is_anything_that_is_no_step(tmp_path):
    job = tmp_path / "a.yaml"
    record(job, (entry(),))
    for other in (
        entry(key="b"), entry(date="2026-12-03"), entry(machine="bench-mill-b-1"),
        entry(about="size", size="80", found=80e-3, outcome="", layer=0, depth=None, speed=None),
        entry(about="change", change="lighter", outcome="", layer=0, depth=None, speed=None),
    ):  # fmt: skip
        record(job, (other,))
    assert len(read_runs(job)[0].entries) == 6


def test_two_of_one_step_are_refused_also_where_they_come_together(tmp_path):
    with pytest.raises(CommandError, match="Step 70 was entered for 2026-12-02 already"):
        record(tmp_path / "a.yaml", (entry(), entry(outcome="clean")))
    assert not path_beside(tmp_path / "a.yaml").exists()


def test_the_sentence_names_outcome_and_the_first_six_of_its_id(tmp_path):
    job = tmp_path / "a.yaml"
    (first,) = record(job, (entry(),))
    with pytest.raises(CommandError) as error:
        record(job, (entry(outcome="clean"),))
    assert str(error.value) == (
        f"Step 70 was entered for 2026-12-02 already (noisy, {first.id[:6]}): take that back first, "
        "or give the day on which it was cut again."
    )


def test_a_wrong_one_is_taken_back_together_with_the_right_one(tmp_path):
    job = tmp_path / "a.yaml"
    (wrong,) = record(job, (entry(),))
    back = entry(
        about="step",
        takes_back=wrong.id,
        key="",
        number=0,
        step="",
        outcome="",
        layer=0,
        depth=None,
        speed=None,
    )
    _, right = record(job, (back, entry(outcome="clean")))
    assert read_runs(job)[0].standing == (right,)


def test_the_very_same_size_is_not_entered_twice(tmp_path):
    job = tmp_path / "a.yaml"
    found = entry(about="size", size="80", found=80e-3, outcome="", layer=0, depth=None, speed=None)
    (first,) = record(job, (found,))
    with pytest.raises(CommandError, match=rf"This very entry is recorded already \({first.id[:6]}\)\."):
        record(job, (found,))


def test_one_begins_to_take_back_in_small_or_large_letters_and_says_where_to_look(tmp_path):
    job = tmp_path / "a.yaml"
    first, second = record(job, (entry(), entry(key="b", number=80)))
    with pytest.raises(NoSuchEntry) as error:
        take_back(job, "zz", "2026-12-03")
    assert str(error.value) == "there is no entry “zz”; what is recorded: a.ran.txt"
    assert take_back(job, f" {first.id[:8].upper()} ", "2026-12-03", role="Trainer") == first
    found = read_runs(job)[0]
    assert found.standing == (second,)
    assert [(one.takes_back, one.role, one.date) for one in found.back] == [
        (first.id, "Trainer", "2026-12-03")
    ]


def test_entries_come_in_the_order_of_day_and_time(tmp_path):
    job = tmp_path / "a.yaml"
    for key, date, time_ in (
        ("c", "2026-12-03", "08:00:00"),
        ("b", "2026-12-02", "15:00:00"),
        ("a", "2026-12-02", "09:00:00"),
    ):
        record(job, (entry(key=key, date=date, time=time_),))
    assert [one.key for one in read_runs(job)[0].entries] == ["a", "b", "c"]


def test_where_nothing_was_entered_nothing_comes_along(tmp_path):
    assert read_runs(tmp_path / "a.yaml") == (Runs(), ())
    assert runs_along("HM-1", tmp_path / "a.yaml", tmp_path / "b.yaml") == ""
    record(tmp_path / "a.yaml", (entry(job="HM-1"),))
    assert runs_along("HM-1", tmp_path / "a.yaml", tmp_path / "a.yaml") == ""
