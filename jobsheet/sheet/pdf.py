"""Documents on paper: the same documents give the same bytes, every font is
inside, and so is each job's file.
"""

from __future__ import annotations

from collections.abc import Iterator
from io import BytesIO

from jobsheet.drawing.drawn import Drawing, Line
from jobsheet.report.blocks import Document, Page, Steps
from jobsheet.sheet.fonts import font_name, printable
from jobsheet.sheet.pages import drawn
from jobsheet.sheet.painter import paint
from jobsheet.sheet.styles import PAPERS, SIDE, TOP


def make_pdf(documents: tuple[Document, ...], paper: str = "a4") -> bytes:
    """One PDF of several jobs, each with its own cover and count of pages.

    Parameters
    ----------
    documents : tuple of Document
        As `report/` makes them
    paper : str
        A key of `PAPERS`
    """
    from reportlab import rl_config
    from reportlab.pdfgen.canvas import Canvas

    from jobsheet.sheet.attachment import attach

    # Pages as bytes, not as letters: smaller, and a tenth of a sheet's time less.
    # Nobody mails them as text any more.
    rl_config.useA85 = 0
    width, height = PAPERS[paper]
    out = BytesIO()
    canvas = Canvas(
        out, pagesize=(width, height), invariant=1, pageCompression=1, initialFontName=font_name(bold=False),
        lang="en",
    )  # fmt: skip
    canvas.setTitle(printable("; ".join(document.title for document in documents))[:300])
    canvas.setCreator("Jobsheet")
    canvas.setViewerPreference("DisplayDocTitle", "true")
    canvas.setSubject("; ".join(dict.fromkeys(document.subject for document in documents)))
    for index, document in enumerate(documents):
        for at, sheet in enumerate(document.sheets):
            for half, page in enumerate(sheet):
                picture, scale = drawn(page, paper)
                paint(canvas, picture, SIDE, height - TOP - half * height / 2, scale, document.photographs)
            if sheet[0].half:
                paint(canvas, _cut_here(width), 0, height / 2)
            if not at:
                canvas.bookmarkPage(f"job{index} begins")
                canvas.addOutlineEntry(printable(document.title)[:120], f"job{index} begins", 0, closed=True)
            for place, (level, words) in enumerate(entry for page in sheet for entry in _entries(page)):
                key = f"job{index} sheet{at} {place}"
                canvas.bookmarkPage(key)
                canvas.addOutlineEntry(printable(words)[:120], key, level, closed=level == 1)
            canvas.showPage()
    if files := _files(documents):
        attach(canvas, files)
    canvas.save()
    return out.getvalue()


def _cut_here(width: float) -> Drawing:
    """The line along which two cards are cut apart."""
    return Drawing(width, 1.0, (Line(((SIDE / 3, 0.0), (width - SIDE / 3, 0.0)), "thin", "pencil"),))


def _entries(page: Page) -> Iterator[tuple[int, str]]:
    """What a reader of the file finds a page by: what it is called, and the steps on it."""
    cell = page.title[0][1]
    yield 1, f"{cell.caption} {cell.text}" if page.kind in _CAPTIONED else cell.text
    for block in page.blocks:
        if isinstance(block, Steps) and page.kind == "set-up":
            yield from ((2, f"{row.number} {row.do}") for row in block.rows)


def _files(documents: tuple[Document, ...]) -> list[tuple[str, bytes]]:
    """Each job's file under its own name, a second one of a name with a number; its
    card and log. Without a job nothing.
    """
    found: dict[str, bytes] = {}
    for document in documents:
        if not document.source:
            continue
        name, count = f"{document.name}.yaml", 1
        while name in found:
            count += 1
            name = f"{document.name} {count}.yaml"
        found[name] = document.source
        found.update(document.beside)  # two jobs on one machine carry its card once
    return list(found.items())


#: Kinds of page whose name makes sense only behind its caption.
_CAPTIONED = frozenset({"set-up", "step card", "positions", "blank"})


def picture_pdf(drawing: Drawing, title: str) -> bytes:
    """One drawing on a page of its own size."""
    from reportlab.pdfgen.canvas import Canvas

    out = BytesIO()
    canvas = Canvas(
        out, pagesize=(drawing.width, drawing.height), invariant=1, pageCompression=1,
        initialFontName=font_name(bold=False), lang="en",
    )  # fmt: skip
    canvas.setTitle(printable(title)[:300])
    canvas.setCreator("Jobsheet")
    canvas.setViewerPreference("DisplayDocTitle", "true")
    paint(canvas, drawing, 0, drawing.height)
    canvas.showPage()
    canvas.save()
    return out.getvalue()
