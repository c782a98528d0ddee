"""All published numbers we check ourselves against."""

from __future__ import annotations

from . import published_examples, published_tables, published_worked

ROWS = (*published_examples.ROWS, *published_tables.ROWS, *published_worked.ROWS)
