"""What the program and its tests need of the system itself, and how Debian and Ubuntu provide it.

Python's packages bring Qt, but Qt leans on libraries of the system (fonts, keyboard, graphics) that a bare
Debian or Ubuntu does not have. Elsewhere they belong to every desktop, and nothing is done here.
"""

import os
import shutil
import sys
from collections import namedtuple
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path

# `names`: what the package is called, the newest release's name first. Present when `library` can
# be loaded, `program` is on the path or `module` can be imported.
Need = namedtuple("Need", "names library program module", defaults=("", "", ""))  # noqa: PYI024  typing is slow to import

QT = (
    Need(("libglib2.0-0t64", "libglib2.0-0"), library="libglib-2.0.so.0"),
    Need(("libgl1",), library="libGL.so.1"),
    Need(("libegl1",), library="libEGL.so.1"),
    Need(("libdbus-1-3",), library="libdbus-1.so.3"),
    Need(("libfontconfig1",), library="libfontconfig.so.1"),
    Need(("libxkbcommon0",), library="libxkbcommon.so.0"),
)
X11_WINDOW = (
    Need(("libxcb-cursor0",), library="libxcb-cursor.so.0"),
    Need(("libxcb-icccm4",), library="libxcb-icccm.so.4"),
    Need(("libxcb-keysyms1",), library="libxcb-keysyms.so.1"),
    Need(("libxcb-shape0",), library="libxcb-shape.so.0"),
    Need(("libxkbcommon-x11-0",), library="libxkbcommon-x11.so.0"),
)
WAYLAND_WINDOW = (Need(("libwayland-cursor0",), library="libwayland-cursor.so.0"),)
SCREEN_TESTS = (
    Need(("xvfb",), program="Xvfb"),
    Need(("openbox",), program="openbox"),  # shortcuts reach a window only where one is in charge
    Need(("xdotool",), program="xdotool"),
)
PAGE_TESTS = (
    Need(("qpdf",), program="qpdf"),
    Need(("poppler-utils",), program="pdffonts"),
)

OPTION = "--system-packages"
OPTION_HELP = "on Debian and Ubuntu, install the system packages that are missing (as root or through sudo)"


class SystemPackageError(Exception):
    """System packages are missing and stay so; its text is what a person is shown."""


class System:
    """The machine as the set-up sees it. Tests put a pretended one in its place."""

    platform = sys.platform

    def variables(self) -> Mapping[str, str]:
        """The environment's variables."""
        return os.environ

    def release(self) -> str:
        """The text of os-release; empty where there is none."""
        try:
            return Path("/etc/os-release").read_text(encoding="utf-8")
        except OSError:
            return ""

    def is_root(self) -> bool:
        """Whether packages may be installed without asking anybody."""
        return hasattr(os, "geteuid") and os.geteuid() == 0

    def has_library(self, name: str) -> bool:
        """Whether the loader finds a shared library, whatever its package is called: Qt will ask the same."""
        try:
            import ctypes
        except ImportError:  # a Python built without it cannot tell; Qt will
            return True
        try:
            ctypes.CDLL(name)
        except OSError:
            return False
        return True

    def has_program(self, name: str) -> bool:
        """Whether a program is on the path."""
        return shutil.which(name) is not None

    def has_module(self, name: str) -> bool:
        """Whether this Python has a module of its own standard library."""
        import importlib.util

        return importlib.util.find_spec(name) is not None

    def run(
        self,
        command: Sequence[str],
        environment: Mapping[str, str] | None = None,
        *,
        show: bool = False,
    ) -> tuple[int, str]:
        """Run a program to its end; its exit code and what it said (what is shown is not kept)."""
        import subprocess

        done = subprocess.run(
            command,
            env=None if environment is None else dict(environment),
            stdin=subprocess.DEVNULL,
            stdout=None if show else subprocess.PIPE,
            stderr=subprocess.PIPE if show else subprocess.STDOUT,
            encoding="utf-8",
            errors="replace",
            check=False,
        )
        return done.returncode, (done.stdout or "") + (done.stderr or "")


