"""What every test stands on: no screen, a home folder of its own, slow rounds only when asked for."""

from __future__ import annotations

import gc
import os
from itertools import count
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
# The first text that is drawn on a new machine waits for the tables of all
# characters to be built: no fault of a test.
settings.register_profile("house", deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.load_profile("house")
_HOMES = count(1)
collect_ignore = ["benchmarks"]  # timed apart, alone on the machine: packaging/check.py --benchmarks


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption("--long", action="store_true", help="also the slow rounds")


def pytest_configure(config: pytest.Config) -> None:
    if any("benchmarks" in str(argument) for argument in config.args):
        collect_ignore.clear()
    # The test runner wakes the toolkit first, which would then read the source
    # of every module that a test imports.
    from jobsheet.gui.start.unread_sources import leave_unread

    leave_unread()


def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    if config.getoption("--long"):
        return
    slow = [item for item in items if item.get_closest_marker("long") is not None]
    if slow:
        left_out = {id(item) for item in slow}
        config.hook.pytest_deselected(items=slow)
        items[:] = [item for item in items if id(item) not in left_out]


def pytest_collection_finish(session: pytest.Session) -> None:
    """Sixteen thousand tests and all that they import stay to the end: the collector of circles need
    not go through them again and again.
    """
    del session
    gc.collect()
    gc.freeze()


@pytest.fixture(autouse=True)
def own_home(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> Path:
    """No test reads or writes the person's own cards and settings."""
    # Counted here: asked for a number, the factory would look through all homes
    # there are, for every test anew.
    home = tmp_path_factory.mktemp(f"home-{os.getpid()}-{next(_HOMES)}", numbered=False)
    monkeypatch.setenv("JOBSHEET_HOME", str(home))
    return home


@pytest.fixture
def samples() -> Path:
    from jobsheet.paths import sample_jobs

    return sample_jobs()


@pytest.fixture(scope="session")
def _hm100_of_this_run():
    """Read once: a job is a value that nothing changes, and nearly a thousand tests begin with this one."""
    from jobsheet.paths import sample_jobs
    from jobsheet.storage.job_file import read_job

    return read_job(sample_jobs() / "hm-100-drilled-plate-b1.yaml")


@pytest.fixture
def hm100(_hm100_of_this_run):
    return _hm100_of_this_run


@pytest.fixture
def day_of_the_figures():
    """The day on which a test's figures of the invented test cuts were looked through: they count less every day."""
    from tests.later import on_day

    with on_day("2026-12-01"):
        yield
