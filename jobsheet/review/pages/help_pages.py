"""Every page of the help in the window, by its id: remarks, limits, verdicts, formulas, figures, kinds of step and fields.

An id is a sort, a colon and a name: `remark:spot-before-drilling`, `limit:quill-push`, `field:drill/depth`. What stands on a
page is read from the rules, formulas, entries and data themselves, so that no page can fall behind them.
"""

from __future__ import annotations

import re
from functools import cache

from msgspec import Struct

from jobsheet.catalog.reading.data import shipped
from jobsheet.catalog.reading.sources import words as source_words
from jobsheet.cutting.formula import Formula, all_formulas, formula_of, range_words
from jobsheet.operations import registry
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Kind
from jobsheet.operations.names import FIGURES
from jobsheet.review.pages.explained import KINDS, Topic, plain, topics
from jobsheet.storage import layout

_TOPICS = {KINDS[0]: "remark", KINDS[1]: "reminder", KINDS[2]: "note", KINDS[3]: "choice"}
#: The fields of the job's own forms, by the name that the window calls the form.
_FORMS: dict[str, tuple[str, tuple[Entry, ...]]] = {
    "job": ("The job", layout.JOB), "job:part": ("Part", layout.PART), "job:stock": ("Stock", layout.STOCK),
    "setup": ("Set-up: how it lies", layout.SET_UP), "holding": ("Set-up: holding", layout.HOLDING),
    "zero": ("Set-up: zero", layout.ZERO),
}  # fmt: skip
_LINE = re.compile(r"^([A-Z][A-Za-z ,.]{1,24}): (.*)$")


class Page(Struct, frozen=True, kw_only=True):
    """One page: what sort of thing it is about, its title, captioned lines, and pages that it leads to."""

    id: str
    sort: str
    title: str
    lines: tuple[tuple[str, str], ...]
    see: tuple[str, ...] = ()

    @property
    def text(self) -> str:
        """All of it as plain text."""
        return "\n".join(
            [
                self.title,
                self.sort,
                *(f"{caption}: {said}" if caption else said for caption, said in self.lines),
            ]
        )


def page(id_: str) -> Page | None:
    """The page of that id; none where there is no such thing."""
    return pages().get(id_)


@cache
def pages() -> dict[str, Page]:
    """All of them, in the order in which a list shows them."""
    found = [
        *_limits(),
        *_verdicts(),
        *_severities(),
        *_kinds(),
        *_fields(),
        *_figures(),
        *_formulas(),
        *_topics(),
    ]
    return {one.id: one for one in found}


def found(words: str) -> tuple[Page, ...]:
    """The pages that have all of these words, those with them in their title first."""
    asked = plain(words).split()
    if not asked:
        return tuple(pages().values())
    titled = [one for one in pages().values() if all(word in plain(one.title) for word in asked)]
    known = {one.id for one in titled}
    more = [
        one
        for one in pages().values()
        if one.id not in known and all(word in plain(one.text) for word in asked)
    ]
    return (*titled, *more)


def _topics() -> list[Page]:
    """What `jobsheet why` says."""
    made: dict[str, Page] = {}
    for topic in topics():
        id_ = f"{_TOPICS[topic.kind]}:{topic.id}"
        while id_ in made:  # laws of several places share a name
            id_ += "+"
        made[id_] = Page(
            id=id_, sort=_sort(topic), title=topic.title, lines=_parted(topic.lines), see=_severity(topic)
        )
    return list(made.values())


def _sort(topic: Topic) -> str:
    names = {
        KINDS[0]: f"remark, {topic.word}",
        KINDS[1]: "reminder",
        KINDS[2]: "safety note",
        KINDS[3]: "choice of the trade",
    }
    return names[topic.kind]


def _severity(topic: Topic) -> tuple[str, ...]:
    return (f"severity:{topic.word}",) if topic.kind == KINDS[0] else ()


def _parted(lines: tuple[str, ...]) -> tuple[tuple[str, str], ...]:
    """Lines with what they begin with apart; a line that goes on is joined to the one before it."""
    parted: list[tuple[str, str]] = []
    for line in lines:
        if match := _LINE.match(line):
            parted.append((match[1], match[2]))
        elif line and parted and not line[0].isupper():
            parted[-1] = (parted[-1][0], f"{parted[-1][1]} {line}")
        elif line:
            parted.append(("", line))
    return tuple(parted)


