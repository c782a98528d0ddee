"""The environment is made once, made anew when it is not whole, and its troubles are told in a sentence."""

import errno
import importlib.metadata
import shutil
import sys
import threading

import pytest
import setup_environment
from setup_environment import SetupError, explain_pip, explained, outcome


def prepare(environment, system, *, tests=False):
    said = []
    system.ran.clear()
    done = environment.prepare(system, said.append, tests=tests)
    return done, said


def test_the_first_start_makes_it(environment, system):
    assert environment.must_be_made()
    done, said = prepare(environment, system)
    assert done
    assert len(said) == 2
    assert system.programs_run() == ["venv", "pip", "check"]
    assert environment.is_ready()
    assert not environment.is_ready(tests=True)
    pip, check = system.ran[-2:]
    # The newest pip passes without --no-deps, older ones then look for what an
    # extra names: so the words count.
    assert {"install", "--no-deps", "--require-hashes"} <= set(pip)
    assert check[1:4] == ["-m", "pip", "check"]
    assert str(environment.checkout / "packaging" / "constraints.txt") in pip
    assert not any("://" in word for word in pip)


def test_the_second_start_does_nothing(environment, system):
    prepare(environment, system)
    done, said = prepare(environment, system)
    assert (done, said, system.ran) == (False, [], [])


def test_the_test_packages_are_added(environment, system):
    prepare(environment, system)
    prepare(environment, system, tests=True)
    assert system.programs_run() == ["pip", "check"]
    assert environment.is_ready(tests=True)
    assert environment.is_ready()


def test_tests_and_program_share_one_environment(environment, system):
    prepare(environment, system, tests=True)
    assert system.programs_run() == ["venv", "pip", "check"]
    assert prepare(environment, system)[0] is False


@pytest.mark.parametrize("name", ["constraints.txt", "constraints-test.txt"])
def test_other_pins_make_it_anew(environment, system, name):
    prepare(environment, system, tests=True)
    (environment.checkout / "packaging" / name).write_text("click==9\n", encoding="utf-8")
    prepare(environment, system, tests=True)
    assert system.programs_run() == ["venv", "pip", "check"]


def test_line_ends_are_no_other_pins(environment, system):
    prepare(environment, system)
    (environment.checkout / "packaging" / "constraints.txt").write_bytes(b"click==8\r\n")
    assert environment.is_ready()


def test_another_version_of_the_program_installs_nothing(environment, system):
    prepare(environment, system, tests=True)
    project = environment.checkout / "pyproject.toml"
    project.write_text('[project]\nversion = "0.2.0"\n', encoding="utf-8")
    assert not environment.must_be_made()
    prepare(environment, system)
    assert system.ran == []
    assert environment.is_ready(tests=True)
    records = [entry.name for entry in environment.packages.glob("jobsheet-*.dist-info")]
    assert records == ["jobsheet-0.2.0.dist-info"]


def damage_stamp(environment):
    environment.stamp.write_text("{", encoding="utf-8")


def damage_python(environment):
    environment.python.unlink()


def damage_package(environment):
    shutil.rmtree(environment.packages / "click-8.dist-info")


def damage_link(environment):
    shutil.rmtree(environment.packages / "jobsheet-0.1.0.dist-info")


def damage_all(environment):
    shutil.rmtree(environment.folder)
    environment.folder.mkdir()


@pytest.mark.parametrize("damage", [damage_stamp, damage_python, damage_package, damage_link, damage_all])
def test_a_damaged_one_is_made_anew(environment, system, damage):
    prepare(environment, system)
    leftover = environment.folder / "leftover"
    damage(environment)
    leftover.mkdir()
    prepare(environment, system)
    assert system.programs_run() == ["venv", "pip", "check"]
    assert environment.is_ready()
    assert not leftover.exists()


def test_an_interrupted_one_is_made_anew(environment, system):
    system.fails = {"pip": "ERROR: something"}
    with pytest.raises(SetupError, match="something"):
        prepare(environment, system)
    system.fails = {}
    assert environment.must_be_made()
    prepare(environment, system)
    assert system.programs_run() == ["venv", "pip", "check"]


def test_two_starts_at_once_make_it_once(environment, system):
    starts = [
        threading.Thread(target=environment.prepare, args=(system, lambda line: None)) for _ in range(3)
    ]
    for start in starts:
        start.start()
    for start in starts:
        start.join()
    assert system.programs_run() == ["venv", "pip", "check"]


