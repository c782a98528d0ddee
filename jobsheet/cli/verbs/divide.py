"""`jobsheet divide 7`, `jobsheet divide JOB STEP`: a division on the dividing
head and on the rotary table.
"""

from __future__ import annotations

from typing import Any

import click

from jobsheet.cli.output import as_json, columns, say
from jobsheet.errors import QuantityError

#: More steps than this are listed only when asked for.
SHORT = 24


@click.command("divide")
@click.argument("what", metavar="COUNT, ANGLE or JOB")
@click.argument("step", required=False)
@click.option("--ratio", default="40", help="turns of the handle for one turn of the work: 40, 60, 90 …")
@click.option("--circles", help="holes of your own plates, such as 15,16,17,18,19,20")
@click.option("--line", help="a line of the rotary table's dial, such as 2'")
@click.option("--all", "want_all", is_flag=True, help="every step from the zero, however many there are")
@click.option("--json", "want_json", is_flag=True, help="as JSON, angles in degrees")
def command(
    what: str,
    step: str | None,
    ratio: str,
    circles: str | None,
    line: str | None,
    want_all: bool,
    want_json: bool,
) -> int:
    """Whole turns and holes on a circle for each step; degrees and minutes on a rotary table's dial.

    7 is seven steps in a turn; 12.5° or "12° 30'" is an angle. A job file with the number of a step gives the
    places of its pitch circles, counted from the first hole; without a step those of all steps.
    """
    from fractions import Fraction

    from jobsheet.catalog.trade.dividing_plates import plates, worms
    from jobsheet.machine.dividing_head import ROUND, divide, on_table, places, read_angle

    worm = _whole(ratio, "ratio")
    known = tuple(hole for plate in plates() for hole in plate.circles)
    own = (
        tuple(_whole(part, "circles") for part in circles.replace(";", ",").split(",")) if circles else known
    )
    marked = read_angle(line or worms().get(worm, ("", "5'"))[1])
    if step is not None or what.casefold().endswith((".yaml", ".yml")):
        return _of_job(what, step, worm, own, marked, want_json=want_json)
    counted = what.strip().isascii() and what.strip().isdigit()
    division = (
        divide(worm, own, count=_whole(what, "count"))
        if counted
        else divide(worm, own, angle=read_angle(what))
    )
    steps = places(division) if division.count is not None and (want_all or division.count <= SHORT) else ()
    table = [on_table(division.angle * step, worm, marked) for step in range(1, max(len(steps), 1) + 1)]
    if want_json:
        as_json(_data(division, steps, table))
    else:
        _text(division, steps, table, marked, Fraction(ROUND, worm))
    return 0


def _whole(text: str, name: str) -> int:
    wanted = text.strip()
    if not wanted.isascii() or not wanted.isdigit() or int(wanted[:9]) < 1 or len(wanted) > 6:
        raise QuantityError(f"“{text.strip()}” is not a whole number for {name}; write 40.")
    return int(wanted)


def _turns(one: Any) -> dict[str, Any]:
    return {"turns": one.whole, "holes": one.holes, "circle": one.circle, "error": float(one.error)}


def _data(found: Any, steps: Any, table: Any) -> dict[str, Any]:
    return {
        "ratio": float(found.ratio), "angle": float(found.angle), "count": found.count, "exact": found.turns.exact,
        "ways": [_turns(way) for way in found.ways],
        "steps": [_turns(step) for step in steps],
        "rotary table": [
            {"angle": float(one.angle), "turns": one.line_turns, "line": one.line, "degrees": one.degrees, "minutes": float(one.minutes), "error": float(one.error)}
            for one in table
        ],
    }  # fmt: skip


def _plate(circle: int) -> str:
    from jobsheet.catalog.trade.dividing_plates import plates

    return next((f"plate {plate.name}" for plate in plates() if circle in plate.circles), "")


def _off(error: Any) -> str:
    seconds = abs(float(error)) * 3600
    if not seconds:
        return "exact"
    return f"{'over' if error > 0 else 'short'} by {seconds:.1f}″"


def _text(found: Any, steps: Any, table: Any, line: Any, a_turn: Any) -> None:
    from jobsheet.machine.dividing_head import angle_text

    say(
        f"One step is {angle_text(found.angle)}; {float(found.ratio):g} turns of the handle turn the work once."
    )
    columns([(way.words, _plate(way.circle), _off(way.error)) for way in found.ways], "  ")
    if not found.turns.exact:
        say(
            f"No circle here divides it exactly. Counted from step to step it ends {abs(float(found.sum_of_errors)) * 3600:.0f}″ off:"
            " count every step from the zero, as below."
        )
    if steps:
        say(f"From the zero on the circle of {steps[0].circle}:")
        columns([(str(index), one.words, _off(one.error)) for index, one in enumerate(steps, 1)], "  ")
    say(f"On a rotary table of {angle_text(a_turn)} a turn, lines of {angle_text(line)}:")
    columns(
        [
            (
                angle_text(one.angle), f"{one.turns} turns + {one.degrees}° {float(one.minutes):.1f}′",
                f"{one.line_turns} turns, line {one.line}" if one.line_turns != one.turns else f"line {one.line}", _off(one.error),
            )
            for one in table
        ],
        "  ",
    )  # fmt: skip
    say("Circles of holes are those usual on plates (common practice, remembered): count your own.")


