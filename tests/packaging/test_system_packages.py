"""Which system packages are missing, and what is done about it."""

import pytest
import system_packages
from system_packages import Need, SystemPackageError, ensure

GLIB = Need(("libglib2.0-0t64", "libglib2.0-0"), library="libglib-2.0.so.0")
GL = Need(("libgl1",), library="libGL.so.1")
XVFB = Need(("xvfb",), program="Xvfb")
VENV = Need(("python3-venv",), module="ensurepip")
LINE = "apt-get update && apt-get install -y --no-install-recommends libgl1 xvfb"


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("ID=debian\n", True),
        ('ID="ubuntu"\n', True),
        ('ID=linuxmint\nID_LIKE="ubuntu debian"\n', True),
        ("ID=fedora\nNAME=not-debian\n", False),
        ('ID="opensuse-leap"\nID_LIKE="suse opensuse"\n', False),
        ("", False),
    ],
)
def test_debian_and_what_is_made_from_it_is_known(text, expected):
    assert system_packages.is_debian(text) is expected


def test_only_what_is_absent_is_missing(system):
    system.present |= {"libglib-2.0.so.0", "ensurepip"}
    assert system_packages.missing(system, [GLIB, GL, XVFB, VENV]) == [GL, XVFB]


def test_nothing_is_run_when_nothing_is_missing(system):
    system.present |= {"libGL.so.1"}
    assert ensure(system, [GL], may_install=True) == []
    assert system.ran == []


def test_without_the_option_the_exact_line_is_printed(system):
    with pytest.raises(SystemPackageError) as stopped:
        ensure(system, [GL, XVFB], may_install=False)
    assert str(stopped.value).endswith(f"\n    {LINE}")
    assert "--system-packages" in str(stopped.value)
    assert system.ran == []


def test_root_installs_after_an_update(system):
    system.installs = {"libGL.so.1", "Xvfb"}
    assert ensure(system, [GL, XVFB], may_install=True) == ["libgl1", "xvfb"]
    assert system.programs_run() == ["update", "install"]
    install = system.ran[-1]
    assert "DEBIAN_FRONTEND=noninteractive" in install
    assert install[-4:] == ["-y", "--no-install-recommends", "libgl1", "xvfb"]
    assert "sudo" not in install


def test_sudo_is_used_where_it_asks_nothing(system):
    system.root = False
    system.installs = {"libGL.so.1"}
    ensure(system, [GL], may_install=True)
    assert system.programs_run() == ["true", "update", "install"]
    assert all(command[:2] == ["sudo", "-n"] for command in system.ran)


def test_sudo_that_wants_a_password_stops_with_the_exact_line(system):
    system.root = False
    system.fails = {"true": "sudo: a password is required"}
    with pytest.raises(SystemPackageError) as stopped:
        ensure(system, [GL], may_install=True)
    expected = "sudo apt-get update && sudo apt-get install -y --no-install-recommends libgl1"
    assert str(stopped.value).endswith(f"\n    {expected}")
    assert system.programs_run() == ["true"]


def test_a_system_without_sudo_gets_a_line_that_works_there(system):
    system.root = False
    system.present = set()
    with pytest.raises(SystemPackageError) as stopped:
        ensure(system, [GL], may_install=True)
    expected = 'su -c "apt-get update && apt-get install -y --no-install-recommends libgl1"'
    assert str(stopped.value).endswith(expected)
    assert system.ran == []


@pytest.mark.parametrize("may_install", [True, False])
def test_elsewhere_nothing_is_done(system, may_install):
    system.release_text = "ID=fedora\n"
    assert ensure(system, [GL], may_install=may_install) == []
    assert system.ran == []


def test_a_failed_installation_says_why_and_how(system):
    system.fails = {"update": "Ign: x\nE: Could not resolve the host\nE: more\n"}
    with pytest.raises(SystemPackageError, match="Could not resolve the host") as stopped:
        ensure(system, [GL], may_install=True)
    assert "install -y --no-install-recommends libgl1" in str(stopped.value)
    assert system.programs_run() == ["update"]


def test_an_installation_that_does_not_help_is_told(system):
    with pytest.raises(SystemPackageError, match="not found: libgl1"):
        ensure(system, [GL], may_install=True)


def test_the_newer_name_is_taken_where_the_lists_have_it(system):
    assert system_packages.package_names(system, [GLIB, GL]) == ["libglib2.0-0", "libgl1"]
    system.listed = {"libglib2.0-0t64"}
    assert system_packages.package_names(system, [GLIB, GL]) == ["libglib2.0-0t64", "libgl1"]


@pytest.mark.parametrize(
    ("platform", "variables", "expected"),
    [
        ("linux", {}, False),
        ("linux", {"DISPLAY": ""}, False),
        ("linux", {"DISPLAY": ":0"}, True),
        ("linux", {"WAYLAND_DISPLAY": "wayland-0"}, True),
        ("linux", {"QT_QPA_PLATFORM": "offscreen"}, True),
        ("darwin", {}, True),
        ("win32", {}, True),
    ],
)
def test_where_there_is_a_screen(system, platform, variables, expected):
    system.platform = platform
    system.environment = variables
    assert system_packages.has_screen(system) is expected


def test_a_window_needs_what_its_screen_speaks(system):
    def libraries():
        return {need.library for need in system_packages.window_needs(system)}

    system.environment = {"DISPLAY": ":0", "WAYLAND_DISPLAY": "wayland-0"}
    assert "libxcb-cursor.so.0" in libraries()
    system.environment = {"WAYLAND_DISPLAY": "wayland-0"}
    assert "libwayland-cursor.so.0" in libraries()
    assert "libxcb-cursor.so.0" not in libraries()
    system.environment = {"QT_QPA_PLATFORM": "offscreen"}
    assert libraries() == {need.library for need in system_packages.QT}
    system.platform = "darwin"
    assert libraries() == set()


def test_a_python_of_its_own_gets_its_own_environment_package(tmp_path):
    (need,) = system_packages.environment_needs(str(tmp_path / "python3"))
    assert need.names[0].startswith("python3.")
    assert need.names[0].endswith("-venv")
