"""Boxes to tick, each at its moment: before the first cut of the job, before cutting in a
set-up, before the work is taken out.
"""

from __future__ import annotations

from jobsheet.model.job import SetUp
from jobsheet.operations.registry import roles
from jobsheet.report.plan import Plan

#: What is ticked once a job, for a person and a machine: the notes that call for each, and its words.
_ONCE: tuple[tuple[tuple[str, ...], str], ...] = (
    (("eyes-shielded",), "eye protection on"),
    (("nothing-loose-to-catch", "hair-up-and-covered"), "nothing loose on you"),
    (("guards-set-before-start", "chip-shield-at-the-cutter"), "chip shield set"),
    (("belt-cover-closed",), "belt cover shut"),
    (("lowest-speed-before-start",), "speed at its lowest"),
    (("range-changed-at-rest",), "range engaged"),
)
#: And in every set-up, in the order of the hands.
_EACH: tuple[tuple[tuple[str, ...], str], ...] = (
    (("room-under-the-hole",), "room under the holes"),
    (("drawbar-tight-taper-clean",), "drawbar tight"),
    (("wrench-out-before-start",), "key and wrench out"),
    (("quill-locked-for-milling", "slides-locked-for-milling"), "idle slides locked"),
    (("tight-then-turn-by-hand",), "spun once by hand"),
)
#: Reminders to tick that belong to the end of a set-up, and those that come
#: after the step that clamps the work.
_AT_THE_END = ("edges-cleaned-signed",)
_ONCE_TIGHT = ("seat-and-test-the-parallels",)
#: On the cover, with what is ticked once.
_FETCHED = ("fetch-all-tools-first",)
SEATED = "work seated and tight"
#: More ticks than this in a set-up, besides steps and layers, are no longer read (common practice).
MOST = 12


def _here(plan: Plan, set_up: SetUp) -> set[str]:
    """Ids of the notes of the job and of a set-up with its steps."""
    notes = [*plan.notes.sheet, *plan.notes.set_ups.get(set_up.key, ())]
    for operation in set_up.operations:
        notes += plan.notes.steps.get(operation.key, ())
    return {note.id for note in notes}


def _reminded(plan: Plan, set_up: SetUp, ids: tuple[str, ...] | None = None) -> list[str]:
    """Reminders to tick of these ids; without ids those that belong before cutting."""
    late = (*_AT_THE_END, *_ONCE_TIGHT, *_FETCHED)
    rows = plan.reminders.ticks.get(set_up.key, ())
    return [row.text for row in rows if (row.id in ids if ids is not None else row.id not in late)]


def once(plan: Plan) -> tuple[str, ...]:
    """What is ticked once, before the first cut of the whole job."""
    here = set().union(*(_here(plan, set_up) for set_up in plan.job.set_ups)) if plan.job.set_ups else set()
    fetched = [text for set_up in plan.job.set_ups for text in _reminded(plan, set_up, _FETCHED)]
    return (*dict.fromkeys(fetched), *(text for ids, text in _ONCE if here & set(ids)))


def strapping(set_up: SetUp) -> str:
    """The key of the step that clamps the work; empty where it is held when the set-up begins."""
    return next((operation.key for operation in set_up.operations if "clamp" in roles(operation).does), "")


def seated(plan: Plan, set_up: SetUp) -> str:
    """What is felt for when the work is held, in one line: after the step that
    clamps it, else before cutting.
    """
    return "; ".join((SEATED, *_reminded(plan, set_up, _ONCE_TIGHT)))


def before(plan: Plan, set_up: SetUp) -> tuple[str, ...]:
    """What is ticked before the first cut of a set-up."""
    here = _here(plan, set_up)
    hold = () if strapping(set_up) else (SEATED, *_reminded(plan, set_up, _ONCE_TIGHT))
    rest = tuple(text for ids, text in _EACH if here & set(ids))
    return (*_reminded(plan, set_up), *hold, *rest)[:MOST]


def at_the_end(plan: Plan, set_up: SetUp) -> tuple[str, ...]:
    """What is ticked before the work is taken out."""
    return tuple(_reminded(plan, set_up, _AT_THE_END))
