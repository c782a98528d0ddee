"""The packaging scripts are no package: they are found beside each other, as when they are started."""

import sys
from pathlib import Path

import pytest

CHECKOUT = Path(__file__).resolve().parents[2]
sys.path.append(str(CHECKOUT / "packaging"))

import system_packages  # noqa: E402
from setup_environment import Environment  # noqa: E402

BOOKWORM = 'PRETTY_NAME="Debian GNU/Linux 12"\nID=debian\n'
MINT = 'ID=linuxmint\nID_LIKE="ubuntu debian"\n'
FEDORA = "ID=fedora\n"


class PretendedSystem(system_packages.System):
    """A machine that has what it is told to have, and remembers what it was asked to run."""

    platform = "linux"

    def __init__(self) -> None:
        self.release_text = BOOKWORM
        self.root = True
        self.present = {"sudo"}
        self.listed: set[str] = set()
        self.environment: dict[str, str] = {}
        self.ran: list[list[str]] = []
        self.fails: dict[str, str] = {}  # a word of a command -> what it says when it fails
        self.installs: set[str] = set()  # what an installation makes present

    def variables(self):
        return self.environment

    def release(self):
        return self.release_text

    def is_root(self):
        return self.root

    def has_library(self, name):
        return name in self.present

    has_program = has_module = has_library

    def run(self, command, environment=None, *, show=False):
        self.ran.append(list(command))
        for word, answer in self.fails.items():
            if word in command:
                return 1, answer
        if command[0] == "apt-cache":
            name = command[-1]
            return (0, f"Package: {name}\nVersion: 1\n") if name in self.listed else (100, "")
        if "apt-get" in command and "install" in command:
            self.present |= self.installs
        if "venv" in command:
            self.make_environment(Path(command[-1]))
        if "pip" in command:
            packages = next(Path(command[0]).parents[1].glob("[lL]ib*/**/site-packages"))
            (packages / "click-8.dist-info").mkdir(exist_ok=True)
        return 0, ""

    def make_environment(self, folder: Path) -> None:
        made = Environment(folder.parent)
        made.packages.mkdir(parents=True)
        made.python.parent.mkdir(parents=True, exist_ok=True)
        made.python.write_text("", encoding="utf-8")

    def programs_run(self) -> list[str]:
        """What was run, one word each: the word that tells what it was for."""
        words = ("update", "install", "venv", "true", "show", "check")
        return [
            "pip" if {"pip", "install"} <= set(command) else next(word for word in words if word in command)
            for command in self.ran
        ]


@pytest.fixture
def system():
    return PretendedSystem()


@pytest.fixture
def checkout(tmp_path):
    """A checkout in a folder whose name is not an easy one."""
    folder = tmp_path / "Frässe 1"
    (folder / "packaging").mkdir(parents=True)
    (folder / "sample_jobs").mkdir()
    (folder / "packaging" / "constraints.txt").write_text("click==8\n", encoding="utf-8")
    (folder / "packaging" / "constraints-test.txt").write_text("pytest==9\n", encoding="utf-8")
    (folder / "pyproject.toml").write_text('[project]\nversion = "0.1.0"\n', encoding="utf-8")
    (folder / "sample_jobs" / "hm-100-drilled-plate-b1.yaml").write_text("part: 1\n", encoding="utf-8")
    return folder


@pytest.fixture
def environment(checkout):
    return Environment(checkout)
