"""The program's own environment: `.venv` in the checkout, made once from the pinned packages.

Shared by `start.py` and `check.py`. Standard library only, because it runs before anything is
installed; and sparing with imports, because every start of the program passes through it.
"""

import contextlib
import errno
import hashlib
import io
import json
import os
import re
import shutil
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

import system_packages

CHECKOUT = Path(__file__).resolve().parent.parent
CONSTRAINTS = "constraints.txt"
TEST_CONSTRAINTS = "constraints-test.txt"
STAMP = "jobsheet-environment.json"
LOCK = ".lock"
INTERRUPTED = 130

# Settings of a person's own pip that would put the packages somewhere else than into `.venv`.
MISLEADING_VARIABLES = ("PIP_USER", "PIP_TARGET", "PIP_PREFIX", "PIP_ROOT", "PYTHONHOME")

NETWORK_WORDS = (
    "NewConnectionError",
    "ConnectTimeoutError",
    "ReadTimeoutError",
    "NameResolutionError",
    "ProxyError",
    "SSLError",
    "Connection reset",
    "Connection broken",
    "Failed to establish a new connection",
    "Temporary failure in name resolution",
)


class SetupError(Exception):
    """Something a person has to put right; its text is the sentence they are shown."""


class Environment:
    """The `.venv` of one checkout: is it complete, and make it so."""

    def __init__(self, checkout: Path = CHECKOUT) -> None:
        self.checkout = checkout
        self.folder = checkout / ".venv"
        if os.name == "nt":
            self.programs = self.folder / "Scripts"
            self.python = self.programs / "python.exe"
            self.packages = self.folder / "Lib" / "site-packages"
        else:
            self.programs = self.folder / "bin"
            self.python = self.programs / "python"
            version = f"python{sys.version_info[0]}.{sys.version_info[1]}"
            self.packages = self.folder / "lib" / version / "site-packages"
        self.stamp = self.folder / STAMP

    def wanted(self, *, tests: bool) -> dict[str, str]:
        """What the stamp must say for this checkout, on this Python."""
        pins = self.checkout / "packaging"
        machine = os.uname().machine if hasattr(os, "uname") else ""
        interpreter = f"{sys.implementation.cache_tag}{getattr(sys, 'abiflags', '')}"
        entries = {
            "python": f"{interpreter} {sys.platform} {machine}".strip(),
            "program": program_version(self.checkout),
            "run": _digest(pins / CONSTRAINTS),
        }
        if tests:
            entries["test"] = _digest(pins / TEST_CONSTRAINTS)
        return entries

    def stamped(self) -> dict[str, object]:
        """What the last finished set-up left behind; nothing when there was none, or it was cut short."""
        try:
            found = json.loads(self.stamp.read_text(encoding="utf-8"))
        except (OSError, ValueError):
            return {}
        if not isinstance(found, dict) or not self._is_whole(found.get("distributions")):
            return {}
        return found

    def _is_whole(self, distributions: object) -> bool:
        """Whether the interpreter and every installed package are still where the set-up left them."""
        if not isinstance(distributions, list) or not self.python.exists():
            return False
        try:
            present = set(os.listdir(self.packages))  # noqa: PTH208  the names alone, and quickly
        except OSError:
            return False
        return present.issuperset(distributions)

    def is_ready(self, *, tests: bool = False) -> bool:
        """Whether nothing has to be done before the program can start."""
        found = self.stamped()
        return all(found.get(name) == value for name, value in self.wanted(tests=tests).items())

    def must_be_made(self, *, tests: bool = False) -> bool:
        """Whether `.venv` has to be made from nothing: it is absent, unfinished or of other pins."""
        found = self.stamped()
        if not found:
            return True
        wanted = self.wanted(tests=tests)
        shared = found.keys() & wanted.keys() & {"python", "run", "test"}
        return any(found[name] != wanted[name] for name in shared)

    def prepare(
        self,
        system: system_packages.System,
        say: Callable[[str], None],
        *,
        tests: bool = False,
    ) -> bool:
        """Make the environment complete; say whether anything had to be done."""
        if self.is_ready(tests=tests):
            return False
        if self.folder.is_symlink() or (self.folder.exists() and not self.folder.is_dir()):
            raise SetupError(f"{self.folder} is not a folder of this checkout: move it away and start again.")
        with explained(self.checkout):
            self.folder.mkdir(exist_ok=True)
            with self._alone(say):
                if self.is_ready(tests=tests):
                    return False
                self._make(system, say, tests=tests)
        return True

    def _make(self, system: system_packages.System, say: Callable[[str], None], *, tests: bool) -> None:
        found = self.stamped()
        wanted = self.wanted(tests=tests)
        anew = self.must_be_made(tests=tests)
        files = [name for name, part in ((CONSTRAINTS, "run"), (TEST_CONSTRAINTS, "test")) if part in wanted]
        # Without its stamp an environment counts as unfinished, whatever interrupts the next lines.
        self.stamp.unlink(missing_ok=True)
        if anew:
            self._empty()
            say("Making .venv in the checkout.")
            self._create(system)
        elif "test" in found:
            wanted.setdefault("test", str(found["test"]))
        if anew or ("test" in wanted and "test" not in found):
            say(
                "Installing the pinned packages (once; 110 MB at the first start)."
                if anew
                else "Installing the pinned test packages (once)."
            )
            self._install(system, files)
        self._link()
        installed = {entry.name for entry in self.packages.glob("*.dist-info")}
        distributions = sorted(name for name in installed if not name.startswith(("pip-", "setuptools-")))
        self._write_stamp({**wanted, "distributions": distributions})

    def _write_stamp(self, entries: dict[str, object]) -> None:
        beside = self.stamp.with_suffix(".new")
        beside.write_text(json.dumps(entries, indent=1) + "\n", encoding="utf-8")
        beside.replace(self.stamp)

    def _empty(self) -> None:
        """Clear an unfinished environment out, all but the lock that this very process holds."""
        for entry in self.folder.iterdir():
            if entry.name == LOCK:
                continue
            if entry.is_dir() and not entry.is_symlink():
                shutil.rmtree(entry)
            else:
                entry.unlink()

    def _create(self, system: system_packages.System) -> None:
        code, output = system.run(
            [base_python(), "-m", "venv", str(self.folder)], environment=_own_environment()
        )
        if code:
            raise SetupError(f"Python could not make the environment {self.folder}: {_last_words(output)}")

    def _install(self, system: system_packages.System, files: list[str]) -> None:
        # A first download takes a while: at a terminal pip's own progress is worth seeing.
        at_terminal = sys.stdout is not None and sys.stdout.isatty()
        command = [str(self.python), "-m", "pip", "install", "--disable-pip-version-check", "--no-input"]
        command += [] if at_terminal else ["--quiet"]
        # The pins are the whole answer: asked to resolve, pip would look for
        # newer ones of what an extra names.
        command += ["--no-deps", "--require-hashes", "--only-binary", ":all:"]
        for name in files:
            command += ["-r", str(self.checkout / "packaging" / name)]
        code, output = system.run(command, environment=_own_environment(), show=at_terminal)
        if code:
            raise SetupError(explain_pip(output))
        self._check(system)

    def _check(self, system: system_packages.System) -> None:
        """What was installed without resolving must still be complete and fit together."""
        command = [str(self.python), "-m", "pip", "check", "--disable-pip-version-check"]
        code, output = system.run(command, environment=_own_environment())
        if code:
            raise SetupError(explain_check(output))

    def _link(self) -> None:
        """Let the environment run the program out of the checkout, as an installed one is run.

        A path file instead of an editable install: that would need the build tool, and the network
        with it. The path is relative, so that a checkout may be moved, and so that no letter
        of its own path can be misread. The record beside it tells Python the program's version.
        """
        for old in self.packages.glob("jobsheet-*.dist-info"):
            shutil.rmtree(old)
        there = os.path.relpath(self.checkout, self.packages)
        (self.packages / "jobsheet-checkout.pth").write_text(there + "\n", encoding="utf-8")
        version = program_version(self.checkout)
        record = self.packages / f"jobsheet-{version}.dist-info"
        record.mkdir()
        metadata = f"Metadata-Version: 2.1\nName: jobsheet\nVersion: {version}\n"
        (record / "METADATA").write_text(metadata, encoding="utf-8")
        entry_points = "[console_scripts]\njobsheet = jobsheet.__main__:program\n"
        (record / "entry_points.txt").write_text(entry_points, encoding="utf-8")
        if os.name == "nt":
            script = '@"%~dp0python.exe" -P -m jobsheet %*\n'
            (self.programs / "jobsheet.cmd").write_text(script, encoding="utf-8")
        else:
            program = self.programs / "jobsheet"
            script = 'exec "$(dirname -- "$(readlink -f -- "$0")")/python" -P -m jobsheet "$@"'
            program.write_text(f"#!/bin/sh\n{script}\n", encoding="utf-8")
            program.chmod(0o755)

    @contextlib.contextmanager
    def _alone(self, say: Callable[[str], None]) -> Iterator[None]:
        """Keep a second start out until the first has made the environment; the system lets go if it dies."""
        with (self.folder / LOCK).open("a+b") as lock:
            if not _take(lock.fileno(), wait=False):
                say("Another start is setting up .venv: waiting for it.")
                while not _take(lock.fileno(), wait=True):
                    pass
            yield


