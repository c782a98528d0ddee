"""The workshop's own numbers, from `workshop.yaml` in the person's folder; the
usual ones where there is none.

format: 1
fastest pace: 45 turns a minute
easy push: 80 N
tool change time: 3 min
climb milling: light finish
country: gb
"""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path
from typing import Any

from jobsheet.errors import DocumentError, Problem, QuantityError
from jobsheet.model.shop import Shop
from jobsheet.operations.entry import Entry
from jobsheet.paths import own_folder

NAME = "workshop.yaml"
SHOP = (
    Entry(name="slowest_pace", title="Slowest even pace", asks="spindle speed", low="0.1 rpm", high="100 rpm", optional=True),
    Entry(name="fastest_pace", title="Fastest even pace", asks="spindle speed", low="1 rpm", high="300 rpm", optional=True),
    Entry(name="easy_push", title="Easy push on a lever", asks="force", low="10 N", high="400 N", optional=True),
    Entry(name="strong_push", title="Strong push, for seconds", asks="force", low="10 N", high="600 N", optional=True),
    Entry(name="lever_efficiency", title="Efficiency of the quill lever", asks="share", low="0.3", high="1", optional=True),
    Entry(name="easy_wrench", title="Easy force of a hand on a wrench", asks="force", low="5 N", high="200 N", optional=True),
    Entry(name="strong_wrench", title="Strong force of a hand on a wrench", asks="force", low="5 N", high="400 N", optional=True),
    Entry(name="wear_milling", title="Wear factor in milling", asks="share", low="1", high="2", optional=True),
    Entry(name="wear_drilling", title="Wear factor in drilling", asks="share", low="1", high="2", optional=True),
    Entry(name="holding_factor", title="Factor on holding", asks="share", low="1", high="10", optional=True),
    Entry(name="holding_factor_high", title="Factor on holding where the work stands high", asks="share", low="1", high="20", optional=True),
    Entry(name="friction", title="Friction of smooth jaws", asks="share", low="0.02", high="0.6", optional=True),
    Entry(name="stiff_crank", title="A handle goes stiff at", asks="force", low="5 N", high="300 N", optional=True),
    Entry(name="stuck_crank", title="A handle is stuck at", asks="force", low="5 N", high="600 N", optional=True),
    Entry(name="holder_length", title="Length of a tool holder", asks="length", low="0 mm", high="500 mm", optional=True),
    Entry(name="chuck_torque", title="A drill chuck holds a tap to", asks="torque", low="0.1 N·m", high="100 N·m", optional=True),
    Entry(name="run", title="Run-in and run-out", asks="length", low="0 mm", high="100 mm", optional=True),
    Entry(name="set_up_time", title="Time to set up", asks="time", low="0 min", high="10 h", optional=True),
    Entry(name="tool_change_time", title="Time to change a tool", asks="time", low="0 min", high="1 h", optional=True),
    Entry(name="measuring_time", title="Time to measure once", asks="time", low="0 min", high="1 h", optional=True),
    Entry(name="proof_ageing", title="A year widens what was proved by", asks="share", low="0", high="1", optional=True),
    Entry(name="proof_chance", title="Chance that the next test cut ends badly", asks="share", low="1 %", high="50 %", optional=True),
    Entry(name="bulk_minutes", title="Minutes of roughing in one block", asks="time", low="1 min", high="10 h", optional=True),
    Entry(name="close_limits", title="Close limits, width in all", asks="length", low="0.005 mm", high="2 mm", optional=True),
    Entry(name="very_close_limits", title="Very close limits, width in all", asks="length", low="0.002 mm", high="1 mm", optional=True),
    Entry(name="least_finish", title="Least allowance of a finishing pass", asks="length", low="0.005 mm", high="2 mm", optional=True),
    Entry(name="most_finish", title="Most allowance of a finishing pass", asks="length", low="0.01 mm", high="5 mm", optional=True),
    Entry(name="scale_skin", title="Skin of black stock", asks="length", low="0.05 mm", high="5 mm", optional=True),
    Entry(name="casting_skin", title="Skin of a casting", asks="length", low="0.05 mm", high="10 mm", optional=True),
    Entry(name="slot_layer", title="Layer of a slot over its cutter, hard metals", asks="share", low="0.02", high="5", optional=True),
    Entry(name="slot_layer_soft", title="Layer of a slot over its cutter, soft metals", asks="share", low="0.02", high="5", optional=True),
    Entry(name="slot_layer_bench", title="Layer of a slot over its cutter, bench machine", asks="share", low="0.02", high="5", optional=True),
    Entry(name="tall_work", title="Height without support, in widths", asks="share", low="0.5", high="20", optional=True),
    Entry(name="thin_sheet", title="Thin sheet", asks="length", low="0.1 mm", high="50 mm", optional=True),
    Entry(name="thin_plate", title="Thin plate, over its span", asks="share", low="0.01", high="1", optional=True),
    Entry(name="thin_wall", title="Thin wall, height over thickness", asks="share", low="1", high="50", optional=True),
    Entry(name="tram_days", title="Days after which a tram check is old", asks="share", low="1", high="2000", optional=True),
    Entry(name="gauge_share", title="Share of the limits that a gauge reads to", asks="share", low="0.02", high="1", optional=True),
    Entry(name="pecks_solid", title="Pecks from so many diameters, from the solid", asks="share", low="1", high="20", optional=True),
    Entry(name="pecks_opening", title="Pecks from so many diameters, opening a hole", asks="share", low="1", high="20", optional=True),
    Entry(name="close_place", title="Place that spot and drill can hold, ±", asks="length", low="0.005 mm", high="1 mm", optional=True),
    Entry(name="stands_above", title="May stand over the jaws, in depths of grip", asks="share", low="0.5", high="10", optional=True),
)  # fmt: skip
#: Where the trade disagrees: the choices of `resources/opinions.yaml`, which a
#: test holds together with these.
OPINIONS = (
    Entry(name="third_side", title="Third side in squaring", asks="choice", choices=("opposite face", "next face round"), optional=True),
    Entry(name="reamer_speed", title="Speed of a reamer", asks="choice", choices=("half", "near drilling speed"), optional=True),
    Entry(name="thread_height", title="Height of a thread", asks="choice", choices=("60 to 75 %", "75 %", "50 to 65 %"), optional=True),
    Entry(name="spot_angle", title="Angle of a spot", asks="choice", choices=("at least 90°", "any spot", "never under the drill"), optional=True),
    Entry(name="counterbore_order", title="Hole or counterbore first", asks="choice", choices=("hole first", "by the tool"), optional=True),
    Entry(name="climb_milling", title="Cutting with the rotation", asks="choice", choices=("never", "light finish"), optional=True),
)  # fmt: skip

