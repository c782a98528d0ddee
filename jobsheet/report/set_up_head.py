"""The head of a set-up: how the work is held, its zero from above, what it is
after it, ticks and positions.
"""

from __future__ import annotations

from jobsheet.holdings.all_holdings import rests_of, words_of
from jobsheet.holdings.of_stock import at_odds
from jobsheet.holdings.placed import height_under, in_jaws
from jobsheet.holdings.to_say import to_say, unasked
from jobsheet.machine.handles import scale_text
from jobsheet.operations.shared.common import millimetres
from jobsheet.report.blocks import (
    Cell,
    Column,
    Columns,
    Gap,
    Heading,
    Picture,
    Rule,
    Table,
    Ticks,
    Words,
)
from jobsheet.report.closer_on_page import closer_on, larger_pictures
from jobsheet.report.dial_words import approach, backlash
from jobsheet.report.heed.set_up_ticks import before as ticked_before
from jobsheet.report.held_in_words import changes, gone_by, sits_words, tight_words
from jobsheet.report.holding_view import holding_picture, jaw_words
from jobsheet.report.photograph_pages import with_photograph
from jobsheet.report.pictured.cutter_begins import first_cut
from jobsheet.report.pictured.made_sizes import made
from jobsheet.report.pictured.recess_entries import entry_items
from jobsheet.report.pictured.zero_there import zero_there
from jobsheet.report.plan import Course, Plan, letters_of, on_sheet
from jobsheet.report.points import ON_THE_SHEET, Point, dial_place
from jobsheet.report.rows.goes_in import entries
from jobsheet.report.stage_view import after_picture, from_above, shown
from jobsheet.report.zero_view import Seen, beside_the_work, zero_picture

#: Height of the drawings: on a set-up's first sheet, and in a short block or on a sheet that
#: continues [points]; on a page that has room for more, the first of these that fits.
FIRST, SMALL = 96.0, 80.0
LARGER = (150.0, 132.0, 114.0)
SHORT_LARGER = (124.0, 102.0)
#: How wide the picture from above is: on a set-up's first sheet, and in a short block [points].
WIDE, SMALL_WIDE = 190.0, 166.0


def head(
    plan: Plan,
    course: Course,
    *,
    small: bool,
    before: str | None = None,
    positions: bool = True,
    high: float = 0.0,
) -> tuple[object, ...]:
    """Everything above the steps of a set-up.

    Parameters
    ----------
    small : bool
        Two drawings with the ticks beside them, for a set-up of few steps
    before : str or None
        The step after which a sheet continues; None on the first
    positions : bool
        Whether the points stand on this sheet
    high : float
        Height of the drawings [points]; 0 for the usual one
    """
    table = positions_on(plan, course) if positions else ()
    if before is not None:
        held = plan.once(_again, course, before, high or SMALL)
        return (*held, Rule(), *((*table, Rule()) if table else ()))
    if small:
        block, *ticked = plan.once(_small, course, high or SMALL)
        below = with_photograph(plan, course.set_up, tuple(ticked))
        closer = larger_pictures(plan, course, SMALL_WIDE, high or SMALL)
        return (block, *closer, *below, *((Rule(), *table) if table else ()), Rule())
    ticks = with_photograph(
        plan,
        course.set_up,
        (Heading("Before cutting"), Ticks(ticked_before(plan, course.set_up)), *_reminded(plan, course)),
    )
    return (
        *plan.once(full_pictures, course, high or FIRST),
        Rule(),
        *ticks,
        Rule(),
        *((*table, Rule()) if table else ()),
    )


def _reminded(plan: Plan, course: Course) -> tuple[Words, ...]:
    said = " · ".join(row.text for row in plan.reminders.set_ups.get(course.set_up.key, ()))
    return (Words(f"{said}.", "note"),) if said else ()


def _small(plan: Plan, course: Course, high: float) -> tuple[object, ...]:
    """A block of some 40 mm, more where its page has the room: hold and zero with the rest in
    words beside them, and the ticks below.
    """
    set_up = course.set_up
    hold = holding_picture(set_up, course.lie, letters_of(plan), 126, high, plan.card, units=plan.job.units)
    beside = (*said(held_facts(plan, course)), *_reminded(plan, course))
    return (
        Columns(
            parts=(
                (Picture("", hold),),
                (zero_from_above(plan, course, on_sheet(course), SMALL_WIDE, high, title="", closer=True),),
                (Gap(1), *beside),
            ),
            shares=(0.265, 0.345, 0.39),
            ruled=(2,),
        ),
        Ticks(ticked_before(plan, set_up)),
    )


