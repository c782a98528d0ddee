"""The drawing in words and a blank sheet; its key is one plan that is right, for there are many."""

from __future__ import annotations

from jobsheet.lessons.own_plan import begun
from jobsheet.lessons.slips import step_words
from jobsheet.machine.spindle import steps
from jobsheet.model.job import Job
from jobsheet.reckoning.reckoner import Reckoned
from jobsheet.report.blocks import Blanks, Cell, Column, Gap, Heading, Rule, Table, Words, Writing
from jobsheet.report.lesson.fault_pages import plan_rows, wanted
from jobsheet.storage.card_files import find_card

#: Rows to write steps into, and how high they are [points]: 9 mm, common practice;
#: letters that a column has room for.
ROWS, BY_HAND, BROAD = 14, 25.5, 24
ASKED = (
    "Plan this part on this machine: how it is held in each set-up and where zero is, then every step with its tool and speed, and where"
    " you measure. Write why a step stands where it does wherever something must come first."
)
HOW = (
    "Any plan is right that the review has nothing against: enter it, then “jobsheet lesson mark --kind plan”, or mark it at the screen."
    " This is one of them."
)


def own_plan_name(job: Job) -> str:
    """What the sheet is called."""
    return f"{job.part.number or job.part.name or 'The part'}, plan it yourself"


def own_plan_groups(reckoned: Reckoned) -> list[tuple[object, ...]]:
    """The blocks of the worksheet; raises NoExercise where the job does not say what the part shall be."""
    job = begun(reckoned.job)
    card = find_card(job.machine)
    speeds = " ".join(speed.marked for speed in steps(card))
    metal = f"{job.material}; {card.title}" + (f", speeds {speeds}" if speeds else "")
    columns = (
        Column(caption="step", style="number", align="right"),
        Column(caption="do, and why here", style="body", wide=True),
        *(Column(caption=_broad(words), style="label", ruled=True) for words in ("tool", "rpm", "measure")),
    )
    rows = tuple(tuple(Cell() for _ in columns) for _ in range(ROWS))
    return [
        (Words(ASKED, "body"), Words(metal, "label"), Rule(), *wanted(job)),
        (
            Heading("Held, and zero"),
            Blanks(("set-up 1",)),
            Blanks(("set-up 2",)),
            Blanks(("set-up 3",)),
            Gap(3),
        ),
        (Rule(), Heading("Steps"), Table(columns=columns, rows=rows, high=BY_HAND)),
    ]


def own_plan_key(reckoned: Reckoned) -> list[tuple[object, ...]]:
    """The trainer's own plan, set-up by set-up."""
    words = step_words(reckoned)
    groups: list[tuple[object, ...]] = [(Words(HOW, "label"), Rule())]
    groups += [plan_rows(reckoned, words, set_up) for set_up in reckoned.job.set_ups]
    groups.append((Rule(), Heading("Notes"), Writing(3)))
    return groups


def _broad(words: str) -> str:
    """A caption with room under it to write into."""
    return words.ljust(BROAD, "\u00a0")
