"""What is installed is what is pinned, whatever the index offers beside it; an older pip gives the same."""

import json
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
import system_packages
from setup_environment import Environment, SetupError

from tests.packaging.conftest import CHECKOUT
from tests.packaging.stub_index import NEWER, StubIndex

PINS = ("constraints.txt", "constraints-test.txt")
OLD_PIP = "23.0"
#: What every new environment begins with, beside the link to the checkout.
NOT_PINNED = {"pip", "setuptools", "jobsheet"}


class OldPip(system_packages.System):
    """The machine as it is, but a new environment comes with an older pip."""

    def __init__(self, wheel: Path) -> None:
        self.wheel = wheel

    def run(self, command, environment=None, *, show=False):
        code, output = super().run(command, environment, show=show)
        if "venv" in command and not code:
            python = Path(command[-1], "bin", "python")
            code, output = super().run(
                [str(python), "-m", "pip", "install", "--no-index", "--no-deps", str(self.wheel)], environment
            )
        return code, output


def only_this_index(monkeypatch, address):
    """Nothing that this machine's own settings say counts."""
    for name in ("PIP_EXTRA_INDEX_URL", "PIP_FIND_LINKS", "PIP_CONSTRAINT", "PIP_NO_INDEX"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setenv("PIP_CONFIG_FILE", "/dev/null")
    monkeypatch.setenv("PIP_INDEX_URL", address)


@pytest.fixture
def index(tmp_path):
    folder = tmp_path / "index"
    folder.mkdir()
    return StubIndex(folder)


@pytest.fixture
def pinned(checkout, index, monkeypatch):
    """A checkout whose pins are those of this one, with the hashes of the empty wheels."""
    only_this_index(monkeypatch, index.address)
    for name in PINS:
        pins = (CHECKOUT / "packaging" / name).read_text(encoding="utf-8")
        (checkout / "packaging" / name).write_text(index.offer(pins), encoding="utf-8")
    return Environment(checkout)


def installed(environment):
    asked = [environment.python, "-m", "pip", "list", "--format", "json", "--disable-pip-version-check"]
    listed = json.loads(subprocess.run(asked, check=True, capture_output=True).stdout)
    return {entry["name"].replace("_", "-").lower(): entry["version"] for entry in listed}


def assert_as_pinned(environment, index):
    found = installed(environment)
    assert {name: version for name, version in found.items() if name not in NOT_PINNED} == index.pins
    assert NEWER not in found.values()


def drop_extras(checkout):
    """The pins as a resolver writes them that leaves extras out."""
    for name in PINS:
        file = checkout / "packaging" / name
        file.write_text(
            re.sub(r"(?m)^([\w.-]+)\[.*?\]", r"\1", file.read_text(encoding="utf-8")), encoding="utf-8"
        )


@pytest.mark.parametrize(
    "extras",
    [pytest.param(True, id="as pinned", marks=pytest.mark.long), pytest.param(False, id="without extras")],
)
def test_newer_versions_on_the_index_change_nothing(pinned, index, extras):
    if not extras:
        drop_extras(pinned.checkout)
    pinned.prepare(system_packages.System(), lambda _: None, tests=True)
    assert_as_pinned(pinned, index)


@pytest.mark.long
def test_a_pin_that_is_missing_is_named(pinned):
    """Left out of the pins: nothing asks for it any more, and the check says who did."""
    file = pinned.checkout / "packaging" / PINS[1]
    rows = re.split(r"(?m)^(?=\S)", file.read_text(encoding="utf-8"))
    file.write_text("".join(row for row in rows if not row.startswith("pluggy==")), encoding="utf-8")
    with pytest.raises(SetupError, match=r"requires pluggy, which is not installed"):
        pinned.prepare(system_packages.System(), lambda _: None, tests=True)


@pytest.mark.long
def test_a_wheel_that_is_not_the_pinned_one_is_named(pinned):
    file = pinned.checkout / "packaging" / PINS[0]
    text = file.read_text(encoding="utf-8")
    file.write_text(
        re.sub(r"(click==.*\n    --hash=sha256:)\w+", rf"\g<1>{'0' * 64}", text), encoding="utf-8"
    )
    with pytest.raises(SetupError, match=r"downloaded for click is not the pinned package"):
        pinned.prepare(system_packages.System(), lambda _: None)


def test_the_wheel_is_proved_with_the_same_question():
    """`.ci/run` installs by the same words, in an environment of its own."""
    text = (CHECKOUT / ".ci" / "run").read_text(encoding="utf-8").replace("\\\n", " ")
    (asked,) = [line for line in text.splitlines() if "-r packaging/constraints.txt" in line]
    assert {"--no-deps", "--require-hashes", "--only-binary"} <= set(asked.split())
    assert '"$clean/python" -m pip check' in text


@pytest.mark.long
@pytest.mark.skipif(sys.version_info >= (3, 12), reason="that pip does not run on a newer Python")
def test_an_old_pip_installs_the_pins_too(checkout, index, tmp_path, monkeypatch):
    """It is the old one that fails where it resolves: asked that way, it must
    fail here, or this proves nothing.
    """
    wheels = tmp_path / "wheels"
    fetch = [
        sys.executable,
        "-m",
        "pip",
        "download",
        "--quiet",
        "--no-deps",
        "--dest",
        wheels,
        f"pip=={OLD_PIP}",
    ]
    subprocess.run(fetch, check=True)
    (wheel,) = wheels.glob("pip-*.whl")
    only_this_index(monkeypatch, index.address)
    for name in PINS:
        pins = (CHECKOUT / "packaging" / name).read_text(encoding="utf-8")
        (checkout / "packaging" / name).write_text(index.offer(pins), encoding="utf-8")
    environment = Environment(checkout)
    drop_extras(checkout)
    environment.prepare(OldPip(wheel), lambda _: None, tests=True)
    assert installed(environment)["pip"] == OLD_PIP
    assert_as_pinned(environment, index)
    resolving = [environment.python, "-m", "pip", "install", "--require-hashes", "--force-reinstall"]
    for name in PINS:
        resolving += ["-r", checkout / "packaging" / name]
    failed = subprocess.run(resolving, check=False, capture_output=True, encoding="utf-8")
    assert failed.returncode
    assert "must have their versions pinned" in failed.stderr
    shutil.rmtree(environment.folder)
