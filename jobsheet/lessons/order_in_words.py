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
    kept = [pair for pair in needed.pairs if place[pair.first] < place[pair.then]]
    kept.sort(key=lambda pair: (WORST.index(pair.severity), place[pair.first], place[pair.then]))
    chosen = {pair.rule: pair for pair in reversed(kept)}
    first = [pair for pair in kept if chosen[pair.rule] is pair and pair.because][:most]
    first.sort(key=lambda pair: (place[pair.first], place[pair.then]))
    said = []
    for pair in first:
        because = pair.because.rstrip(".")
        said.append(f"{numbers[pair.first]} before {numbers[pair.then]}: {because[:1].lower()}{because[1:]}.")
    return " ".join(said)
