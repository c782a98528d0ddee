"""What is made of the free words of older files, and of an edited paper: kept as the pictures of the pages are.

A reading that is kept proves nothing of right or wrong, that is for the tests of each part: it says that
something reads otherwise now. After a change that is meant, look through what changed in `words.yaml`, then
`python -m tests.storage.kept_words` writes it anew.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import product
from pathlib import Path

from jobsheet.errors import CommandError
from jobsheet.operations.registry import kinds
from jobsheet.storage.paper_file import paper_from_text
from jobsheet.storage.paper_text import paper_text
from jobsheet.storage.typed_paper import (
    at,
    empty,
    entries_at,
    text_at,
    with_entry,
    with_entry_moved,
    with_value,
    without_entry,
    words,
)
from jobsheet.storage.words import bench_words, cut_words, stock_words
from tests.kept_sections import write
from tests.stock.stock_lines import stock
from tests.told import told

FILE = Path(__file__).parent / "words.yaml"
Lines = Iterator[str]
#: Words of a stock, as people write them; two of them make a line, and some make three.
SURFACES = (
    "", "bright flat", "black", "hot-rolled bar", "sawn", "sawn all round", "sawn all over", "milled", "ground flat stock", "milled all over", "cast",
    "casting, pickled", "sheared", "raw", "rough, ends", "raw all over", "ends faced", "both ends sawn", "left end milled", "top milled", "long edges sawn",
    "bright round bar", "⌀ 40", "Ø40, cold drawn", "stress-relieved", "from the rack", "sharp edges", "annealed, black", "turned all round",
    "edges sheared", "pickled, machined", "sawn bright bar", "rear and front ground", "underside flame-cut", "sheared all over",
)  # fmt: skip
BOXES = (
    "length: 80; width: 50; height: 12", "length: 80; width: 40; height: 40", "length: 40; width: 80; height: 40", "length: 40; width: 40; height: 80",
    "length: 40; width: 40.0; height: 12", "length: 80; width: 40.0; height: 40",
)  # fmt: skip
FACES_NAMED = (
    "", "the top one stays, and both ends", "both ends", "left end", "ends", "all", "all round", "top, bottom, front, rear, left, right and both ends",
    "the upper face", "back", "nothing", "end", "left and both ends",
)  # fmt: skip
LATER = (
    "", " ", "hardened", "harden, leave 0.2 mm", "HV 500-550, 0.1 left", "grind 0,3", "painted", "plated, no allowance", "0.01 in a side", "none", "nothing left", "lapped", "2 mm left",
    "case harden 58 HRC, ground", "harden 58-60 HRC, leave 0.2 mm", "HV 500-550, 0.1 left", '0.25" left', "marked",
)  # fmt: skip
HOW = (
    "", "to the point", "to the point, full diameter", "full diameter", "spring pass, slowly", "break the edges; oil", "dry, by hand", "jig bush", "drilled out in a chain",
    "leave a skin, tabs", "plug tap, floating holder", "counted from the second hole", "indicator pin", "paper", "against a stop in a bore", "no chamfer, ramp",
    "centre-cutting", "over the tip, with lard oil", "oily",
)  # fmt: skip
STANDS = (
    "",
    "a bore",
    "bores and holes",
    "the second hole",
    "centre of the block",
    "middle",
    "two edges",
    "boredom",
    "holey",
)
HOLDING = (
    "take the straps off, then screw it down", "screw it down, then take the straps off", "remove the clamps", "bolt it down", "move the straps", "move the straps and screw it",
    "loosen one strap at a time", "one at a time, bolt through and take the clamps off", "screws out", "straps off", "look at it", "swap clamps one at a time", "clamps come off; screw to the plate",
)  # fmt: skip
BENCH = (
    "find the edge", "set the zero with an edge finder", "mark out the holes", "marking", "saw marks show", "saw the ends", "drill out the slug", "hold the slug with a strap",
    "deburr, clean", "wipe it and let it rest over night", "knock the vice", "turn it over", "check with a plug gauge", "measure the bore", "break the edges", "",
)  # fmt: skip
MEASURED = (
    "plug gauge go and no-go", "slot gauge", "gauge 12", "depth gauge", "micrometer", "vernier calliper", "dial gauge", "clock", "square", "rule", "", "plugs", "squarely",
)  # fmt: skip


def stocks(first: str) -> Lines:
    """What two pieces of words say of a stock together."""
    for second in SURFACES:
        said = stock_words.said_by("; ".join(one for one in (first, second) if one))
        yield f"{second!r}: {told((said.surfaces, said.round, said.relieved, said.left))}"
    yield f"beside surfaces: {stock_words.beyond_surfaces(first)!r}, of a line {stock_words.beyond_surfaces(f'flat, {first}; sharp')!r}"


def boxes(box: str) -> Lines:
    """What becomes of a box with words, and what no rule reads."""
    for condition in (
        "",
        "round, bright",
        "⌀ 40",
        "⌀ 40, or ⌀ 41",
        "sawn, annealed",
        "from the rack, sharp edges",
        "bright, black top",
    ):
        one = stock(f"{box}; condition: {condition}") if condition else stock(box)
        yield f"{condition!r}: {told(stock_words.with_what_words_say(one))} {told(stock_words.without_fact(one))}"
    typed = stock(f"{box}; condition: from the rack; surfaces: bright")
    yield f"typed: {told(stock_words.before_facts(typed))} {told(stock_words.without_fact(typed))}"


def faces() -> Lines:
    """The faces that free words name."""
    for text in FACES_NAMED:
        yield f"{text!r}: {told(stock_words.faces_in(text))}"


def cuts() -> Lines:
    """What the words of a cut say."""
    for text in LATER:
        yield f"later {text!r}: {cut_words.allowance(text)!r}"
    for text, other in product(STANDS, ("", "the middle of a hole")):
        yield f"stands {text!r} {other!r}: {cut_words.stands_on(text, other)!r}"
    for text in (
        "",
        "General limits ISO 2768-m. All edges broken",
        "marked; unless stated ±0.1",
        "nothing",
        "2768.5",
    ):
        yield f"limits {text!r}: {cut_words.general_limits('first', text)!r}"


def ways(kind: str) -> Lines:
    """How a step is done, as far as its words say."""
    for text in HOW:
        if found := cut_words.how(kind, text):
            yield f"{text!r}: {told(found)}"
    yield f"asked: {told((cut_words.asked(kind, 'how'), cut_words.asked(kind, 'nothing')))}"


def bench() -> Lines:
    """What the words of a step by hand say."""
    for text in HOLDING:
        yield f"hold {text!r}: {told(bench_words.holding_changed(text))}"
    for text, cutter in product(BENCH, ("", "Edge finder 10 mm", "end mill 10 mm")):
        yield f"does {text!r} with {cutter!r}: {told(bench_words.deeds(text, cutter))}"
    for text in MEASURED:
        yield f"measures {text!r}: {bench_words.instrument(text)!r}"


PAPER = """\
format: 1
# above
name: one
table: {length: 500 mm, width: 200 mm}
ranges:
  - speed: 1  # behind
    cap: 2
  - speed: 3
  - cap: 4
