"""How a set-up holds the work, in one line: all that decides which set-up must come
first, and nothing of what came before.
"""

from __future__ import annotations

from jobsheet.holdings.all_holdings import words_of
from jobsheet.holdings.placed import in_jaws
from jobsheet.model.job import Job, SetUp
from jobsheet.model.lying import lying, stock_box
from jobsheet.report.holding_view import jaw_words
from jobsheet.review.plan.held import fact


def held_line(job: Job, set_up: SetUp) -> str:
    """`150 mm vice; A, bottom face to the fixed jaw, round bar at the moving one;
    rear down on parallels; zero A and C`.
    """
    lie = lying(set_up, stock_box(job))
    words = [words_of(set_up.holding)]
    if in_jaws(set_up, lie):
        bar = ", round bar at the moving one" if fact(set_up, "bar") else ""
        words.append(f"{jaw_words(set_up, job.datums)} to the fixed jaw{bar}")
    rests = fact(set_up, "rests_on")
    letter = next((letter for letter, face in job.datums if face == lie.down), "")
    words.append(f"{f'{letter}, ' if letter else ''}{lie.down} face down{f' on {rests}' if rests else ''}")
    if set_up.zero.named:
        words.append(f"zero {set_up.zero.named}")
    return "; ".join(word for word in words if word)
