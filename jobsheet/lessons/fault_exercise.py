"""Find what is wrong, find what is missing: the steps of a job with mistakes on purpose, and
the answer of somebody who read them.
"""

from __future__ import annotations

from msgspec import Struct

from jobsheet.lessons.order_exercise import NoExercise
from jobsheet.lessons.planted import Ground, Plant, Planted, missing_ones, wrong_ones
from jobsheet.lessons.seeds import Draws, draws_for
from jobsheet.lessons.slips import WrongAnswer
from jobsheet.model.job import Job
from jobsheet.model.remark import Remark
from jobsheet.reckoning.reckoner import Reckoned
from jobsheet.review.engine import title_of

#: Mistakes on a sheet, by level; from the second level on the whole job is shown, not only the set-up.
COUNT = {1: 1, 2: 1, 3: 2, 4: 3}


class Fault(Struct, frozen=True, kw_only=True):
    """One mistake: its rows by which it counts as found, what was done, why it is one, and its rule."""

    rows: tuple[int, ...]
    done: str
    remark: Remark

    @property
    def title(self) -> str:
        """The rule, as people call it."""
        return title_of(self.remark.rule)


class FaultExercise(Struct, frozen=True, kw_only=True):
    """One sheet. `job` is the job with the mistakes, its steps numbered from 1;
    `shown` are the set-ups that are printed.
    """

    missing: bool
    level: int
    seed: int
    sheet: int
    job: Job
    shown: tuple[str, ...]
    faults: tuple[Fault, ...]
    #: What is missing, in words.
    gone: str = ""


def fault_exercise(reckoned: Reckoned, level: int, seed: int, sheet: int, *, missing: bool) -> FaultExercise:
    """The sheet of that class seed and number; raises NoExercise where no mistake
    in this job has exactly one remark.
    """
    draws = draws_for(reckoned.job, "missing" if missing else "wrong", level, seed, sheet)
    ground = Ground(reckoned)
    found = _gone(ground, draws) if missing else _wrong(ground, draws, COUNT[level])
    if found is None:
        name = reckoned.job.part.number or "This job"
        raise NoExercise(
            f"{name} has no {'step that could be left out' if missing else 'mistake'} of which the review says exactly one thing; try"
            " another sheet number or level, or another job"
        )
    job, faults, home, gone = found
    shown = (home,) if level == 1 else tuple(set_up.key for set_up in job.set_ups)
    return FaultExercise(
        missing=missing, level=level, seed=seed, sheet=sheet, job=job, shown=shown, faults=faults, gone=gone
    )


Found = tuple[Job, tuple[Fault, ...], str, str]


def _gone(ground: Ground, draws: Draws) -> Found | None:
    """One step left out; it counts as found before any row where it could stand."""
    for plant in draws.shuffled(list(missing_ones(ground))):
        made = ground.planted(plant)
        home, operation = ground.job.find(plant.at)
        if made is None or len(home.operations) < 2:
            continue
        whole = ground.several((plant,))
        if whole is None:
            continue
        from jobsheet.operations.registry import kind as kind_of

        job, remarks = whole
        gone = kind_of(operation.kind).title_of(operation.fields)
        fault = Fault(
            rows=_places(ground, job, home.key, plant.at), done=f"left out: {gone}", remark=remarks[0]
        )
        return job, (fault,), home.key, gone
    return None


def _places(ground: Ground, job: Job, set_up: str, key: str) -> tuple[int, ...]:
    """The rows before which a step could stand, by what must come first; one
    behind the last row means at the end.
    """
    rows = next(other.operations for other in job.set_ups if other.key == set_up)
    order = ground.needed.steps
    first = max((at + 1 for at, operation in enumerate(rows) if order.before(operation.key, key)), default=0)
    last = min(
        (at for at, operation in enumerate(rows) if order.before(key, operation.key)), default=len(rows)
    )
    start = rows[0].number
    return tuple(start + at for at in range(first, max(first, last) + 1))


def _wrong(ground: Ground, draws: Draws, count: int) -> Found | None:
    """So many mistakes, each of another sort and found alone; fewer where the job has no
    more, and the sheet says how many.
    """
    by_sort: dict[str, list[Plant]] = {}
    for plant in wrong_ones(ground):
        by_sort.setdefault(plant.sort, []).append(plant)
    chosen: list[Planted] = []
    for sort in draws.shuffled(sorted(by_sort)):
        for plant in draws.shuffled(by_sort[sort]):
            beside = (*(planted.plant for planted in chosen), plant)
            if chosen and ground.several(beside, solids=False) is None:
                continue
            made = ground.planted(plant)
            if made is not None and made.remark.rule not in {planted.remark.rule for planted in chosen}:
                chosen.append(made)
                break
        if len(chosen) == count:
            break
    whole = ground.several(tuple(planted.plant for planted in chosen)) if chosen else None
    if whole is None:
        return None
    job, remarks = whole
    by_rule = {remark.rule: remark for remark in remarks}
    if len(by_rule) != len(chosen):
        return None
    faults = tuple(
        Fault(
            rows=_rows(job, by_rule[planted.remark.rule], planted.plant),
            done=planted.plant.done,
            remark=by_rule[planted.remark.rule],
        )
        for planted in chosen
    )
    return job, faults, _home(job, chosen[0].plant.at), ""


def _rows(job: Job, remark: Remark, plant: Plant) -> tuple[int, ...]:
    """The rows that name a mistake: those that the review names, and every row
    of a set-up that is held wrongly.
    """
    numbers = {operation.key: operation.number for _, operation in job.operations()}
    found = [numbers[key] for key in remark.operations if key in numbers]
    held = next((set_up for set_up in job.set_ups if set_up.key == plant.at), None)
    if held is not None:
        found += [operation.number for operation in held.operations]
    elif plant.at in numbers:
        found.append(numbers[plant.at])
    return tuple(sorted(set(found)))


def _home(job: Job, at: str) -> str:
    return next(
        set_up.key
        for set_up in job.set_ups
        if set_up.key == at or any(step.key == at for step in set_up.operations)
    )


class Sought(Struct, frozen=True, kw_only=True):
    """What is said of an answer: which mistakes were found, and rows that were
    named though nothing is wrong there.
    """

    found: tuple[Fault, ...]
    left: tuple[Fault, ...]
    besides: tuple[int, ...]

    @property
    def right(self) -> bool:
        """Whether all were found and nothing else named."""
        return not self.left and not self.besides

    @property
    def good(self) -> bool:
        """Whether the part would be good with those mended that were found."""
        return not any(fault.remark.severity in ("hazard", "scrap") for fault in self.left)


def faults_marked(exercise: FaultExercise, text: str) -> Sought:
    """An answer as it was typed, the numbers of rows: `7`, or `3 12`. Raises
    WrongAnswer where one is none of the sheet.
    """
    numbers = [
        step.number
        for set_up in exercise.job.set_ups
        if set_up.key in exercise.shown
        for step in set_up.operations
    ]
    rows = []
    for word in text.replace(",", " ").split():
        if not word.isdigit() or not numbers[0] <= int(word) <= numbers[-1] + exercise.missing:
            raise WrongAnswer(
                f"“{word}” is no row of sheet {exercise.sheet}: write the numbers of rows, {numbers[0]} to {numbers[-1]}"
            )
        rows.append(int(word))
    faults = tuple(fault for fault in exercise.faults if set(fault.rows) & set(rows))
    named = {row for fault in faults for row in fault.rows}
    return Sought(
        found=faults,
        left=tuple(fault for fault in exercise.faults if fault not in faults),
        besides=tuple(row for row in rows if row not in named),
    )