def has_screen(system: System) -> bool:
    """Whether a window can be opened. A chosen Qt platform counts: whoever names one knows why."""
    if not system.platform.startswith("linux"):
        return True
    variables = system.variables()
    return any(variables.get(name) for name in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"))


def window_needs(system: System) -> tuple[Need, ...]:
    """What Qt needs to open a window on this screen."""
    if not system.platform.startswith("linux"):
        return ()
    variables = system.variables()
    if variables.get("QT_QPA_PLATFORM") in ("offscreen", "minimal", "vnc"):
        return QT
    if variables.get("WAYLAND_DISPLAY") and not variables.get("DISPLAY"):
        return QT + WAYLAND_WINDOW
    return QT + X11_WINDOW


def environment_needs(base_python: str) -> tuple[Need, ...]:
    """What making `.venv` needs: Debian keeps a piece of the standard library in a package of its own."""
    here = os.path.realpath(base_python)
    is_default = here == os.path.realpath("/usr/bin/python3")
    name = "python3-venv" if is_default else f"python{sys.version_info[0]}.{sys.version_info[1]}-venv"
    return (Need((name,), module="ensurepip"),)


def is_debian(release: str) -> bool:
    """Whether os-release names Debian, Ubuntu or a system made from them."""
    words: list[str] = []
    for line in release.splitlines():
        key, _, value = line.partition("=")
        if key in ("ID", "ID_LIKE"):
            words += value.strip().strip("\"'").split()
    return "debian" in words or "ubuntu" in words


def missing(system: System, needs: Iterable[Need]) -> list[Need]:
    """Those of `needs` that this machine does not have."""
    return [
        need
        for need in needs
        if not (
            (need.library and system.has_library(need.library))
            or (need.program and system.has_program(need.program))
            or (need.module and system.has_module(need.module))
        )
    ]


def package_names(system: System, needs: Iterable[Need]) -> list[str]:
    """The name each package has in this release.

    Where the package lists do not tell (a fresh container has none), the older name is right everywhere:
    the newer package answers to it.
    """
    names = []
    for need in needs:
        known = [name for name in need.names[:-1] if _is_listed(system, name)]
        names.append((known or [need.names[-1]])[0])
    return names


def _is_listed(system: System, name: str) -> bool:
    try:
        _, output = system.run(["apt-cache", "show", name])
    except OSError:
        return False
    return f"Package: {name}\n" in output


def install_line(system: System, names: Sequence[str]) -> str:
    """The exact line that installs these packages, for a person to run."""
    update = "apt-get update"
    install = "apt-get install -y --no-install-recommends " + " ".join(names)
    if system.is_root():
        return f"{update} && {install}"
    if system.has_program("sudo"):
        return f"sudo {update} && sudo {install}"
    return f'su -c "{update} && {install}"'


def ensure(system: System, needs: Iterable[Need], *, may_install: bool) -> list[str]:
    """Provide what is missing where that is allowed; else stop with the exact line that does it.

    Returns
    -------
    list of str
        The packages that were installed.
    """
    lacking = missing(system, needs)
    if not lacking or not is_debian(system.release()):
        return []
    if not may_install:
        line = install_line(system, package_names(system, lacking))
        raise SystemPackageError(
            f"System packages are missing. Run this line, or start again with {OPTION}:\n    {line}"
        )
    prefix: list[str] = []
    if not system.is_root():
        if not system.has_program("sudo") or system.run(["sudo", "-n", "true"])[0]:
            line = install_line(system, package_names(system, lacking))
            raise SystemPackageError(
                "System packages are missing, and installing them takes a password here. "
                f"Run this line, then start again:\n    {line}"
            )
        prefix = ["sudo", "-n"]
    return _install(system, lacking, prefix)


def _install(system: System, lacking: list[Need], prefix: list[str]) -> list[str]:
    print("Installing the system packages that are missing.", flush=True)
    quiet = ["env", "DEBIAN_FRONTEND=noninteractive", "LC_ALL=C", "apt-get", "-qq"]
    patient = ["-o", "DPkg::Lock::Timeout=120", "-o", "Acquire::Retries=2"]
    code, output = system.run([*prefix, *quiet, *patient, "update"])
    names = package_names(system, lacking)
    if not code:
        install = ["install", "-y", "--no-install-recommends", *names]
        code, output = system.run([*prefix, *quiet, *patient, *install])
    if code:
        lines = [line.strip() for line in output.splitlines() if line.startswith("E:")]
        reason = lines[0] if lines else "it gave no reason"
        raise SystemPackageError(
            f"apt-get could not install the system packages ({reason}). "
            f"Check the network, or run this line yourself:\n    {install_line(system, names)}"
        )
    still = missing(system, lacking)
    if still:
        raise SystemPackageError(
            "These packages are installed but what they should bring is not found: "
            + " ".join(package_names(system, still))
        )
    return names
