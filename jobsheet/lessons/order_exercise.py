"""Put in order: which steps are asked, how their slips are shuffled, how an answer is read and marked."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil

from msgspec import Struct

from jobsheet.errors import JobsheetError
from jobsheet.holdings.all_holdings import words_of
from jobsheet.lessons.marking import Asked, Marked, marked
from jobsheet.lessons.needed_order import Needed, needed_order
from jobsheet.lessons.precedence import Precedence
from jobsheet.lessons.seeds import Draws, draws_for
from jobsheet.lessons.slips import HEADS, LETTERS, Slip, WrongAnswer, letters_read, step_words
from jobsheet.model.job import Job, SetUp
from jobsheet.reckoning.reckoner import Reckoned
from jobsheet.review.plan.held import does

#: So many slips at most, by level; the first level is one set-up.
MOST = {1: 9, 2: 14, 3: 22, 4: 22}
#: An order is worth asking from so many steps and so many moves between best and worst on.
LEAST_STEPS, LEAST_MOVES = 4, 2
#: A shuffle gives nothing away that is at least so far from right, as a share of
#: the farthest; tries to find one.
FAR, TRIES = 0.6, 60


class NoExercise(JobsheetError):
    """A job that has no exercise of that kind and level in it; the sentence says
    why, and what to ask instead.
    """


class Block(Struct, frozen=True, kw_only=True):
    """The slips of one set-up under its heading; `letter` is its own where set-ups are put in order too."""

    letter: str
    set_up: SetUp
    words: str
    held: str
    slips: tuple[Slip, ...]


class OrderExercise(Struct, frozen=True, kw_only=True):
    """One sheet: its slips as they are printed, and what is asked. `given` are the slips
    at either end that are given away.
    """

    level: int
    seed: int
    sheet: int
    blocks: tuple[Block, ...]
    asked: Asked
    given: tuple[str, str] = ("", "")

    @property
    def several(self) -> bool:
        """Whether the set-ups are put in order too."""
        return len(self.blocks) > 1

    @property
    def example(self) -> str:
        """How an answer is typed, with the letters as they happen to stand."""
        if self.several:
            return " ".join(
                block.letter + "".join(slip.letter for slip in block.slips) for block in self.blocks
            )
        return "".join(slip.letter for slip in self.blocks[0].slips)


def order_exercise(
    reckoned: Reckoned, level: int, seed: int, sheet: int, set_ups: tuple[int, ...] = ()
) -> OrderExercise:
    """The exercise of that class seed and sheet, the same whenever it is made.

    Parameters
    ----------
    set_ups : tuple of int, optional
        Numbers of the only set-ups to ask; without them the seed chooses

    Raises
    ------
    NoExercise, NoOrder
        If nothing in the job is worth asking at that level; if its plan goes round in a circle.
    """
    needed = needed_order(reckoned)
    draws = draws_for(needed.job, "order", level, seed, sheet)
    whole = _whole(needed.job, set_ups)
    steps = _one_set_up(needed, draws, whole) if level == 1 else _several(needed, draws, MOST[level], whole)
    if steps is None:
        raise NoExercise(
            f"{needed.job.part.number or 'This job'} has no order worth asking at level {level}: it needs {LEAST_STEPS} steps of which some"
            " must stand in order; try another level, or another job"
        )
    asked = Asked(needed=needed, steps=steps)
    given = _ends(asked.inside(next(iter(steps)))) if level == 1 else ("", "")
    return OrderExercise(
        level=level, seed=seed, sheet=sheet, asked=asked, given=given, blocks=_blocks(reckoned, asked, draws)
    )


def _worth(order: Precedence) -> bool:
    return len(order.items) >= LEAST_STEPS and order.worst >= LEAST_MOVES


Whole = list[tuple[str, tuple[str, ...]]]


def _whole(job: Job, set_ups: tuple[int, ...]) -> Whole:
    """The set-ups to choose from with their steps; raises NoExercise where
    the job has none of such a number.
    """
    there = {set_up.number: set_up for set_up in job.set_ups}
    missing = next((one for one in set_ups if one not in there), None)
    if missing is not None:
        raise NoExercise(f"There is no set-up {missing} in this job; it has {', '.join(map(str, there))}")
    return [
        (set_up.key, tuple(step.key for step in set_up.operations))
        for set_up in job.set_ups
        if set_up.operations and (not set_ups or set_up.number in set_ups)
    ]


def _one_set_up(needed: Needed, draws: Draws, whole: Whole) -> dict[str, tuple[str, ...]] | None:
    """One set-up, or where it is long so many steps of it that follow each other."""
    found = []
    steps = {operation.key: operation for _, operation in needed.job.operations()}
    for key, keys in whole:
        for start in range(max(1, len(keys) - MOST[1] + 1)):
            run = keys[start : start + MOST[1]]
            if any(does(steps[key], "change holding", "take out") for key in keys[:start]):
                break  # what is said of the holding would no longer be so
            if _worth(needed.steps.only(run)):
                found.append({key: run})
    return draws.chosen(found) if found else None


def _several(needed: Needed, draws: Draws, most: int, whole: Whole) -> dict[str, tuple[str, ...]] | None:
    """Set-ups that follow each other, as many as have room; a single one where there is no more."""
    runs = []
    for start in range(len(whole)):
        end = start
        while end < len(whole) and sum(len(keys) for _, keys in whole[start : end + 1]) <= most:
            end += 1
        run = dict(whole[start:end])
        if run and _worth(needed.steps.only([key for keys in run.values() for key in keys])):
            runs.append(run)
    if runs:
        longest = max(len(run) for run in runs)
        return draws.chosen([run for run in runs if len(run) == longest])
    only = [{key: keys[:most]} for key, keys in whole if _worth(needed.steps.only(keys[:most]))]
    return draws.chosen(only) if only else None


def _ends(order: Precedence) -> tuple[str, str]:
    """The step that must come before all others, and the one after all of
    them; nothing where there is none.
    """
    whole = (1 << len(order.items)) - 1
    first = [
        item
        for item in order.items
        if all(order.before(item, other) for other in order.items if other != item)
    ]
    last = [
        item
        for item, ahead in zip(order.items, order.ahead, strict=True)
        if ahead.bit_count() == whole.bit_count() - 1
    ]
    return (first[0] if first else ""), (last[0] if last else "")


def _blocks(reckoned: Reckoned, asked: Asked, draws: Draws) -> tuple[Block, ...]:
    words = step_words(reckoned)
    job = asked.needed.job
    kinds = {operation.key: operation.kind for _, operation in job.operations()}
    letters = iter(LETTERS)
    order = _mixed(draws, list(asked.steps), asked.set_ups)
    blocks = []
    for head, key in zip(HEADS, order, strict=False):
        set_up = next(set_up for set_up in job.set_ups if set_up.key == key)
        slips = tuple(
            Slip(letter=letter, key=step, words=words[step], kind=kinds[step])
            for step, letter in zip(_mixed(draws, asked.steps[key], asked.inside(key)), letters, strict=False)
        )
        blocks.append(
            Block(
                letter=head if len(order) > 1 else "", set_up=set_up, words=set_up.title or f"{set_up.up} up",
                held=words_of(set_up.holding), slips=slips,
            )
        )  # fmt: skip
    return tuple(blocks)


def _mixed(draws: Draws, keys: Sequence[str], order: Precedence) -> list[str]:
    """A shuffle that is far from right, so that nobody reads the answer off the sheet;
    the farthest of many where none is.
    """
    wanted, best = ceil(FAR * order.worst), list(keys)
    for _ in range(TRIES):
        mixed = draws.shuffled(keys)
        if order.moves(mixed) >= wanted:
            return mixed
        best = max(best, mixed, key=order.moves)
    return best


# --- an answer ---


def answer_read(exercise: OrderExercise, text: str) -> dict[str, tuple[str, ...]]:
    """An answer as it was typed: letters in their order, or where set-ups are ordered too
    one word for each, its letter first.

    Raises
    ------
    WrongAnswer
        If it has letters that the sheet has not.
    """
    if not exercise.several:
        slips = {slip.letter: slip.key for slip in exercise.blocks[0].slips}
        read = letters_read(text, slips, f"of sheet {exercise.sheet}")
        return {exercise.blocks[0].set_up.key: tuple(slips[one] for one in read)}
    heads = {block.letter: block for block in exercise.blocks}
    found: dict[str, tuple[str, ...]] = {}
    for word in text.split():
        block = heads.get(word[:1].upper())
        if block is None:
            raise WrongAnswer(
                f"“{word}” begins with no set-up of sheet {exercise.sheet}: write each set-up's letter and its slips, such as"
                f" {exercise.example}"
            )
        if block.set_up.key in found:
            raise WrongAnswer(f"Set-up {block.letter} stands there more than once; each has one place")
        slips = {slip.letter: slip.key for slip in block.slips}
        read = letters_read(word[1:], slips, f"of set-up {block.letter}")
        found[block.set_up.key] = tuple(slips[one] for one in read)
    return found


def order_marked(exercise: OrderExercise, text: str) -> Marked:
    """What is said of an answer as it was typed; raises as `answer_read` does."""
    return marked(exercise.asked, answer_read(exercise, text))
