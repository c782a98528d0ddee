"""`check.py`: what it runs, and that a failure of any part is one of the whole."""

import os
import sys
from contextlib import contextmanager

import pytest
import run_checks
import screen_for_worker
import system_packages
from setup_environment import SetupError


@pytest.fixture
def complete(system):
    """A machine with everything the tests need."""
    needs = run_checks.needs(system)
    system.present |= {need.library or need.program for need in needs} | {"ensurepip"}
    return system


@pytest.fixture
def calls(monkeypatch):
    """What would have been started, with what it found in its environment; nothing is."""
    made = []
    codes = {}

    def call(command, *, cwd, env):
        made.append((command[1:], env))
        return next((code for word, code in codes.items() if word in command), 0)

    @contextmanager
    def screen():
        yield f":{7 + len(made)}"

    monkeypatch.setattr(run_checks.subprocess, "call", call)
    monkeypatch.setattr(run_checks, "screen", screen)
    return made, codes


def arguments(*words):
    options, extra = run_checks.parse(words)
    return run_checks.pytest_arguments(options, extra, has_display=True)


def test_slow_tests_are_asked_for():
    assert "--long" not in arguments()
    assert "--long" in arguments("--system-packages", "--long")


def test_what_follows_the_two_dashes_goes_to_pytest():
    assert arguments("--", "-k", "drill", "--", "x")[-4:] == ["-k", "drill", "--", "x"]


def test_benchmarks_have_a_run_of_their_own():
    assert "--ignore=tests/benchmarks" in arguments()
    assert arguments("--benchmarks") == ["-m", "pytest", "tests/benchmarks", "-p", "no:xdist"]


def test_where_no_screen_can_be_made_its_tests_are_left_out():
    options, extra = run_checks.parse([])
    without = run_checks.pytest_arguments(options, extra, has_display=False)
    assert without[-2:] == ["-m", "not e2e"]


def test_the_set_up_has_the_test_packages(complete, environment, calls):
    assert run_checks.run([], complete, environment) == 0
    assert environment.is_ready(tests=True)


def test_the_checks_come_first_and_the_tests_last(complete, environment, calls, capsys):
    assert run_checks.run(["--system-packages"], complete, environment) == 0
    made, _ = calls
    assert [command[1] for command, _ in made[:1]] == ["ruff"]
    assert len(made) == len(run_checks.QUICK_CHECKS) + 1
    command, variables = made[-1]
    assert command[:2] == ["-m", "pytest"]
    assert variables["QT_QPA_PLATFORM"] == "offscreen"
    assert capsys.readouterr().out.splitlines()[-1] == (
        "--- all of these passed"
        if sys.platform.startswith("linux")
        else "The tests that need a made screen are left out: they run on Linux."
    )


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="screens are made on Linux")
def test_each_test_process_has_a_screen(complete, environment, calls):
    run_checks.run([], complete, environment)
    _, variables = calls[0][-1]
    assert len(variables["JOBSHEET_TEST_DISPLAYS"].split()) == max(1, run_checks.workers())


def test_a_failed_check_is_named_and_the_tests_still_run(complete, environment, calls, capsys):
    made, codes = calls
    codes["mypy"] = 1
    assert run_checks.run([], complete, environment) == 1
    assert made[-1][0][:2] == ["-m", "pytest"]
    assert "--- FAILED: types, types of packaging" in capsys.readouterr().out


def test_failed_tests_give_their_own_code(complete, environment, calls):
    calls[1]["pytest"] = 5
    assert run_checks.run([], complete, environment) == 5


def test_benchmarks_run_nothing_else(complete, environment, calls):
    assert run_checks.run(["--benchmarks"], complete, environment) == 0
    (made,) = calls[0]
    assert made[0][:3] == ["-m", "pytest", "tests/benchmarks"]


def test_programs_that_cannot_be_had_stop_it(complete, environment, calls):
    complete.release_text = "ID=fedora\n"
    complete.present -= {"Xvfb", "qpdf"}
    with pytest.raises(SetupError, match="Xvfb qpdf"):
        run_checks.run(["--system-packages"], complete, environment)
    assert calls[0] == []


def test_the_tests_need_the_pdf_tools_and_a_screen(system):
    names = {name for need in run_checks.needs(system) for name in need.names}
    assert {"xvfb", "openbox", "qpdf", "poppler-utils", "libxcb-cursor0"} <= names
    system.platform = "darwin"
    assert run_checks.needs(system) == ()


@pytest.mark.parametrize(
    ("worker", "expected"), [("", ":7"), ("master", ":7"), ("gw0", ":7"), ("gw1", ":9"), ("gw2", ":7")]
)
def test_each_worker_has_a_screen_of_its_own(worker, expected):
    assert screen_for_worker.choose([":7", ":9"], worker) == expected


def test_workers_are_few():
    assert 0 <= run_checks.workers() <= min(os.cpu_count() or 1, run_checks.MOST_WORKERS)
    assert run_checks.workers() != 1


def test_every_need_says_how_it_is_found():
    everything = (
        system_packages.QT
        + system_packages.X11_WINDOW
        + system_packages.WAYLAND_WINDOW
        + system_packages.SCREEN_TESTS
        + system_packages.PAGE_TESTS
    )
    assert all(bool(need.library) + bool(need.program) + bool(need.module) == 1 for need in everything)
