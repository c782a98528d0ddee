"""What printed sheets carry beside their job: the machine's card and its proof log, and how they are taken over.

A card of the same content on this computer wins: then nothing has to be decided. Where the card here is another,
or there is none, a person decides; a card of one's own is never written over.
"""

from __future__ import annotations

from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.catalog.reading.strict_yaml import read_file
from jobsheet.errors import CannotWrite, DocumentError, JobsheetError
from jobsheet.model.job import Job
from jobsheet.paths import own_folder
from jobsheet.storage.card_files import card_digest, card_path
from jobsheet.storage.disk import digest, write_file
from jobsheet.storage.machine_file import machine_from_text
from jobsheet.units.lazily import pattern

#: How the attachments beside NAME.yaml are called, behind the name of the card.
CARD, LOG = " card.yaml", " proof log.txt"

#: The line of a job that names its machine; a job whose machine is not here cannot be read before its card is.
_MACHINE = pattern(r"""(?m)^machine:[ \t]*["']?([a-z0-9][a-z0-9-]{0,60})["']?[ \t]*(?:#.*)?$""")


class Carried(Struct, frozen=True, kw_only=True):
    """A card as it was when the sheets were printed, and the log of its machine; either may be missing."""

    machine: str
    card: str = ""
    log: str = ""

    @property
    def title(self) -> str:
        """What the card calls its machine; raises DocumentError where the card cannot be used."""
        return machine_from_text(self.card, f"{self.machine}{CARD}", self.machine).title


def carried_with(job: Job) -> tuple[tuple[str, bytes], ...]:
    """Names and content of what goes into a job's sheets beside it; what cannot be read is left out."""
    from jobsheet.storage.proof_log import as_text

    found = []
    try:
        found.append((f"{job.machine}{CARD}", read_file(card_path(job.machine)).encode()))
        if log := as_text(job.machine):
            found.append((f"{job.machine}{LOG}", log.encode()))
    except JobsheetError:
        return tuple(found)
    return tuple(found)


def carried_in(path: Path, job_text: str) -> Carried | None:
    """What a PDF carries of the machine that a job in it names; None where it is no PDF of ours, or carries no card of it."""
    from jobsheet.storage import pdf_jobs

    named = _MACHINE.search(job_text)
    if named is None or not pdf_jobs.is_pdf(path):
        return None
    machine = named[1]
    inside = dict(pdf_jobs.texts_beside(path))
    card = inside.get(f"{machine}{CARD}", "")
    return Carried(machine=machine, card=card, log=inside.get(f"{machine}{LOG}", "")) if card else None


def here(carried: Carried) -> str:
    """How that card stands to this computer: `same`, `other` or `none`."""
    try:
        return "same" if card_digest(carried.machine) == digest(carried.card) else "other"
    except JobsheetError:
        return "none"


def take_over(carried: Carried) -> str:
    """Keep the card among one's own, under its own name or else a free one, which is given back.

    Its log comes along where the name is the same.

    Raises
    ------
    DocumentError
        If the card cannot be used.
    CannotWrite
        If the disk refuses.
    """
    name = carried.machine if here(carried) == "none" else _free(carried.machine)
    machine_from_text(carried.card, f"{carried.machine}{CARD}", name)  # nothing unusable is kept
    folder = own_folder() / "machines"
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise CannotWrite(f"{folder} cannot be made: {error.strerror or error}") from None
    write_file(folder / f"{name}.yaml", carried.card)
    if name == carried.machine and carried.log:
        _take_log(carried)
    return name


def planned_for(job: Job, name: str) -> Job:
    """A job planned for the card of that name, as it is now."""
    return replace(job, machine=name, card_hash=card_digest(name))


def _take_log(carried: Carried) -> None:
    """The records join the log that there is; a log that cannot be read is left, the card counts without it."""
    import tempfile

    from jobsheet.storage.proof_log import merge

    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / f"{carried.machine}.txt"
        path.write_text(carried.log, encoding="utf-8")
        try:
            merge(carried.machine, path)
        except DocumentError:
            return


def _free(machine: str) -> str:
    """A name that no card has: of the sheets."""
    count, name = 1, f"{machine}-of-the-sheets"
    while (own_folder() / "machines" / f"{name}.yaml").exists():
        count += 1
        name = f"{machine}-of-the-sheets-{count}"
    return name[:61]
