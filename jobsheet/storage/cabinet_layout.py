"""The fields of a cabinet for its editor: one list a section, every entry with its line,
its place and what is known of it.

A test holds this and the reader of `storage/cabinet_file.py` together.
"""

from __future__ import annotations

from typing import Any

from jobsheet.catalog.reading.strict_yaml import read_file
from jobsheet.catalog.tools.cabinet_lines import KINDS_OF
from jobsheet.operations.entry import Entry
from jobsheet.paths import resources
from jobsheet.storage.paper_file import paper_from_text
from jobsheet.storage.paper_layout import Ask, Heading, Layout, Rows
from jobsheet.storage.typed_paper import Group, Paper, Part


def _ask(name: str, title: str, asks: str = "text", hint: str = "", **more: Any) -> Ask:
    """A field that may be left empty."""
    return Ask(Entry(name=name, title=title, asks=asks, hint=hint, optional=True, **more))


#: Section -> its heading, one of them, what is written as an example, and how the list is meant.
_SECTIONS: dict[str, tuple[str, str, str, str]] = {
    "cutters": ("End mills, slot drills, face mills", "cutter", "end mill 12 mm, 4 teeth, HSS", ""),
    "drills": (
        "Drills and spot drills", "drill or set", "drill 5 mm",
        "A whole set is one line: drills 1 mm to 10 mm by 0.5 mm, drills #1 to #60, drills A to Z.",
    ),
    "taps": ("Taps", "set of taps", "taps M6, taper, plug and bottoming", ""),
    "reamers": ("Reamers", "reamer", "reamer 16 mm H7, 6 edges", ""),
    "countersinks": (
        "Countersinks and counterbores", "countersink", "counterbore 11 mm, pilot 6.6 mm, 3 edges", ""
    ),
    "finders": ("Edge finders", "finder", "edge finder, 10 mm tip", ""),
    "holders": ("What holds a tool", "holder", "collet chuck, collets 6 mm, 10 mm, 12 mm", ""),
    "parallels": ("Parallels", "pair", "parallels 6 x 20 x 100 mm", "Thickness, height, length; count pairs."),
    "gauges": ("Gauges and measuring tools", "gauge", "micrometer 0 mm to 25 mm", ""),
    "wrenches": ("Wrenches", "wrench", "tap wrench 180 mm", "By the whole length."),
    "bench": ("What else lies on the bench", "thing", "file", ""),
}  # fmt: skip
#: Of these a field can say at once what was understood; a line of drills may be a set.
_READ_AT_ONCE = ("cutters", "taps", "reamers", "countersinks", "finders")


def _rows(section: str) -> Rows:
    title, one, sample, how = _SECTIONS[section]
    read = section in _READ_AT_ONCE
    choices = KINDS_OF[section] if read else ()
    missing = (
        (_ask("missing", "Missing of the set", hint="such as 3.5 mm, 7 mm"),) if section == "drills" else ()
    )
    return Rows(
        name=section,
        title=title,
        one=one,
        shown=("what", "place", "out", "note"),
        flow=False,
        how=how,
        parts=(
            _ask("what", "What it is, as a job names it", "cutter" if read else "text", f"such as {sample}", choices=choices),
            _ask("place", "Place", hint="such as drawer 1 no. 4"),
            _ask("count", "How many", "count", "leave empty: one", low="0", high="999"),
            *missing,
            _ask("out", "Not there now", hint="such as at the grinder"),
            _ask("note", "Note"),
        ),
    )  # fmt: skip


LAYOUT = Layout(
    headings=(
        Heading(
            title="Cabinet",
            parts=(
                _ask("name", "Name"),
                _ask("workshop", "Workshop", hint="as a job's heading names it"),
                _ask("note", "Note", lines=2),
            ),
            how="A tool is named by its place. A numbered place holds one thing; a drawer without a number holds many."
            " Empty sections are not checked.",
        ),
        Heading(title="Tools that cut", parts=tuple(_rows(kind) for kind in KINDS_OF if kind != "finders")),
        Heading(
            title="What holds, lifts and measures",
            parts=tuple(
                _rows(section) for section in _SECTIONS if section not in KINDS_OF or section == "finders"
            ),
        ),
    )
)


def blank() -> Paper:
    """A cabinet in which nothing stands yet."""
    return Paper(Group((Part("1", "format"),)))


def beginning(size: str) -> Paper:
    """A usual set for a machine of that class (`bench`, `knee`), marked as a beginning."""
    path = resources() / "starter-cabinets" / f"{size if size == 'knee' else 'bench'}.yaml"
    return paper_from_text(read_file(path), path.name)
