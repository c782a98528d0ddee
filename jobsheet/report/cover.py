"""The cover: stock and finished work, what to fetch, the set-ups with their
minutes, what to heed, who signs.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import TYPE_CHECKING

from msgspec.structs import replace

from jobsheet.catalog.metals.densities import density
from jobsheet.catalog.metals.materials import find as find_material
from jobsheet.drawing.drawn import Drawing
from jobsheet.errors import JobsheetError
from jobsheet.model.job import Job, SetUp
from jobsheet.model.lying import stock_box
from jobsheet.model.stock import BOX
from jobsheet.reckoning.minutes import minutes_of
from jobsheet.report.blocks import (
    Box,
    Cell,
    Column,
    Columns,
    Gap,
    Heading,
    NoteLine,
    NoteLines,
    Page,
    Picture,
    Rule,
    Signature,
    Table,
    Ticks,
    Words,
    Writing,
)
from jobsheet.report.fetch import Fetched, also_on_the_bench, fetched, in_runs
from jobsheet.report.heed.revisions import revision_blocks
from jobsheet.report.heed.safety import line
from jobsheet.report.heed.set_up_ticks import once
from jobsheet.report.heed.stops import band
from jobsheet.report.isometric import stock_picture
from jobsheet.report.plan import Plan
from jobsheet.report.stage_view import finished_view, shown
from jobsheet.report.titles import printed_code_of, title
from jobsheet.report.wording import CHECKED, FOOT, TRAINEE_JOB
from jobsheet.stock.all_shapes import words_of

if TYPE_CHECKING:
    from jobsheet.finished.finished_part import FinishedPart

#: Rows of the two tables on the cover itself; what is more goes on its second sheet.
FETCH, SET_UPS, OPEN = 14, 8, 6
#: Rows of a table on a page of its own.
LONG = 30
#: The reason for the order and a note, as long as anybody writes them.
WHOLE = (1800, 900)
#: So many notes stand on the cover where anything can make room for them.
LEAST = 4
CHANGE = "What I would change next time"


def cover(plan: Plan) -> list[Page]:
    """The cover and, for large jobs, further sheets of it."""
    things, set_ups = fetched(plan), plan.job.set_ups
    first, opened = _first(plan, things[:FETCH], set_ups[:SET_UPS])
    pages = [first]
    rest_things, rest_set_ups, rest_open = things[FETCH:], set_ups[SET_UPS:], open_lines(plan)[opened:]
    while rest_things or rest_set_ups:
        count = LONG
        while count > 1 and not plan.fits(_tables(plan, rest_things[:count], rest_set_ups[:count])):
            count -= 1
        pages.append(_tables(plan, rest_things[:count], rest_set_ups[:count]))
        rest_things, rest_set_ups = rest_things[count:], rest_set_ups[count:]
    if rest_open and len(pages) > 1:
        joined = replace(pages[-1], blocks=(*pages[-1].blocks, Gap(), *open_box(rest_open)))
        if plan.fits(joined):
            pages[-1], rest_open = joined, rest_open[:0]
    while rest_open:
        count = LONG
        while count > 1 and not plan.fits(_open_page(plan, rest_open[:count])):
            count -= 1
        pages.append(_open_page(plan, rest_open[:count]))
        rest_open = rest_open[count:]
    return pages


def _open_page(plan: Plan, lines: list[NoteLine]) -> Page:
    return _page(plan, "Cover, still open", (Gap(), *open_box(lines)))


def _page(plan: Plan, text: str, blocks: tuple[object, ...]) -> Page:
    return Page(
        kind="cover",
        about="cover",
        title=title(plan, "Sheet", text),
        blocks=blocks,
        foot=(*plan.of_the_print, FOOT),
        band=band(plan),
        code=plan.mark,
    )


def _first(plan: Plan, things: tuple[Fetched, ...], set_ups: tuple[SetUp, ...]) -> tuple[Page, int]:
    """The cover itself and how much of what is still open stands on it.

    As many notes as there is room for, then smaller pictures, then fewer open
    lines, and only then shorter texts.
    """
    notes = [note for note in plan.notes.sheet if not note.back]
    tries = [((145.0, WHOLE), OPEN, LEAST), ((120.0, WHOLE), OPEN, LEAST), ((96.0, WHOLE), OPEN, LEAST)]
    tries += [((96.0, WHOLE), OPEN, 0), ((96.0, WHOLE), 4, 0), ((96.0, WHOLE), 2, 0)]
    tries += [((96.0, (600, 300)), 2, 0), ((96.0, (160, 120)), 1, 0)]
    for (high, lengths), opened, least in tries:
        make = partial(_made, plan, things, set_ups, lengths=lengths, high=high, opened=opened)
        page = make(min(least, len(notes)))
        if plan.fits(page):
            return _fullest(plan, page, make, range(min(least, len(notes)) + 1, len(notes) + 1)), opened
    return page, opened


def _fullest(plan: Plan, page: Page, make: Callable[[int], Page], counts: range) -> Page:
    """The page with as many notes as it has room for: one note more never takes less."""
    while counts:
        middle = len(counts) // 2
        more = make(counts[middle])
        if plan.fits(more):
            page, counts = more, counts[middle + 1 :]
        else:
            counts = counts[:middle]
    return page


def _made(
    plan: Plan,
    things: tuple[Fetched, ...],
    set_ups: tuple[SetUp, ...],
    count: int,
    lengths: tuple[int, int],
    high: float,
    opened: int,
) -> Page:
    job = plan.job
    left = fetch_blocks(plan, things, lengths[1])
    notes = [note for note in plan.notes.sheet if not note.back]
    lines = tuple(line(note) for note in notes[:count])
    right: list[object] = []
    if set_ups:
        right += [Heading("Set-ups", _from_class(plan)), set_up_table(plan, set_ups), Gap(3)]
        right += [Heading("Before the first cut"), Ticks(once(plan)), Gap(2)]
    else:
        right += [Heading("Set-ups"), Words("None is planned yet.", "label"), Gap(3)]
    if lines:
        right.append(Box((Heading("Before you start"), NoteLines(lines, "label"))))
    sign = TRAINEE_JOB if job.trainee else CHECKED
    made = _page(
        plan,
        "Cover",
        (
            *open_box(open_lines(plan)[:opened], len(open_lines(plan)) - opened),
            plan.once(pictures, high),
            Rule(),
            Columns(parts=(tuple(left), tuple(right)), shares=(0.5, 0.5)),
            *why_blocks(plan, lengths),
            *revision_blocks(plan),
            Rule(),
            Columns(parts=((Heading(CHANGE), Writing(1)), (Signature(sign),)), shares=(0.4, 0.6)),
        ),
    )
    return replace(made, printed=printed_code_of(plan))


def fetch_blocks(plan: Plan, things: tuple[Fetched, ...], most: int) -> list[object]:
    """What to fetch by drawer, and what else lies on the bench."""
    also = plan.short(also_on_the_bench(plan), most, "also on the bench")
    found: list[object] = [Heading("Fetch")]
    found.append(fetch_table(plan, things) if things else Words("No step names a tool yet.", "label"))
    return [*found, Rule(), Heading("Also on the bench"), Words(also, "label")] if also else found


def why_blocks(plan: Plan, lengths: tuple[int, int]) -> list[object]:
    """What is true of the whole part, why this order, and the note of the job."""
    whole = part_words(plan)
    blocks: list[object] = [Gap(2), Rule(), *whole] if whole else []
    for caption, text, most in (
        ("Why this order", plan.job.why, lengths[0]),
        ("Note", plan.job.note, lengths[1]),
    ):
        if text:
            blocks += [
                Gap(2),
                Rule(),
                Heading(caption),
                Words(plan.short(text, most, caption.lower()), "label"),
            ]
    return blocks


def _said(job: Job) -> FinishedPart | None:
    """What the part shall be; nothing is read where nothing is said."""
    if not job.finished:
        return None
    from jobsheet.finished.finished_part import finished_part

    return finished_part(job)


def pictures(plan: Plan, high: float) -> Columns:
    """Stock and finished work side by side."""
    job = plan.job
    sizes = tuple(
        plan.short(quantity.text, 16, "size of the stock")
        for quantity in (job.stock.length, job.stock.width, job.stock.height)
    )
    datums = tuple((plan.short(letter, 4, "datum letter"), face) for letter, face in job.datums)
    heavy = mass_words(plan)
    stock = stock_picture(stock_box(job), (sizes[0], sizes[1], sizes[2]), 245, high)
    return Columns(
        parts=(
            (_stock(plan, stock, high, heavy[0]),),
            (
                shown(
                    "Finished",
                    lambda: finished_view(plan.stages, datums, 245, high, _said(job), plan.short),
                    heavy[1],
                ),
            ),
        ),
        shares=(0.5, 0.5),
        ruled=(1,),
    )


def part_words(plan: Plan) -> tuple[Words, ...]:
    """What is true of the whole part and stands on none of its sizes: the drawing's general
    limits, and what comes afterwards.
    """
    part = plan.job.part
    left_on = f", {part.allowance.text} left on for it" if part.allowance is not None else ""
    said = (
        (
            part.general_limits,
            f"Sizes without limits: {plan.short(part.general_limits, 160, 'general limits')}",
        ),
        (
            part.later or left_on,
            f"Afterwards: {plan.short(part.later, 160, 'what comes afterwards')}{left_on}",
        ),
    )
    words = " · ".join(text for there, text in said if there)
    return (Words(words, "label"),) if words else ()


def _stock(plan: Plan, box: Drawing, high: float, heavy: str) -> Picture | Words | None:
    """The stock: a box with its sizes, any other shape as it is seen, with its sizes in words."""
    if plan.job.stock.shape == BOX:
        return Picture("Stock", box, heavy)
    words = plan.short(words_of(plan.job.stock), 60, "stock")
    caption = "; ".join(part for part in (words, heavy) if part)
    return shown("Stock", lambda: finished_view(plan.stages[:1], (), 245, high), caption)


def mass_words(plan: Plan) -> tuple[str, str]:
    """What stock and finished part weigh, and the chips; what is to be lifted is told before it is lifted."""
    from jobsheet.stages.checks import masses

    plain = "not to scale with the stock"
    try:
        material = find_material(plan.job.material)
    except JobsheetError:
        return "", plain
    heavy = density(material.family)
    if heavy is None:
        return "", plain
    stock, part, chips = masses(plan.stages, heavy)
    return mass_text(stock), f"{mass_text(part)}, chips {mass_text(chips)}; {plain}"


def mass_text(value: float) -> str:
    """A mass as one says it: grams below a kilogram."""
    return f"{value:.1f} kg" if value >= 1 else f"{value * 1e3:.0f} g"


def fetch_table(plan: Plan, things: tuple[Fetched, ...]) -> Table:
    """Boxes, drawer, number, what, and in which set-ups where there are several."""
    several = len(plan.job.set_ups) > 1
    columns = [
        Column(caption="got", tick=True),
        Column(caption="drawer", align="right"),
        Column(caption="no.", align="right", style="number"),
        Column(caption="what", wide=True),
    ]
    if several:
        columns.append(Column(caption="set-ups", align="right"))
    rows = []
    for thing in things:
        cells = [Cell(), Cell(thing.drawer), Cell(thing.number), Cell(thing.what)]
        rows.append((*cells, Cell(in_runs(thing.set_ups))) if several else tuple(cells))
    return Table(columns=tuple(columns), rows=tuple(rows))


def set_up_table(plan: Plan, set_ups: tuple[SetUp, ...]) -> Table:
    """Number, face up, steps, minutes to set, by hand and in the cut."""
    columns = (
        Column(caption="done", tick=True),
        Column(caption="", style="number"),
        Column(caption="face up", wide=True),
        Column(caption="steps", align="right"),
        Column(caption="minutes\nset + hand + cut", align="right"),
    )
    rows = []
    for set_up in set_ups:
        numbers = [operation.number for operation in set_up.operations]
        steps = "" if not numbers else str(numbers[0]) if len(numbers) == 1 else f"{numbers[0]}–{numbers[-1]}"
        words = plan.short(face_up(set_up), 60, f"set-up {set_up.number}, title")
        parts = minutes(plan, set_up)
        cells = (
            Cell(),
            Cell(str(set_up.number)),
            Cell(words),
            Cell(steps),
            Cell(" + ".join(f"{part:.0f}" for part in parts)),
        )
        rows.append(cells)
    whole = [
        sum(parts) for parts in zip(*(minutes(plan, set_up) for set_up in plan.job.set_ups), strict=True)
    ]
    total = (f"About {_hours(sum(whole))}", " + ".join(f"{part:.0f}" for part in whole)) if any(whole) else ()
    return Table(columns=columns, rows=tuple(rows), total=total)


def face_up(set_up: SetUp) -> str:
    """The set-up's own title, or the face that is up."""
    return set_up.title or f"{set_up.up[:1].upper()}{set_up.up[1:]} up"


