"""Asks whether the work is free between two ways of holding it."""

from __future__ import annotations

import re
from collections.abc import Iterator

from jobsheet.model.job import Operation
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations.registry import roles
from jobsheet.review.mending.fixes import moved_before, set_field
from jobsheet.review.plan.words import says
from jobsheet.review.rule import View, remark, rule

_OFF = re.compile(
    r"\b(?:(?:take|remove|loosen|undo)\w*\b[^.;]*?\b(?:straps?|clamps?)(?:\s+off)?|(?:straps?|clamps?)\s+(?:come\s+)?off)\b",
    re.IGNORECASE,
)  # fmt: skip
_ON = re.compile(r"\bscrew\b(?!s|\w* (?:out|off))|\bbolt (?:it |down|through)", re.IGNORECASE)


@rule("one-clamp-at-a-time", "One clamp at a time", "hazard")
def one_clamp_at_a_time(view: View) -> Iterator[Remark]:
    """Straps are taken off before the screws or bolts that are to hold the work instead are in.

    Because: The work is free between these two steps: its place is lost, and thin sheet flies.
    Not so: take the straps off, then screw it down
    So: screw it down, one at a time, then take the straps off
    From: Brown & Sharpe, Practical Treatise on Milling and Milling Machines, page 117; common practice
    """
    for set_up in view.job.set_ups:
        off: tuple[Operation, int] | None = None
        for operation in set_up.operations:
            if roles(operation).beside != "bench":
                continue
            text = operation.fields.what
            gone, held = _OFF.search(text), _ON.search(text)
            if (
                gone is not None
                and held is not None
                and gone.start() < held.start()
                and not says("one at a time", text[: held.start()])
            ):
                off = (operation, gone.start())
            elif held is not None and off is None and gone is None:
                break
            if gone is not None and held is not None and gone.start() > held.start():
                break
            if held is not None and off is not None:
                before, fix = off[0], None
                if before.key == operation.key:
                    fix = Fix(
                        "Screws first, then the straps",
                        set_field(operation.key, "what", _turned(text, held.start())),
                    )
                else:
                    fix = Fix(
                        f"Move {operation.number} before {before.number}",
                        moved_before(operation.key, before.key),
                    )
                yield remark(
                    view, "one-clamp-at-a-time", "The work is free between these two steps: new hold on first, one at a time",
                    before.key, operation.key, fix=fix, set_up=set_up.key,
                )  # fmt: skip
                break
            if gone is not None and held is None:
                off = (operation, gone.start())


def _turned(text: str, at: int) -> str:
    """Both halves of a sentence the other way round, with `then` between them."""
    first = re.sub(r"[\s;,]*(?:then|and)?[\s;,]*$", "", text[:at], flags=re.IGNORECASE)
    second = text[at:].strip()
    return f"{second[:1].upper()}{second[1:]}; then {first[:1].lower()}{first[1:]}"
