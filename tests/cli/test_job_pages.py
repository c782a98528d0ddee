"""The pages of one job, and whether something in it should stop you."""

from __future__ import annotations

from jobsheet.cli.job_pages import close_printed, pages_of
from jobsheet.model.prints import WHOLE


def test_the_pages_of_a_good_plan_stop_nobody(samples, capsys):
    document, stops = pages_of(samples / "hm-100-drilled-plate-b1.yaml", "a4", False, WHOLE)
    assert document.pages
    assert not stops
    capsys.readouterr()


def test_a_job_whose_plans_nobody_counts_gets_nothing_beside_it(samples, tmp_path):
    path = tmp_path / "plate.yaml"
    path.write_bytes((samples / "hm-100-drilled-plate-b1.yaml").read_bytes())
    document, _ = pages_of(path, "a4", False, WHOLE)
    close_printed(path, document)
    assert [one.name for one in tmp_path.iterdir()] == ["plate.yaml"]
