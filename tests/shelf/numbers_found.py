"""The numbers of the parts that a question finds."""

from __future__ import annotations

from jobsheet.shelf.shelf_questions import find


def numbers(index, question):
    return sorted({hit.number for hit in find(index, question).hits})
