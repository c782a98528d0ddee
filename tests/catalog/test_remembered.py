"""What YAML texts mean, remembered: never anything but quicker, whatever lies in the file."""

from __future__ import annotations

import os
import sys
from concurrent.futures import ThreadPoolExecutor

import msgspec
import pytest

from jobsheet.catalog.reading import data, remembered, strict_yaml
from jobsheet.catalog.reading.strict_yaml import Node

TEXT = 'name: plate\nsize: 40 ±0.03\nat:\n  - [14, 12]\n  - "7, 8"\ncutter: drill #7\n'
MEANT = {"name": "plate", "size": "40 ±0.03", "at": [["14", "12"], "7, 8"], "cutter": "drill"}


@pytest.fixture(autouse=True)
def home(tmp_path, monkeypatch):
    monkeypatch.setenv("JOBSHEET_HOME", str(tmp_path / "home"))
    yield tmp_path / "home"
    remembered._state.update(begun=False, new=False)


@pytest.fixture
def kept(home):
    """The file as one start leaves it."""
    start()
    return home / "cache" / "start.msgpack"


@pytest.fixture
def no_parser(monkeypatch):
    """Whoever parses fails."""
    monkeypatch.setitem(sys.modules, "yaml", None)


def start(text=TEXT):
    """One start: what the text means, read both ways."""
    remembered.begin()
    found = data.parsed(text), strict_yaml.parse(text, "a.yaml")
    remembered.end()
    return found


def without(text=TEXT):
    """The same, with nothing remembered."""
    return data.parsed(text), strict_yaml.parse(text, "a.yaml")


def test_the_second_start_parses_nothing(kept, no_parser):
    plain, node = start()
    assert plain == MEANT
    assert isinstance(node, Node)
    assert node.fields["cutter"].comment
    assert node.fields["at"].items[1].line == 5


def test_it_means_what_the_parser_says(kept):
    assert start() == without()


def test_nothing_is_remembered_unless_somebody_begins(home):
    without()
    assert not home.exists()


def test_what_is_known_is_not_written_again(kept):
    before = kept.stat().st_mtime_ns, kept.stat().st_ino
    start()
    assert (kept.stat().st_mtime_ns, kept.stat().st_ino) == before


def test_a_changed_text_is_another_text(kept):
    plain, node = start(TEXT.replace("14", "15"))
    assert plain["at"][0] == ["15", "12"]
    assert node.fields["at"].items[0].items[0].text == "15"
    assert start()[0] == MEANT


@pytest.mark.parametrize(
    "damage",
    [
        lambda raw: b"",
        lambda raw: raw[: len(raw) // 2],
        lambda raw: raw[:-1],
        lambda raw: b"\xc1" * 50,
        lambda raw: os.urandom(len(raw)),
        lambda raw: raw.replace(b"plate", b"plank"),
        lambda raw: raw.replace(b"14", b"41"),
        lambda raw: b"\x91" * 100_000,
        lambda raw: msgspec.msgpack.encode([remembered.VERSION, 0, b""]),
        lambda raw: msgspec.msgpack.encode({"version": 1}),
    ],
    ids=["empty", "half", "cut", "no msgpack", "noise", "a word", "a figure", "deep", "check", "shape"],
)
def test_damage_changes_nothing(kept, damage):
    kept.write_bytes(damage(kept.read_bytes()))
    assert start() == without()
    assert start() == without()


def sealed(entries, version=remembered.VERSION):
    """A file whose check is right, whatever is in it."""
    body = msgspec.msgpack.encode(entries)
    return msgspec.msgpack.encode([version, remembered._check(body), body])


@pytest.mark.parametrize(
    "value",
    [
        None,
        7,
        "text",
        [],
        [1.5],
        [{"name": 7}],
        [{"name": None}],
        [["a", b"b"]],
        [msgspec.msgpack.Ext(5, b"x")],
        ["one", "text", [], {}, "yes"],
        [1, 2, 3, 4, 5],
        [1, None, [[1, None, [7]]]],
    ],
    ids=lambda value: type(value).__name__,
)
def test_what_has_another_form_is_not_taken(kept, value):
    kept.write_bytes(sealed({f"{kind} {TEXT}": value for kind in ("Plain", "Node")}))
    assert start() == without()


def test_nesting_without_end_is_not_taken(kept):
    deep = b"\x93\x01\xc0\x91" * 50_000
    body = b"\x81" + msgspec.msgpack.encode(f"Node {TEXT}") + deep
    kept.write_bytes(msgspec.msgpack.encode([remembered.VERSION, remembered._check(body), body]))
    assert start() == without()


def test_another_version_is_not_taken(kept):
    entries = {f"Plain {TEXT}": [{"name": "other"}]}
    kept.write_bytes(sealed(entries, remembered.VERSION + 1))
    assert start()[0] == MEANT
    kept.write_bytes(sealed(entries, remembered.VERSION - 1))
    assert start()[0] == MEANT


def test_a_folder_that_cannot_be_written_is_no_reason_to_stop(home):
    home.write_text("a file where the folder should be")
    assert start() == without()
    assert home.read_text() == "a file where the folder should be"


def test_a_file_that_cannot_be_put_in_place_leaves_nothing_beside(home):
    (home / "cache" / "start.msgpack").mkdir(parents=True)
    assert start() == without()
    assert [path.name for path in (home / "cache").iterdir()] == ["start.msgpack"]


def test_it_can_be_deleted_at_any_time(kept):
    kept.unlink()
    assert start() == without()
    assert kept.exists()


def test_what_cannot_be_parsed_is_refused_each_time_with_its_line(home):
    for _ in range(2):
        remembered.begin()
        with pytest.raises(Exception, match=r"line 2: .*stands twice"):
            strict_yaml.parse("a: 1\na: 2\n", "a.yaml")
        remembered.end()


def test_it_does_not_grow_without_end(kept):
    for number in range(3 * remembered.MOST):
        start(f"{TEXT}number: {number}\n")
    kind = msgspec.msgpack.decode(msgspec.msgpack.decode(kept.read_bytes())[2])
    assert len(kind) == remembered.MOST
    assert f"Plain {TEXT}number: {3 * remembered.MOST - 1}\n" in kind


def test_writers_at_the_same_time_leave_a_whole_file(home, tmp_path):
    import subprocess

    code = (
        "from jobsheet.catalog.reading import remembered, data\n"
        "for n in range(20):\n"
        " remembered.begin(); data.parsed(f'a: {n}\\nb: {__import__(\"os\").getpid()}'); remembered.end()"
    )
    with ThreadPoolExecutor() as pool:
        done = list(pool.map(lambda _: subprocess.run([sys.executable, "-c", code], check=False), range(4)))
    assert [one.returncode for one in done] == [0] * 4
    remembered.begin()
    assert remembered._known
    assert [path.name for path in (home / "cache").iterdir()] == ["start.msgpack"]
