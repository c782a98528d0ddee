"""What printed sheets carry beside their job: the machine's card and its proof
log, and how they are taken over.

A card of the same content on this computer wins: then nothing has to be decided. Where the card here is
another, or there is none, a person decides; a card of one's own is never written over.
"""

from __future__ import annotations

from pathlib import Path

from msgspec import Struct

from jobsheet.catalog.reading.strict_yaml import read_file
from jobsheet.errors import CannotWrite, JobsheetError
from jobsheet.model.job import Job
from jobsheet.paths import own_folder
from jobsheet.storage.card_files import LONGEST, card_digest, card_path
from jobsheet.storage.disk import digest, write_file
from jobsheet.storage.machine_file import machine_from_text
from jobsheet.units.lazily import pattern

#: How the attachments beside NAME.yaml are called, behind the name of the card.
CARD, LOG = " card.yaml", " proof log.txt"

#: The line of a job that names its machine; a job whose machine is not here
#: cannot be read before its card is.
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
    from jobsheet.storage.records.proof_log import as_text

    found = []
    try:
        found.append((f"{job.machine}{CARD}", read_file(card_path(job.machine)).encode()))
        if log := as_text(job.machine):
            found.append((f"{job.machine}{LOG}", log.encode()))
    except JobsheetError:
        return tuple(found)
    return tuple(found)


def carried_of(beside: tuple[tuple[str, str], ...], job_text: str) -> Carried | None:
    """What lies beside a job of the machine that the job names; None where there is no card of it."""
    named = _MACHINE.search(job_text)
    if named is None:
        return None
    machine, texts = named[1], dict(beside)
    card = texts.get(f"{machine}{CARD}", "")
    return Carried(machine=machine, card=card, log=texts.get(f"{machine}{LOG}", "")) if card else None


def here(carried: Carried) -> str:
    """How that card stands to this computer: `same`, `other` or `none`."""
    try:
        return "same" if card_digest(carried.machine) == digest(carried.card) else "other"
    except JobsheetError:
        return "none"


class Taken(Struct, frozen=True):
    """The name under which a card is kept now, and why its log did not come along;
    empty where it did, or there is none.
    """

    name: str
    log_left: str = ""


def take_over(carried: Carried) -> Taken:
    """Keep the card among one's own, under its own name or else a free one; its log
    comes along where the name is the same.

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
    return Taken(name, _take_log(carried) if name == carried.machine and carried.log else "")


def _take_log(carried: Carried) -> str:
    """The records join the log that there is; why they cannot, in a sentence."""
    import tempfile

    from jobsheet.storage.records.proof_log import merge

    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / f"{carried.machine}.txt"
        path.write_text(carried.log, encoding="utf-8")
        try:
            merge(carried.machine, path)
        except JobsheetError as error:
            why = " ".join(str(error).split())
            return f"The card is kept, its proof log is not: {why}"
    return ""


def _free(machine: str) -> str:
    """A name that no card has: of the sheets."""
    count = 1
    while True:
        behind = "-of-the-sheets" if count == 1 else f"-of-the-sheets-{count}"
        name = f"{machine[: LONGEST - len(behind)]}{behind}"
        if not (own_folder() / "machines" / f"{name}.yaml").exists():
            return name
        count += 1
