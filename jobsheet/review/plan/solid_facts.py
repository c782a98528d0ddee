"""From a job to what its solids say, for the rules that need stages; the modeller
is imported when this is asked for.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from jobsheet.finished.finished_part import finished_part
from jobsheet.holdings.all_holdings import roles_of
from jobsheet.holdings.placed import above_jaws, in_jaws
from jobsheet.model.job import Job, SetUp
from jobsheet.model.lying import lying, stock_box
from jobsheet.model.machine import Machine
from jobsheet.model.not_checked import alone
from jobsheet.reckoning.reckoner import Reckoned

if TYPE_CHECKING:
    from jobsheet.stages.checks import Fact
    from jobsheet.stages.solids import Stage


def facts_of(job: Job, reckoned: Reckoned) -> tuple[Fact, ...]:
    """All facts about a job; its solids are those that the sheet draws. What failed
    is a fact of the kind `not-checked`.
    """

    def found() -> tuple[Fact, ...]:
        from jobsheet.stages.course import course_of
        from jobsheet.stages.solids import shared

        return facts_from(job, reckoned, shared().stages(course_of(job, reckoned.settings)))

    return alone(found, no_facts)


def no_facts(why: str) -> tuple[Fact, ...]:
    """What is known of the solids where none could be made at all."""
    from jobsheet.stages.checks import not_checked

    return (not_checked("", why),)


def facts_from(job: Job, reckoned: Reckoned, stages: Sequence[Stage]) -> tuple[Fact, ...]:
    """All facts about a job whose stages are there already.

    Of work that leans nothing is said: its solid stands upright, so that what a cut meets would be guessed
    (`holdings.to_say.unasked` says so).
    """
    from jobsheet.stages.checks import holding_facts, made_facts, place_facts, volume_facts
    from jobsheet.stages.part_facts import part_facts

    volumes = {
        key: volume
        for key, outcome in reckoned.operations.items()
        if outcome.figures is not None and (volume := outcome.figures.value("volume")) is not None
    }
    box = stock_box(job)
    leaning = {
        operation.key
        for set_up in job.set_ups
        if roles_of(set_up.holding).tilted
        for operation in set_up.operations
    }
    upright = [stage for stage in stages if stage.cut is None or stage.cut.key not in leaning]
    held = {
        set_up.key: (
            set_up.fixed_jaw,
            above_jaws(set_up, lying(set_up, box), _machine(set_up, reckoned)),
        )
        for set_up in job.set_ups
        if in_jaws(set_up, lying(set_up, box))
    }
    return (
        *made_facts(stages), *volume_facts(upright, volumes), *place_facts(upright), *holding_facts(stages, held),
        *(part_facts(stages, finished_part(job)) if job.finished and len(upright) == len(stages) else ()),
    )  # fmt: skip


def _machine(set_up: SetUp, reckoned: Reckoned) -> Machine | None:
    found = (reckoned.settings.get(operation.key) for operation in set_up.operations)
    return next((setting.machine for setting in found if setting is not None), None)
