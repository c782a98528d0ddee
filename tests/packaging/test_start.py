"""`start.py`: the window where there is a screen, else the sheet; an old Python is told so."""

import ast
import runpy
import sys
from pathlib import Path

import open_program
import pytest
import system_packages
from setup_environment import SetupError
from system_packages import SystemPackageError

SCRIPTS = Path(open_program.__file__).parent


def start(system, environment, *arguments):
    handed_over = []

    def hand_over(command):
        handed_over.append(command)
        return 0

    system.present |= {"ensurepip"}
    assert open_program.run(arguments, system, environment, hand_over) == 0
    (command,) = handed_over
    assert command[:4] == [str(environment.python), "-P", "-m", "jobsheet"]
    return command[4:]


def with_window_libraries(system):
    system.environment = {"DISPLAY": ":0"}
    needs = system_packages.QT + system_packages.X11_WINDOW
    system.present |= {need.library for need in needs}


def test_without_a_screen_the_sheet_of_the_sample_is_made(system, environment, capsys, monkeypatch, tmp_path):
    monkeypatch.chdir(tmp_path)
    sample = environment.checkout / "sample_jobs" / "hm-100-drilled-plate-b1.yaml"
    assert start(system, environment) == ["sheet", str(sample), "-o", "hm-100-drilled-plate-b1.pdf"]
    said = capsys.readouterr().out.splitlines()
    assert said[-1] == "There is no screen here: making the sheet hm-100-drilled-plate-b1.pdf instead."


def test_with_a_screen_the_window_opens(system, environment):
    with_window_libraries(system)
    sample = environment.checkout / "sample_jobs" / "hm-100-drilled-plate-b1.yaml"
    assert start(system, environment) == ["open", str(sample)]


def test_a_job_is_found_from_the_folder_one_is_in(system, environment, monkeypatch, tmp_path):
    (tmp_path / "jobs").mkdir()
    (tmp_path / "jobs" / "plate é.yaml").write_text("part: 1\n", encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    job = str(Path("jobs", "plate é.yaml"))
    assert start(system, environment, job) == ["sheet", job, "-o", "plate é.pdf"]


def test_a_job_that_is_not_there_is_told_before_anything_is_installed(system, environment):
    with pytest.raises(SetupError, match=r"no job file nowhere\.yaml"):
        start(system, environment, "nowhere.yaml")
    assert system.ran == []


def test_a_name_that_begins_with_a_dash_is_no_option(system, environment, monkeypatch, tmp_path):
    (tmp_path / "-a.yaml").write_text("part: 1\n", encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    _, job, _, sheet = start(system, environment, "--", "-a.yaml")
    assert not job.startswith("-")
    assert not sheet.startswith("-")


def test_a_sheet_never_goes_over_the_job_it_was_read_from(monkeypatch, tmp_path):
    monkeypatch.chdir(tmp_path)
    assert open_program.sheet_name(Path("plate.pdf")) == "plate-sheet.pdf"
    assert open_program.sheet_name(Path("jobs", "plate.pdf")) == "plate.pdf"


def test_the_second_start_runs_nothing_but_the_program(system, environment, capsys):
    with_window_libraries(system)
    start(system, environment)
    system.ran.clear()
    capsys.readouterr()
    start(system, environment, "--system-packages")
    assert system.ran == []
    assert capsys.readouterr().out == ""


def test_the_window_waits_for_the_libraries_it_needs(system, environment):
    with_window_libraries(system)
    system.present -= {"libxcb-cursor.so.0"}
    with pytest.raises(SystemPackageError, match="libxcb-cursor0"):
        start(system, environment)
    assert not environment.folder.exists()


def test_the_sheet_needs_none_of_them(system, environment):
    start(system, environment, "--system-packages")
    assert system.programs_run() == ["venv", "pip", "check"]


def test_a_debian_without_the_environment_package_gets_it(system, environment):
    system.installs = {"ensurepip"}
    handed_over = []
    open_program.run(
        ["--system-packages"], system, environment, lambda command: handed_over.append(command) or 0
    )
    assert system.programs_run() == ["update", "install", "venv", "pip", "check"]
    assert system.ran[1][-1].endswith("-venv")
    assert handed_over


@pytest.mark.parametrize("script", ["start.py", "check.py"])
def test_an_old_python_is_told_in_one_sentence(script, monkeypatch):
    monkeypatch.setattr(sys, "version_info", (3, 9, 2))
    with pytest.raises(SystemExit) as stopped:
        runpy.run_path(str(SCRIPTS / script), run_name="__main__")
    assert str(stopped.value).startswith("Python 3.11 or newer is needed, but this is 3.9: start again")
    assert f"packaging/{script}" in str(stopped.value)


@pytest.mark.parametrize("script", ["start.py", "check.py"])
def test_an_old_python_can_read_that_far(script):
    tree = ast.parse((SCRIPTS / script).read_text(encoding="ascii"), feature_version=(3, 4))
    newer = (ast.JoinedStr, ast.AnnAssign, ast.NamedExpr, ast.FunctionDef, ast.Match)
    assert not [node for node in ast.walk(tree) if isinstance(node, newer)]
