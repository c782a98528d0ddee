"""What an open job needs proved: a few rungs in its own metal that end at what its steps
ask, instead of the machine's limit.
"""

from __future__ import annotations

from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.errors import JobsheetError
from jobsheet.holdings.all_holdings import words_of
from jobsheet.model.job import Operation
from jobsheet.model.setting import Setting
from jobsheet.model.shop import Shop
from jobsheet.model.trials import ABOUT, LEARNED, MILLED, MILLING
from jobsheet.operations.registry import roles
from jobsheet.operations.written import PROVED
from jobsheet.reckoning.asked import asked_of
from jobsheet.reckoning.ladder.ladder_in_step import in_step
from jobsheet.reckoning.ladder.ladders import plan
from jobsheet.reckoning.ladder.rung import Ladder
from jobsheet.reckoning.reckoner import Outcome, Reckoned


class Need(Struct, frozen=True, kw_only=True):
    """One ladder for all steps of a process with one kind of cutter; `steps` are their
    numbers, the most demanding first.

    `ladder` is None where none can be made of such cuts; `why` then says so.
    """

    process: str
    cutter_kind: str
    steps: tuple[int, ...]
    verdicts: tuple[str, ...]
    ladder: Ladder | None = None
    why: str = ""


class _Step(Struct, frozen=True):
    operation: Operation
    setting: Setting
    share: float
    verdict: str
    held: str


def job_needs(reckoned: Reckoned, shop: Shop | None = None) -> tuple[Need, ...]:
    """The ladders by which all steps of the job that were not tried, or are tight, are
    settled; none where nothing is open.
    """
    by_need: dict[tuple[str, str], list[_Step]] = {}
    for set_up, operation in reckoned.job.operations():
        outcome = reckoned.operations[operation.key]
        open_ = _open(outcome)
        process = roles(operation).process
        cutter = getattr(operation.fields, "cutter", None)
        if not open_ or not process or cutter is None or outcome.figures is None:
            continue
        setting = reckoned.settings[operation.key]
        limit = ABOUT.get(process, "chatter" if "chatter" in open_ else "spindle-torque")
        share = next(
            (asked.share for asked in asked_of(outcome.figures, setting) if asked.limit == limit), 0.0
        )
        step = _Step(
            operation, setting, share, open_.get(limit, next(iter(open_.values()))), words_of(set_up.holding)
        )
        by_need.setdefault((process, cutter.kind), []).append(step)
    needs = [
        _need(process, kind, sorted(steps, key=lambda step: -step.share), reckoned, shop)
        for (process, kind), steps in by_need.items()
    ]
    return tuple(sorted(needs, key=lambda need: (need.ladder is None, -len(need.steps))))


def _open(outcome: Outcome) -> dict[str, str]:
    """The learned limits that were not tried or are tight there, with their verdicts."""
    return {
        limit.name: limit.verdict
        for limit in outcome.limits
        if limit.name in LEARNED and limit.verdict in ("not tried", "tight")
    }


def _need(process: str, kind: str, steps: list[_Step], reckoned: Reckoned, shop: Shop | None) -> Need:
    numbers = tuple(step.operation.number for step in steps)
    verdicts = tuple(step.verdict for step in steps)
    bare = Need(process=process, cutter_kind=kind, steps=numbers, verdicts=verdicts)
    if process in MILLED:
        return _in_itself(bare, reckoned)
    if process not in PROVED:
        words = f"No ladder is made of {process} cuts. Take the lightest first, and write down how each went: that counts as well."
        return _because(bare, words)
    worst = steps[0]
    try:
        ladder = _ladder(process, worst, reckoned, shop)
    except JobsheetError as error:
        words = str(error)
        return _because(bare, f"{words[:1].upper()}{words[1:]}".rstrip(".") + ".")
    return replace(bare, ladder=ladder, why=ladder.refused)


def _in_itself(need: Need, reckoned: Reckoned) -> Need:
    """Cuts of which no ladder is made in scrap: the layers of the most demanding step, in the part itself."""
    try:
        ladder = in_step(reckoned, need.steps[0])
    except JobsheetError as error:
        return _because(need, str(error))
    return replace(need, ladder=ladder if ladder.rungs else None, why=ladder.refused)


def _because(need: Need, why: str) -> Need:
    return replace(need, why=why)


def _ladder(process: str, worst: _Step, reckoned: Reckoned, shop: Shop | None) -> Ladder:
    """At the speed, feed and width of the most demanding step, up to what it asks."""
    fields, outcome = worst.operation.fields, reckoned.operations[worst.operation.key]
    texts: dict[str, str] = {}
    for name in ("width", "feed_per_tooth", "feed", "way"):
        text = getattr(getattr(fields, name, None), "text", "") or (
            getattr(fields, name, "") if name == "way" else ""
        )
        if text and process in MILLING and not (process == "slot" and name in ("width", "way")):
            # A bare width is in the units of the job: on a ladder it is shown
            # beside other sizes, and says so.
            texts[name] = f"{text} {reckoned.job.units}" if name == "width" and text[-1].isdigit() else text
    if process == "face":
        texts.pop("way", None)
    speed = outcome.figures.value("spindle_speed") if outcome.figures is not None else None
    if speed is not None:
        texts["spindle"] = f"{speed * 60:.6g} rpm"
    about = ABOUT.get(process, "spindle-torque")
    job = reckoned.job
    how: dict[str, Any] = {
        "cutter": fields.cutter.text, "material": job.material, "kind": process, "units": job.units, "texts": texts,
        "fluid": job.fluid, "shop": shop, "up_to": {about: worst.share},
    }  # fmt: skip
    ladder = plan(job.machine, **how)
    if ladder.rungs or not any(capacity.bad for capacity in ladder.capacities):
        return ladder
    # Such cuts gave out before: the finer ladder goes on from where that is, and ends at what is asked here.
    finer = plan(job.machine, **how, finer=True)
    return finer if finer.rungs else ladder
