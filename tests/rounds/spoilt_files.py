"""Spoilt files over all readers, and those that load through what a person would ask of
them next: check, sheet and picture.
"""

from __future__ import annotations

from collections.abc import Iterator

from tests.storage.mutated import loaded, read_through, rounds, slipped, what_is_wrong


def mutated(seed: int, first: int) -> Iterator[tuple[str, str]]:
    """Every kind in turn, from that one on."""
    index = first
    while True:
        for kind, text in rounds(600, seed, index):
            yield kind, what_is_wrong(kind, text)
        index += 600


def through(seed: int, first: int) -> Iterator[tuple[str, str]]:
    """Jobs as they are mistyped or spoilt, those that load: figures, review, solids, pages, a picture."""
    from jobsheet.remembered import forget_the_plan

    index = first
    while True:
        for at, text in slipped(1, seed, index):
            job = loaded(text)
            if job is None:
                yield "refused", ""
                continue
            said = read_through(job) or _on_paper(job)
            if at % 50 == 0:
                forget_the_plan()
            yield "through", said
        index += 1


def _on_paper(job: object) -> str:
    """Nothing where sheet and picture of a job are made; else what failed."""
    from jobsheet.errors import JobsheetError
    from jobsheet.reckoning.reckoner import Reckoner
    from jobsheet.review.notes.notes import notes_for
    from jobsheet.sheet.pdf import make_pdf
    from jobsheet.sheet.printing import document_for
    from jobsheet.stages.course import course_of
    from jobsheet.stages.pictures import picture
    from jobsheet.stages.solids import shared

    try:
        reckoned = Reckoner().reckon(job)  # type: ignore[arg-type]
        document = document_for(reckoned.job, reckoned, notes_for(reckoned.job, reckoned), ())
        if not make_pdf((document,)).startswith(b"%PDF"):
            return "no PDF came of it"
        picture(shared().stages(course_of(reckoned.job, reckoned.settings))[-1], "iso", 200, 90)
    except JobsheetError as error:
        return "" if str(error).strip() else "refused without a sentence"
    except Exception as error:  # noqa: BLE001  this is the question
        return f"{type(error).__name__}: {error}"
    return ""
