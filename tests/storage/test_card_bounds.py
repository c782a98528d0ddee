"""Every figure of a card lies between bounds with a source; beyond them the card is refused by its line."""

from __future__ import annotations

import pytest

from jobsheet.errors import DocumentError
from jobsheet.paths import resources
from jobsheet.storage.card_bounds import BOUNDS
from jobsheet.storage.card_layout import LAYOUT
from jobsheet.storage.machine_file import machine_from_text
from jobsheet.storage.paper_file import paper_from_text
from jobsheet.storage.paper_layout import Ask, Inner, Rows
from jobsheet.storage.paper_text import paper_text
from jobsheet.storage.typed_paper import Items, with_value
from jobsheet.units.grammar import read
from jobsheet.units.table import KINDS

CARDS = sorted(
    [*(resources() / "machines").glob("*.yaml"), *(resources() / "machine-classes").glob("*.yaml")]
)


def figures(parts, way=()):
    """Every field of the editor that holds a figure, with its place."""
    for part in parts:
        if isinstance(part, Ask):
            if part.entry.asks in KINDS:
                yield (*way, part.entry.name), part
        elif isinstance(part, Rows):
            yield from figures(part.parts, (*way, part.name, 0))
        elif isinstance(part, Inner):
            yield from figures(part.parts, (*way, part.name))


FIGURES = [found for heading in LAYOUT.headings for found in figures(heading.parts)]


NAMES = [".".join(str(step) for step in way if step != 0) for way, _ in FIGURES]


def of(name):
    return BOUNDS["travel" if name.startswith("travel.") else name]


def with_text(way, text):
    paper = paper_from_text(
        (resources() / "machines" / "bench-mill-b-1.yaml").read_text("utf-8"), "card.yaml"
    )
    return machine_from_text(paper_text(with_value(paper, way, text)), "card.yaml", "card")


def test_every_figure_has_its_bounds_and_every_bound_its_source():
    assert {"travel" if name.startswith("travel.") else name for name in NAMES} == set(BOUNDS)
    assert all("no source" in one.source or "common sense" in one.source for one in BOUNDS.values())


@pytest.mark.parametrize("path", CARDS, ids=lambda path: path.stem)
def test_every_shipped_card_is_inside(path):
    machine_from_text(path.read_text("utf-8"), path.name, path.stem)


@pytest.mark.parametrize(("way", "ask"), FIGURES, ids=NAMES)
def test_a_figure_beyond_its_bounds_is_refused_by_its_line(way, ask):
    bound = of(".".join(str(step) for step in way if step != 0))
    assert read(bound.low, ask.entry.asks) < read(bound.high, ask.entry.asks)
    mark = ", measured" if ask.marked else ""
    unit = "" if ask.entry.asks == "share" else bound.high.split()[1]
    for number in (
        "nan",
        "inf",
        "-300",
        "0",
        "1e999",
        "99999999999",
        "-0.0000001",
        "0.00000000001",
        "²",
        "x" * 300,
    ):
        with pytest.raises(DocumentError) as refused:
            with_text(way, f"{number} {unit}".strip() + mark)
        assert all(problem.line and problem.path for problem in refused.value.problems), number


@pytest.mark.parametrize(
    ("written", "says"), [("99", "newer than this program knows"), ("²", "is not a format"), ("0", "is not a format"), ("", "is not a format")]
)  # fmt: skip
def test_a_card_of_another_format_is_refused(written, says):
    text = (resources() / "machines" / "bench-mill-b-1.yaml").read_text("utf-8")
    with pytest.raises(DocumentError, match=says):
        machine_from_text(text.replace("format: 1", f"format: {written}"), "card.yaml", "card")


def test_what_was_loaded_before_is_refused():
    for way, text in ((("spindle", "ranges", 0, "efficiency"), "50, guessed"), (("gib drag",), "-300 N, guessed"), (("spindle", "short peak"), "inf")):  # fmt: skip
        with pytest.raises(DocumentError):
            with_text(way, text)


def test_the_shipped_cards_have_lists_where_the_test_writes():
    paper = paper_from_text(
        (resources() / "machines" / "bench-mill-b-1.yaml").read_text("utf-8"), "card.yaml"
    )
    assert all(
        isinstance(part.value, Items) for part in paper.root.parts if part.name in ("handles", "vices")
    )