#: Choices that nothing asks any more: files that make them are read without a word.
_NO_LONGER = frozenset({"tap_drill_from", "chatter_feed"})

#: Where the workshop stands and what is true of the place: it calls up safety notes
#: and figures of law, never a verdict.
PLACE = (
    Entry(name="country", title="Country, for figures of law", asks="choice", choices=("none", "us", "us michigan", "gb", "eu"), optional=True),
    Entry(name="air_line", title="An air line at the machine", asks="choice", choices=("no", "yes"), optional=True),
    Entry(name="raised_voices", title="Voices must be raised at 2 m", asks="choice", choices=("no", "yes"), optional=True),
    Entry(name="works_alone", title="Somebody works alone", asks="choice", choices=("no", "yes"), optional=True),
)  # fmt: skip
#: What is printed where nobody says otherwise, and on which paper; `storage/kept/workshop_kept.py` writes it.
PRINTED = (
    Entry(name="print_whole", title="Print the whole sheet", asks="choice", choices=("no", "yes"), optional=True),
    Entry(name="print_route", title="Print a route list", asks="choice", choices=("no", "yes"), optional=True),
    Entry(name="print_positions", title="Print positions cards", asks="choice", choices=("no", "yes"), optional=True),
    Entry(name="print_step", title="Print step cards", asks="choice", choices=("no", "yes"), optional=True),
    Entry(name="print_blank", title="Print a blank form", asks="choice", choices=("no", "yes"), optional=True),
    Entry(name="paper", title="Paper", asks="choice", choices=("a4", "letter"), optional=True),
)  # fmt: skip
#: How the revisions of a plan are called on paper and screen; files keep numbers (`storage/plan_mark.py`).
CALLED = (
    Entry(name="plan_marks", title="Revisions of a plan are called by", asks="choice", choices=("numbers", "letters"), optional=True),
)  # fmt: skip


