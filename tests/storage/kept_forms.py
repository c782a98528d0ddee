"""What forms of files ask, and what the short card makes of answers: kept as the pictures of the pages are.

A reading that is kept proves nothing of right or wrong, that is for the tests of each part: it says that
something reads otherwise now. After a change that is meant, look through what changed in `forms.yaml`, then
`python -m tests.storage.kept_forms` writes it anew.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from difflib import ndiff
from pathlib import Path

from jobsheet.catalog.reading.strict_yaml import parse
from jobsheet.errors import QuantityError
from jobsheet.paths import resources
from jobsheet.storage import cabinet_layout, card_layout, layout, shop_file
from jobsheet.storage.card_bounds import BOUNDS
from jobsheet.storage.card_steps import assumed_with, assumed_without, begin, classes, is_assumed
from jobsheet.storage.check_code import check_code, typed_code
from jobsheet.storage.paper_file import paper_from_text
from jobsheet.storage.paper_layout import Layout, asks, guessed, joined, parted, places
from jobsheet.storage.paper_text import paper_text
from jobsheet.storage.short_card import (
    DRIVES,
    NAMES,
    answer,
    answered,
    change_of,
    changed,
    questions,
    unit_of,
)
from jobsheet.storage.short_speeds import numbers, spelt
from jobsheet.storage.typed_paper import Paper
from jobsheet.storage.words.from_format_1 import brought_up
from tests.kept_sections import write
from tests.told import told, whole

FILE = Path(__file__).parent / "forms.yaml"
Lines = Iterator[str]
#: Questions that take all of the answers; others take every third.
_MANY = ("speeds 0", "highest 0", "power", "turn table", "lines table")
_OF_JOBS = ("PART", "JOB", "ZERO", "STEP", "DISMISSED", "REVISION", "PHOTOGRAPH", "SET_UP")
_OF_SHOPS = ("SHOP", "OPINIONS", "PLACE", "PRINTED", "CALLED")
#: Answers as people type them, right and wrong.
ANSWERS = (
    "200, 350, 600", "60 4500", "600; 200", "200", "", "x", "70000", "0", "1.5 kW", "2 hp", "mm", "in", "2.5 mm", "0.1 in", "2.5", "50", "100", "0.5",
    "1001", "300 mm", "12 in", "2000 rpm", "80 rpm",
)  # fmt: skip


def _paper(name: str) -> Paper:
    """A card to begin with, or a shipped one."""
    if name in classes():
        return begin(name)
    return paper_from_text((resources() / "machines" / f"{name}.yaml").read_text("utf-8"), f"{name}.yaml")


def _otherwise(before: Paper, after: Paper) -> str:
    found = ndiff(paper_text(before).split("\n"), paper_text(after).split("\n"))
    return " / ".join(line for line in found if line[:1] in "+-")


def entries(name: str, module: object) -> Lines:
    """Every entry of a form."""
    for one in getattr(module, name):
        yield whole(one) if not isinstance(one, tuple | str) else told(one)


def asked(of: Layout) -> Lines:
    """What a whole kind of file asks, in the order of the page."""
    for heading in of.headings:
        yield f"heading {heading.title}: {heading.how}"
    for path, one in asks(of.parts):
        yield f"{path}: {whole(one)} order {told(of.orders(path))} found {of.find(path) is one}"


def bounds() -> Lines:
    """Between what a card's figures can lie."""
    for name, one in BOUNDS.items():
        yield f"{name}: {told(one)}"


def short(name: str) -> Lines:
    """The short card: what is asked, what it says, and what answers make of it."""
    paper = _paper(name)
    yield f"{change_of(paper)} in {unit_of(paper)}"
    for entry in questions(paper):
        yield f"asks {whole(entry)}: {answer(paper, entry.name)}"
        for text in ANSWERS[:: 1 if entry.name in _MANY else 3]:
            try:
                yield f"{entry.name} {text!r}: {_otherwise(paper, answered(paper, entry.name, text))}"
            except QuantityError as error:
                yield f"{entry.name} {text!r}: {error} at {error.start}-{error.end}"


def other_drive(name: str) -> Lines:
    """The same machine with every way of changing speeds."""
    paper = _paper(name)
    for change in DRIVES:
        for count in NAMES:
            made = changed(paper, change, count)
            yield f"{change} {count}: {_otherwise(paper, made)}"
            said = [(one.name, answer(made, one.name)) for one in questions(made)]
            yield f"{change} {count} says {told(said)}"


def assumed(name: str) -> Lines:
    """What nobody has measured yet."""
    paper = _paper(name)
    for word in ("speeds", "handles", "vice"):
        yield f"{word}: {is_assumed(paper, word)}, with {assumed_with(paper, word)!r}, without {assumed_without(paper, word)!r}"


def values(name: str) -> Lines:
    """Every text that a card has room for, and the numbers that are only guessed."""
    paper = _paper(name)
    yield told([path for path, _ in places(card_layout.LAYOUT.parts, paper.root)])
    for path, one, number in guessed(card_layout.LAYOUT, paper):
        yield f"guessed {path} {one.name}: {number}"


