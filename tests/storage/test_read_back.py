"""What is saved can be opened again: signs that no file holds are refused at once, and a file
is read before it replaces another.
"""

from __future__ import annotations

import pytest

from jobsheet.edit.commands import SetField
from jobsheet.errors import CannotWrite, DocumentError, QuantityError
from jobsheet.storage import job_writing
from jobsheet.storage.job_file import job_from_text
from jobsheet.storage.job_writing import save_job, write_job

from .signs_refused import REFUSED


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


@pytest.mark.parametrize("code", [0x80, 0x9F, 0xFFFE, 0xFFFF], ids=lambda code: f"U+{code:04X}")
def test_a_job_of_an_earlier_day_with_such_a_sign_is_there_again(hm100, code):
    text = write_job(hm100).replace("Drilled plate", f'"Drilled{chr(code)}plate"')
    assert job_from_text(text, "x").part.name == "Drilled\ufffdplate"


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
