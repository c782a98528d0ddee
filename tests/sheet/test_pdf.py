from __future__ import annotations

import io
import re
import shutil
import subprocess
from functools import cache

import numpy as np
import pypdfium2
import pytest
import zxingcpp
from pypdf import PdfReader

from jobsheet.report.blocks import Page, words_of
from jobsheet.sheet.fonts import missing_characters, printable, width
from jobsheet.sheet.pages import drawn, fits_on
from jobsheet.sheet.pdf import make_pdf
from jobsheet.sheet.printing import document_for, lacking
from jobsheet.sheet.styles import PAPERS, STYLES
from jobsheet.sheet.wrapping import fitted, wrap
from jobsheet.storage.check_code import check_code
from jobsheet.storage.job_file import read_job
from tests.report.plans import bench, drill, job, pages, plate
from tests.sheet.printed_once import sample, texts

FOUR = [(14, 12), (66, 12), (66, 38), (14, 38)]


def pdf(plan, paper="a4", **options) -> bytes:
    return make_pdf((pages(plan, fits=fits_on(paper), **options),), paper)


def read(data: bytes) -> PdfReader:
    return PdfReader(io.BytesIO(data))


def text(data: bytes) -> str:
    return "\n".join(page.extract_text() for page in read(data).pages)


def squeezed(words: str) -> str:
    return re.sub(r"\s+", "", words)


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
    """Read back from the page by zxing-cpp; the check code is that of the file carried inside, and stands on every page."""
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


@pytest.mark.parametrize("letters", ["⌀ ° µ ½ ± × ≥", "ΑΒΓ αβγ", "Плита фрезерная", "é ü ß ø"])
def test_signs_greek_and_cyrillic_are_printed(letters):
    assert missing_characters(letters) == []
    assert squeezed(letters) in squeezed(text(pdf(job([bench(10)], name=letters))))


def test_a_character_that_the_font_lacks_is_named_with_its_field_and_printed_as_its_code():
    plan = job([bench(10, "Clamp", "用 gently")], workshop="⌴ shop")
    assert [(one.character, one.code, one.where) for one in lacking(plan)] == [
        ("⌴", "U+2334", "job, workshop"),
        ("用", "U+7528", "step 10, note"),
    ]
    whole = text(pdf(plan))
    assert "[U+7528] gently" in whole
    assert "[U+2334] shop" in whole


def test_marks_that_turn_the_writing_round_are_not_obeyed():
    assert printable("a\u202eb\u200dc") == "a[U+202E]b[U+200D]c"
    assert printable("a\tb\u00a0c\nd") == "a b c\nd"


def test_nothing_is_wider_than_its_room():
    for words in ("W" * 60, "a fine day " * 20, "one-two-three-four/five", "x"):
        for line in wrap(words, "step", 90.0):
            assert width(line, STYLES["step"].size) <= 90.0
        assert "".join(wrap(words, "step", 90.0)).replace(" ", "") == words.replace(" ", "")


def test_a_name_shrinks_before_it_wraps():
    lines, size = fitted("HM-100 Drilled plate", "title", 120.0, 9.5)
    assert len(lines) == 1
    assert 9.5 <= size < STYLES["title"].size


MONSTER = "W" * 60
LONG = "a long text that goes on " * 70


HARD = (
    plate,
    lambda: job(
        [bench(10, LONG, LONG), bench(20, MONSTER, MONSTER * 8)],
        name=MONSTER,
        workshop=MONSTER,
        by=MONSTER,
        why=LONG,
        title=MONSTER,
    ),
    lambda: job([drill(n, FOUR) for n in range(10, 130, 10)]),
    lambda: job([drill(10, [(2 + 2.5 * x, 2 + 5 * y) for x in range(30) for y in range(3)])]),
    lambda: job(*[[bench(10 * n + 10)] for n in range(40)]),
    lambda: job([drill(10, FOUR)], trainee=True, stock=("80", "50", "4"), jaw="left"),
    lambda: job([drill(10, FOUR)], device="strap clamps", up="right", operator="top", jaw="right"),
    lambda: job(
        [drill(10, [(0.5, 0.5)], cutter="drill 1/4 in")],
        units="in",
        machine="bench-mill-b-2",
        stock=("3", "2", "1/2"),
    ),
    lambda: job([bench(10)], stock=("3000", "5", "0.5")),
)


@cache
def hard_pages(number: int, paper: str = "a4", *, working: bool = True):
    """Set out once for all that is asked of them."""
    return pages(HARD[number](), fits=fits_on(paper), working=working).pages


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("number", range(len(HARD)))
def test_every_page_has_room_for_what_it_holds(paper, number):
    for page in hard_pages(number, paper):
        assert drawn(page, paper)[1] == 1.0, (page.kind, page.number)


@pytest.mark.parametrize("number", range(len(HARD)))
def test_no_letter_stands_outside_the_margins(number):
    for page in hard_pages(number, working=False):
        picture, _ = drawn(page, "a4")
        for item in picture.items:
            if not hasattr(item, "words"):
                continue
            style = STYLES[item.style]
            wide = width(printable(item.words), item.size or style.size, bold=style.bold)
            left = item.x - {"start": 0.0, "middle": 0.5, "end": 1.0}[item.anchor] * wide
            assert left >= -0.5, (page.kind, item)
            assert left + wide <= picture.width + 0.5, (page.kind, item)
            assert 0 <= item.y <= picture.height + 0.5, (page.kind, item)


def overlapping(page: Page) -> list[tuple[str, str]]:
    """Texts that stand on one another."""
    picture, _ = drawn(page, "a4")
    boxes = []
    for item in picture.items:
        if hasattr(item, "words") and item.words:
            style = STYLES[item.style]
            size = item.size or style.size
            wide = width(printable(item.words), size, bold=style.bold)
            left = item.x - {"start": 0.0, "middle": 0.5, "end": 1.0}[item.anchor] * wide
            boxes.append(
                (left + 0.4, item.y - size * 0.7, left + wide - 0.4, item.y + size * 0.05, item.words)
            )
    boxes.sort(key=lambda one: one[1])
    found = []
    for index, (left, top, right, bottom, words) in enumerate(boxes):
        for other in boxes[index + 1 :]:
            if other[1] >= bottom:
                break
            if other[0] < right and other[2] > left and other[3] > top:
                found.append((words, other[4]))
    return found


@pytest.mark.parametrize("number", [0, 1, 2, 5, 6, 7])
def test_no_text_stands_on_another(number):
    for page in hard_pages(number):
        assert overlapping(page) == [], page.kind


def test_a_print_without_initials_is_stamped_on_every_page():
    reader = read(pdf(job([drill(10, FOUR)], stock=("80", "50", "4"))))
    assert all("NOT ACKNOWLEDGED" in page.extract_text() for page in reader.pages)


#: How many pages each sample takes on A4; on Letter at most one more. Beyond this, paper is no longer taken to the machine.
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


def test_one_call_makes_the_pages_for_a_paper():
    from jobsheet.reckoning.reckoner import Reckoner
    from jobsheet.review.engine import review
    from jobsheet.review.notes.notes import notes_for

    plan = plate()
    found = Reckoner().reckon(plan)
    document = document_for(
        plan, found, notes_for(plan, found), review(plan, found), paper="letter", name="x"
    )
    assert document.name == "x"
    assert make_pdf((document,), "letter").startswith(b"%PDF")
