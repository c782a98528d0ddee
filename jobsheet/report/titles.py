"""The title block, on every page alike: part, what this page is, machine and the
date of its card, who planned it.
"""

from __future__ import annotations

from jobsheet.model.stock import Stock
from jobsheet.report.blocks import TitleCell
from jobsheet.report.plan import Plan
from jobsheet.stock.all_shapes import words_of
from jobsheet.storage.plan_mark import plan_mark
from jobsheet.storage.words.stock_words import beyond_surfaces, said_by

#: So many letters of number and revision stand in the printed code: more would make its marks too fine.
PRINTED = 40


def _surfaces(stock: Stock) -> str:
    """The line of its surfaces, where its words do not say the same beside it."""
    text = stock.surfaces.text if stock.surfaces is not None else ""
    return "" if said_by(stock.condition).surfaces == text else text


def title(plan: Plan, caption: str, text: str) -> tuple[tuple[TitleCell, ...], ...]:
    """The block of the cover, in three rows: part, what this page is called under
    that caption, where, of what, by whom.
    """
    job, card, short = plan.job, plan.card, plan.short
    stock, surfaces = words_of(job.stock), _surfaces(job.stock)
    more = beyond_surfaces(job.stock.condition) if surfaces else job.stock.condition
    metal = ", ".join(word for word in (job.material, stock, surfaces, more) if word)
    return (
        _first(plan, caption, text),
        (
            TitleCell(caption="Workshop", text=short(job.workshop, 90, "workshop"), share=0.416),
            TitleCell(caption="Drawing, revision", text=_drawing(plan), share=0.178),
            TitleCell(caption="Machine", text=_machine(plan), share=0.214),
            TitleCell(caption="Machine card dated", text=short(card.card_date, 20, "date of the card"), share=0.192),
        ),
        (
            TitleCell(caption=f"Material and stock, {job.units}", text=short(metal, 110, "material and stock"), share=0.416),
            TitleCell(caption="Planned by, date", text=_planned(plan), share=0.334),
            TitleCell(caption="Checked by, date", share=0.25),
        ),
    )  # fmt: skip


def printed_code_of(plan: Plan) -> str:
    """What the printed code of the cover says: no address and no person, only
    what finds the file on the shelf.
    """
    job = plan.job
    number = str(job.revisions[-1].number) if job.revisions else "1"
    words = (job.part.number, job.part.revision, number)
    said = ":".join(" ".join(word.replace(":", " ").split())[:PRINTED] for word in words)
    return f"JS1:{said}:{plan.code}"


def short_title(plan: Plan, caption: str, text: str) -> tuple[tuple[TitleCell, ...], ...]:
    """The block of every other page, in two rows: workshop and stock are on the cover."""
    date = plan.short(plan.card.card_date, 20, "date of the card")
    machine = plan.short(", ".join(word for word in (plan.card.title, date) if word), 60, "machine")
    return (
        _first(plan, caption, text),
        (
            TitleCell(caption="Drawing, revision", text=_drawing(plan), share=0.17),
            TitleCell(caption="Machine, its card of", text=machine, share=0.28),
            TitleCell(caption="Material", text=plan.short(plan.job.material, 40, "material"), share=0.15),
            TitleCell(caption="Planned by, date", text=_planned(plan), share=0.25),
            TitleCell(caption="Checked by", share=0.15),
        ),
    )


def _first(plan: Plan, caption: str, text: str) -> tuple[TitleCell, ...]:
    job = plan.job
    part = " ".join(word for word in (job.part.number, job.part.name) if word) or "Part without a name"
    count = job.part.quantity
    return (
        TitleCell(
            caption="Part" if count == 1 else f"Part, {count} to make",
            text=plan.short(part, 110, "part"),
            share=0.416,
            strong=True,
        ),
        TitleCell(caption=caption, text=text, share=0.424, strong=True),
        TitleCell(caption="Page", share=0.16, strong=True, page=True),
    )


def _drawing(plan: Plan) -> str:
    job = plan.job
    state = f"plan {plan_mark(job.revisions[-1].number)}" if job.revisions else ""
    words = (job.part.drawing or job.part.number, job.part.revision, state)
    return plan.short(", ".join(word for word in words if word), 60, "drawing, revision")


def _machine(plan: Plan) -> str:
    card = plan.card
    return plan.short(f"{card.title}, invented" if card.invented else card.title, 60, "machine")


def _planned(plan: Plan) -> str:
    job = plan.job
    return plan.short(", ".join(word for word in (job.planned_by, job.planned_on) if word), 60, "planned by")
