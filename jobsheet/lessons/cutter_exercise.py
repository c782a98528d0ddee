"""Choose the cutter: the one that the plan takes among others of the cabinet, each of which is
wrong for one reason that has a name.
"""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from jobsheet.errors import DocumentError
from jobsheet.lessons.order_exercise import NoExercise
from jobsheet.lessons.planted import Ground
from jobsheet.lessons.seeds import Draws, draws_for
from jobsheet.lessons.slips import LETTERS, WrongAnswer
from jobsheet.model.job import Job, Operation
from jobsheet.model.own_tools import Thing
from jobsheet.model.quantity import Cutter
from jobsheet.model.remark import Remark
from jobsheet.operations.registry import kind as kind_of
from jobsheet.operations.registry import roles
from jobsheet.reckoning.reckoner import Reckoned
from jobsheet.review.engine import rules, title_of
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.hole_chains import Chain, HoleStep, holes_of
from jobsheet.storage.cabinet_file import cabinet_for
from jobsheet.units.show import trimmed

#: Questions by level; wrong ones beside the right one; how many of the nearest in size are tried.
COUNT = {1: 2, 2: 3, 3: 4, 4: 4}
BESIDE, LEAST, TRIED = 3, 1, 10


class Refusal(Struct, frozen=True, kw_only=True):
    """Why a tool is wrong: the rule as people call it, what is found, why that is bad."""

    title: str
    words: str
    because: str


class Choice(Struct, frozen=True, kw_only=True):
    """One tool to choose; where nothing refuses it, it is the right one."""

    letter: str
    line: str
    refused: Refusal | None = None


class CutterQuestion(Struct, frozen=True, kw_only=True):
    """What a tool is for, and the tools to choose from."""

    key: str
    ask: str
    choices: tuple[Choice, ...]

    @property
    def right(self) -> Choice:
        """The one that the plan takes."""
        return next(choice for choice in self.choices if choice.refused is None)


class CutterExercise(Struct, frozen=True, kw_only=True):
    """One sheet."""

    level: int
    seed: int
    sheet: int
    job: Job
    questions: tuple[CutterQuestion, ...]


def cutter_exercise(reckoned: Reckoned, level: int, seed: int, sheet: int) -> CutterExercise:
    """The sheet of that class seed and number; raises NoExercise where the cabinet has
    nothing that is wrong for one reason.
    """
    draws, ground = draws_for(reckoned.job, "cutter", level, seed, sheet), Ground(reckoned)
    things = _things(reckoned.job)
    questions: list[CutterQuestion] = []
    for operation, ask in draws.shuffled(list(_asked(reckoned))):
        made = _question(ground, draws, operation, ask, things)
        if made is not None and made.ask not in {question.ask for question in questions}:
            questions.append(made)
        if len(questions) == COUNT[level]:
            break
    if not questions:
        name = reckoned.job.part.number or "This job"
        raise NoExercise(
            f"{name} has no tool with another one in the cabinet that would be wrong for one reason; try --kind figures, or another job"
        )
    order = {operation.key: at for at, (_, operation) in enumerate(reckoned.job.operations())}
    questions.sort(key=lambda question: order[question.key])
    return CutterExercise(level=level, seed=seed, sheet=sheet, job=reckoned.job, questions=tuple(questions))


def _things(job: Job) -> tuple[Thing, ...]:
    try:
        cabinet = cabinet_for(job.workshop)
    except DocumentError:
        return ()  # said by the review
    return (
        tuple(thing for thing in cabinet.things if thing.here and thing.cutter is not None)
        if cabinet is not None
        else ()
    )


def _asked(reckoned: Reckoned) -> Iterator[tuple[Operation, str]]:
    """Steps whose tool is asked, with words that say what for and not how large it is."""
    holes = holes_of(reckoned)
    for _, operation in reckoned.job.operations():
        if not isinstance(getattr(operation.fields, "cutter", None), Cutter):
            continue
        hole = roles(operation).hole
        if hole:
            words = next((_for_a_hole(chain, step) for chain, step in holes.by_step(operation.key)), "")
        elif roles(operation).between_walls:
            words = f"{kind_of(operation.kind).title}, as the drawing asks it"
        else:
            words = ""
        if words:
            yield operation, words


def _for_a_hole(chain: Chain, step: HoleStep) -> str:
    """What a tool of a hole is for, by what comes behind it there."""
    behind = [hole_step for hole_step in chain.after(step) if hole_step.does != "countersink"]
    if step.does == "spot":
        return (
            f"What spots the holes to ⌀{trimmed(step.diameter * 1e3, 2)} mm, so that the drill does not walk"
            if behind
            else ""
        )
    if step.does != "drill" or not behind:
        return ""
    following = behind[0]
    if following.does == "tap":
        return f"The drill before {following.fields.thread.text} is tapped"
    if following.does == "ream":
        size = getattr(following.fields, "measure", None)
        there = chain.hole_before(step)
        stands = (
            f"; a hole of {trimmed(there.diameter * 1e3, 2)} mm stands there" if there is not None else ""
        )
        return f"The drill before the hole is reamed {size.said if size is not None and size.nominal else 'to size'}{stands}"
    return ""


