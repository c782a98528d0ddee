"""What is saved can be opened again: signs that no file holds are refused at once, and a file is read before it replaces another."""

from __future__ import annotations

import os
import socket
import time
from pathlib import Path

import pytest

from jobsheet.catalog.reading.strict_yaml import parse
from jobsheet.edit.commands import SetField
from jobsheet.errors import CannotWrite, DocumentError, QuantityError
from jobsheet.storage import disk, job_writing
from jobsheet.storage.disk import write_file
from jobsheet.storage.job_file import job_from_text, read_job
from jobsheet.storage.job_writing import save_job, write_job
from jobsheet.storage.writing import scalar

#: The 33 that were accepted, saved, and refused on opening; and others that no line of text has.
REFUSED = [*range(0x80, 0xA0), 0xFFFE, 0xFFFF, 0xD800, 0xDFFF, 0x7F, 0x0B, 0x0C, 0x1B, 0x00, 0x2028, 0x2029]


@pytest.mark.parametrize("code", REFUSED, ids=lambda code: f"U+{code:04X}")
def test_a_sign_that_no_file_holds_is_refused_by_its_name(code):
    from jobsheet.operations.entry import Entry

    for asks, text in (("text", "a{}b"), ("cutter", "end mill 10 mm, drawer 2{}"), ("length", "10{} mm")):
        with pytest.raises(QuantityError, match=f"U\\+{code:04X}"):
            Entry(name="one", title="One", asks=asks).read(text.format(chr(code)), "mm")


@pytest.mark.parametrize(
    "first", [*range(0x20, 0x180, 0x20), 0xFFFD, 0xFEFF, 0x202E, 0x200B, 0x1FFFE, 0x10FFFF]
)
def test_every_other_sign_comes_back(hm100, first):
    for code in range(first, first + 0x20) if first < 0x180 else [first]:
        try:
            job = SetField("job:part", "name", f"a{chr(code)}b").apply(hm100)
        except QuantityError:
            assert code in REFUSED
            continue
        assert job_from_text(write_job(job), "x") == job, f"U+{code:04X}"


@pytest.mark.parametrize("code", REFUSED, ids=lambda code: f"U+{code:04X}")
def test_whatever_stands_in_a_text_the_written_one_reads_back(code):
    if 0xD800 <= code <= 0xDFFF:
        return  # no file holds one: the writer says so, below
    text = f"a{chr(code)}b"
    assert parse(f"one: {scalar(text)}\n", "x").fields["one"].text == text


@pytest.mark.parametrize("code", [0x80, 0x9F, 0xFFFE, 0xFFFF], ids=lambda code: f"U+{code:04X}")
def test_a_job_of_an_earlier_day_with_such_a_sign_is_there_again(hm100, code):
    text = write_job(hm100).replace("Drilled plate", f'"Drilled{chr(code)}plate"')
    assert job_from_text(text, "x").part.name == "Drilled\ufffdplate"


def test_half_of_a_pair_cannot_be_written(tmp_path):
    with pytest.raises(CannotWrite, match=r"U\+D800"):
        write_file(tmp_path / "one.yaml", "a: \ud800\n")
    assert not list(tmp_path.iterdir())


def test_a_job_that_would_not_come_back_does_not_replace_the_old_one(hm100, tmp_path, monkeypatch):
    path = tmp_path / "plate.yaml"
    save_job(hm100, path)
    before = path.read_bytes()
    emit = job_writing.emit
    for spoilt in (lambda _: ["a: 'open"], lambda data: [*emit(data), "note: another"]):
        with monkeypatch.context() as patch:
            patch.setattr(job_writing, "emit", spoilt)
            with pytest.raises(CannotWrite, match="was not replaced"):
                save_job(SetField("job:part", "name", "Other").apply(hm100), path)
    assert path.read_bytes() == before
    assert [one.name for one in tmp_path.iterdir()] == ["plate.yaml"]


def test_a_disk_that_gives_back_something_else_does_not_replace_the_old_one(tmp_path, monkeypatch):
    path = tmp_path / "one.txt"
    write_file(path, "old")
    monkeypatch.setattr(disk, "_beside", lambda folder, name, raw: _short(folder, raw))
    with pytest.raises(CannotWrite, match="gives back something else"):
        write_file(path, "new words")
    assert [one.read_text() for one in tmp_path.iterdir()] == ["old"]


def _short(folder, raw):
    made = folder / ".one.txt.aaaaaaaa.new"
    made.write_bytes(raw[:-1])
    return made


def test_what_a_crash_left_is_swept_only_where_it_is_ours_and_old(tmp_path):
    names = (".plate.yaml.ab12_xyz.new", "plate.yaml.ab12_xyz.new", ".plate.new", ".young.yaml.ab12_xyz.new")
    for name in names:
        (tmp_path / name).write_text("x")
        if "young" not in name:
            os.utime(tmp_path / name, (time.time() - 7200,) * 2)
    (tmp_path / ".dir.ab12_xyz.new").mkdir()
    write_file(tmp_path / "one.txt", "x")
    assert {one.name for one in tmp_path.iterdir()} == {*names[1:], ".dir.ab12_xyz.new", "one.txt"}


@pytest.mark.parametrize("make", ["fifo", "socket", "folder", "device"])
def test_what_is_no_file_is_refused_before_it_is_opened(tmp_path, make, monkeypatch):
    monkeypatch.chdir(tmp_path)
    path = tmp_path / "one.yaml"
    if make == "fifo":
        os.mkfifo(path)
    elif make == "folder":
        path.mkdir()
    elif make == "device":
        path = Path("/dev/zero")
    else:
        with socket.socket(socket.AF_UNIX) as listening:
            listening.bind("one.yaml")
    said = {"fifo": "a pipe", "socket": "a socket", "folder": "a folder", "device": "a device"}[make]
    with pytest.raises(DocumentError, match=said):
        read_job(path)
    for expected in (None, "0" * 16):
        with pytest.raises(CannotWrite, match=said):
            write_file(path, "x", expected)


def test_a_name_that_is_too_long_is_a_sentence(tmp_path):
    with pytest.raises(CannotWrite, match="cannot be written"):
        write_file(tmp_path / ("n" * 256), "x")
    with pytest.raises(DocumentError, match="cannot be opened"):
        read_job(tmp_path / ("n" * 256))


def test_a_full_name_of_letters_of_several_bytes_can_be_written(tmp_path):
    path = tmp_path / ("ä" * 125 + ".yaml")
    write_file(path, "x")
    assert path.read_text() == "x"


SEVEN = {
    "empty stock": ("stock:\n  length: 80\n  width: 50\n  height: 12\n", "stock:\n"),
    "format": ("format: 2", "format: ²"),
    "kind": ("kind: bench-step", f"kind: {'k' * 300}"),
}


@pytest.mark.parametrize("name", SEVEN)
def test_inputs_that_ended_in_a_traceback_end_in_a_sentence_with_a_line(hm100, name):
    old, new = SEVEN[name]
    text = write_job(hm100)
    if name == "empty stock":
        start = text.index("stock:\n")
        end = next(at for at in range(start + 7, len(text)) if text[at - 1] == "\n" and text[at] != " ")
        text = text[:start] + new + text[end:]
    else:
        assert old in text
        text = text.replace(old, new, 1)
    with pytest.raises(DocumentError) as refused:
        job_from_text(text, "x")
    assert all(problem.line for problem in refused.value.problems)
