"""`jobsheet open`: the window, with the job that is named or without one."""

from __future__ import annotations

import pytest

from jobsheet.cli.main import run


@pytest.mark.parametrize(("arguments", "job"), [(["open"], None), (["open", "a job.yaml"], "a job.yaml")])
def test_the_window_opens_with_what_is_named_and_its_exit_code_is_the_shell_s(arguments, job):
    asked = []
    assert run(arguments, lambda name: asked.append(name) or 3) == 3
    assert asked == [job]