def sources() -> Lines:
    """A value with where it comes from, taken apart and put together."""
    for text in ("12 N·m, guessed", "12 N·m", "12 N·m, plate, old", "", ", guessed", "a, measured"):
        yield f"{text!r}: {told(parted(text))} {joined(*parted(text))!r}"


#: What files of format 1 said of a holding, in words.
OLD = {
    "device": ("vice", "80 mm vice", "vise", "straps", "strap clamps on the table", "angle plate", "vee block", "chuck", "dividing head", "magnet", "fixture plate"),
    "rests_on": ("parallels", "two parallels 6 mm", "the bed", "parallels and wood", "pins", "6 x 20 parallels, 6 mm"),
    "packing": ("wood", "soft jaws", "round bar 10 mm", "bar in front of the jaw", "paper, card"),
    "stop": ("left", "at the right end", "right, screwed", "against A", "B", "front", "at the far end", "none", "far left", "nearest the operator"),
    "clamps": ("two", "2 straps", "four, M12", "three on the edges", "1", "20 N·m"),
    "above_jaws": ("4 mm", "12 to 14 mm", "5 mm front, 7 mm rear", "a little", "left 3 mm"),
    "tighten": ("20 N·m", "hand tight", "20 N·m, then again", "lightly"),
    "where": ("at the right end of the jaws", "in one side of the vice", "at the far half of the vise", "to the left end of the jaws", "at the near end of the vice"),
    "over_left": ("5 mm", "10 mm over the left end"), "note": ("tap it down", "look"), "overhang": ("20 mm right", "left 12 mm"),
}  # fmt: skip


def old_words(field: str) -> Lines:
    """What becomes of words of format 1, alone and beside a vice, straps or a chuck."""
    for text in OLD[field]:
        for beside in ({}, {"device": "vice"}, {"device": "straps"}, {"device": "chuck"}):
            words = beside | {field: text}
            said = "".join(f'      {name.replace("_", " ")}: "{one}"\n' for name, one in words.items())
            root = brought_up(
                parse(
                    f"format: 1\ndatums: {{A: left, B: front}}\nset-ups:\n  - key: one\n    number: 1\n"
                    f"    up: top\n    operator: front\n    holding:\n{said}",
                    "old",
                )
            )
            (set_up,) = (root.fields or {})["set-ups"].items or ()
            held = (set_up.fields or {})["holding"].fields or {}
            yield f"{words}: {told({name: node.text for name, node in held.items()})}"


def cabinets() -> Lines:
    """What a cabinet begins with."""
    for size in ("bench", "knee", "lathe"):
        yield f"{size}: {paper_text(cabinet_layout.beginning(size))}"
    yield f"blank: {paper_text(cabinet_layout.blank())}"


def codes() -> Lines:
    """Check codes, and what is typed of them."""
    for data in (b"", b"abc", b"a job\n", bytes(range(256))):
        code = check_code(data)
        low = code.lower().replace("-", " ").replace("1", "l").replace("0", "o")
        yield f"{data[:8]!r}: {code} typed {low!r} {typed_code(low)}, {typed_code(code[:-1])}, {typed_code(code + '0')}, {typed_code('U' + code[1:])}"


def speeds() -> Lines:
    """The numbers of a chart."""
    for text in (
        "200, 350, 600",
        "600 200",
        "200rpm",
        "",
        ",",
        "1e3",
        "60000",
        "60001",
        "0",
        "-5",
        "2 2",
        " ".join(map(str, range(1, 42))),
    ):
        try:
            yield f"{text[:40]!r}: {told(numbers(text))}"
        except QuantityError as error:
            yield f"{text[:40]!r}: {error} at {error.start}-{error.end}"
    yield told([spelt(one) for one in (0.5, 7, 123, 1250, 1249, 98765)])


def sections() -> dict[str, Callable[[], Lines]]:
    """All that is read, by its heading."""
    cards = (*classes(), "bench-mill-b-2", "knee-mill-k-2")
    return (
        {f"job {name}": lambda name=name: entries(name, layout) for name in _OF_JOBS}
        | {f"workshop {name}": lambda name=name: entries(name, shop_file) for name in _OF_SHOPS}
        | {
            "card asks": lambda: asked(card_layout.LAYOUT),
            "cabinet asks": lambda: asked(cabinet_layout.LAYOUT),
        }
        | {f"old words {field}": lambda field=field: old_words(field) for field in OLD}
        | {"bounds": bounds, "sources": sources, "speeds": speeds, "cabinets": cabinets, "codes": codes}
        | {f"short {name}": lambda name=name: short(name) for name in cards[1:]}
        | {f"other drive {name}": lambda name=name: other_drive(name) for name in cards[2:]}
        | {f"values {name}": lambda name=name: values(name) for name in cards}
        | {f"assumed {name}": lambda name=name: assumed(name) for name in cards}
    )


if __name__ == "__main__":
    write(FILE, sections())
