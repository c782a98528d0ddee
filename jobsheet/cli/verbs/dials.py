"""`jobsheet dials JOB`: every place, wall and depth as it is read at the machine's own dials."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import click

from jobsheet.cli.output import as_json, columns, say

if TYPE_CHECKING:
    from jobsheet.model.job import Job, SetUp
    from jobsheet.model.machine import Machine


@click.command("dials")
@click.argument("job", type=click.Path())
@click.option("--machine", help="the card of another machine, by its name")
@click.option("--json", "want_json", is_flag=True, help="as JSON, lengths in metres")
def command(job: str, machine: str | None, want_json: bool) -> int:
    """Turns and divisions from the zero, the line to stop at, how far that
    line is off, the drawing's size.
    """
    from msgspec.structs import replace

    from jobsheet.cli.named_job import job_named
    from jobsheet.reckoning.answers.readings import readings_of
    from jobsheet.reckoning.reckoner import Reckoner
    from jobsheet.storage.card_files import find_card

    plan = job_named(job)
    if machine:
        plan = replace(plan, machine=machine)
    card = find_card(plan.machine)
    reckoned = Reckoner(learns=True).reckon(plan)
    plan = reckoned.job
    rows = [
        (set_up, readings_of(set_up, reckoned, card), _outside(set_up, reckoned, card))
        for set_up in plan.set_ups
    ]
    if want_json:
        as_json({"set-ups": [_as_data(*row) for row in rows]})
    else:
        _as_text(plan, card, rows)
    return 0


def _stop(one: Any) -> dict[str, Any] | None:
    if one is None:
        return None
    return {
        "distance": one.distance, "drawing": one.drawing, "dial": one.dial, "turns": one.reading.line_turns,
        "line": one.reading.line, "error": one.error, "warning": one.warning,
    }  # fmt: skip


def _outside(set_up: SetUp, found: Any, card: Machine) -> dict[int, tuple[Any, tuple[Any, ...]]]:
    """The cuts along an outside by the number of their step: what the sheet prints, from the same place."""
    from jobsheet.machine.dial_readings import stop
    from jobsheet.report.rows.outside_cuts import outside

    cuts = {}
    for operation in set_up.operations:
        cut = outside(found, set_up, operation)
        handle = card.handle(cut.handle) if cut is not None else None
        if cut is not None and handle is not None:
            cuts[operation.number] = cut, tuple(stop(handle, distance) for distance in cut.distances)
    return cuts


def _as_data(set_up: Any, readings: Any, outside: Any) -> dict[str, Any]:
    return {
        "number": set_up.number,
        "steps": [
            {
                "number": reading.number,
                "places": [{"place": at.words, "x": _stop(at.x), "y": _stop(at.y), "back off": list(at.back)} for at in reading.places],
                "wall": None if reading.wall is None else {
                    "handle": reading.wall.handle, "centre": _stop(reading.wall.centre), "wall": reading.wall.wall, "comes out": reading.wall.comes_out,
                },
                "outside": None if reading.number not in outside else {
                    "handle": outside[reading.number][0].handle, "side": outside[reading.number][0].side,
                    "from a touch": outside[reading.number][0].touched, "cuts": [_stop(each) for each in outside[reading.number][1]],
                },
                "depth handle": reading.depth_handle,
                "depth zero": reading.depth_zero,
                "depths": [_stop(each) for each in reading.depths],
                "warnings": list(reading.warnings),
            }
            for reading in readings
        ],
    }  # fmt: skip


def _cell(one: Any, units: str) -> str:
    from jobsheet.machine.dial_readings import error_text

    if one is None:
        return "–"
    drawing = f" ({one.drawing})" if one.drawing else ""
    return f"{one.dial}, {one.line}, {error_text(one.error, units)}{drawing}"


def _as_text(plan: Job, card: Machine, rows: Any) -> None:
    from jobsheet.machine.handles import scale_text
    from jobsheet.reckoning.answers.readings import approaches

    for handle in card.handles:
        say(f"{handle.name}: {scale_text(handle)}")
    for name, words in approaches(card):
        say(f"{name}: {words}")
    say(f"A reading is turns + dial, the line to stop at, and how far off that is in {plan.units}.")
    for set_up, readings, outside in rows:
        say(f"\nSet-up {set_up.number}  {set_up.title}".rstrip())
        for reading in readings:
            say(f"{reading.number:>5}")
            columns(
                [
                    (f"x {_cell(at.x, plan.units)}", f"y {_cell(at.y, plan.units)}", _back(at))
                    for at in reading.places
                ],
                "       ",
            )
            if reading.wall is not None:
                from jobsheet.operations.shared.common import millimetres

                out, unit = millimetres(reading.wall.comes_out, plan.units)
                say(f"       the wall comes out at {out} {unit}, {reading.wall.handle}")
            if reading.number in outside:
                cut, stops = outside[reading.number]
                zero = (
                    f"from touching the {cut.side} side" if cut.touched else f"of the centre, {cut.side} side"
                )
                say(f"       {cut.handle} {zero}: {'; '.join(_cell(each, plan.units) for each in stops)}")
            if reading.depths:
                totals = "; ".join(_cell(each, plan.units) for each in reading.depths)
                say(f"       {reading.depth_handle}: {totals}")
                say(f"       {reading.depth_handle}: {reading.depth_zero}")
            for words in reading.warnings:
                say(f"       {words}")


def _back(at: Any) -> str:
    return f"from above: go back past it on {' and '.join(at.back)}, then come up" if at.back else ""