def _again(plan: Plan, course: Course, before: str, high: float) -> tuple[object, ...]:
    """On a sheet that continues: hold and zero once more, and what changed since the set-up began."""
    set_up = course.set_up
    since = changes(set_up, int(before)) if before else ""
    gone = gone_by(set_up, int(before)) if before else frozenset()
    again = f"step {before}: {since or 'same holding'}, same zero"
    facts = (("continues from", again), *(fact for fact in held_facts(plan, course) if fact[0] in _AGAIN))
    hold = holding_picture(set_up, course.lie, letters_of(plan), 150, high, plan.card, gone, plan.job.units)
    return (
        Columns(
            parts=(
                (Picture("", hold),),
                (
                    zero_from_above(
                        plan,
                        course,
                        on_sheet(course),
                        180,
                        high,
                        gone,
                        "",
                        first=False,
                        after=int(before or 0),
                    ),
                ),
                (Gap(1), *said(facts)),
            ),
            shares=(0.31, 0.37, 0.32),
            ruled=(2,),
        ),
    )


def zero_from_above(
    plan: Plan,
    course: Course,
    points: tuple[Point, ...],
    width: float,
    high: float,
    gone: frozenset[str] = frozenset(),
    title: str = "Zero, from above",
    *,
    first: bool = True,
    after: int = 0,
    closer: bool = False,
) -> object:
    """The zero and the points from above, on the lines of the work as the set-up begins;
    its `first` cut where it begins here.

    `after` is the number of the step that a sheet continues from: pockets that were begun
    before it are not entered any more. `closer` says whether what crowds stands larger on the same page.
    """
    set_up, lie = course.set_up, course.lie
    return shown(
        title,
        lambda: zero_picture(
            set_up,
            lie,
            points,
            letters_of(plan),
            width,
            high,
            from_above(plan.stages, set_up.key),
            plan.card,
            gone,
            first_cut(plan, course) if first else None,
            counted=zero_there(plan, course),
            into=_into(plan, course, after),
            closer=closer_on(plan, course, width, high) if closer else (),
        ),
        beside_the_work(set_up, lie, points),
    )


def _into(plan: Plan, course: Course, after: int) -> Seen | None:
    """Where cutters go down into pockets, for a left lower corner and a scale;
    None where no step does at a point.
    """
    found = [entry for entry in entries(plan, course) if entry.step > after]
    if not found:
        return None
    return lambda left, foot, scale: tuple(
        item for entry in found for item in entry_items(course, entry, left, foot, scale)
    )


def full_pictures(plan: Plan, course: Course, high: float) -> tuple[object, ...]:
    """The three pictures of a set-up's first sheet, and the holding in words under them in two columns."""
    set_up, datums = course.set_up, letters_of(plan)
    hold = holding_picture(set_up, course.lie, datums, 148, high, plan.card, units=plan.job.units)
    after = shown(
        "After this set-up",
        lambda: after_picture(plan.stages, set_up.key, datums, 142, high, made(plan, course)),
    )
    pictures: list[tuple[object, ...]] = [
        (Picture("Hold", hold),),
        (zero_from_above(plan, course, on_sheet(course), WIDE, high, closer=True),),
    ]
    if after is not None:
        pictures.append((after,))
    shares = (0.3, 0.41, 0.29) if after is not None else (0.4, 0.6)
    return (
        Columns(parts=tuple(pictures), shares=shares, ruled=(2,) if after is not None else ()),
        *said(held_facts(plan, course)),
        *larger_pictures(plan, course, WIDE, high),
    )


def said(facts: tuple[tuple[str, str], ...]) -> tuple[Words, ...]:
    """Facts in one running line: as a table they would take the room of two steps."""
    return (Words(" · ".join(f"{caption}: {text}" for caption, text in facts), "note"),) if facts else ()


#: What a sheet that continues says again.
_AGAIN = ("held in", "fixed jaw", "on", "under it", "zero")


