"""Slips: a step with its letter and words that say what is done, and nothing
of where it stands in the order.
"""

from __future__ import annotations

from msgspec import Struct

from jobsheet.errors import JobsheetError
from jobsheet.operations.registry import kind as kind_of
from jobsheet.operations.shared.aimed import aim_of
from jobsheet.reckoning.reckoner import Reckoned
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.rule import View

#: Letters of slips: none that is taken for a digit or for another one when it is
#: written by hand. Capitals are datums.
LETTERS = "abcdefghkmnpqrstuvwxyz"
#: Letters of set-ups, where they are put in order too.
HEADS = "PQRSTUVWXYZ"


class Slip(Struct, frozen=True, kw_only=True):
    """One step to be put in order."""

    letter: str
    key: str
    words: str
    kind: str


class WrongAnswer(JobsheetError):
    """An answer that cannot be read; the sentence says what is wrong and how it is typed."""


def step_words(reckoned: Reckoned) -> dict[str, str]:
    """What each step does, in a few words, by its key: faces and sizes that are
    aimed at, no number of a step.
    """
    found = {}
    for step in plan_of(View(reckoned.job, reckoned)).steps:
        kind, aim = kind_of(step.kind), aim_of(step.lie, step.lie.size, reckoned.job.units)
        final = not step.makes or getattr(step.fields, "measure", None) is not None
        words = kind.row_words(step.fields, aim)[0] if final else kind.title_of(step.fields)
        if "step " in words.casefold() and any(
            character.isdigit() for character in words.casefold().partition("step ")[2][:4]
        ):
            words = kind.words(step.fields)  # a number of a step would say where it stands
        found[step.key] = words[:1].upper() + words[1:]
    return found


def letters_read(text: str, known: dict[str, str], what: str) -> list[str]:
    """Letters as they were typed, each once, in small or capital letters.

    Raises
    ------
    WrongAnswer
        If one of them is none of the known ones, or stands there twice.
    """
    typed = [one for one in text.casefold() if not one.isspace() and one not in ",;.-"]
    for letter in typed:
        if letter not in known:
            raise WrongAnswer(f"“{letter}” is no slip {what}; its letters are {' '.join(known)}")
    twice = next((letter for letter in typed if typed.count(letter) > 1), "")
    if twice:
        raise WrongAnswer(f"“{twice}” stands there more than once; each slip has one place")
    return typed
