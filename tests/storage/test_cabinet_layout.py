"""Fields of a cabinet for its editor."""

from __future__ import annotations

from jobsheet.catalog.tools.cabinet_lines import SECTIONS
from jobsheet.errors import QuantityError
from jobsheet.storage.cabinet_file import FIELDS, cabinet_from_text
from jobsheet.storage.cabinet_layout import LAYOUT, blank
from jobsheet.storage.paper_layout import Ask, Rows
from jobsheet.storage.paper_text import paper_text

from .cabinet_entries import entry


def test_the_editor_s_fields_are_those_that_the_reader_knows():
    lists = [part for part in LAYOUT.parts if isinstance(part, Rows)]
    assert sorted(rows.name for rows in lists) == sorted(SECTIONS)
    for rows in lists:
        names = {part.name for part in rows.parts if isinstance(part, Ask)}
        assert names == set(FIELDS) - ({"missing"} if rows.name != "drills" else set())
    assert cabinet_from_text(paper_text(blank()), "x").things == ()


def test_the_examples_of_the_editor_can_be_read():
    for rows in (part for part in LAYOUT.parts if isinstance(part, Rows)):
        what = rows.parts[0]
        sample = what.entry.hint.removeprefix("such as ")
        assert cabinet_from_text(entry(rows.name, sample), "x").things, rows.name
        if what.entry.asks == "cutter":
            try:
                what.entry.read(sample, "mm")
            except QuantityError as error:
                raise AssertionError(sample) from error
