"""What should still be said of how the work is held, in words: the form, the
command line and the sheet say the same.
"""

from __future__ import annotations

from jobsheet.holdings.all_holdings import roles_of, unsaid_of
from jobsheet.holdings.of_stock import with_stock
from jobsheet.model.job import Job, SetUp
from jobsheet.model.stock import Stock

#: The solids of the plan stand upright, whatever angle the work is set to.
LEANS = "what the cuts meet: the work leans here, and its solid stands upright"


def to_say(set_up: SetUp, stock: Stock) -> tuple[str, ...]:
    """The titles of the facts that are not said yet, as they stand in a line; none where
    nothing holds it, which a rule says.

    What the stock says of itself need not be said again.
    """
    if not set_up.holding.kind:
        return ()
    return tuple(entry.title.lower() for entry in unsaid_of(with_stock(set_up.holding, stock)))


def unasked(set_up: SetUp) -> str:
    """What is not checked where the work leans; nothing where it stands upright."""
    return LEANS if roles_of(set_up.holding).tilted else ""


def said_once(job: Job) -> tuple[tuple[int, str], ...]:
    """Each set-up that has something to be said yet: its number, and the facts in one line."""
    return tuple(
        (set_up.number, ", ".join(facts)) for set_up in job.set_ups if (facts := to_say(set_up, job.stock))
    )