def held_facts(plan: Plan, course: Course) -> tuple[tuple[str, str], ...]:
    """Holding and zero in words; what was not said is left out."""
    set_up = course.set_up
    holding, zero = set_up.holding, set_up.zero
    where = f"set-up {set_up.number}"
    units = plan.job.units
    letters = {face: letter for letter, face in plan.job.datums}
    found = f", with {zero.found}" if zero.found else ""
    up = f"{set_up.up}{f' ({letters[set_up.up]})' if set_up.up in letters else ''}, {set_up.operator} to you"
    rows = (
        ("held in", ", ".join(part for part in (words_of(holding), tight_words(holding)) if part)),
        ("face up", up),
        ("fixed jaw", jaw_words(set_up, plan.job.datums) if in_jaws(set_up, course.lie) else ""),
        ("on", rests_of(holding)),
        ("under it", _under(plan, course)),
        ("sits", sits_words(holding, units)),
        ("not said", ", ".join(to_say(set_up, plan.job.stock))),
        ("does not agree", at_odds(set_up, plan.job.stock)),
        ("not checked", unasked(set_up)),
        ("zero", f"{zero.named or 'corner'}{found}" if zero_there(plan, course) else ""),
        ("note", "; ".join(text for text in (holding.note, set_up.note) if text)),
    )
    return tuple((caption, plan.short(text, 400, f"{where}, {caption}")) for caption, text in rows if text)


def _under(plan: Plan, course: Course) -> str:
    """How much room parallels or packing fill, where it follows from the jaws of the
    card: which pair is to be fetched.
    """
    high = height_under(course.set_up, course.lie, plan.card)
    if high is None:
        return ""
    return f"{' '.join(millimetres(high, plan.job.units))} down to the bed, by the jaws’ depth"


def positions_on(plan: Plan, course: Course) -> tuple[object, ...]:
    """The table of points, or where to find it."""
    if not course.points:
        return ()
    if len(course.points) > ON_THE_SHEET:
        words = f"{len(course.points)} points: on the positions card of this set-up."
        return (Heading("Positions", words), Words(approach(course.set_up), "note"))
    return (
        Heading("Positions", scales(plan)),
        positions_table(plan, course, course.points),
        Words(approach(course.set_up), "note"),
    )


def scales(plan: Plan) -> str:
    """What a turn and a line are on the two handles; once where they are alike."""
    x, y = plan.card.handle("x"), plan.card.handle("y")
    words = list(dict.fromkeys(scale_text(handle) for handle in (x, y) if handle is not None))
    dials = f"{plan.card.title} dials, "
    scale = (
        words[0]
        if len(words) == 1
        else "; ".join(f"{axis} {text}" for axis, text in zip("XY", words, strict=False))
    )
    return "; ".join(part for part in (dials + scale, backlash(plan.card)) if part)


def positions_table(
    plan: Plan, course: Course, points: tuple[Point, ...], passes: tuple[int, ...] = ()
) -> Table:
    """Whole turns and the line to stop at, from the zero; beside them how far off the line is where it is."""
    units = plan.job.units
    columns = [
        Column(caption="point", style="number"),
        Column(caption=units, align="right", style="label"),
        Column(caption="X turns + line", style="dial"),
        Column(caption=units, align="right", style="label", ruled=True),
        Column(caption="Y turns + line", style="dial"),
        *(Column(caption=str(number), tick=True) for number in passes),
    ]
    rows = [
        (
            Cell(str(point.number)),
            *_axis(plan, "x", point.x, point.x_text),
            *_axis(plan, "y", point.y, point.y_text),
            *(Cell(tick=number in point.steps) for number in passes),
        )
        for point in points
    ]
    return Table(columns=tuple(columns), rows=(_zero_row(plan, course, passes), *rows))


def _zero_row(plan: Plan, course: Course, passes: tuple[int, ...]) -> tuple[Cell, ...]:
    named = plan.short(course.set_up.zero.named, 30, f"set-up {course.set_up.number}, zero")
    return (
        Cell("0", (named,) if named else ()),
        *_axis(plan, "x", 0.0, "0"),
        *_axis(plan, "y", 0.0, "0"),
        *(Cell(tick=False) for _ in passes),
    )


def _axis(plan: Plan, axis: str, distance: float, text: str) -> tuple[Cell, Cell]:
    place = dial_place(plan.card.handle(axis), distance, plan.job.units)
    return Cell(plan.short(text, 14, "position")), Cell(
        place.on_lines or "no handle", (place.error,) if place.error else ()
    )
