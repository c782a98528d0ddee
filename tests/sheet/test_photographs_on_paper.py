"""Photographs on paper: upright, grey, one on the page of its set-up, carried inside and
read back; one that is gone is said.
"""

from __future__ import annotations

from hashlib import sha256

import numpy as np
import pypdfium2
import pytest
from msgspec.structs import replace
from pypdf import PdfReader

from jobsheet.cli.main import run
from jobsheet.model.job import Photograph
from jobsheet.sheet.pdf import make_pdf
from jobsheet.storage.job_file import read_job
from jobsheet.storage.job_writing import write_job
from jobsheet.storage.pdf_jobs import inside
from jobsheet.storage.photos.kept_photographs import Shot
from tests.photographs_made import photograph
from tests.report.plans import bench, job, plate

from .shots import shot, with_shots


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_the_first_photograph_stands_on_the_page_of_its_set_up_in_grey(paper):
    key = plate().set_ups[0].key
    document, reader = with_shots(plate(), shot(photograph(), key), paper=paper)
    kinds = [page.kind for page in document.pages]
    assert kinds == ["cover", "set-up"]
    (image,) = reader.pages[0].images
    assert image.image.mode == "L"
    assert "the stop" in reader.pages[0].extract_text()
    picture = pypdfium2.PdfDocument(make_pdf((document,), paper))[0].render(scale=1).to_numpy()
    assert np.ptp(picture.reshape(-1, picture.shape[2]).astype(int), axis=1).max() == 0  # no colour anywhere


def test_more_go_to_a_page_of_their_own_with_what_they_are_of():
    plan = plate()
    key = plan.set_ups[0].key
    step = plan.set_ups[0].operations[0]
    shots = (
        shot(photograph(), key),
        shot(photograph(tone=80), step.key, "burrs"),
        shot(photograph(tone=99), "", "the part"),
    )
    document, reader = with_shots(plan, *shots)
    assert document.pages[-1].kind == "photographs"
    last = reader.pages[-1]
    assert len(last.images) == 2
    for said in (f"Step {step.number}", "burrs", "The job", "the part"):
        assert said in last.extract_text()


def test_it_is_carried_inside_and_read_back(tmp_path):
    raw = photograph()
    document, reader = with_shots(plate(), shot(raw, plate().set_ups[0].key))
    name = f"{sha256(raw).hexdigest()}.jpg"
    assert reader.attachments[name] == [raw]
    (tmp_path / "x.pdf").write_bytes(make_pdf((document,)))
    found = inside(tmp_path / "x.pdf")
    assert found.photographs == {name[:64]: raw}
    assert len(found.jobs) == 1


def test_one_that_is_gone_is_said_in_its_place():
    gone = Shot(
        photograph=Photograph(content="ab" * 32, shows="the stop", about=plate().set_ups[0].key),
        problem="is not there any more: photographs/abababab*.jpg",
    )
    _, reader = with_shots(plate(), gone)
    text = " ".join(reader.pages[0].extract_text().split())
    assert "The photograph of set-up 1 (“the stop”) is not there any more" in text


def test_the_same_job_with_photographs_gives_the_same_bytes():
    one = shot(photograph(), plate().set_ups[0].key)
    assert make_pdf((with_shots(plate(), one)[0],)) == make_pdf((with_shots(plate(), one)[0],))


def saved(tmp_path, raw):
    plan = job([bench(10)])
    content = sha256(raw).hexdigest()
    plan = replace(plan, photographs=(Photograph(content=content, shows="stop", about="set-up-1"),))
    (tmp_path / "plan.yaml").write_text(write_job(plan), encoding="utf-8")
    (tmp_path / "photographs").mkdir()
    (tmp_path / "photographs" / f"{content}.jpg").write_bytes(raw)
    return content


def test_the_shell_prints_and_checks_it(tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)
    content = saved(tmp_path, photograph())
    assert run(["sheet", "plan.yaml", "-o", "x.pdf"], lambda _path: 0) == 0
    assert f"{content}.jpg" in PdfReader("x.pdf").attachments
    run(["check", "plan.yaml"], lambda _path: 0)
    assert "photograph" not in capsys.readouterr().out
    # Sheets by themselves have all that is needed to print them again.
    (tmp_path / "photographs" / f"{content}.jpg").unlink()
    assert run(["sheet", "x.pdf", "-o", "y.pdf"], lambda _path: 0) == 0
    assert f"{content}.jpg" in PdfReader("y.pdf").attachments
    run(["check", "plan.yaml"], lambda _path: 0)
    assert "The photograph of set-up 1 (“stop”) is not there any more" in capsys.readouterr().out
    run(["sheet", "plan.yaml", "-o", "z.pdf"], lambda _path: 0)
    assert "is not there any more" in capsys.readouterr().err


def test_the_job_that_is_carried_is_still_the_file_itself(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    saved(tmp_path, photograph())
    run(["sheet", "plan.yaml", "-o", "x.pdf"], lambda _path: 0)
    assert PdfReader("x.pdf").attachments["plan.yaml"] == [(tmp_path / "plan.yaml").read_bytes()]
    assert read_job(tmp_path / "plan.yaml").photographs
