"""A machine's proof log only grows: what was written is never lost, never
doubled and never changed unseen.
"""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from jobsheet.errors import CannotWrite, CommandError, DocumentError, NoSuchEntry
from jobsheet.paths import resources
from jobsheet.storage.records import closed_records, proof_log
from jobsheet.storage.records.proof_log import (
    append,
    give_back,
    mark,
    merge,
    own_path,
    read_log,
    records_from,
    strike,
)
from jobsheet.storage.records.proof_record import record_text

from .trials_kept import MACHINE, TRIALS, trial


def test_an_empty_log_is_no_problem():
    assert read_log(MACHINE).records == ()


def test_what_is_written_is_what_is_read_and_a_person_can_read_it():
    written = append(MACHINE, trial(note="oil\n\nwent in: and out"))
    log = read_log(MACHINE)
    assert log.trials == (written,)
    assert replace(written, id="") == trial(note="oil\n\nwent in: and out")
    text = own_path(MACHINE).read_text(encoding="utf-8")
    assert "demand spindle-torque: 3 N·m, 0.604 of the peak" in text
    assert "step feed per tooth: 0.04 mm" in text
    assert text.endswith(f"\nend: {written.id}\n")


def test_the_very_same_trial_is_not_written_twice():
    append(MACHINE, trial())
    with pytest.raises(CommandError, match="in the log already"):
        append(MACHINE, trial())
    append(MACHINE, trial(note="cut again"))
    assert len(read_log(MACHINE).trials) == 2


def test_what_makes_no_sense_is_not_written():
    with pytest.raises(DocumentError, match="outcome"):
        append(MACHINE, trial(outcome="superb"))
    with pytest.raises(DocumentError, match="date"):
        append(MACHINE, trial(date="yesterday"))
    with pytest.raises(CommandError, match="of another-mill"):
        append(MACHINE, trial(machine="another-mill"))
    with pytest.raises(NoSuchEntry):
        read_log("../../etc/passwd")
    assert not own_path(MACHINE).exists()


def test_a_wrong_one_is_struck_out_by_a_later_record():
    wrong, right = append(MACHINE, trial()), append(MACHINE, trial(time="09:35", outcome="slowed"))
    before = own_path(MACHINE).read_bytes()
    strike(MACHINE, wrong.id[:6], "2026-11-14", "Trainer", "wrong drill")
    log = read_log(MACHINE)
    assert log.standing == (right,)
    assert log.trials == (wrong, right)
    assert log.struck[wrong.id].note == "wrong drill"
    assert own_path(MACHINE).read_bytes().startswith(before)
    with pytest.raises(CommandError, match="already"):
        strike(MACHINE, wrong.id, "2026-11-15")
    with pytest.raises(NoSuchEntry, match="no trial"):
        strike(MACHINE, "0000000", "2026-11-15")


def test_a_changed_record_does_not_count_and_says_so():
    append(MACHINE, trial())
    path = own_path(MACHINE)
    path.write_text(path.read_text(encoding="utf-8").replace("3 N·m", "4 N·m"), encoding="utf-8")
    log = read_log(MACHINE)
    assert log.trials == ()
    assert "changed after it was written" in str(log.problems[0])


def test_every_problem_is_told_with_its_line():
    append(MACHINE, trial())
    path = own_path(MACHINE)
    text = (
        path.read_text(encoding="utf-8")
        .replace("outcome: clean", "outcome: claen")
        .replace("material:", "matter:")
    )
    path.write_text(text, encoding="utf-8")
    lines = text.split("\n")
    found = {problem.line: problem.sentence for problem in read_log(MACHINE).problems}
    assert "did you mean clean" in found[lines.index("outcome: claen") + 1]
    assert "did you mean material" in found[lines.index("matter: C15") + 1]


def test_line_ends_of_another_system_change_nothing():
    written = append(MACHINE, trial())
    path = own_path(MACHINE)
    path.write_bytes(path.read_bytes().replace(b"\n", b"\r\n"))
    assert read_log(MACHINE).trials == (written,)


