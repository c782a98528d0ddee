"""What `check.py` does: the set-up with the test extras, the quick checks, then one run of the tests."""

import argparse
import contextlib
import os
import signal
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path

import system_packages
from screen_for_tests import screen
from setup_environment import Environment, SetupError, base_python, outcome, say

DISPLAYS_VARIABLE = "JOBSHEET_TEST_DISPLAYS"  # screen_for_worker.py gives each test process one of them
BENCHMARKS = "tests/benchmarks"
MOST_WORKERS = 4

QUICK_CHECKS = (
    ("lint", ["-m", "ruff", "check", "."]),
    ("format", ["-m", "ruff", "format", "--check", "."]),
    ("types", ["-m", "mypy"]),
    ("types of packaging", ["-m", "mypy", "packaging"]),
    (
        "import rules",
        ["-c", "import sys; from importlinter.cli import lint_imports_command as c; sys.exit(c())"],
    ),
)


def parse(arguments: Sequence[str]) -> tuple[argparse.Namespace, list[str]]:
    """Read the command line; what follows `--` is left for pytest."""
    own = list(arguments)
    for_pytest: list[str] = []
    if "--" in own:
        position = own.index("--")
        own, for_pytest = own[:position], own[position + 1 :]
    parser = argparse.ArgumentParser(
        prog="check.py",
        description="Run lint, types, import rules and the tests. Arguments after -- go to pytest.",
    )
    parser.add_argument(system_packages.OPTION, action="store_true", help=system_packages.OPTION_HELP)
    parser.add_argument("--long", action="store_true", help="also run the slow tests")
    parser.add_argument("--benchmarks", action="store_true", help="run the benchmarks, and nothing else")
    return parser.parse_args(own), for_pytest


def needs(system: system_packages.System) -> tuple[system_packages.Need, ...]:
    """What the tests need of the system; only Linux has a screen that can be made for them."""
    if not system.platform.startswith("linux"):
        return ()
    return (
        *system_packages.QT,
        *system_packages.X11_WINDOW,
        *system_packages.SCREEN_TESTS,
        *system_packages.PAGE_TESTS,
    )


def prepare(options: argparse.Namespace, system: system_packages.System, environment: Environment) -> None:
    """Set up what is missing; stop where it cannot be, as checks left out in silence are worse than none."""
    wanted = needs(system)
    if environment.must_be_made(tests=True):
        wanted += system_packages.environment_needs(base_python())
    system_packages.ensure(system, wanted, may_install=options.system_packages)
    lacking = [need.program for need in system_packages.missing(system, wanted) if need.program]
    if lacking:
        raise SetupError(f"The tests need these programs, install them first: {' '.join(lacking)}")
    environment.prepare(system, say, tests=True)


def workers() -> int:
    """How many processes run the tests; none beside the first where there is one processor."""
    count = len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1
    return min(count, MOST_WORKERS) if count > 1 else 0


def pytest_arguments(options: argparse.Namespace, extra: Sequence[str], *, has_display: bool) -> list[str]:
    """The test runner's command line, without the interpreter."""
    if options.benchmarks:
        return ["-m", "pytest", BENCHMARKS, "-p", "no:xdist", *extra]
    command = ["-m", "pytest", "-p", "screen_for_worker", "-n", str(workers()), "--dist", "worksteal"]
    # Timings beside other tests say nothing, so benchmarks have a run of their own.
    command += ["--benchmark-disable", f"--ignore={BENCHMARKS}"]
    if options.long:
        command.append("--long")
    if not has_display:
        command += ["-m", "not e2e"]
    return [*command, *extra]


def quick_checks(python: Path, checkout: Path, variables: dict[str, str]) -> list[str]:
    """Run the checks that take seconds; return the names of those that failed."""
    failed = []
    for name, arguments in QUICK_CHECKS:
        say(f"--- {name}")
        if subprocess.call([str(python), *arguments], cwd=checkout, env=variables):
            failed.append(name)
    return failed


def run_tests(
    environment: Environment,
    options: argparse.Namespace,
    extra: Sequence[str],
    variables: dict[str, str],
) -> int:
    """Run pytest once, so that there is one closing line, and it is the last one."""
    with contextlib.ExitStack() as stack:
        has_display = sys.platform.startswith("linux") and not options.benchmarks
        if has_display:
            displays = [stack.enter_context(screen()) for _ in range(max(1, workers()))]
            variables = {**variables, DISPLAYS_VARIABLE: " ".join(displays)}
        elif not options.benchmarks:
            say("The tests that need a made screen are left out: they run on Linux.")
        command = [str(environment.python), *pytest_arguments(options, extra, has_display=has_display)]
        return subprocess.call(command, cwd=environment.checkout, env=variables)


def run(arguments: Sequence[str], system: system_packages.System, environment: Environment) -> int:
    """Set up, check, test; the exit code tells whether all of it passed."""
    options, extra = parse(arguments)
    prepare(options, system, environment)
    plugins = str(environment.checkout / "packaging")
    before = os.environ.get("PYTHONPATH")
    variables = {
        **os.environ,
        "QT_QPA_PLATFORM": "offscreen",
        "PYTHONPATH": os.pathsep.join([before, plugins]) if before else plugins,
    }
    # What one process of the tests has compiled, the others and all that they start read.
    variables.pop("PYTHONDONTWRITEBYTECODE", None)
    failed: list[str] = []
    if not options.benchmarks:
        failed = quick_checks(environment.python, environment.checkout, variables)
        say(f"--- FAILED: {', '.join(failed)}" if failed else "--- all of these passed")
    code = run_tests(environment, options, extra, variables)
    return code or (1 if failed else 0)


def main() -> int:
    """Run every check, or say in one sentence why that cannot be."""
    # Asked to end, leave by the usual way, so that the tests' screen ends too.
    signal.signal(signal.SIGTERM, lambda *_: sys.exit(128 + signal.SIGTERM))
    return outcome(lambda: run(sys.argv[1:], system_packages.System(), Environment()))
