"""Asks whether a cut is planned at which this machine rang before."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.errors import JobsheetError
from jobsheet.model.remark import Remark
from jobsheet.model.trials import Trial
from jobsheet.reckoning.worked_anew import anew
from jobsheet.review.mending.best_here import best_here, no_cut_goes
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.rule import Needs, View, remark, rule
from jobsheet.storage.records.proof_log import read_log

_GOOD = ("clean",)


@rule("not-again-at-chatter-settings", "Not again at chatter settings", "rework", needs=Needs.FIGURES)
def not_again_at_chatter_settings(view: View) -> Iterator[Remark]:
    """The proof log has chatter with this kind of cutter, no further out and no faster, at no more than this cut asks of the frame.

    Quiet where a later cut at as much was clean. Whether the feed per tooth then goes up or down, the trade disagrees; shorter, lower and
    narrower come first either way.

    Because: Chatter is first a question of stiffness.
    Not so: the cut that rang last week, once more
    So: shorter, lower or narrower
    From: Gühring, troubleshooting, vibrations in milling
    """
    plan = plan_of(view)
    if not plan.steps:
        return
    trials = _trials(plan.steps[0].setting.machine.name)
    rang = [trial for trial in trials if trial.outcome == "chatter"]
    if not rang:
        return
    for step in plan.steps:
        asked = next((limit.demand for limit in step.outcome.limits if limit.name == "chatter"), None)
        if asked is None:
            continue
        found = next(
            (
                trial
                for trial in reversed(rang)
                if _as_much(trial, step, asked) and not _later_clean(trials, trial, asked, step)
            ),
            None,
        )
        if found is None:
            continue
        message = (
            f"It rang at no more than this on {found.date} ({found.cutter}): shorter, lower or narrower first"
        )
        yield remark(
            view, "not-again-at-chatter-settings", message, step.key, set_up=step.set_up.key,
            fix=best_here(step.operation, step.setting), by_hand=no_cut_goes(step.operation, step.setting),
        )  # fmt: skip


def _trials(machine: str) -> tuple[Trial, ...]:
    try:
        return anew(read_log(machine).standing)
    except (JobsheetError, OSError):
        return ()


def _as_much(trial: Trial, step: Step, asked: float) -> bool:
    """Whether the trial was no heavier in anything than what is planned."""
    demand = trial.of("chatter")
    cutter = step.fields.cutter
    speed = step.figure("spindle_speed")
    if demand is None or trial.cutter_kind != cutter.kind or demand.demand > asked * (1 + 1e-9):
        return False
    if trial.stick_out is not None and (
        cutter.stick_out is None or trial.stick_out > cutter.stick_out + 1e-9
    ):
        return False
    return trial.speed is None or speed is None or trial.speed <= speed * (1 + 1e-6)


def _later_clean(trials: tuple[Trial, ...], rang: Trial, asked: float, step: Step) -> bool:
    for trial in trials:
        demand = trial.of("chatter")
        if demand is None or trial.outcome not in _GOOD or trial.cutter_kind != step.fields.cutter.kind:
            continue
        if (trial.date, trial.time) > (rang.date, rang.time) and demand.demand >= asked * (1 - 1e-9):
            return True
    return False
