from __future__ import annotations

import shutil
import subprocess
from functools import cache

import numpy as np
import pypdfium2
import pytest
import zxingcpp

from jobsheet.report.blocks import words_of
from jobsheet.sheet.pages import drawn, fits_on
from jobsheet.sheet.pdf import make_pdf
from jobsheet.sheet.styles import PAPERS, STYLES
from jobsheet.storage.check_code import check_code
from jobsheet.storage.job_file import read_job
from tests.report.plans import bench, job, pages, plate
from tests.sheet.printed_once import sample, texts

from .pdf_read import pdf, read, squeezed, text


@cache
def on_paper(paper: str) -> str:
    """All the words of the plate's sheet, printed once and read back by another library."""
    return squeezed(text(pdf(plate(), paper)))


@pytest.fixture(scope="module")
def printed() -> bytes:
    return pdf(plate(), working=True)


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize(
    "promised",
    ["HM-100", "Drilled plate", "560", "900", "1.3", "1.7", "5 + 75", "26 + 50", "4 + 100", "15 + 25", "head from touch", "0 + 10", "11.4", "11.6",
     "38 %", "belts 3", "drawer 2", "You stand here", "20 N·m", "⌀6.4", "2026-11-12", "Checked by"],
)  # fmt: skip
def test_the_pdf_holds_every_figure_that_the_sheet_promises(paper, promised):
    assert squeezed(promised) in on_paper(paper)


def test_the_same_job_gives_the_same_bytes(printed):
    assert pdf(plate(), working=True) == printed


@pytest.mark.parametrize("paper", PAPERS)
def test_the_paper_is_the_one_asked_for(paper):
    for page in read(pdf(plate(), paper)).pages:
        assert (float(page.mediabox.width), float(page.mediabox.height)) == pytest.approx(
            PAPERS[paper], abs=0.1
        )


def test_the_job_is_carried_inside_byte_for_byte():
    source = "format: 1\n# ⌀ as a person wrote it\n".encode()
    document = pages(plate(), source=source, name="my plate")
    reader = read(make_pdf((document,)))
    inside = dict(reader.attachments)
    assert inside.pop("my plate.yaml") == [source]
    assert sorted(inside) == ["bench-mill-b-1 card.yaml", "bench-mill-b-1 proof log.txt"]
    assert {spec.get_object()["/AFRelationship"] for spec in reader.trailer["/Root"]["/AF"]} == {"/Source"}


def test_two_jobs_of_one_name_are_both_inside_and_each_counts_its_own_pages():
    one = pages(plate(), name="plate")
    reader = read(make_pdf((one, one)))
    jobs = [name for name in reader.attachments if "bench-mill-b-1" not in name]
    assert sorted(jobs) == ["plate 2.yaml", "plate.yaml"]
    assert len(reader.pages) == 2 * len(one.pages)
    jobs = [entry for entry in reader.outline if not isinstance(entry, list)]
    assert [entry["/Title"] for entry in jobs] == [one.title, one.title]


def test_a_reader_of_the_file_finds_set_ups_and_steps_by_name(samples):
    document = pages(read_job(samples / "hm-103-pivot-block.yaml"), fits=fits_on("a4"))
    _, inside = read(make_pdf((document,))).outline
    names = [entry["/Title"] for entry in inside if not isinstance(entry, list)]
    assert len(names) == len(document.pages)
    assert names[:2] == ["Cover", "Set-ups 1 and 2 of 6"]
    steps = next(entry for entry in inside if isinstance(entry, list))
    assert steps[0]["/Title"].startswith("10 ")


@pytest.mark.parametrize("paper", PAPERS)
def test_the_cover_s_printed_code_leads_to_the_very_file_inside(samples, paper):
    """Read back from the page by zxing-cpp; the check code is that of the file
    carried inside, and stands on every page.
    """
    source = (samples / "hm-103-pivot-block.yaml").read_bytes()
    data = sample("hm-103-pivot-block", paper).data
    code = check_code(source)
    picture = pypdfium2.PdfDocument(data)[0].render(scale=300 / 72, grayscale=True).to_numpy()
    (found,) = zxingcpp.read_barcodes(np.ascontiguousarray(picture.squeeze()))
    assert found.text == f"JS1:HM-103:A:1:{code}"
    for words in texts("hm-103-pivot-block", paper):
        assert squeezed(f"hm-103-pivot-block.yaml · check {code}") in squeezed(words)


def test_its_title_is_that_of_the_part(printed):
    assert read(printed).metadata.title == "HM-100 Drilled plate, set-up sheets"


@pytest.mark.skipif(not shutil.which("qpdf"), reason="qpdf is not installed")
def test_qpdf_finds_nothing_wrong(printed, tmp_path):
    path = tmp_path / "sheet.pdf"
    path.write_bytes(printed)
    done = subprocess.run(["qpdf", "--check", str(path)], capture_output=True, text=True, check=False)
    assert (done.returncode, "WARNING" in done.stderr) == (0, False), done.stderr


def test_every_font_is_embedded(printed):
    fonts = {}
    for page in read(printed).pages:
        for font in page["/Resources"]["/Font"].values():
            fonts[font["/BaseFont"]] = "/FontFile2" in font["/FontDescriptor"]
    assert set(fonts.values()) == {True}
    assert all("DejaVuSans" in name for name in fonts)


@pytest.mark.parametrize(
    "typed",
    [
        "<b>bold",
        "&amp; & &lt;",
        '<img src="/etc/hostname"/>',
        "../../x",
        "</para>",
        "[[[getattr(1)]]]",
        "%s %d {0}",
        "(un(balanced",
    ],
)
def test_what_a_person_typed_is_printed_as_typed(typed):
    plan = job([bench(10, f"Note {typed}", typed)], name=typed, workshop=typed, by=typed, why=typed)
    reader = read(pdf(plan))
    assert squeezed("\n".join(page.extract_text() for page in reader.pages)).count(squeezed(typed)) >= 5
    assert not any("/Annots" in page for page in reader.pages)
    assert not any(page.images for page in reader.pages)


#: How many pages each sample takes on A4; on Letter at most one more. Beyond this, paper
#: is no longer taken to the machine.
PAGES = {
    "hm-100-drilled-plate-b1": 2, "hm-100-drilled-plate-b2": 2, "hm-100-drilled-plate-k2": 2, "hm-101-setting-block": 6, "hm-102-slide-plate": 5, "hm-103-pivot-block": 8, "hm-104-cover-plate": 5,
}  # fmt: skip


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("name", PAGES)
def test_a_sample_takes_no_more_pages_than_a_bench_has_room_for(name, paper):
    document = sample(name, paper).document
    assert len(document.pages) <= PAGES[name] + (paper == "letter")
    for page in document.pages:
        picture, scale = drawn(page, paper)
        assert scale == 1.0, page.kind
        sizes = {item.size or STYLES[item.style].size for item in picture.items if hasattr(item, "words")}
        assert min(sizes) >= 7.0, (page.kind, min(sizes))
        lines = {round(item.y) for item in picture.items if hasattr(item, "words")}
        assert len(lines) >= 12, page.kind
    assert not any("…" in words for words in words_of(tuple(page.blocks for page in document.pages)))
