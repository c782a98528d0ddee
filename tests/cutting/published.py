"""All published numbers we check ourselves against."""

from __future__ import annotations

from . import published_examples, published_forces, published_tables, published_threads, published_worked

#: In the order of the written list; what each part is.
PARTS = {
    "Worked examples out of books and catalogues": published_examples.ROWS,
    "Printed tables, and the laws they were made from": published_tables.ROWS,
    "Threads and their tap drills": published_threads.ROWS,
    "Forces of the teeth, summed twice": published_forces.ROWS,
    "Cases worked by hand: drives, quill, walls, chatter, holding, handles, demo jobs": published_worked.ROWS,
}
ROWS = tuple(row for rows in PARTS.values() for row in rows)