if sys.platform == "win32":

    def _take(descriptor: int, *, wait: bool) -> bool:
        import msvcrt

        try:
            msvcrt.locking(descriptor, msvcrt.LK_LOCK if wait else msvcrt.LK_NBLCK, 1)
        except OSError:
            return False
        return True

else:

    def _take(descriptor: int, *, wait: bool) -> bool:
        import fcntl

        try:
            fcntl.flock(descriptor, fcntl.LOCK_EX | (0 if wait else fcntl.LOCK_NB))
        except BlockingIOError:
            return False
        return True


def base_python() -> str:
    """The interpreter to build on: the one below, when this one is itself part of an environment."""
    return getattr(sys, "_base_executable", "") or sys.executable


def program_version(checkout: Path) -> str:
    """The version in pyproject.toml, read without the TOML parser: it is asked for at every start."""
    text = (checkout / "pyproject.toml").read_text(encoding="utf-8")
    found = re.search(r'^version = "([^"]+)"', text, re.MULTILINE)
    if not found:
        raise SetupError("pyproject.toml names no version: the checkout is damaged, fetch it again.")
    return found[1]


def explain_pip(output: str) -> str:
    """Turn what pip said when it failed into one sentence with its remedy."""
    if "DO NOT MATCH THE HASHES" in output:
        return (
            f"What was downloaded for {_blamed(output)} is not the pinned package (its hash differs), so "
            "nothing was installed: try again on another network, and report it if it stays so."
        )
    if "--require-hashes mode" in output or "Hashes are required" in output:
        return (
            f"The pinned packages lack {_blamed(output)}, so nothing was installed: "
            "fetch the newest checkout, and report it if it stays so."
        )
    if any(word in output for word in NETWORK_WORDS):
        return (
            "The packages could not be fetched: connect to the network once and start again "
            "(after that no network is needed)."
        )
    if "No space left on device" in output:
        return "The disk is full: the packages need 400 MB. Make room and start again."
    if "No matching distribution found" in output:
        wanted = re.search(r"No matching distribution found for (\S+)", output)
        name = wanted[1] if wanted else "a package"
        return (
            f"There is no ready-made {name} for this Python ({sys.version.split()[0]}, {sys.platform}) "
            "where pip looks: use Python 3.11 to 3.14 on a current 64-bit system, and check the network."
        )
    return f"pip could not install the packages: {_last_words(output)}"


