"""Why the steps of a job stand as they do, in a few sentences for its cover: the
pairs that cost most, each rule once.
"""

from __future__ import annotations

from jobsheet.lessons.needed_order import Needed

WORST = ("hazard", "scrap", "rework", "habit")
#: So many reasons are read on a cover.
MOST = 4


def why_words(needed: Needed, most: int = MOST) -> str:
    """`50 before 60: a long drill walks before it bites …`; empty where nothing must come first.

    Of each rule the first pair stands for all of them; the worst come first, then in cutting order.
    """
    numbers = {operation.key: operation.number for _, operation in needed.job.operations()}
    place = {key: at for at, key in enumerate(numbers)}
    kept = [one for one in needed.pairs if place[one.first] < place[one.then]]
    kept.sort(key=lambda one: (WORST.index(one.severity), place[one.first], place[one.then]))
    chosen = {one.rule: one for one in reversed(kept)}
    first = [one for one in kept if chosen[one.rule] is one and one.because][:most]
    first.sort(key=lambda one: (place[one.first], place[one.then]))
    said = []
    for one in first:
        because = one.because.rstrip(".")
        said.append(f"{numbers[one.first]} before {numbers[one.then]}: {because[:1].lower()}{because[1:]}.")
    return " ".join(said)