def minutes(plan: Plan, set_up: SetUp) -> tuple[float, float, float]:
    """Minutes to set up, beside the cut (work by hand, changing tools, measuring), and in the cut."""
    found = minutes_of(set_up, plan.reckoned)
    return found.set_up / 60, (found.bench + found.change + found.measure) / 60, found.cut / 60


def _hours(whole: float) -> str:
    if whole < 100:
        return f"{max(5, 5 * round(whole / 5))} min"
    return f"{whole / 60:.1f} h".replace(".0 h", " h")


def open_lines(plan: Plan) -> list[NoteLine]:
    """What still stands against cutting: what was not checked, steps beyond or not
    reckoned, hazard and scrap remarks.
    """
    numbers = {operation.key: operation.number for _, operation in plan.job.operations()}
    lines = []
    for missing in plan.not_checked:
        said = missing.words(numbers.get(missing.operation))
        lines.append(NoteLine(f"{said[:1].upper()}{said[1:]}", "not tried", True))
    for key, outcome in plan.reckoned.operations.items():
        if outcome.problem:
            lines.append(
                NoteLine(f"Step {numbers[key]} cannot be calculated: {outcome.problem}", "hazard", True)
            )
        for limit in outcome.limits:
            if limit.verdict == "beyond":
                words = f"Step {numbers[key]}, beyond: {limit.title.lower()}, {limit.shown}. {limit.sentence}"
                lines.append(NoteLine(words.rstrip(". ") + ".", "beyond", True))
    for remark in plan.remarks:
        if remark.severity in ("hazard", "scrap"):
            steps = ", ".join(str(numbers[key]) for key in remark.operations if key in numbers)
            where = f"Step {steps}, " if steps else ""
            lines.append(
                NoteLine(f"{where}{remark.severity}: {remark.message.rstrip('.')}.", remark.severity, True)
            )
    return [
        NoteLine(plan.short(note_line.text, 300, f"still open, {index}"), note_line.sign, True)
        for index, note_line in enumerate(lines, 1)
    ]


