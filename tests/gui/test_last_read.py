"""What the texts of the last start meant is kept: the same job is read without
the parser, and to the same values.
"""

from __future__ import annotations

import os
import re
import subprocess
import sys
from pathlib import Path

import msgspec
import pytest

from jobsheet.catalog.reading import strict_yaml
from jobsheet.errors import DocumentError
from jobsheet.gui.start import last_read
from jobsheet.gui.start.last_read import LastRead, Texts
from jobsheet.storage.job_file import job_from_text

BROKEN = "format: 2\nunits: [mm\n"


@pytest.fixture
def path(tmp_path):
    return str(tmp_path / "cache" / "kept")


@pytest.fixture(params=["hm-100-drilled-plate-b1", "hm-103-pivot-block"])
def text(request, samples):
    return (samples / f"{request.param}.yaml").read_text(encoding="utf-8")


def start(path, *texts):
    """One start: what each text is read as."""
    one = LastRead(path)
    with one.used():
        found = [strict_yaml.parse(text, "a.yaml") for text in texts]
    one.keep()
    return found


def nobody(*_):
    raise AssertionError("it was parsed")


def test_the_second_start_parses_nothing_and_everybody_gets_nodes_of_his_own(path, text):
    plain = strict_yaml.parse(text, "a.yaml")
    one = LastRead(path)
    with one.used():
        assert strict_yaml.parse(text, "a.yaml") == plain
        made = job_from_text(text, "a.yaml")  # reads the card beside it
    one.keep()
    two = LastRead(path)
    two._nodes = nobody
    with two.used():
        first, second = strict_yaml.parse(text, "a.yaml"), strict_yaml.parse(text, "b.yaml")
        job = job_from_text(text, "a.yaml")
    assert first == second == plain
    first.fields.clear()
    assert second == plain
    assert job == made == job_from_text(text, "a.yaml")


def test_another_text_is_parsed(path, text):
    start(path, text)
    other = text.replace("units: mm", "units: in", 1)
    assert other != text
    assert start(path, other) == [strict_yaml.parse(other, "a.yaml")]


def test_what_was_not_asked_for_again_is_gone(path, text):
    start(path, text, "format: 2\n")
    before = Path(path).stat().st_size
    start(path, "format: 2\n")
    assert Path(path).stat().st_size < before / 10
    two = LastRead(path)
    assert list(two._known) == ["format: 2\n"]


def test_what_is_refused_is_refused_again_in_the_same_words(path):
    told = []
    for _ in range(3):
        with pytest.raises(DocumentError) as refused:
            start(path, BROKEN)
        told.append(str(refused.value))
    assert len(set(told)) == 1
    with pytest.raises(DocumentError, match=re.escape(told[0])):
        strict_yaml.parse(BROKEN, "a.yaml")
    assert not Path(path).exists()


def test_another_reader_reads_anew(path, text, monkeypatch):
    start(path, text)
    monkeypatch.setattr(last_read, "_reader", lambda: (1, 2))
    assert LastRead(path)._known == {}


def sealed(body):
    return last_read.source_hash(body) + body


@pytest.mark.parametrize(
    "damage",
    [
        lambda raw: b"",
        lambda raw: raw[:5],
        lambda raw: raw[:-1],
        lambda raw: raw[:300] + b"\x00" + raw[301:],
        lambda raw: os.urandom(500),
        lambda raw: sealed(b"\xc1"),
        lambda raw: sealed(msgspec.msgpack.encode({"reader": "old"})),
        lambda raw: sealed(msgspec.msgpack.encode([1, 2])),
    ],
    ids=["empty", "short", "cut", "a byte", "noise", "no such packing", "another shape", "a list"],
)
def test_damage_is_as_good_as_nothing(path, text, damage):
    (plain,) = start(path, text)
    Path(path).write_bytes(damage(Path(path).read_bytes()))
    assert LastRead(path)._known == {}
    assert start(path, text) == [plain]
    assert list(LastRead(path)._known) == [text]


@pytest.mark.parametrize("nodes", [b"", b"\xc0", msgspec.msgpack.encode({"line": "one"})])
def test_nodes_that_are_none_are_parsed_anew(path, text, nodes):
    Path(path).parent.mkdir()
    Path(path).write_bytes(sealed(msgspec.msgpack.encode(Texts(last_read._reader(), {text: nodes}))))
    assert start(path, text) == [strict_yaml.parse(text, "a.yaml")]
    assert start(path, text) == [strict_yaml.parse(text, "a.yaml")]


