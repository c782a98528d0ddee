"""A PDF that was printed here is a job again; one that is damaged, doctored
or of others ends in a sentence.
"""

from __future__ import annotations

import zlib

import pytest
from pypdf import PdfReader, PdfWriter
from pypdf.generic import ArrayObject, DictionaryObject, NameObject

from jobsheet.__main__ import main
from jobsheet.errors import DocumentError
from jobsheet.paths import sample_jobs
from jobsheet.storage.job_file import read_job
from jobsheet.storage.pdf_jobs import LARGEST_JOB, is_pdf, jobs_inside

SAMPLE = sample_jobs() / "hm-100-drilled-plate-b1.yaml"


@pytest.fixture
def printed(tmp_path):
    """The sheets of a sample."""
    path = tmp_path / "plate.pdf"
    assert main(["sheet", str(SAMPLE), "-o", str(path)]) == 0
    return path


def with_files(path, *files):
    """A PDF of one empty page with these files in it, by another writer than ours."""
    writer = PdfWriter()
    writer.add_blank_page(100, 100)
    for name, content in files:
        writer.add_attachment(name, content)
    writer.write(path)
    return path


def sentence(path):
    with pytest.raises(DocumentError) as refused:
        read_job(path)
    assert len(refused.value.problems) == 1
    return refused.value.problems[0].sentence


def test_the_job_inside_is_the_job_byte_for_byte(printed):
    assert is_pdf(printed)
    ((name, text),) = jobs_inside(printed)
    assert name == SAMPLE.name
    assert text == SAMPLE.read_text(encoding="utf-8")
    assert read_job(printed) == read_job(SAMPLE)


@pytest.mark.parametrize("verb", ["check", "figures", "dials", "cabinet"])
def test_any_verb_takes_it(printed, verb, capsys):
    assert main([verb, str(SAMPLE)]) == main([verb, str(printed)])
    out = capsys.readouterr().out.replace("plate.pdf", "").replace(SAMPLE.name, "")
    half = len(out) // 2
    assert out[:half].strip() == out[half:].strip()


def test_one_written_by_another_program_is_read_too(tmp_path):
    path = with_files(tmp_path / "x.pdf", ("notes.txt", b"format: none"), ("j.yaml", SAMPLE.read_bytes()))
    assert read_job(path) == read_job(SAMPLE)


def test_without_a_job_it_says_so(tmp_path):
    assert "no job inside" in sentence(with_files(tmp_path / "x.pdf"))
    assert "no job inside" in sentence(with_files(tmp_path / "y.pdf", ("a.yaml", b"hello: 1\n")))


def test_of_several_jobs_it_takes_none_by_itself(tmp_path):
    job = SAMPLE.read_bytes()
    said = sentence(with_files(tmp_path / "x.pdf", ("a.yaml", job), ("b.yaml", job)))
    assert "2 jobs" in said
    assert "a.yaml, b.yaml" in said


@pytest.mark.parametrize("share", [0.0, 0.1, 0.5, 0.9, 0.99])
def test_one_that_was_cut_off_never_gives_half_a_job(printed, tmp_path, share):
    raw = printed.read_bytes()
    path = tmp_path / "cut.pdf"
    path.write_bytes(raw[: max(8, int(share * len(raw)))])
    try:
        found = read_job(path)
    except DocumentError as error:
        found = str(error)
    assert found == read_job(SAMPLE) or len(found.splitlines()) == 2


def test_a_changed_job_is_read_with_its_problems(tmp_path):
    wrong = SAMPLE.read_bytes().replace(b"depth: 0.4", b"depth: wide")
    with pytest.raises(DocumentError, match="wide"):
        read_job(with_files(tmp_path / "x.pdf", ("j.yaml", wrong)))


def test_letters_that_are_none_are_refused(tmp_path):
    raw = SAMPLE.read_bytes() + b"\n# \xff\xfe\n"
    assert "not text in UTF-8" in sentence(with_files(tmp_path / "x.pdf", ("j.yaml", raw)))


def test_a_tree_that_leads_back_to_itself_ends(printed, tmp_path):
    writer = PdfWriter(clone_from=PdfReader(printed))
    node = DictionaryObject()
    there = writer._add_object(node)
    node[NameObject("/Kids")] = ArrayObject([there])
    writer._root_object[NameObject("/Names")] = DictionaryObject({NameObject("/EmbeddedFiles"): there})
    writer.write(tmp_path / "x.pdf")
    assert "nested deeper" in sentence(tmp_path / "x.pdf")


def test_a_few_bytes_do_not_grow_into_a_flood(tmp_path):
    """Two hundred million letters, packed into two hundred kilobytes."""
    flood = b"format: 1\nset-ups:\n" + b" " * 200_000_000
    path = with_files(tmp_path / "x.pdf", ("j.yaml", b"format: 1\nset-ups:\n"))
    writer = PdfWriter(clone_from=PdfReader(path))
    (inside,) = [
        one for one in writer._objects if isinstance(one, dict) and one.get("/Type") == "/EmbeddedFile"
    ]
    inside._data = zlib.compress(flood)
    inside[NameObject("/Filter")] = NameObject("/FlateDecode")
    writer.write(path)
    assert path.stat().st_size < LARGEST_JOB < len(flood)
    said = sentence(path)
    assert "damaged" in said or "too large" in said


def test_a_locked_one_says_so(printed, tmp_path):
    writer = PdfWriter(clone_from=PdfReader(printed))
    writer.encrypt("secret", algorithm="RC4-128")
    writer.write(tmp_path / "x.pdf")
    assert "locked" in sentence(tmp_path / "x.pdf")


def test_sheets_of_sheets_hold_the_job_and_not_the_paper(printed, tmp_path):
    again = tmp_path / "again.pdf"
    assert main(["sheet", str(printed), "-o", str(again)]) == 0
    ((_, text),) = jobs_inside(again)
    assert text == SAMPLE.read_text(encoding="utf-8")


def test_paper_is_known_by_what_it_is_and_not_by_its_name(printed, tmp_path):
    """Saved at once, it would be written over."""
    from jobsheet.gui.desk.opening import open_at_start

    renamed = printed.rename(tmp_path / "plate.yaml")
    opened = open_at_start(str(renamed))
    assert opened.job == read_job(SAMPLE)
    assert opened.path is None
