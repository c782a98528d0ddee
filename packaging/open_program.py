"""What `start.py` does: set up what is missing, then hand over to the program."""

import argparse
import os
import sys
from collections.abc import Callable, Sequence
from pathlib import Path

import system_packages
from setup_environment import Environment, SetupError, base_python, outcome, say

SAMPLE = Path("sample_jobs", "hm-100-drilled-plate-b1.yaml")


def parse(arguments: Sequence[str]) -> argparse.Namespace:
    """Read the command line."""
    parser = argparse.ArgumentParser(
        prog="start.py",
        description="Open a job in the program's window; without a screen, make its sheet here.",
    )
    parser.add_argument(system_packages.OPTION, action="store_true", help=system_packages.OPTION_HELP)
    parser.add_argument("job", nargs="?", metavar="JOB.yaml", help="the job to open (default: the sample)")
    return parser.parse_args(arguments)


def sheet_name(job: Path) -> str:
    """Name a job's sheet, which is made in the current folder; never over the job itself."""
    name = f"{job.stem}.pdf"
    return f"{job.stem}-sheet.pdf" if job.resolve() == Path(name).resolve() else name


def program_arguments(job: Path, *, on_screen: bool) -> list[str]:
    """What to ask of the program: the window, or the sheet where there is no screen."""
    return ["open", _operand(job)] if on_screen else ["sheet", _operand(job), "-o", _operand(sheet_name(job))]


def _operand(path: Path | str) -> str:
    """Spell a path so that one beginning with a dash is not taken for an option."""
    text = str(path)
    return os.path.join(".", text) if text.startswith("-") else text  # noqa: PTH118  Path drops the dot


def run(
    arguments: Sequence[str],
    system: system_packages.System,
    environment: Environment,
    hand_over: Callable[[list[str]], int],
) -> int:
    """Set up what is missing, then hand over to the program."""
    options = parse(arguments)
    job = Path(options.job) if options.job else environment.checkout / SAMPLE
    if not job.is_file():
        raise SetupError(f"There is no job file {job}.")
    on_screen = system_packages.has_screen(system)
    needs = system_packages.window_needs(system) if on_screen else ()
    if environment.must_be_made():
        needs += system_packages.environment_needs(base_python())
    system_packages.ensure(system, needs, may_install=options.system_packages)
    environment.prepare(system, say)
    if not on_screen:
        say(f"There is no screen here: making the sheet {sheet_name(job)} instead.")
    # -P: a file in the folder one happens to be in must not stand in for a part of the program.
    command = [str(environment.python), "-P", "-m", "jobsheet"]
    return hand_over(command + program_arguments(job, on_screen=on_screen))


def become(command: list[str]) -> int:
    """Replace this process by the program; Windows cannot, so there it waits for the program's end."""
    if os.name != "nt":
        os.execv(command[0], command)  # noqa: S606  no shell is wanted
    import subprocess

    return subprocess.call(command)


def main() -> int:
    """Start the program, or say in one sentence why not."""
    return outcome(lambda: run(sys.argv[1:], system_packages.System(), Environment(), become))