def workshop() -> Shop:
    """The workshop's numbers as its file has them, else the usual ones.

    Raises
    ------
    DocumentError
        With every problem of the file, each with its line.
    """
    path = own_folder() / NAME
    try:
        changed = path.stat().st_mtime_ns
    except OSError:
        return _USUAL
    return _read(path, changed)


_USUAL = Shop()


@lru_cache(maxsize=4)
def _read(path: Path, _changed: int) -> Shop:
    from jobsheet.catalog.reading.strict_yaml import parse, read_file

    return shop_from_text(parse(read_file(path), path.name), path.name)


def shop_from_text(root: Any, name: str) -> Shop:
    """The workshop's numbers from the nodes of its file; raises DocumentError."""
    from jobsheet.storage.versions import OF_LISTS, what_is_wrong
    from jobsheet.units.grammar import nearest

    problems: list[Problem] = []
    values: dict[str, Any] = {}
    seen: dict[str, int] = {}
    entries = {entry.name: entry for entry in (*SHOP, *OPINIONS, *PLACE, *PRINTED, *CALLED)}
    for typed, node in (root.fields or {}).items():
        plain = typed.strip().replace(" ", "_")
        if plain == "format":
            if sentence := what_is_wrong(node.text or "", OF_LISTS):
                problems.append(Problem(node.line, typed, sentence))
            continue
        if plain in _NO_LONGER:
            continue
        if plain in seen:
            problems.append(
                Problem(node.line, typed, f"this stands in line {seen[plain]} already; take one out")
            )
            continue
        seen[plain] = node.line
        entry = entries.get(plain)
        if entry is None:
            near = nearest(plain, tuple(entries))
            hint = (
                f"did you mean {near.replace('_', ' ')}?"
                if near
                else f"known are {', '.join(entry.replace('_', ' ') for entry in entries)}"
            )
            problems.append(Problem(node.line, typed, f"unknown field; {hint}"))
            continue
        if node.text is None:
            problems.append(Problem(node.line, typed, f"this is {node.what}; {entry.wanted('mm')}"))
            continue
        try:
            value = entry.read(node.text, "mm")
        except QuantityError as error:
            problems.append(Problem(node.line, typed, str(error)))
            continue
        if value is not None:
            values[plain] = value if entry.asks == "choice" else value.value
    if root.fields is None:
        problems.append(Problem(root.line, "", f"this is {root.what}; a group of fields belongs here"))
    for low, high in (
        ("slowest_pace", "fastest_pace"),
        ("easy_push", "strong_push"),
        ("easy_wrench", "strong_wrench"),
        ("stiff_crank", "stuck_crank"),
        ("least_finish", "most_finish"),
        ("very_close_limits", "close_limits"),
    ):
        made = {one: values.get(one, getattr(_USUAL, one)) for one in (low, high)}
        if made[low] >= made[high]:
            problems.append(
                Problem(
                    seen.get(low) or seen.get(high, 1),
                    low.replace("_", " "),
                    f"this must be less than {high.replace('_', ' ')}",
                )
            )
    shop = Shop(**values)
    if not shop.prints.pages:
        wanted = ", ".join(entry.name.replace("_", " ") for entry in PRINTED[:-1])
        problems.append(
            Problem(
                seen.get("print_whole", 1),
                "print whole",
                f"no page is left to print; say yes to one of {wanted}",
            )
        )
    if problems:
        raise DocumentError(name, tuple(sorted(problems, key=lambda problem: problem.line or 0)))
    return shop
