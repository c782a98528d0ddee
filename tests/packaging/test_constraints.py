"""The pinned sets: every row has hashes, no row an address, and nothing pyproject.toml asks for is absent."""

import re
import tomllib
from pathlib import Path

import open_program
import pin
import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

FOLDER = Path(open_program.__file__).parent
NAMES = ("constraints.txt", "constraints-test.txt")
PROJECT = tomllib.loads((FOLDER.parent / "pyproject.toml").read_text(encoding="utf-8"))["project"]


def text(name):
    return (FOLDER / name).read_text(encoding="utf-8")


def requirements(name):
    first_lines = [row.splitlines()[0].rstrip("\\ ") for row in pin.rows(text(name))]
    return {canonicalize_name(found.name): found for found in map(Requirement, first_lines)}


@pytest.mark.parametrize("name", NAMES)
def test_every_row_is_one_version_with_hashes(name):
    rows = pin.rows(text(name))
    assert rows
    for row in rows:
        first, *hashes = row.splitlines()
        assert re.match(r"[a-z0-9.-]+(\[[a-z0-9,-]+\])?==[\w.]+( ; .+)? \\$", first), first
        assert hashes, first
        assert all(re.fullmatch(r"    --hash=sha256:[0-9a-f]{64}( \\)?", line) for line in hashes), first


@pytest.mark.parametrize("name", NAMES)
def test_no_address_and_no_path(name):
    content = text(name)
    for word in ("://", "index-url", "find-links", "trusted-host", " @ ", "file:", "/home", "/tmp", "/root"):
        assert word not in content


def test_no_package_is_in_both():
    assert not requirements(NAMES[0]).keys() & requirements(NAMES[1]).keys()


@pytest.mark.parametrize("wanted", PROJECT["dependencies"])
def test_what_the_program_asks_for_is_pinned(wanted):
    wanted = Requirement(wanted)
    (pinned,) = requirements(NAMES[0])[canonicalize_name(wanted.name)].specifier
    assert wanted.specifier.contains(pinned.version)


@pytest.mark.parametrize("wanted", PROJECT["optional-dependencies"]["test"])
def test_what_the_tests_ask_for_is_pinned(wanted):
    wanted = Requirement(wanted)
    pins = requirements(NAMES[0]) | requirements(NAMES[1])
    (pinned,) = pins[canonicalize_name(wanted.name)].specifier
    assert wanted.specifier.contains(pinned.version)


def test_what_builds_the_wheel_is_pinned():
    assert {"build", "hatchling"} <= requirements(NAMES[1]).keys()
