"""The job's own file inside the PDF, so that the sheet can be opened again years later."""

from __future__ import annotations

import hashlib
from typing import Any

from reportlab.pdfbase import pdfdoc


class _Catalog(pdfdoc.PDFCatalog):  # type: ignore[misc]
    """The document's root with the entry that says which files belong to it."""

    __NoDefault__ = (*pdfdoc.PDFCatalog.__NoDefault__, "AF")


class _Raw(pdfdoc.PDFObject):  # type: ignore[misc]
    """A piece of PDF written as it is."""

    def __init__(self, text: str) -> None:
        self.text = text

    def format(self, _document: Any) -> bytes:
        return self.text.encode("ascii")


def attach(canvas: Any, files: list[tuple[str, bytes]]) -> None:
    """Put files into a PDF that is being written, as its source (`/AFRelationship /Source`)."""
    document = canvas._doc  # noqa: SLF001 - reportlab has no public way to do this
    names = []
    for index, (name, content) in enumerate(files):
        stream = pdfdoc.PDFStream(dictionary=pdfdoc.PDFDictionary(), content=content)
        stream.dictionary["Type"] = pdfdoc.PDFName("EmbeddedFile")
        # A slash inside a name must be written as its code; reportlab does not.
        stream.dictionary["Subtype"] = _Raw(_KINDS.get(name.rpartition(".")[2], "/application#2Fyaml"))
        check = hashlib.md5(content, usedforsecurity=False).hexdigest()
        stream.dictionary["Params"] = pdfdoc.PDFDictionary(
            {"Size": len(content), "CheckSum": _Raw(f"<{check}>")}
        )
        inside = document.Reference(stream, f"jobFile{index}")
        spec = pdfdoc.PDFDictionary(
            {
                "Type": pdfdoc.PDFName("Filespec"),
                "F": _text(name),
                "UF": _text(name),
                "EF": pdfdoc.PDFDictionary({"F": inside, "UF": inside}),
                "AFRelationship": pdfdoc.PDFName("Source"),
                "Desc": _text(_described(name)),
            }
        )
        names.append((name, document.Reference(spec, f"jobSpec{index}")))
    names.sort()
    listed = [part for name, spec in names for part in (_text(name), spec)]
    tree = pdfdoc.PDFDictionary({"Names": pdfdoc.PDFArray(listed)})
    document.Catalog.__class__ = _Catalog
    document.Catalog.Names = pdfdoc.PDFDictionary({"EmbeddedFiles": tree})
    document.Catalog.AF = pdfdoc.PDFArray([spec for _, spec in names])


#: What a file is, by its ending; anything else is the job or its machine's card and log.
_KINDS = {"jpg": "/image#2Fjpeg", "png": "/image#2Fpng"}


def _described(name: str) -> str:
    if name.rpartition(".")[2] in _KINDS:
        return "A photograph of this job"
    return "The job that these sheets were printed from"


def _text(text: str) -> _Raw:
    """A text string in UTF-16, as hex: no character needs to be escaped."""
    if text.isascii():
        return _Raw(f"<{text.encode('ascii').hex()}>")
    return _Raw(f"<feff{text.encode('utf-16-be').hex()}>")
