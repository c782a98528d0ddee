"""The stop notes of a job by their causes: numbered once, one line of initials
each, in a band above the page.
"""

from __future__ import annotations

from msgspec import Struct

from jobsheet.model.remark import Note
from jobsheet.report.blocks import StopBand, StopCause
from jobsheet.report.dial_words import in_runs_of
from jobsheet.report.plan import Plan
from jobsheet.report.wording import STAMP, STAMP_REASON, SUPERSEDED, SUPERSEDED_REASON


class Cause(Struct, frozen=True, kw_only=True):
    """One cause with every note that says it."""

    number: int
    notes: tuple[Note, ...]

    @property
    def text(self) -> str:
        """Its words without the stars that mark a stress."""
        return self.notes[0].text.replace("*", "")


def causes(plan: Plan) -> tuple[Cause, ...]:
    """Every cause once, in the order in which the sheets come to it."""
    found: dict[str, list[Note]] = {}
    for note in plan.stops:
        found.setdefault(note.id, []).append(note)
    return tuple(Cause(number=index, notes=tuple(notes)) for index, notes in enumerate(found.values(), 1))


def band(plan: Plan, set_ups: tuple[str, ...] | None = None) -> StopBand | None:
    """The band of a page: all causes, or those of some set-ups; None where the job has none at all.

    Where initials are still missing anywhere, every page says so, also one that no cause is about.
    """
    rows = tuple(
        _row(plan, cause)
        for cause in causes(plan)
        if set_ups is None or any(not note.set_up or note.set_up in set_ups for note in cause.notes)
    )
    return _made(plan, rows)


def _made(plan: Plan, rows: tuple[StopCause, ...]) -> StopBand | None:
    if plan.superseded:
        return StopBand(f"{SUPERSEDED} {plan.superseded.upper()}", SUPERSEDED_REASON, rows)
    if plan.open_stops:
        elsewhere = "See the cover." if plan.covered else "The whole sheet has the stop notes."
        return StopBand(STAMP, STAMP_REASON if rows else elsewhere, rows)
    return StopBand("", "", rows) if rows else None


def band_of_step(plan: Plan, set_up: str, operation: str) -> StopBand | None:
    """The band of a card for one step: what is about it, about its set-up, or about the whole job."""
    rows = tuple(
        _row(plan, cause)
        for cause in causes(plan)
        if any(
            note.operation == operation or (not note.operation and note.set_up in ("", set_up))
            for note in cause.notes
        )
    )
    return _made(plan, rows)


def _row(plan: Plan, cause: Cause) -> StopCause:
    """A cause counts as read where it was read at every place it stands."""
    given = [plan.given(note) for note in cause.notes]
    return StopCause(
        number=cause.number,
        text=cause.text,
        where=_where(plan, cause),
        asked=", ".join(dict.fromkeys(note.initials for note in cause.notes if note.initials)),
        given=", ".join(dict.fromkeys(given)) if all(given) else "",
    )


def _where(plan: Plan, cause: Cause) -> str:
    keys = {note.operation for note in cause.notes if note.operation}
    numbers = [operation.number for _, operation in plan.job.operations() if operation.key in keys]
    if numbers:
        return f"step{'s' if len(numbers) > 1 else ''} {', '.join(map(str, numbers))}"
    own = {note.set_up for note in cause.notes if note.set_up}
    places = tuple(set_up.number for set_up in plan.job.set_ups if set_up.key in own)
    return f"set-up{'s' if len(places) > 1 else ''} {in_runs_of(places)}" if places else "all steps"


def at_step(plan: Plan, operation: str) -> str:
    """What a step says of its stop notes: their numbers in the band, `stop 1, 2`; empty without any."""
    numbers = [
        cause.number for cause in causes(plan) if any(note.operation == operation for note in cause.notes)
    ]
    return f"stop {', '.join(map(str, numbers))}" if numbers else ""