def explain_check(output: str) -> str:
    """Turn what `pip check` found into one sentence: which package lacks what."""
    return (
        f"The pinned packages do not fit together ({_first_words(output)}): "
        "fetch the newest checkout, and report it if it stays so."
    )


def _blamed(output: str) -> str:
    """The package that pip names below its complaint about pins or hashes: the first indented line."""
    complaint = re.search(r"(?m)^ERROR:.*(?:\n.*)*?\n\s+([A-Za-z0-9][\w.-]*(?:\[[\w, .-]+\])?)", output)
    return complaint[1] if complaint else "a package"


@contextlib.contextmanager
def explained(checkout: Path = CHECKOUT) -> Iterator[None]:
    """Turn what the file system refuses into one sentence with its remedy."""
    try:
        yield
    except OSError as problem:
        if problem.errno in (errno.EROFS, errno.EACCES, errno.EPERM):
            raise SetupError(
                f"{problem.filename or checkout} cannot be written to: "
                "copy the checkout to a folder of your own and start there."
            ) from problem
        if problem.errno == errno.ENOSPC:
            raise SetupError(
                "The disk is full: the packages need 400 MB. Make room and start again."
            ) from problem
        raise SetupError(f"{problem.strerror or problem}: {problem.filename or checkout}") from problem


def outcome(action: Callable[[], int]) -> int:
    """Run a command so that whatever a person can put right ends in a sentence, never in a traceback."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):  # a console that lacks a letter shows a question mark
            stream.reconfigure(errors="replace")
    try:
        with explained():
            return action()
    except (SetupError, system_packages.SystemPackageError) as problem:
        print(problem, file=sys.stderr)
        return 1
    except KeyboardInterrupt:
        print("Stopped. Start again to go on.", file=sys.stderr)
        return INTERRUPTED


def say(line: str) -> None:
    """Print a line at once: what follows may take long, or replace this process."""
    print(line, flush=True)


def _digest(path: Path) -> str:
    return hashlib.sha256(path.read_bytes().replace(b"\r\n", b"\n")).hexdigest()


def _own_environment() -> dict[str, str]:
    return {name: value for name, value in os.environ.items() if name not in MISLEADING_VARIABLES}


def _first_words(output: str) -> str:
    lines = [line.strip().rstrip(".") for line in output.splitlines() if line.strip()]
    return (lines or ["it gave no reason"])[0]


def _last_words(output: str) -> str:
    lines = [line.strip() for line in output.splitlines() if line.strip()]
    errors = [line for line in lines if line.startswith(("ERROR", "Error"))]
    return (errors or lines or ["it gave no reason"])[-1]