def _from_class(plan: Plan) -> str:
    """Once, how many cuts rest on what machines of the class carry; nothing where trials stand behind all."""
    cuts = [
        any(limit.verdict == "not tried" for limit in outcome.limits)
        for outcome in plan.reckoned.operations.values()
        if any(limit.from_class for limit in outcome.limits)
    ]
    if not cuts:
        return ""
    said = f"{len(cuts)} cuts" if len(cuts) > 1 else "1 cut"
    more = f", {sum(cuts)} not tried: begin as the step says" if any(cuts) else ""
    return f"{said} by the class alone{more}"


def open_box(lines: list[NoteLine], more: int = 0) -> tuple[Box, ...]:
    """What still stands against cutting, in a frame; nothing where nothing does."""
    if not lines:
        return ()
    blocks: list[object] = [Heading("Still open in this plan"), NoteLines(tuple(lines), "label")]
    if more > 0:
        blocks.append(Words(f"{more} more on the next sheet of the cover.", "note bold"))
    return (Box(tuple(blocks)),)


def _tables(plan: Plan, things: tuple[Fetched, ...], set_ups: tuple[SetUp, ...]) -> Page:
    left = (Heading("Fetch", "continued"), fetch_table(plan, things)) if things else ()
    right = (Heading("Set-ups", "continued"), set_up_table(plan, set_ups)) if set_ups else ()
    return _page(plan, "Cover, continued", (Gap(), Columns(parts=(left, right), shares=(0.5, 0.5))))
