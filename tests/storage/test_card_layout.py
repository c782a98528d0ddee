"""Fields of a card for its editor, and the steps that fill them."""

from __future__ import annotations

from jobsheet.storage.card_layout import LAYOUT
from jobsheet.storage.paper_file import paper_from_text
from jobsheet.storage.paper_text import paper_text
from jobsheet.storage.typed_paper import with_value


def test_a_new_field_comes_to_stand_where_a_reader_expects_it():
    paper = paper_from_text("format: 1\ntitle: A\nstand: floor\nspindle:\n  drive: belts\n", "x")
    after = with_value(paper, ("kind",), "mill", LAYOUT.orders(("kind",)))
    path = ("spindle", "power")
    after = with_value(after, path, "1 kW, plate", LAYOUT.orders(path))
    assert paper_text(after) == (
        "format: 1\ntitle: A\nkind: mill\nstand: floor\nspindle:\n  drive: belts\n  power: 1 kW, plate\n"
    )
