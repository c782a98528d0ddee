"""Whatever somebody types into any field of a job prints as it was typed: nothing
of it is markup, a sign or an order.
"""

from __future__ import annotations

import io
import re

import pypdfium2
import pytest
from msgspec.structs import replace
from pypdf import PdfReader

from jobsheet.holdings.all_holdings import entries_of
from jobsheet.model.job import Dismissed, Job, Photograph, Revision
from jobsheet.operations.registry import kind as kind_of
from jobsheet.report.texts import texts_of
from jobsheet.sheet.fonts import printable
from jobsheet.sheet.pages import fits_on
from jobsheet.sheet.pdf import make_pdf
from jobsheet.stock.all_shapes import entries_of as stock_entries
from jobsheet.storage import layout
from jobsheet.storage.job_file import job_from_text, read_job
from jobsheet.storage.job_writing import write_job
from jobsheet.storage.photos.kept_photographs import Shot
from tests.photographs_made import photograph
from tests.report.plans import pages

#: What is typed, behind a number of its own; what stands there instead of a
#: character without a picture is its code.
TYPED = {
    "markup": "<b>x</b> <img src='file:///etc/passwd'/> <para>",
    "entities": "&amp; &lt;i&gt; &#65; a & b",
    "right to left": "a\u202egnp.exe b\u2066c\u2069",
    "hebrew": "\u05e9\u05dc\u05d5\u05dd",
    "emoji": "\U0001f600 \U0001f469\u200d\U0001f527 ok",
    "combining": "e\u0301 x\u0302\u0323 o\u0308",
    "formats": "%s {0} {plan} $HOME \\n \\x41 ${x}",
    "orders of a PDF": ") Tj (x) ET endstream endobj /JS <<>> \\",
    "quotes": "\"x\" 'y' “z” `w` -- #1; a:b, [c] {d} *e* * _f_",
    "five hundred letters": "W" * 500,
    "five hundred letters with blanks": "slow " * 100,
}
#: What nobody types into a field of the sheet: the digest of the card; and edges, whose
#: words a step's own take the place of.
_OUT = {"card_hash"}


def filled(job: Job, typed: str) -> tuple[Job, list[str]]:
    """The job with that text in every field that takes any text, each with a number
    before it; and all that was put in.
    """
    put: list[str] = []

    def text() -> str:
        put.append(f"q{len(put)}z {typed}".strip())
        return put[-1]

    def fill(entries, value, leave=()):
        names = [
            one.name
            for one in entries
            if one.asks == "text" and one.name not in _OUT and one.name not in leave
        ]
        return replace(value, **{name: text() for name in names})

    def step(operation):
        entries = kind_of(operation.kind).entries
        leave = ("what",) if any(one.name == "edges" for one in entries) else ()
        return replace(operation, fields=fill(entries, operation.fields, leave))

    def set_up(one):
        one = fill(layout.SET_UP, one)
        return replace(
            one,
            holding=fill(entries_of(one.holding), one.holding),
            zero=fill(layout.ZERO, one.zero),
            operations=tuple(step(operation) for operation in one.operations),
        )

    key = job.set_ups[0].operations[0].key
    job = fill(layout.JOB, job)
    made = replace(
        job,
        part=fill(layout.PART, job.part),
        stock=fill(stock_entries(job.stock), job.stock),
        set_ups=tuple(set_up(one) for one in job.set_ups),
        dismissed=(Dismissed(rule="name-the-datum", about=key, reason=text(), initials="AB"),),
        revisions=(Revision(number=1, changed=text(), who=text(), when=text()),),
        photographs=(Photograph(content="ab" * 32, shows=text(), about=job.set_ups[0].key),),
    )
    return made, put


def squeezed(text: str) -> str:
    return re.sub(r"\s+", "", text)


def printed(job: Job) -> tuple[bytes, str]:
    shot = Shot(photograph=job.photographs[0], raw=photograph(), kind="jpg", width=640, height=480)
    data = make_pdf((pages(job, fits=fits_on("a4"), shots=(shot,)),))
    return data, squeezed("".join(page.extract_text() for page in PdfReader(io.BytesIO(data)).pages))


@pytest.mark.parametrize("typed", TYPED.values(), ids=TYPED)
def test_every_field_prints_what_was_typed_into_it(samples, typed):
    job, put = filled(read_job(samples / "hm-103-pivot-block.yaml"), typed)
    assert len(put) > 90
    data, text = printed(job)
    for one in put:
        wanted = squeezed(printable(one))
        if typed == TYPED["hebrew"]:
            # Whoever reads a PDF turns letters of such a script round by its own
            # rules; that none is lost is counted.
            wanted = wanted[: -len(typed)]
        assert wanted in text, one[:80]
    if typed == TYPED["hebrew"]:
        assert all(text.count(letter) >= len(put) for letter in typed)
    # Nothing typed became a link, a script or another file.
    reader = PdfReader(io.BytesIO(data))
    assert not any("/Annots" in page for page in reader.pages)
    assert {"/JavaScript", "/OpenAction", "/AA"}.isdisjoint(reader.trailer["/Root"].keys())
    assert len(pypdfium2.PdfDocument(data)) == len(reader.pages)


@pytest.mark.parametrize("typed", TYPED.values(), ids=TYPED)
def test_a_file_with_such_texts_comes_back_as_it_was_typed(samples, typed):
    job, _ = filled(read_job(samples / "hm-103-pivot-block.yaml"), typed)
    text = write_job(job)
    again = job_from_text(text, "x.yaml")
    assert write_job(again) == text
    assert again.part == job.part
    assert again.photographs == job.photographs


def test_every_text_that_is_typed_is_known_where_characters_without_a_picture_are_said(samples):
    job, put = filled(read_job(samples / "hm-103-pivot-block.yaml"), "x")
    known = {text for _, text in texts_of(job)}
    assert [one for one in put if one not in known] == []