def _of_job(
    path: str, step: str | None, worm: int, own: tuple[int, ...], line: object, *, want_json: bool
) -> int:
    """The pitch circles of a step, or of all steps, as they are set."""
    from jobsheet.cli.named_job import job_named
    from jobsheet.model.quantity import Pattern
    from jobsheet.operations.patterns import pitch_circle
    from jobsheet.storage.card_files import find_card

    plan = job_named(path)
    wanted = [
        operation
        for _, operation in plan.operations()
        if step is None or step.strip() in (str(operation.number), operation.key)
    ]
    if not wanted:
        numbers = ", ".join(str(operation.number) for _, operation in plan.operations())
        raise QuantityError(f"There is no step “{step}” in {path}; its steps are {numbers}.")
    found = [
        (operation, item, circle)
        for operation in wanted
        for item in getattr(getattr(operation.fields, "at", None), "items", ())
        if isinstance(item, Pattern) and (circle := pitch_circle(item, plan.units)) is not None
    ]
    if not found:
        where = f"Step {step}" if step is not None else f"No step of {path}"
        has = "has no pitch circle" if step is not None else "has a pitch circle"
        raise QuantityError(f"{where} {has}; write its places as circle of 6 on 40 around 50, 30.")
    card = find_card(plan.machine)
    data = [
        _circle(plan, card, operation, item, circle, worm, own, line) for operation, item, circle in found
    ]
    if want_json:
        as_json({"ratio": worm, "circles": data})
        return 0
    for each in data:
        _print_circle(each, worm)
    say("Circles of holes are those usual on plates (common practice, remembered): count your own.")
    return 0


def _circle(
    plan: Any, card: Any, operation: Any, item: Any, circle: Any, worm: int, own: tuple[int, ...], line: Any
) -> dict[str, Any]:
    """One pitch circle: how far out its holes are on the dial, and each hole's setting from the first."""
    import math

    from jobsheet.machine.dial_readings import stop
    from jobsheet.machine.dividing_head import angle_text, on_table, settings

    handle = card.handle("x")
    out = stop(handle, circle.radius) if handle is not None else None
    ways = settings(circle.angles, worm, own)
    rows = []
    for number, (place, angle, way) in enumerate(zip(item.points, circle.angles, ways, strict=True), 1):
        table = on_table(angle, worm, line)
        rows.append(
            {
                "hole": number, "place": place.text, "angle": float(angle), "angle text": angle_text(angle), **_turns(way),
                "words": way.words, "off": _off(way.error), "off at the hole": math.radians(float(way.error)) * circle.radius,
                "rotary table": {
                    "turns": table.line_turns, "line": table.line, "degrees": table.degrees, "minutes": float(table.minutes),
                    "error": float(table.error), "off": _off(table.error),
                    "words": f"{table.line_turns} turns, line {table.line} ({table.turns} turns + {table.degrees}° {float(table.minutes):.1f}′)",
                },
            }
        )  # fmt: skip
    return {
        "key": operation.key, "number": operation.number, "pattern": item.text, "radius": circle.radius,
        "middle": [circle.x, circle.y], "first": float(circle.first), "first text": angle_text(circle.first),
        "circle": ways[0].circle, "line": angle_text(line), "units": plan.units,
        "out": None if out is None else {"dial": out.dial, "line": out.line, "error": out.error}, "places": rows,
    }  # fmt: skip


def _print_circle(each: dict[str, Any], worm: int) -> None:
    from jobsheet.machine.dial_readings import error_text
    from jobsheet.operations.shared.common import millimetres

    def length(value: float) -> str:
        return " ".join(millimetres(value, each["units"]))

    x, y = (millimetres(value, each["units"])[0] for value in each["middle"])
    say(f"Step {each['number']}  {each['pattern']}")
    say(
        f"  Middle of the head or table under the spindle, there the work's {x}, {y}; then out by {length(each['radius'])}"
    )
    out = each["out"]
    if out is not None:
        say(
            f"  on x: {out['dial']}, {out['line']}, {error_text(out['error'], each['units'])} {each['units']} off."
        )
    say(
        f"  Hole 1 lies at {each['first text']} from x and is the zero; the work turns against the way the holes are numbered."
    )
    plate = _plate(each["circle"])
    say(
        f"  Dividing head of {worm} turns, circle of {each['circle']}{f' ({plate})' if plate else ''}, each hole from the zero:"
    )
    columns(
        [
            (str(row["hole"]), row["place"], row["angle text"], row["words"], row["off"], _at_the_hole(row["off at the hole"], each["units"]))
            for row in each["places"]
        ],
        "    ",
    )  # fmt: skip
    say(f"  Rotary table of {worm} turns, lines of {each['line']}:")
    columns(
        [
            (str(row["hole"]), row["rotary table"]["words"], row["rotary table"]["off"])
            for row in each["places"]
        ],
        "    ",
    )


def _at_the_hole(error: float, units: str) -> str:
    from jobsheet.operations.shared.common import millimetres

    return f"{' '.join(millimetres(abs(error), units))} at the hole" if error else ""