def test_a_crash_at_any_byte_of_the_last_record_loses_none_before_it(own_home):
    """The file is cut at every byte of its last record; those before it
    count, and the next begins cleanly.
    """
    first, second = append(MACHINE, trial()), append(MACHINE, trial(time="09:35", note="µm · “quiet”"))
    path = own_path(MACHINE)
    start = len(path.read_bytes())
    last = append(MACHINE, trial(time="09:50", note="ß µ ·"))
    whole = path.read_bytes()
    for end in range(start, len(whole) + 1):
        records, problems = records_from(whole[:end], MACHINE)
        complete = end >= len(whole) - 1  # the last line end itself may be missing
        assert records == ((first, second, last) if complete else (first, second)), end
        torn = end > start + 1 and not complete
        assert len(problems) == (1 if torn else 0), end
        path.write_bytes(whole[:end])
        fourth = append(MACHINE, trial(date="2026-12-01"))
        log = read_log(MACHINE)
        assert {first, second, fourth} <= set(log.trials)
        assert path.read_bytes().startswith(whole[:end])
        assert all("never finished" in str(problem) for problem in log.problems)


def test_a_disk_that_refuses_says_so_and_keeps_what_was_there(monkeypatch):
    written = append(MACHINE, trial())

    def full(_handle):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(closed_records.os, "fsync", full)
    with pytest.raises(CannotWrite, match="still there"):
        append(MACHINE, trial(note="second"))
    assert written in read_log(MACHINE).trials


def test_two_programs_writing_at_once_lose_nothing(own_home):
    """Four processes of eight trials each: 32 records, none torn."""
    code = (
        "import sys; from tests.storage.trials_kept import trial, MACHINE; from jobsheet.storage.records.proof_log import append\n"
        "for n in range(8): append(MACHINE, trial(note=f'{sys.argv[1]} {n}'))"
    )
    here = Path(__file__).resolve().parents[2]
    running = [subprocess.Popen([sys.executable, "-c", code, str(one)], cwd=here) for one in range(4)]
    assert [one.wait(60) for one in running] == [0, 0, 0, 0]
    log = read_log(MACHINE)
    assert len(log.trials) == 32
    assert not log.problems


_LOGS = st.lists(TRIALS, max_size=6)


def _log_of(trials, folder: Path, name: str) -> Path:
    path = folder / name
    path.write_text("format: 1\n" + "".join("\n" + record_text(one) for one in trials), encoding="utf-8")
    return path


def _fresh(records) -> None:
    path = own_path(MACHINE)
    path.parent.mkdir(exist_ok=True)
    path.unlink(missing_ok=True)
    _log_of(records, path.parent, path.name)


@given(ours=_LOGS, theirs=_LOGS)
def test_merging_doubles_nothing_and_its_order_does_not_matter(ours, theirs, tmp_path_factory):
    folder = tmp_path_factory.mktemp("logs")
    here, there = _log_of(ours, folder, "ours.txt"), _log_of(theirs, folder, "theirs.txt")
    results = []
    for first, second in ((ours, there), (theirs, here)):
        _fresh(first)
        for _ in range(2):
            try:
                merge(MACHINE, second)
            except DocumentError:
                assert not (theirs if second == there else ours)
            results.append(read_log(MACHINE).records)
    assert results[0] == results[1] == results[2] == results[3]
    assert len({one.id for one in results[0]}) == len(results[0])
    assert [one.date for one in results[0]] == sorted(one.date for one in results[0])


def test_a_strike_travels_with_a_merge(tmp_path):
    wrong = append(MACHINE, trial())
    strike(MACHINE, wrong.id, "2026-11-14", note="wrong drill")
    theirs = tmp_path / "theirs.txt"
    theirs.write_bytes(own_path(MACHINE).read_bytes())
    own_path(MACHINE).unlink()
    append(MACHINE, trial())
    done = merge(MACHINE, theirs)
    assert (len(done.added), done.known) == (1, 1)
    assert read_log(MACHINE).standing == ()


def test_what_is_no_log_of_this_machine_is_refused(tmp_path):
    other = tmp_path / "other.txt"
    other.write_text("A shopping list\n\nmilk\n", encoding="utf-8")
    with pytest.raises(DocumentError, match="no record of a proof log"):
        merge(MACHINE, other)
    other.write_text(record_text(trial(machine="another-mill")), encoding="utf-8")
    with pytest.raises(DocumentError, match="of another-mill, not of test-mill"):
        merge(MACHINE, other)
    other.write_text("format: 9\n\n" + record_text(trial()), encoding="utf-8")
    with pytest.raises(DocumentError, match="newer program"):
        merge(MACHINE, other)
    with pytest.raises(DocumentError, match="cannot be read"):
        merge(MACHINE, tmp_path)


