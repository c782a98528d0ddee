"""What to fetch before the first cut: cutters in the order of the drawers,
and what else lies on the bench.
"""

from __future__ import annotations

import re

from msgspec import Struct

from jobsheet.model.quantity import Cutter
from jobsheet.report.plan import Plan

_PLACE = re.compile(r"^(?P<where>.*?)[\s,]*(?:\b(?:no\.?|place|number)\s*(?P<number>\S+))?$", re.IGNORECASE)
_DRAWER = re.compile(r"^drawer\s+(\S+)$", re.IGNORECASE)


class Fetched(Struct, frozen=True, kw_only=True):
    """One thing to fetch: drawer (or other place), number in it, what it is, in which set-ups it is used."""

    drawer: str
    number: str
    what: str
    set_ups: tuple[int, ...]


def fetched(plan: Plan) -> tuple[Fetched, ...]:
    """Every cutter once, by place; those without a place last."""
    found: dict[str, tuple[Cutter, list[int]]] = {}
    for set_up, operation in plan.job.operations():
        cutter = getattr(operation.fields, "cutter", None)
        if isinstance(cutter, Cutter):
            _, numbers = found.setdefault(cutter.text, (cutter, []))
            if set_up.number not in numbers:
                numbers.append(set_up.number)
    rows = [_row(plan, cutter, tuple(numbers)) for cutter, numbers in found.values()]
    return tuple(sorted(rows, key=lambda row: (not row.drawer, _natural(row.drawer), _natural(row.number))))


def _row(plan: Plan, cutter: Cutter, set_ups: tuple[int, ...]) -> Fetched:
    match = _PLACE.match(cutter.place)
    where, number = (match["where"] or "", match["number"] or "") if match else (cutter.place, "")
    drawer = _DRAWER.match(where)
    kept = [part for part in re.split(r",\s*", cutter.text) if part.strip() != cutter.place.strip()]
    what = ", ".join(kept) or cutter.kind
    return Fetched(
        drawer=plan.short(drawer[1] if drawer else where, 24, "place of a cutter"),
        number=plan.short(number, 10, "place of a cutter"),
        what=plan.short(what, 90, f"cutter, {what[:20]}"),
        set_ups=set_ups,
    )


def _natural(text: str) -> tuple[tuple[int, int, str], ...]:
    """Numbers in a text by their size: drawer 2 before drawer 10."""
    return tuple(
        (0, int(part), "") if part.isdigit() else (1, 0, part.casefold())
        for part in re.findall(r"\d+|\D+", text)
    )


def also_on_the_bench(plan: Plan) -> str:
    """What the plan says lies on the bench, and what the steps by hand are
    done with that is not said there.
    """
    said = plan.job.also_fetch.strip().rstrip(".")
    extra: list[str] = []
    for _, operation in plan.job.operations():
        for thing in (getattr(operation.fields, "with_what", "") or "").split(","):
            name = thing.strip()
            if name and name.casefold() not in f"{said} {' '.join(extra)}".casefold():
                extra.append(name)
    return ", ".join(part for part in (said, *extra) if part)


def in_runs(numbers: tuple[int, ...]) -> str:
    """Set-ups in few characters: `1–4`, `5 6`."""
    if len(numbers) > 2 and numbers == tuple(range(numbers[0], numbers[-1] + 1)):
        return f"{numbers[0]}–{numbers[-1]}"
    return " ".join(map(str, numbers))
