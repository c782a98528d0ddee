"""What a cabinet holds, for the margin of its editor: by place, the order of
fetching, and what is not there now.
"""

from __future__ import annotations

from jobsheet.catalog.tools.places import in_order, parted
from jobsheet.model.facts import Facts
from jobsheet.model.own_tools import Cabinet, Thing


def cabinet_facts(cabinet: Cabinet | None) -> tuple[Facts, ...]:
    """A table for each drawer, in the order of the drawers, then what is away."""
    if cabinet is None or not cabinet.things:
        return (
            Facts(
                title="Nothing in it yet",
                note="Begin with the tools of your next job: the steps then pick from them.",
            ),
        )
    drawers: dict[str, list[Thing]] = {}
    for thing in sorted(cabinet.things, key=lambda thing: in_order(thing.place)):
        drawers.setdefault(parted(thing.place)[0], []).append(thing)
    found = [
        Facts(
            title=_title(things[0].place), rows=tuple((_numbered(thing),) for thing in _numbers_first(things))
        )
        for things in drawers.values()
    ]
    away = tuple((_short(thing), thing.away) for thing in cabinet.things if not thing.here)
    return (*found, Facts(title="Not there now", rows=away)) if away else tuple(found)


def _title(place: str) -> str:
    """The drawer as it is written, without the number in it."""
    where = parted(place)[0]
    return f"{where[:1].upper()}{where[1:]}"


def _numbers_first(things: list[Thing]) -> list[Thing]:
    """What has a number in the drawer, then what lies there loose."""
    return sorted(things, key=lambda thing: not parted(thing.place)[1])


def _numbered(thing: Thing) -> str:
    number = parted(thing.place)[1]
    return f"{number}  {_short(thing)}" if number else _short(thing)


def _short(thing: Thing) -> str:
    """What it is in few words, and how many."""
    words = thing.what.split(", ")[0] if len(thing.what) > 30 else thing.what
    return f"{words} ({thing.count})" if thing.count > 1 else words
