"""`jobsheet divide 7 --ratio 40`: a division on the dividing head and on the rotary table."""

from __future__ import annotations

from typing import Any

import click

from jobsheet.cli.output import as_json, columns
from jobsheet.errors import QuantityError

#: More steps than this are listed only when asked for.
SHORT = 24


@click.command("divide")
@click.argument("what", metavar="COUNT or ANGLE")
@click.option("--ratio", default="40", help="turns of the handle for one turn of the work: 40, 60, 90 …")
@click.option("--circles", help="holes of your own plates, such as 15,16,17,18,19,20")
@click.option("--line", help="a line of the rotary table's dial, such as 2'")
@click.option("--all", "want_all", is_flag=True, help="every step from the zero, however many there are")
@click.option("--json", "want_json", is_flag=True, help="as JSON, angles in degrees")
def command(
    what: str, ratio: str, circles: str | None, line: str | None, want_all: bool, want_json: bool
) -> int:
    """Whole turns and holes on a circle for each step; degrees and minutes on a rotary table's dial.

    7 is seven steps in a turn; 12.5° or "12° 30'" is an angle.
    """
    from fractions import Fraction

    from jobsheet.catalog.dividing import plates, worms
    from jobsheet.machine.dividing import ROUND, divide, on_table, places, read_angle

    worm = _whole(ratio, "ratio")
    known = tuple(hole for plate in plates() for hole in plate.circles)
    own = (
        tuple(_whole(part, "circles") for part in circles.replace(";", ",").split(",")) if circles else known
    )
    counted = what.strip().isascii() and what.strip().isdigit()
    found = (
        divide(worm, own, count=_whole(what, "count"))
        if counted
        else divide(worm, own, angle=read_angle(what))
    )
    marked = read_angle(line or worms().get(worm, ("", "5'"))[1])
    steps = places(found) if found.count is not None and (want_all or found.count <= SHORT) else ()
    table = [on_table(found.angle * step, worm, marked) for step in range(1, max(len(steps), 1) + 1)]
    if want_json:
        as_json(_data(found, steps, table))
    else:
        _text(found, steps, table, marked, Fraction(ROUND, worm))
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
        "ways": [_turns(one) for one in found.ways],
        "steps": [_turns(one) for one in steps],
        "rotary table": [
            {"angle": float(one.angle), "turns": one.line_turns, "line": one.line, "degrees": one.degrees, "minutes": float(one.minutes), "error": float(one.error)}
            for one in table
        ],
    }  # fmt: skip


def _plate(circle: int) -> str:
    from jobsheet.catalog.dividing import plates

    return next((f"plate {plate.name}" for plate in plates() if circle in plate.circles), "")


def _off(error: Any) -> str:
    seconds = abs(float(error)) * 3600
    if not seconds:
        return "exact"
    return f"{'over' if error > 0 else 'short'} by {seconds:.1f}″"


def _text(found: Any, steps: Any, table: Any, line: Any, a_turn: Any) -> None:
    from jobsheet.machine.dividing import angle_text

    click.echo(
        f"One step is {angle_text(found.angle)}; {float(found.ratio):g} turns of the handle turn the work once."
    )
    columns([(one.words, _plate(one.circle), _off(one.error)) for one in found.ways], "  ")
    if not found.turns.exact:
        click.echo(
            f"No circle here divides it exactly. Counted from step to step it ends {abs(float(found.sum_of_errors)) * 3600:.0f}″ off:"
            " count every step from the zero, as below."
        )
    if steps:
        click.echo(f"From the zero on the circle of {steps[0].circle}:")
        columns([(str(index), one.words, _off(one.error)) for index, one in enumerate(steps, 1)], "  ")
    click.echo(f"On a rotary table of {angle_text(a_turn)} a turn, lines of {angle_text(line)}:")
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
    click.echo("Circles of holes are those usual on plates (common practice, remembered): count your own.")
