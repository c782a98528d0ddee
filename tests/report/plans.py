"""Jobs to print in tests, written as people write them, and their pages."""

from __future__ import annotations

from jobsheet.model.job import Job
from jobsheet.paths import sample_jobs
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.blocks import Document
from jobsheet.report.job_sheet import job_sheet
from jobsheet.review.engine import review
from jobsheet.review.notes.notes import notes_for
from jobsheet.storage.card_files import find_card
from jobsheet.storage.job_file import job_from_text, read_job
from jobsheet.storage.writing import scalar

HEAD = """format: 1
units: {units}
part:
  number: {number}
  name: {name}
workshop: {workshop}
planned by: {by}
planned on: 2026-11-25
material: S235
machine: {machine}
fluid: brushed
{trainee}stock:
  length: {stock[0]}
  width: {stock[1]}
  height: {stock[2]}
datums:
  A: front
  B: left
why: {why}
set-ups:
"""
SET_UP = """  - key: set-up-{number}
    number: {number}
    title: {title}
    up: {up}
    operator: {operator}
    fixed jaw: {jaw}
    minutes: 20 min
    holding:
      device: {device}
      packing: two 6 mm parallels
      above jaws: 6 mm
    zero:
      named: A and B
      x from: left
      y from: front
    operations:
"""


def plate() -> Job:
    """The shipped HM-100."""
    return read_job(sample_jobs() / "hm-100-drilled-plate-b1.yaml")


def bench(number: int, what: str = "Break the edges", note: str = "", key: str = "") -> str:
    """A step by hand, as the file has it."""
    return (
        f"      - key: {key or f'bench-{number}'}\n        number: {number}\n        kind: bench-step\n        what: {scalar(what)}\n"
        + (f"        note: {scalar(note)}\n" if note else "")
    )


def drill(
    number: int,
    places: list[tuple[float, float]],
    *,
    cutter: str = "drill 5.0, drawer 3",
    depth: str = "through",
) -> str:
    """A drilling step, as the file has it."""
    at = "".join(f"          - [{x}, {y}]\n" for x, y in places)
    return (
        f"      - key: drill-{number}\n        number: {number}\n        kind: drill\n        cutter: {scalar(cutter)}\n"
        f"        at:\n{at}        depth: {depth}\n        feed: 0.05 mm\n        spindle: 900 rpm\n"
    )


def job(
    *set_ups: list[str], units: str = "mm", machine: str = "bench-mill-b-1", number: str = "T-1", name: str = "Test piece",
    workshop: str = "Invented workshop", by: str = "Somebody", why: str = "Because.", stock: tuple[str, str, str] = ("80", "50", "12"),
    trainee: bool = False, title: str = "Top up", up: str = "top", operator: str = "front", jaw: str = "rear", device: str = "80 mm vice",
) -> Job:  # fmt: skip
    """A job of those set-ups, each a list of steps as the file has them."""
    text = HEAD.format(
        units=units, machine=machine, number=scalar(number), name=scalar(name), workshop=scalar(workshop), by=scalar(by),
        why=scalar(why), stock=stock, trainee="trainee: yes\n" if trainee else "",
    )  # fmt: skip
    for index, steps in enumerate(set_ups, 1):
        text += SET_UP.format(
            number=index, title=scalar(title), up=up, operator=operator, jaw=jaw, device=scalar(device)
        )
        text += "".join(steps)
    return job_from_text(text, "test.yaml")


def pages(plan: Job, **options: object) -> Document:
    """The pages of a job, with its notes and remarks."""
    found = Reckoner().reckon(plan)
    return job_sheet(
        plan, found, notes_for(plan, found), review(plan, found), find_card(plan.machine), **options
    )  # type: ignore[arg-type]