def test_the_program_runs_out_of_the_checkout(environment, system):
    prepare(environment, system)
    line = (environment.packages / "jobsheet-checkout.pth").read_text(encoding="utf-8").strip()
    assert (environment.packages / line).resolve() == environment.checkout.resolve()
    (found,) = importlib.metadata.distributions(name="jobsheet", path=[str(environment.packages)])
    assert found.version == "0.1.0"
    assert [entry.name for entry in found.entry_points] == ["jobsheet"]


def test_a_file_in_its_place_is_left_alone(environment, system):
    environment.folder.write_text("mine", encoding="utf-8")
    with pytest.raises(SetupError, match="move it away"):
        prepare(environment, system)
    assert environment.folder.read_text(encoding="utf-8") == "mine"


def test_a_checkout_that_cannot_be_written_to_is_told(environment, system, monkeypatch):
    def refuse(*_arguments, **_options):
        raise OSError(errno.EROFS, "Read-only file system", str(environment.folder))

    monkeypatch.setattr(type(environment.folder), "mkdir", refuse)
    with pytest.raises(SetupError, match=r"cannot be written to: copy the checkout"):
        prepare(environment, system)


def test_a_full_disk_is_told():
    with pytest.raises(SetupError, match="disk is full"), explained():
        raise OSError(errno.ENOSPC, "No space left on device")


@pytest.mark.parametrize(
    ("output", "expected"),
    [
        (
            "WARNING: Retrying ... NewConnectionError(...)\nERROR: No matching distribution found for click",
            "network",
        ),
        (
            (
                "Collecting click\nERROR: THESE PACKAGES DO NOT MATCH THE HASHES FROM THE REQUIREMENTS FILE. If you\n"
                "    click==8.5.1 from file:///x (from -r r.txt (line 1)):\n        Expected sha256 1\n"
            ),
            "downloaded for click is not the pinned",
        ),
        ("ERROR: THESE PACKAGES DO NOT MATCH THE HASHES FROM THE REQUIREMENTS FILE.", "for a package is not"),
        (
            (
                "ERROR: In --require-hashes mode, all requirements must have their versions pinned with ==. "
                "These do not:\n    coverage[toml]>=7.10.6 from file:///x (from pytest-cov==7.1.0)\n"
            ),
            "lack coverage[toml],",
        ),
        (
            (
                "ERROR: Hashes are required in --require-hashes mode, but they are missing from some requirements.\n"
                "    click==8.1.0 --hash=sha256:19a4\n"
            ),
            "lack click,",
        ),
        ("ERROR: No matching distribution found for PySide6_Essentials==6.12.0\n", "no ready-made PySide6_E"),
        ("ERROR: Could not install: [Errno 28] No space left on device", "disk is full"),
        ("hello\nERROR: odd thing\nnotice\n", "odd thing"),
        ("", "no reason"),
    ],
)
def test_what_pip_says_becomes_a_sentence(output, expected):
    sentence = explain_pip(output)
    assert expected in sentence
    assert "\n" not in sentence


def test_packages_that_do_not_fit_are_named(environment, system):
    system.fails = {"check": "pytest-cov 7.1.0 requires pluggy, which is not installed.\nand another\n"}
    with pytest.raises(SetupError, match=r"\(pytest-cov 7.1.0 requires pluggy, which is not installed\):"):
        prepare(environment, system)
    system.fails = {}
    assert environment.must_be_made()


def test_no_trouble_ends_in_a_traceback(capsys):
    def interrupted():
        raise KeyboardInterrupt

    def refused():
        raise PermissionError(errno.EACCES, "Permission denied", "here")

    def unlucky():
        raise SetupError("A sentence.")

    assert outcome(lambda: 7) == 7
    assert outcome(interrupted) == setup_environment.INTERRUPTED
    assert outcome(refused) == 1
    assert outcome(unlucky) == 1
    lines = capsys.readouterr().err.splitlines()
    assert len(lines) == 3
    assert lines[-1] == "A sentence."


def test_settings_that_lead_packages_elsewhere_are_not_passed_on(environment, system, monkeypatch):
    monkeypatch.setenv("PIP_TARGET", "/somewhere")
    seen = []
    run = system.run

    def remember(command, environment=None, *, show=False):
        seen.append(environment)
        return run(command, environment, show=show)

    system.run = remember
    prepare(environment, system)
    assert seen
    assert all("PIP_TARGET" not in variables for variables in seen)


def test_the_interpreter_below_an_environment_is_built_on():
    assert setup_environment.base_python() == getattr(sys, "_base_executable", sys.executable)