def _question(
    ground: Ground, draws: Draws, operation: Operation, ask: str, things: tuple[Thing, ...]
) -> CutterQuestion | None:
    own: Cutter = operation.fields.cutter
    line = next(
        (thing.line for thing in things if thing.cutter is not None and _alike(thing.cutter, own)), ""
    )
    refused = [
        (one, _refused(ground, set_field(operation.key, "cutter", one)(ground.job)))
        for one in _near(own, things)
    ]
    wrong = [(one, why) for one, why in refused if why is not None]
    if not line or len(wrong) < LEAST:
        return None  # written otherwise than the others, the right one would be seen at once
    titles = [why.title for _, why in wrong]
    first = [pair for at, pair in enumerate(wrong) if pair[1].title not in titles[:at]]
    chosen = [*first, *(pair for pair in wrong if pair not in first)][:BESIDE]
    lines: list[tuple[str, Refusal | None]] = draws.shuffled([(line, None), *chosen])
    choices = tuple(
        Choice(letter=letter, line=line, refused=refused)
        for letter, (line, refused) in zip(LETTERS, lines, strict=False)
    )
    return CutterQuestion(key=operation.key, ask=ask, choices=choices)


def _refused(ground: Ground, job: Job) -> Refusal | None:
    """The one reason against a changed tool; None where there is none, or more than one.

    That the part does not come out as drawn is no second reason where a rule says what goes wrong in the cut.
    """
    if problems := ground.problems(job):
        said = problems[0]
        return (
            Refusal(title="It cannot be done", words=said[:1].upper() + said[1:], because="")
            if len(problems) == 1
            else None
        )
    remarks = ground.gained(job, solids=False) or ()
    remarks = tuple(remark for remark in remarks if not _of_the_drawing(remark)) or remarks
    if len(remarks) != 1:
        return None
    return Refusal(title=title_of(remarks[0].rule), words=remarks[0].message, because=remarks[0].why)


def _of_the_drawing(remark: Remark) -> bool:
    """Whether a remark only compares the part with its drawing."""
    return any(rule.id == remark.rule and ".rules.part." in rule.check.__module__ for rule in rules())


def _near(own: Cutter, things: tuple[Thing, ...]) -> list[str]:
    """Lines of the cabinet's tools of that kind that are another size, the nearest first;
    then those of another kind as large.
    """
    size = own.diameter or 0.0
    others = [
        (thing.cutter.kind != own.kind, abs((thing.cutter.diameter or 0.0) - size), thing.line)
        for thing in things
        if thing.cutter is not None and not _alike(thing.cutter, own) and thing.cutter.diameter is not None
    ]
    return list(dict.fromkeys(line for _, _, line in sorted(others)))[:TRIED]


def _alike(cutter: Cutter, other: Cutter) -> bool:
    """Whether two lines name the same tool: one that is counted from its size and point alone."""
    same = abs((cutter.diameter or 0.0) - (other.diameter or 0.0)) < 1e-6
    return (
        cutter.kind == other.kind
        and same
        and (cutter.point_angle or 0.0) == (other.point_angle or cutter.point_angle or 0.0)
    )


class Chosen(Struct, frozen=True, kw_only=True):
    """What is said of one choice."""

    question: CutterQuestion
    choice: Choice

    @property
    def right(self) -> bool:
        """Whether it is the tool that the plan takes."""
        return self.choice.refused is None


def choices_marked(exercise: CutterExercise, text: str) -> tuple[Chosen, ...]:
    """Choices as they were typed, the number of the question and its letter: `1=b 2=a`.
    Raises WrongAnswer where one is none.
    """
    found = []
    for word in text.split():
        number, equals, letter = word.partition("=")
        count = len(exercise.questions)
        if not equals or not number.isdigit() or not 1 <= int(number) <= count:
            raise WrongAnswer(
                f"“{word}” says no question of this sheet: write its number and a letter, 1 to {count}, such as 1=b"
            )
        question = exercise.questions[int(number) - 1]
        choice = next((choice for choice in question.choices if choice.letter == letter.casefold()), None)
        if choice is None:
            known = " ".join(choice.letter for choice in question.choices)
            raise WrongAnswer(f"“{letter}” is no tool of question {number}; its letters are {known}")
        found.append(Chosen(question=question, choice=choice))
    return tuple(found)
