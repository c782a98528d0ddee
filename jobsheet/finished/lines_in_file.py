"""What the part shall be, as the job's file has it: lines as they are typed, kept
whether they can be read yet or not.
"""

from __future__ import annotations

from typing import Any

from jobsheet.catalog.reading.strict_yaml import Node
from jobsheet.model.finished import Finished
from jobsheet.operations.entry import Entry

#: The letters of the drawing, which every line may name; `datums_line` reads them.
DATUMS = Entry(
    name="datums", title="Datums", asks="text", optional=True,
    hint="the letters of the drawing, such as A: bottom, B: front, C: left",
)  # fmt: skip
SIZES = Entry(
    name="sizes", title="Finished sizes", asks="text", optional=True,
    hint="length x width x height, such as 80 ±0.1 x 50 x 30; A square to B 0.03",
)  # fmt: skip
#: One line of the list.
FEATURE = Entry(
    name="features", title="Feature", asks="text", optional=True, hint="such as 4 x M8 blind 16 at 20, 15; 60, 15"
)  # fmt: skip
#: More lines than this are a slip, not a part for one hand-turned mill (common practice, no source).
MOST = 200


def finished_from(reader: Any, node: Node | None) -> Finished:
    """The lines of the section; the reader keeps a problem for what is no text.
    What a line means is asked elsewhere.
    """
    if node is None:
        return Finished()
    fields = reader.mapping(node, "finished")
    sizes = reader.entries(node, "finished", (SIZES,), ("features",)).get("sizes", "")
    lines = []
    for index, item in enumerate(reader.items(fields.get("features"), "finished.features")):
        path = f"finished.features[{index}]"
        if item.text is None:
            reader.problem(
                item, path, f"this is {item.what}; write one line of text, in quotes if it has a colon"
            )
        elif line := reader.entry(item, path, FEATURE):
            lines.append(line)
        elif not item.text.strip():
            reader.problem(
                item,
                path,
                "nothing is written here; write a line, in quotes if it begins with #, or take it out",
            )
    if len(lines) > MOST:
        reader.problem(node, "finished.features", f"these are more than {MOST} lines; take some out")
    return Finished(sizes=sizes, features=tuple(lines))


def finished_data(finished: Finished) -> dict[str, Any]:
    """The section as texts; nothing where nothing is said."""
    out: dict[str, Any] = {}
    if finished.sizes:
        out["sizes"] = finished.sizes
    if lines := [line for line in finished.features if line.strip()]:
        out["features"] = lines
    return out
