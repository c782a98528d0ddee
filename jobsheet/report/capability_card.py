"""The capability card: what one or two machines will carry in chosen metals, with the torque each gives, on one page.

More metals go on further pages, for a table that is read at arm's length has no room for more.
"""

from __future__ import annotations

from jobsheet.model.machine import Machine
from jobsheet.reckoning.answers.capability_rows import Capability, Card, OnMachine, Row
from jobsheet.report.blocks import (
    Cell,
    Column,
    Columns,
    Document,
    Gap,
    Heading,
    Page,
    Picture,
    Table,
    TitleCell,
    Words,
)
from jobsheet.report.torque_chart import torque_chart
from jobsheet.report.wording import CALCULATED, FOOT

#: So many metals stand on one page of one machine, and of two.
METALS = (2, 1)
#: Torque charts: one alone, or two side by side [points].
ALONE, BESIDE, HIGH = (470.0, 170.0), (246.0, 170.0), 150.0
_START = "One cut in ten ends badly at a planned limit: watch, listen and feel. Cut before: a recorded good cut asked at least as much."


def capability_card(capability: Capability, *, date: str = "", name: str = "capability") -> Document:
    """The pages of a card; `date` is when it was made, for what is known of a machine grows."""
    # The minutes of a job take the room of the second metal.
    room = 1 if capability.on else METALS[min(len(capability.machines), 2) - 1]
    metals = [capability.materials[at : at + room] for at in range(0, len(capability.materials), room)] or [
        ()
    ]
    pages = tuple(_page(capability, part, number, len(metals), date) for number, part in enumerate(metals, 1))
    titles = " and ".join(machine.title for machine in capability.machines)
    return Document(name=name, title=f"{titles}, capability card", pages=pages, source=b"")


def _page(
    capability: Capability, metals: tuple[tuple[Card, ...], ...], number: int, total: int, date: str
) -> Page:
    blocks: list[object] = []
    for cards in metals:
        held = sorted({card.held for card in cards if card.held})
        blocks.append(Heading(cards[0].title, f"held in the {' or the '.join(held)}" if held else ""))
        blocks += _one(cards[0]) if len(cards) == 1 else _beside(cards)
        blocks.append(Gap(3))
    if number == 1:
        blocks += _job(capability)
        blocks += _next(metals)
        blocks += _charts(capability)
    blocks.append(Words(_START, "label bold"))
    return Page(
        kind="capability", about="capability", title=_title(capability, date), blocks=tuple(blocks), foot=(CALCULATED, FOOT),
        number=number, total=total,
    )  # fmt: skip


def _title(capability: Capability, date: str) -> tuple[tuple[TitleCell, ...], ...]:
    names = [
        f"{machine.title}, invented" if machine.invented else machine.title for machine in capability.machines
    ]
    cards = ", ".join(machine.card_date for machine in capability.machines)
    return (
        (
            TitleCell(caption="Capability card", text=names[0], share=0.44, strong=True),
            TitleCell(caption="Beside it", text=names[1] if len(names) > 1 else "", share=0.36, strong=True),
            TitleCell(caption="Page", share=0.2, strong=True, page=True),
        ),
        (
            TitleCell(caption="Machine cards of", text=cards, share=0.44),
            TitleCell(caption="Same job on each", text=_job_title(capability), share=0.36),
            TitleCell(caption="Made", text=date, share=0.2),
        ),
    )


def _job_title(capability: Capability) -> str:
    return (
        f"{capability.job.part.number} {capability.job.part.name}".strip()
        if capability.job is not None
        else ""
    )


def _verdict(row: Row) -> str:
    return row.verdict


def _band(row: Row) -> str:
    """The two ends and the middle, with the unit said once."""
    ends = (row.low, row.middle, row.high)
    if all(end in ("", "–") for end in ends):
        return "–"
    unit = row.high.rpartition(" ")[2]
    if all(end.endswith(f" {unit}") for end in ends):
        return " – ".join(dict.fromkeys(end.removesuffix(f" {unit}") for end in ends))
    return " – ".join(ends)


def _what(row: Row) -> str:
    return f"{row.what}: {row.cutter}"


def _one(card: Card) -> list[object]:
    """One machine: what stops it has a column of its own."""
    columns = (
        Column(caption="what is asked", style="label"),
        Column(caption="plan to", style="number"),
        Column(caption="verdict", style="label"),
        Column(caption="band, from\n5 % to 95 %", style="legend"),
        Column(caption="what stops more", style="label", wide=True),
    )
    rows = tuple(
        (Cell(_what(row)), Cell(row.plan or "–"), Cell(_verdict(row)), Cell(_band(row)), Cell(_stops(row)))
        for row in card.rows
    )
    return [Table(columns=columns, rows=rows)]


def _stops(row: Row) -> str:
    return "; ".join(part for part in (row.note, row.stops) if part) or "–"


