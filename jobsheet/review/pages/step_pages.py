"""Pages of the help for kinds of step and for every field that is filled in."""

from __future__ import annotations

from typing import Any

from jobsheet.holdings.all_holdings import holding_kind, holdings, kind_entry
from jobsheet.operations import registry
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Kind
from jobsheet.review.pages.one_page import Page
from jobsheet.stock.all_shapes import every_entry
from jobsheet.storage import layout

#: The fields of the job's own forms, by the name that the window calls the form.
_FORMS: dict[str, tuple[str, tuple[Entry, ...]]] = {
    "job": ("The job", layout.JOB),
    "job:part": ("Part", layout.PART),
    "job:stock": ("Stock", every_entry()),
    "setup": ("Set-up: how it lies", layout.SET_UP),
    "zero": ("Set-up: zero", layout.ZERO),
}


def kind_pages() -> list[Page]:
    """One for each kind of step."""
    return [_kind(registry.kind(name)) for name in registry.kinds()]


def _kind(kind: Kind[Any]) -> Page:
    lines = tuple((group.title, ", ".join(entry.title for entry in group.entries)) for group in kind.form)
    see = tuple(f"field:{kind.name}/{entry.name}" for entry in kind.entries)
    return Page(id=f"kind:{kind.name}", sort="kind of step", title=kind.title, lines=lines, see=see)


def field_pages() -> list[Page]:
    """One for each field of every form."""
    made = [
        field_page(name, registry.kind(name).title, entry)
        for name in registry.kinds()
        for entry in registry.kind(name).entries
    ]
    made += [field_page("holding", "Set-up: holding", entry) for entry in _of_holdings()]
    return made + [
        field_page(form, title, entry) for form, (title, entries) in _FORMS.items() for entry in entries
    ]


def _of_holdings() -> list[Entry]:
    """Every field of every kind of holding, each name once."""
    found = {kind_entry().name: kind_entry()}
    for name in holdings():
        for entry in holding_kind(name).entries:
            found.setdefault(entry.name, entry)
    return list(found.values())


_LEFT_EMPTY = (
    "it takes what is recommended, shown in pencil, and follows metal, machine and cutter, in every step that leaves its feed empty or has a"
    " value given back. Typing pins a value; F8 gives it back. Where a step states its feed and nothing was given back, an empty layer, width"
    " or peck means all at once, as in files from before."
)


def recommended_fields(kind: Kind[Any]) -> tuple[str, ...]:
    """The fields of a kind that may be left to what is recommended."""
    from jobsheet.reckoning.adviser.left_empty import chosen_of

    return chosen_of(kind.plays(kind.blank("mm")), kind.blank("mm"))


def field_page(owner: str, title: str, entry: Entry) -> Page:
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
    if owner in registry.kinds() and entry.name in recommended_fields(registry.kind(owner)):
        lines.append(("Left empty", _LEFT_EMPTY))
    see = (f"kind:{owner}",) if owner in registry.kinds() else ()
    return Page(
        id=f"field:{owner}/{entry.name}",
        sort=f"field of: {title}",
        title=entry.title,
        lines=tuple(lines),
        see=see,
    )
