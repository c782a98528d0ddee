"""A file inside a PDF: a reader finds it byte for byte under its name."""

from __future__ import annotations

import io

from pypdf import PdfReader
from reportlab.pdfgen.canvas import Canvas

from jobsheet.sheet.attachment import attach


def test_files_come_out_as_they_went_in():
    files = [("plate.yaml", b"format: 2\r\n\xc3\xa4 #7"), ("b.jpg", bytes(range(256)))]
    raw = io.BytesIO()
    canvas = Canvas(raw)
    canvas.drawString(10, 10, "x")
    canvas.showPage()
    attach(canvas, files)
    canvas.save()
    found = PdfReader(io.BytesIO(raw.getvalue())).attachments
    assert {name: content[0] for name, content in found.items()} == dict(files)