def _beside(cards: tuple[Card, ...]) -> list[object]:
    """Two machines on the same work; what stops each stands under the table."""
    columns: list[Column] = [Column(caption="what is asked", style="label", wide=True)]
    for card in cards:
        columns += [
            Column(caption=f"{card.machine.title}\nplan to", style="number", ruled=True),
            Column(caption="verdict", style="label"),
            Column(caption="band, from\n5 % to 95 %", style="legend"),
        ]
    rows = []
    for each in zip(*(card.rows for card in cards), strict=True):
        cells = [Cell(each[0].what.partition(", ")[0])]
        for row in each:
            cells += [
                Cell(row.plan.removesuffix(" UNC") or "–"),
                Cell(_way(row) or _verdict(row)),
                Cell(_band(row)),
            ]
        rows.append(tuple(cells))
    blocks: list[object] = [Table(columns=tuple(columns), rows=tuple(rows))]
    cutters = list(dict.fromkeys(row.cutter for row in cards[0].rows if row.cutter[:5] != "usual"))
    blocks.append(
        Words(
            f"Asked with: {'; '.join(cutters)}; drills at their usual feed, or down to 0.4 of it where that is too much.",
            "note",
        )
    )
    for card in cards:
        parts = [f"{_short(row)}: {(row.stops or '–').partition(':')[0].lower()}" for row in card.rows]
        blocks.append(Words(f"What stops more on {card.machine.title}: {'; '.join(parts)}.", "note"))
    return blocks


def _way(row: Row) -> str:
    """How a tap goes: it has more than one way."""
    way = row.what.partition(", ")[2] if row.what.startswith("largest tap") else ""
    return way.partition(" or ")[0]


def _short(row: Row) -> str:
    return row.what.split(", ")[0].removeprefix("deepest ").removeprefix("largest ").partition(" from")[0]


def _job(capability: Capability) -> list[object]:
    """The minutes of the job on each machine, and what of it does not go there."""
    if not capability.on:
        return []
    columns = (
        Column(caption="on"),
        Column(caption="minutes, all", align="right", style="number"),
        Column(caption="in the cut", align="right"),
        Column(caption="around it", align="right"),
        Column(caption="what is beyond there", style="label", wide=True),
    )
    rows = tuple(
        (
            Cell(on_machine.machine.title), Cell(f"{on_machine.minutes.whole / 60:.0f}"), Cell(f"{on_machine.minutes.cut / 60:.1f}"),
            Cell(f"{on_machine.minutes.around / 60:.0f}"), Cell(_fits(on_machine)),
        )
        for on_machine in capability.on
    )  # fmt: skip
    return [
        Heading(_job_title(capability), "the same job on each"),
        Table(columns=columns, rows=rows),
        Gap(3),
    ]


def _fits(on_machine: OnMachine) -> str:
    if on_machine.fits:
        return "nothing"
    number, words = on_machine.beyond[0]
    more = f", and {len(on_machine.beyond) - 1} more" if len(on_machine.beyond) > 1 else ""
    return f"step {number}: {words}{more}"


def _next(metals: tuple[tuple[Card, ...], ...]) -> list[object]:
    """What was tried on each machine and what never was, and what to try next: which cuts would say most in the first metal."""
    cards = metals[0] if metals else ()
    blocks: list[object] = []
    for card in cards:
        blocks.append(Words(_tried(card), "note bold"))
        # Beside another machine, or over another metal, there is room for the first of each.
        room = 1 if len(cards) > 1 or len(metals) > 1 else len(card.next)
        blocks += [Words(f"Next: {one}", "note") for one in card.next[:room]]
    return [
        Heading("What was tried, and what to try next", "by which the bands become narrower"),
        *blocks,
        Gap(3),
    ]


def _tried(card: Card) -> str:
    """How many cuts of each process stand behind the card, with the newest; and what was never tried."""
    told = [f"{row.name}, {row.shown.words()}" for row in card.rows if row.shown.cuts]
    never = ", ".join(row.name for row in card.rows if not row.shown.cuts and row.shown.turns)
    lead = "; ".join(told) or "nothing was tried yet, all bands are from its card"
    rest = f" Never tried: {never}." if never and told else ""
    return f"{card.machine.title}: {lead}.{rest}"


def _factor(capability: Capability, machine: Machine) -> float | None:
    """What trials make of the card's peak torque, for any process; None where none of them ever came to it."""
    proof = next(
        (card.proof for cards in capability.materials for card in cards if card.machine is machine), None
    )
    known = proof.find("spindle-torque", "", "") if proof is not None else None
    return known.median if known is not None and known.ends else None


def _charts(capability: Capability) -> list[object]:
    """Torque against speed of each machine, with the job's cuts on it."""
    pictures = []
    for index, machine in enumerate(capability.machines):
        wide, _ = ALONE if len(capability.machines) == 1 else BESIDE
        cuts = [
            (str(number), speed, torque)
            for number, speed, torque in (capability.on[index].cuts if capability.on else ())
        ]
        drawing = torque_chart(
            machine, cuts, wide, HIGH if capability.on else ALONE[1], factor=_factor(capability, machine)
        )
        pictures.append(
            Picture(f"{machine.title}: torque", drawing, "dots: steps of the job" if cuts else "")
        )
    if len(pictures) == 1:
        return [pictures[0]]
    return [Columns(parts=tuple((picture,) for picture in pictures), shares=(0.5, 0.5))]