def test_where_it_cannot_be_written_nothing_happens(tmp_path, path, text):
    (tmp_path / "cache").write_text("in the way")
    assert start(path, text) == [strict_yaml.parse(text, "a.yaml")]
    assert [one.name for one in tmp_path.iterdir() if one.name != "home"] == ["cache"]


def test_the_reader_is_put_back(path):
    before = strict_yaml.nodes
    with pytest.raises(ZeroDivisionError), LastRead(path).used():
        raise ZeroDivisionError
    assert strict_yaml.nodes is before


PAINTED = """
import os, sys
from PySide6.QtCore import QTimer
import jobsheet.gui.start.start as start
import jobsheet.gui.start.app as app
class Window(start.Window):
    def paintEvent(self, event):
        super().paintEvent(event)
        QTimer.singleShot(0, done)
def done():
    print("painted", *sorted({"yaml", "hashlib", "signal", "reportlab", "numpy"} & set(sys.modules)))
    sys.stdout.flush()
    os._exit(0)
start.Window = Window
app.main(sys.argv[1] or None)
"""


@pytest.mark.parametrize("own", [False, True], ids=["the sample", "a job of one's own"])
def test_the_second_window_is_painted_without_a_parser(home, tmp_path, samples, own):
    given = ""
    if own:
        given = str(tmp_path / "mine.yaml")
        Path(given).write_bytes((samples / "hm-100-drilled-plate-b2.yaml").read_bytes())
    environment = {**os.environ, "QT_QPA_PLATFORM": "offscreen", "JOBSHEET_HOME": str(home)}
    # A person's Python keeps its compiled modules, and what a start read of tables with them.
    environment.pop("PYTHONDONTWRITEBYTECODE", None)
    for _ in range(2):
        done = subprocess.run(
            [sys.executable, "-c", PAINTED, given],
            check=True, capture_output=True, text=True, env=environment,
        )  # fmt: skip
    # Only a file of one's own is summed, to see later whether another program changed it.
    assert done.stdout.split() == (["painted", "hashlib"] if own else ["painted"])
    assert (home / "cache" / "read-at-start.msgpack").is_file()


def verb(path, *texts):
    """One verb: what each text is read as."""
    one = LastRead(path, earlier=True)
    with one.used():
        found = [strict_yaml.parse(text, "a.yaml") for text in texts]
    one.keep()
    return found


def test_of_verbs_what_was_asked_for_before_stays_beside_it(path, text):
    verb(path, text)
    verb(path, "format: 2\n")
    assert list(LastRead(path)._known) == ["format: 2\n", text]
    before = Path(path).stat().st_mtime_ns
    two = LastRead(path, earlier=True)
    two._nodes = nobody
    with two.used():
        assert strict_yaml.parse(text, "a.yaml").fields["format"].text == "2"
    two.keep()
    assert Path(path).stat().st_mtime_ns == before  # nothing new: nothing is written


def test_of_verbs_the_oldest_goes_where_there_is_no_room(path, monkeypatch):
    verb(path, "format: 0\n")
    (one,) = LastRead(path)._known.values()
    monkeypatch.setattr(last_read, "EARLIER", 3 * len(one))
    texts = [f"format: {count}\n" for count in range(9)]
    for one in texts:
        verb(path, one)
    left = list(LastRead(path)._known)
    assert left == texts[::-1][: len(left)]
    assert len(left) == 4


def test_a_verb_that_reads_very_many_texts_does_not_keep_them_all(path, monkeypatch):
    monkeypatch.setattr(last_read, "ASKED", 100)
    texts = [f"format: {count}\n" for count in range(99)]
    assert [one.fields["format"].text for one in verb(path, *texts)] == [str(count) for count in range(99)]
    assert len(LastRead(path)._known) < 10


def test_verbs_and_starts_keep_their_own():
    with last_read.used(verb=True):
        strict_yaml.parse("format: 2\n", "a.yaml")
    assert [one.name for one in Path(last_read.place()).parent.iterdir()] == ["read-by-verbs.msgpack"]
    with last_read.used():
        strict_yaml.parse("format: 3\n", "a.yaml")
    assert list(LastRead(last_read.place())._known) == ["format: 3\n"]
    assert list(LastRead(last_read.place(verb=True))._known) == ["format: 2\n"]
