"""Asks whether the machine's card is still the one that the job was planned with."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from jobsheet.errors import JobsheetError
from jobsheet.model.job import Job
from jobsheet.model.remark import Fix, Remark
from jobsheet.remembered import remembered
from jobsheet.review.rule import View, remark, rule
from jobsheet.storage.card_files import card_digest, card_path


@rule("card-as-planned", "The card as it was planned with", "habit")
def card_as_planned(view: View) -> Iterator[Remark]:
    """A job keeps a hash of the machine card it was planned with; a card that was changed since gives other figures.

    Because: Speeds, torque and dials may be others now: the sheet that was printed and this plan no longer agree.
    Not so: plan for a card, change its belts, print the old sheet again
    So: look through the steps once more, then take the card as it is now
    From: common practice
    """
    job = view.job
    if not job.card_hash:
        return
    now = digest_now(job.machine)
    if not now or now == job.card_hash:
        return
    title = next((setting.machine.title for setting in view.reckoned.settings.values()), job.machine)
    message = (
        f"The card of {title} was changed since this job was planned: look at speeds, paces and dials again"
    )
    mended = Fix("Take the card as it is now", _as_now)
    # It is about the whole job; it stands at the first step, where a reader begins.
    first = tuple(operation.key for _, operation in job.operations())[:1]
    yield remark(view, "card-as-planned", message, *first, fix=mended)


def digest_now(name: str) -> str:
    """The hash of the card as it is now; nothing where there is none to read."""
    try:
        changed = card_path(name).stat().st_mtime_ns
        return _digest(name, changed)
    except (JobsheetError, OSError):
        return ""


@remembered(64)
def _digest(name: str, _changed: int) -> str:
    return card_digest(name)


def _as_now(job: Job) -> Job:
    return replace(job, card_hash=digest_now(job.machine))