@pytest.mark.parametrize("path", sorted((resources() / "proof").glob("*.txt")), ids=lambda path: path.stem)
def test_the_shipped_logs_are_whole_and_said_to_be_invented(path):
    records, problems = records_from(path.read_bytes(), path.stem)
    assert len(records) == 5
    assert not problems
    assert "invented" in path.read_text(encoding="utf-8").lower()
    assert read_log(path.stem).shipped == {one.id for one in records}


def test_a_persons_own_log_comes_on_top_and_their_own_card_sets_the_shipped_one_aside(own_home):
    name = "bench-mill-b-1"
    append(name, trial(machine=name))
    assert len(read_log(name).trials) == 6
    cards = own_home / "machines"
    cards.mkdir()
    (cards / f"{name}.yaml").write_bytes((resources() / "machines" / f"{name}.yaml").read_bytes())
    assert len(read_log(name).trials) == 1


def test_a_mark_that_the_machine_changed_is_read_back_and_can_be_struck():
    first = append(MACHINE, trial())
    made = proof_log.mark(MACHINE, "2026-11-20", changed="gibs", note="taken up", role="Trainer")
    log = read_log(MACHINE)
    assert log.marks == (made,)
    assert log.trials == (first,)
    assert log.teaching == (first, made)
    assert "changed: gibs" in own_path(MACHINE).read_text(encoding="utf-8")
    strike(MACHINE, made.id, "2026-11-21")
    assert read_log(MACHINE).teaching == (first,)
    with pytest.raises(DocumentError, match="changed"):
        proof_log.mark(MACHINE, "2026-11-20", changed="the weather")


def test_an_odd_one_is_kept_by_its_id():
    first = append(MACHINE, trial())
    made = proof_log.mark(MACHINE, "2026-11-20", keeps=first.id[:5])
    assert read_log(MACHINE).marks == (made,)
    assert made.keeps == first.id
    with pytest.raises(NoSuchEntry):
        proof_log.mark(MACHINE, "2026-11-20", keeps="ffff")


def test_where_a_step_of_ordinary_work_came_from_is_kept():
    written = append(MACHINE, trial(job="HM-103, plan 2", entry="0123456789ab"))
    assert read_log(MACHINE).trials == (written,)
    assert (written.job, written.entry) == ("HM-103, plan 2", "0123456789ab")


def test_what_was_struck_is_given_back_and_struck_again_however_often():
    one, other = append(MACHINE, trial()), append(MACHINE, trial(time="09:35"))
    before = read_log(MACHINE).teaching
    for _ in range(3):
        strike(MACHINE, one.id, "2026-11-14", "Trainer", "wrong drill", "10:00:00")
        assert read_log(MACHINE).standing == (other,)
        give_back(MACHINE, one.id[:6], "2026-11-14", "Trainer", clock="10:00:00")
        assert read_log(MACHINE).teaching == before
        assert read_log(MACHINE).struck.get(one.id) is None
    with pytest.raises(CommandError, match="not struck out"):
        give_back(MACHINE, one.id, "2026-11-14")


def test_what_two_logs_struck_is_given_back_from_both(tmp_path):
    one = append(MACHINE, trial())
    other = tmp_path / "other.txt"
    other.write_bytes(own_path(MACHINE).read_bytes())
    strike(MACHINE, one.id, "2026-11-14", "Trainer", "wrong drill")
    mine = own_path(MACHINE).read_bytes()
    own_path(MACHINE).write_bytes(other.read_bytes())
    strike(MACHINE, one.id, "2026-11-15", "Apprentice A", "never cut")
    other.write_bytes(mine)
    merge(MACHINE, other)
    give_back(MACHINE, one.id, "2026-11-16")
    assert read_log(MACHINE).standing == (one,)


def test_records_keep_the_order_in_which_they_were_written():
    later, first = append(MACHINE, trial(time="10:00")), append(MACHINE, trial(time="09:00"))
    assert read_log(MACHINE).trials == (first, later)
    assert read_log(MACHINE).written == (later.id, first.id)


def test_a_mark_of_the_very_time_of_a_cut_stands_before_it():
    cut = append(MACHINE, trial())
    changed = mark(MACHINE, cut.date, changed="belt", clock=cut.time)
    assert read_log(MACHINE).teaching == (changed, cut)