empty:
"""
PATHS = (
    (), ("name",), ("table",), ("table", "width"), ("table", 0), ("ranges",), ("ranges", 0), ("ranges", 2), ("ranges", 3), ("ranges", -1), ("ranges", 1, "speed"),
    ("ranges", 0, "cap"), ("ranges", "cap"), ("name", 0), ("name", "x"), ("nothing", "here"), ("empty",), ("ranges", 2, "speed", "deeper"), ("new",),
)  # fmt: skip
ORDERS = (
    (),
    (("format", "new", "name", "table"),),
    (("new", "format"),),
    (("x",), ("y", "z")),
    (("ranges",), (), ("cap", "speed")),
)


def _paper(made: Callable[[], object]) -> str:
    try:
        return paper_text(made())  # type: ignore[arg-type]
    except CommandError as error:
        return f"! {error}"


def papers() -> Lines:
    """A paper that is edited at every place."""
    paper = paper_from_text(PAPER, "paper.yaml")
    for path in PATHS:
        value = at(paper, path)
        yield f"{words(path)!r}: {told((text_at(paper, path), len(entries_at(paper, path)), value is None or empty(value)))}"
        if not path:
            continue
        for order in ORDERS if value is None else ORDERS[:1]:
            yield f"{words(path)} as typed, {order}: {_paper(lambda path=path, order=order: with_value(paper, path, 'typed', order))!r}"
        same = with_value(paper, path, value) if value is not None else None
        yield f"the same: {same is paper} {paper_text(same) if same is not None else ''}"
    for index in range(-1, 5):
        yield f"out {index}: {_paper(lambda index=index: without_entry(paper, ('ranges',), index))!r}"
        for to in range(-1, 4):
            yield f"{index} to {to}: {_paper(lambda index=index, to=to: with_entry_moved(paper, ('ranges',), index, to))!r}"
    for path, index in product((("ranges",), ("new",), ("name",)), (0, 1, 3)):
        yield f"in {words(path)} {index}: {_paper(lambda path=path, index=index: with_entry(paper, path, index, 'typed', ()))!r}"


def sections() -> dict[str, Callable[[], Lines]]:
    """All that is read, by its heading."""
    return (
        {f"stock {first!r}": lambda first=first: stocks(first) for first in SURFACES}
        | {f"box {box}": lambda box=box: boxes(box) for box in BOXES}
        | {f"ways {kind}": lambda kind=kind: ways(kind) for kind in kinds()}
        | {"faces": faces, "cuts": cuts, "bench": bench, "papers": papers}
    )


if __name__ == "__main__":
    write(FILE, sections())
