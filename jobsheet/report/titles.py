"""The title block, on every page alike: part, what this page is, machine and the date of its card, who planned it."""

from __future__ import annotations

from jobsheet.model.stock import Stock
from jobsheet.report.blocks import TitleCell
from jobsheet.report.plan import Plan
from jobsheet.stock.all_shapes import words_of
from jobsheet.storage.words.stock_words import beyond_surfaces, said_by


def _surfaces(stock: Stock) -> str:
    """The line of its surfaces, where its words do not say the same beside it."""
    text = stock.surfaces.text if stock.surfaces is not None else ""
    return "" if said_by(stock.condition).surfaces == text else text


def title(plan: Plan, caption: str, text: str) -> tuple[tuple[TitleCell, ...], ...]:
    """The block of a page that is called `text` under that caption."""
    job, card, short = plan.job, plan.card, plan.short
    part = " ".join(word for word in (job.part.number, job.part.name) if word) or "Part without a name"
    state = f"plan {job.revisions[-1].number}" if job.revisions else ""
    drawing = ", ".join(
        word for word in (job.part.drawing or job.part.number, job.part.revision, state) if word
    )
    stock, surfaces = words_of(job.stock), _surfaces(job.stock)
    more = beyond_surfaces(job.stock.condition) if surfaces else job.stock.condition
    metal = ", ".join(word for word in (job.material, stock, surfaces, more) if word)
    planned = ", ".join(word for word in (job.planned_by, job.planned_on) if word)
    count = job.part.quantity
    machine = f"{card.title}, invented" if card.invented else card.title
    return (
        (
            TitleCell(caption="Part" if count == 1 else f"Part, {count} to make", text=short(part, 110, "part"), share=0.416, strong=True),
            TitleCell(caption=caption, text=text, share=0.334, strong=True),
            TitleCell(caption="Page", share=0.25, strong=True, page=True),
        ),
        (
            TitleCell(caption="Workshop", text=short(job.workshop, 90, "workshop"), share=0.416),
            TitleCell(caption="Drawing, revision", text=short(drawing, 60, "drawing, revision"), share=0.16),
            TitleCell(caption="Machine", text=short(machine, 60, "machine"), share=0.232),
            TitleCell(caption="Machine card dated", text=short(card.card_date, 20, "date of the card"), share=0.192),
        ),
        (
            TitleCell(caption=f"Material and stock, {job.units}", text=short(metal, 110, "material and stock"), share=0.416),
            TitleCell(caption="Planned by, date", text=short(planned, 60, "planned by"), share=0.334),
            TitleCell(caption="Checked by, date", share=0.25),
        ),
    )  # fmt: skip