def _limits() -> list[Page]:
    verdicts = tuple(f"verdict:{word}" for word in shipped("limits.yaml")["verdicts"])
    captions = (
        ("asks", "What is asked"),
        ("against", "Against what"),
        ("mend", "What makes it lighter"),
        ("source", "Source"),
    )
    return [
        Page(
            id=f"limit:{name}", sort="limit", title=row["title"],
            lines=tuple((caption, row[key]) for key, caption in captions), see=verdicts,
        )
        for name, row in shipped("limits.yaml")["limits"].items()
    ]  # fmt: skip


def _verdicts() -> list[Page]:
    return [
        Page(
            id=f"verdict:{word}", sort="verdict", title="not known here" if word == "unknown" else word,
            lines=(("It means", row["means"]), ("Do", row["do"])),
        )
        for word, row in shipped("limits.yaml")["verdicts"].items()
    ]  # fmt: skip


def _severities() -> list[Page]:
    rows = shipped("limits.yaml")["severities"].items()
    return [
        Page(id=f"severity:{word}", sort="how bad a remark is", title=word, lines=(("", said),))
        for word, said in rows
    ]


def _kinds() -> list[Page]:
    return [_kind(registry.kind(name)) for name in registry.kinds()]


def _kind(kind: Kind) -> Page:
    lines = tuple((group.title, ", ".join(entry.title for entry in group.entries)) for group in kind.form)
    see = tuple(f"field:{kind.name}/{entry.name}" for entry in kind.entries)
    return Page(id=f"kind:{kind.name}", sort="kind of step", title=kind.title, lines=lines, see=see)


def _fields() -> list[Page]:
    made = [
        _field(name, registry.kind(name).title, entry)
        for name in registry.kinds()
        for entry in registry.kind(name).entries
    ]
    return made + [
        _field(form, title, entry) for form, (title, entries) in _FORMS.items() for entry in entries
    ]


def _field(owner: str, title: str, entry: Entry) -> Page:
    """What may be written into a field."""
    wanted = entry.wanted("mm")
    lines = [("What to write", f"{wanted[:1].upper()}{wanted[1:]}.")]
    if entry.hint:
        lines.append(
            (
                "For example" if entry.hint.startswith("such as") else "Mind",
                f"{entry.hint.removeprefix('such as ')}.",
            )
        )
    if entry.low or entry.high:
        ends = [f"at least {entry.low}" if entry.low else "", f"at most {entry.high}" if entry.high else ""]
        lines.append(
            ("Taken", f"{', '.join(end for end in ends if end)}; what lies beyond is refused, never moved.")
        )
    if entry.choices and entry.asks != "cutter":
        lines.append(("One of", ", ".join(entry.choices)))
    lines.append(("May stay empty", "yes" if entry.optional else "no"))
    see = (f"kind:{owner}",) if owner in registry.kinds() else ()
    return Page(
        id=f"field:{owner}/{entry.name}",
        sort=f"field of: {title}",
        title=entry.title,
        lines=tuple(lines),
        see=see,
    )


def _figures() -> list[Page]:
    return [
        Page(
            id=f"figure:{name}", sort="figure", title=named.title,
            lines=(
                ("Measures", named.measures),
                ("Shown in", " or ".join(dict.fromkeys(unit for unit in (named.metric, named.inch) if unit)) or "a plain number"),
                ("How it came about", "Show the working, in the margin of a step, has every formula with its numbers put in."),
            ),
        )
        for name, named in FIGURES.items()
    ]  # fmt: skip


def _formulas() -> list[Page]:
    return [_formula(formula_of(function)) for function in all_formulas().values()]


def _unit(text: str) -> str:
    return "" if text == "-" else f" [{text}]"


def _formula(one: Formula) -> Page:
    """Its sign language, what is put in, and by whose word."""
    expression = "  ".join(line.strip() for line in one.expression.splitlines())
    lines = [("", expression)] if expression else []
    lines += [(one.symbol(name), f"{said.meaning}{_unit(said.unit)}") for name, said in one.inputs.items()]
    lines.append((one.output_symbol, f"{one.output.meaning}{_unit(one.output.unit)}"))
    lines += [
        ("Source covers", f"{one.symbol(name)} from {range_words(one.inputs[name].unit, low, high)}")
        for name, (low, high) in one.ranges.items()
    ]
    lines.append(("Source", source_words(one.source)))
    return Page(id=f"formula:{one.name}", sort="formula", title=one.title, lines=tuple(lines))
