"""Every command of the folder: what it makes is undone and done again to equal
documents, and it has a name for Undo.
"""

from __future__ import annotations

import importlib
import inspect
from pathlib import Path

import msgspec
import pytest

import jobsheet.edit
from jobsheet.edit import (
    commands,
    finished_lines,
    photograph_commands,
    plan_for,
    revision_commands,
    setting_aside,
    several_steps,
    squaring,
    step_commands,
    three_ways,
)
from jobsheet.edit.difference import changes
from jobsheet.edit.history import History
from jobsheet.model.held_work import NOTHING
from jobsheet.model.job import Photograph
from jobsheet.paths import sample_jobs
from jobsheet.reckoning.answers.fits_answer import for_card
from jobsheet.storage.card_files import find_card
from jobsheet.storage.job_file import job_from_text, read_job
from jobsheet.storage.job_writing import write_job

JOB = read_job(sample_jobs() / "hm-103-pivot-block.yaml")
SET_UPS = [one.key for one in JOB.set_ups]
KEYS = [operation.key for _, operation in JOB.operations()]
FIRST = JOB.set_ups[0]
PHOTOGRAPH = Photograph(content="ab" * 32, shows="the stop", about=SET_UPS[0])

#: One of each, which changes something in the sample.
EACH = {
    commands.SetField: commands.SetField("job:part", "name", "Other"),
    commands.SetFields: commands.SetFields(KEYS[0], (("note", "mind the burr"),)),
    commands.HoldBy: commands.HoldBy(f"holding:{SET_UPS[0]}", "kind", "", holding=NOTHING),
    commands.GiveBack: commands.GiveBack(KEYS[0], "feed"),
    commands.ChooseMachine: commands.ChooseMachine("bench-mill-b-1"),
    commands.ChangeUnits: commands.ChangeUnits("in"),
    step_commands.AddOperation: step_commands.AddOperation(SET_UPS[0], "drill"),
    step_commands.AddSetUp: step_commands.AddSetUp(SET_UPS[0]),
    step_commands.DeleteSetUp: step_commands.DeleteSetUp(SET_UPS[1]),
    step_commands.MoveSetUp: step_commands.MoveSetUp(SET_UPS[-1], 0),
    step_commands.Renumber: (several_steps.DeleteSteps((KEYS[0],)), step_commands.Renumber()),
    finished_lines.MoveLine: finished_lines.MoveLine(1, 1),
    finished_lines.StrikeLine: finished_lines.StrikeLine(2),
    several_steps.DeleteSteps: several_steps.DeleteSteps((KEYS[0], KEYS[-1])),
    several_steps.MoveSteps: several_steps.MoveSteps((KEYS[0], KEYS[-1]), SET_UPS[1], 1),
    several_steps.DuplicateSteps: several_steps.DuplicateSteps((KEYS[0], KEYS[-1])),
    several_steps.InsertSteps: several_steps.InsertSteps(FIRST.operations, SET_UPS[-1], at_end=True),
    several_steps.InsertSetUps: several_steps.InsertSetUps(JOB.set_ups[:2], SET_UPS[0]),
    several_steps.RepeatSetUp: several_steps.RepeatSetUp(SET_UPS[0]),
    squaring.SquareAllSix: squaring.SquareAllSix("80", "50", "40"),
    plan_for.PlanFor: plan_for.PlanFor(for_card(JOB, find_card("bench-mill-b-1"))[0], "Bench mill B-1"),
    revision_commands.AddRevision: revision_commands.AddRevision("first plan", "Trainer", "2026-11-29"),
    revision_commands.BringBack: revision_commands.BringBack(
        plan=msgspec.structs.replace(JOB, note="as it was"), called="plan 1", who="Trainer", when="2026-11-30"
    ),
    setting_aside.Dismiss: setting_aside.Dismiss("name-the-datum", SET_UPS[0], "known"),
    photograph_commands.AddPhotograph: photograph_commands.AddPhotograph(PHOTOGRAPH),
    photograph_commands.TakeOutPhotograph: (
        photograph_commands.AddPhotograph(PHOTOGRAPH),
        photograph_commands.TakeOutPhotograph(PHOTOGRAPH),
    ),
    three_ways.TakeBoth: three_ways.TakeBoth(
        three_ways.compared(JOB, JOB, msgspec.structs.replace(JOB, note="from somebody else"))
    ),
    setting_aside.BringBack: (
        setting_aside.Dismiss("name-the-datum", SET_UPS[0], "known"),
        setting_aside.BringBack(),
    ),
}


def every_command():
    """Every class of the folder that makes a job of a job."""
    found = []
    for path in sorted(Path(jobsheet.edit.__file__).parent.glob("[!_]*.py")):
        module = importlib.import_module(f"jobsheet.edit.{path.stem}")
        for one in vars(module).values():
            if inspect.isclass(one) and one.__module__ == module.__name__ and hasattr(one, "apply"):
                signature = inspect.signature(one.apply)
                if "job" in signature.parameters and one is not commands.Command:
                    found.append(one)
    return found


def test_none_is_forgotten():
    assert set(every_command()) == set(EACH)


@pytest.mark.parametrize("kind", every_command(), ids=lambda one: one.__name__)
def test_undo_and_redo_give_equal_documents(kind):
    one = EACH[kind]
    *before, command = one if isinstance(one, tuple) else (one,)
    history = History(JOB)
    for other in before:
        history.do(other)
    first = history.job
    history.do(command)
    made = history.job
    assert made != first
    assert job_from_text(write_job(made), "made") == made
    history.undo()
    assert history.job is first
    history.redo()
    assert history.job == made
    assert write_job(history.job) == write_job(made)
    assert command.apply(first) == made
    assert history.undo_label == history.undo_label.strip() != ""


@pytest.mark.parametrize("kind", every_command(), ids=lambda one: one.__name__)
def test_what_it_changes_is_named_in_words(kind):
    """Else a plan that left the desk could be changed without its next number.
    Revisions say themselves what changed.
    """
    one = EACH[kind]
    *before, command = one if isinstance(one, tuple) else (one,)
    first = JOB
    for other in before:
        first = other.apply(first)
    made = command.apply(first)
    said = changes(first, made, most=None)
    assert bool(said) == (
        msgspec.structs.replace(made, revisions=()) != msgspec.structs.replace(first, revisions=())
    )
    assert all(line == line.strip() != "" for line in said)
