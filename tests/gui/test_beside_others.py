"""One job, one window: whoever has the file has it until it lets go."""

from __future__ import annotations

from pathlib import Path

from jobsheet.gui.desk.beside_others import Claim


def test_the_second_one_does_not_get_it_before_the_first_lets_go(tmp_path):
    job, first, second = tmp_path / "job.yaml", Claim(), Claim()
    assert first.take(job)
    assert first.take(job), "the same one again"
    assert not second.take(job)
    assert not second.take(job)
    first.let_go()
    second.let_go()
    assert second.take(job)
    second.let_go()


def test_the_same_file_by_another_way_is_the_same(tmp_path):
    (tmp_path / "folder").mkdir()
    first, second = Claim(), Claim()
    assert first.take(tmp_path / "job.yaml")
    assert not second.take(tmp_path / "folder" / ".." / "job.yaml")
    first.let_go()


def test_taking_another_lets_the_old_one_go_and_nothing_is_nobodys(tmp_path):
    first, second = Claim(), Claim()
    assert first.take(tmp_path / "one.yaml")
    assert first.take(tmp_path / "other.yaml")
    assert second.take(tmp_path / "one.yaml")
    assert second.take(None)
    assert first.take(tmp_path / "one.yaml")
    first.let_go()


def test_where_no_lock_can_be_made_nobody_is_kept_out(home):
    home.write_text("a file where the folder should be")
    assert Claim().take(Path("/job.yaml"))
