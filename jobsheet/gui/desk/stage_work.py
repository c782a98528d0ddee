"""Pictures of the stages, made beside the interface's thread: the newest question
is answered, older ones are dropped.

The worker never touches the toolkit: it puts its answers into a queue, and the
window looks there while it waits.
"""

from __future__ import annotations

import atexit
import sys
import threading
from collections.abc import Callable
from queue import Empty, SimpleQueue
from typing import TYPE_CHECKING, Any

from msgspec import Struct
from PySide6.QtCore import QTimer
from shiboken6 import isValid

from jobsheet.drawing.drawn import Drawing
from jobsheet.gui.desk.desk import Desk
from jobsheet.gui.desk.stage_drawing import lie_of, picture_of, spots_of
from jobsheet.model.not_checked import alone
from jobsheet.remembered import forgotten_with_the_plan

if TYPE_CHECKING:
    from jobsheet.gui.strip.strip import Strip
    from jobsheet.reckoning.reckoner import Reckoned
    from jobsheet.stages.checks import Fact
    from jobsheet.stages.solids import Modeller, Stage

#: So many pictures are kept, several strips full: two thousand took half a megabyte an edit, without end.
KEPT = 48
#: How often the window looks for an answer while it waits for one [ms].
LOOK = 12
#: How long one thread keeps the interpreter while another wants it [s]; five milliseconds are usual.
SWITCH = 0.0005


#: Drawings by what they show.
Known = dict[tuple[Any, ...], Drawing]


class Wanted(Struct, frozen=True):
    """What to draw: the course, the keys in the order they matter, which one is large, and the job's units.

    `about` is the job and what was reckoned of it, for the facts; `answers` where what is ready goes. A
    course that could not be laid out is the words that say why.
    """

    serial: int
    course: Any
    keys: tuple[str, ...]
    current: str
    units: str
    #: The large one as it is `after` its step, `before` it, or the `stock`.
    moment: str
    about: tuple[Any, Any]
    answers: SimpleQueue[Answer]


class Answer(Struct, frozen=True):
    """Drawings by key as far as they are ready, or the facts, with which an answer is whole."""

    serial: int
    drawings: dict[str, Drawing]
    facts: tuple[Any, ...] | None = None
    #: Where on the large drawing features of the same hold lie: place, reach, key of the step.
    spots: tuple[tuple[float, float, float, str], ...] | None = None


class Solids:
    """Between a window and the worker: asks when the strip shows something
    else, hands over what was drawn.
    """

    def __init__(self, desk: Desk, arrived: Callable[[], None]) -> None:
        self._desk = desk
        self._arrived = arrived
        self._strip: Strip | None = None
        self._asked: tuple[object, ...] = ()
        self._serial = 0
        self._for: Reckoned | None = None
        self._facts: tuple[Reckoned | None, tuple[Fact, ...]] | None = None
        self._answers: SimpleQueue[Answer] = SimpleQueue()
        self._timer = QTimer(desk)
        self._timer.setInterval(LOOK)
        self._timer.timeout.connect(self.look)

    @property
    def waiting(self) -> bool:
        """Whether something that was asked is not answered yet."""
        return self._timer.isActive()

    def ask(self, strip: Strip) -> None:
        """Draw what the strip shows, where that is not what was asked last."""
        from jobsheet.stages.course import course_of

        desk = self._desk
        if desk.reckoned is None:
            return
        # Another strip, as after a change of the look, has nothing drawn yet.
        asked = (strip, id(desk.reckoned), strip.shown(), strip.turn, strip.moment)
        if asked == self._asked:
            return
        self._asked, self._strip = asked, strip
        job, settings = desk.job, desk.reckoned.settings
        course = alone(lambda: course_of(job, settings), lambda why: why)
        self._for = desk.reckoned
        self._serial += 1
        WORKER.ask(
            Wanted(
                self._serial, course, strip.shown(), strip.current, desk.job.units, strip.moment,
                (desk.job, desk.reckoned),
                self._answers,
            )
        )  # fmt: skip
        self._timer.start()

    def look(self) -> None:
        """Take what is ready."""
        while True:
            try:
                answer = self._answers.get_nowait()
            except Empty:
                return
            if answer.serial != self._serial:
                continue
            if answer.drawings and self._strip is not None and isValid(self._strip):
                self._strip.draw(answer.drawings, answer.spots)
            if answer.facts is not None:
                self._timer.stop()
                self._facts = (self._for, answer.facts)
                self._arrived()

    def facts_about(self, reckoned: Reckoned) -> tuple[Fact, ...] | None:
        """What the solids say of what was reckoned just now; None while they are not there."""
        if self._facts is None or self._facts[0] is not reckoned:
            return None
        return self._facts[1]

    def halt(self) -> None:
        """Nothing more is looked for, nor worked out: of another window the
        question may wait behind this one.
        """
        self._timer.stop()
        WORKER.withdraw(self._answers)


class StageWork:
    """One thread for the whole program; of each asker only the newest question is answered."""

    def __init__(self) -> None:
        self._lock = threading.Condition()
        self._wanted: dict[int, Wanted] = {}
        #: Where nobody waits for an answer any more; kept themselves, so that no other gets their identity.
        self._gone: list[SimpleQueue[Answer]] = []
        self._stopped = False
        self._thread: threading.Thread | None = None
        self._anew = False
        forgotten_with_the_plan(self.begin_anew)

    def begin_anew(self) -> None:
        """Another plan lies on the desk: the solids so far, a fifth of a megabyte
        each, go before its first question.
        """
        self._anew = True

    def ask(self, wanted: Wanted) -> None:
        """Answer this in place of what the same asker asked before."""
        with self._lock:
            self._wanted[id(wanted.answers)] = wanted
            self._lock.notify()
            if self._thread is None:
                # The window takes the interpreter back many times while it
                # paints: each time it waits so long.
                sys.setswitchinterval(SWITCH)
                self._thread = threading.Thread(target=self._run, name="stages", daemon=True)
                self._thread.start()
                # The modeller complains at the end of the program about solids that a thread still holds.
                atexit.register(self.finish)

    def withdraw(self, answers: SimpleQueue[Answer]) -> None:
        """Nobody waits for what was asked with these answers; what is being
        worked out for them is given up.
        """
        with self._lock:
            self._wanted.pop(id(answers), None)
            self._gone.append(answers)

    def finish(self) -> None:
        """No more answers, and the thread is gone with all that it holds."""
        with self._lock:
            self._stopped = True
            self._lock.notify()
            thread = self._thread
        if thread is not None:
            thread.join(timeout=5)

    def _next(self) -> Wanted | None:
        with self._lock:
            while not self._wanted and not self._stopped:
                self._lock.wait()
            if self._stopped:
                return None
            self._gone.clear()  # what was given up is behind us
            return self._wanted.pop(next(iter(self._wanted)))

    def _stale(self, wanted: Wanted) -> bool:
        with self._lock:
            given_up = any(gone is wanted.answers for gone in self._gone)
            return self._stopped or given_up or id(wanted.answers) in self._wanted

    def _run(self) -> None:
        from jobsheet.stages.solids import Modeller

        modeller = Modeller()
        known: Known = {}
        while (wanted := self._next()) is not None:
            if self._anew:
                self._anew = False
                modeller, known = Modeller(), {}
            # Whatever one question does, the next is answered: a worker that is
            # gone would switch every hazard off.
            alone(
                lambda wanted=wanted, modeller=modeller, known=known: self._answer(wanted, modeller, known),  # type: ignore[misc]
                lambda why, wanted=wanted: self._without(wanted, why),  # type: ignore[misc]
            )

    def _answer(self, wanted: Wanted, modeller: Modeller, known: Known) -> None:
        """Pictures, then facts; nothing more where something newer is asked."""
        if isinstance(wanted.course, str):
            self._without(wanted, wanted.course)
            return
        stages: list[Stage] = []
        for stage in modeller.in_turn(wanted.course):
            if self._stale(wanted):
                return
            stages.append(stage)
        failed = self._draw(wanted, stages, known)
        self._check(wanted, stages, failed)

    @staticmethod
    def _without(wanted: Wanted, why: str) -> None:
        """The answer where there is none: it says so, and the window waits no longer."""
        from jobsheet.review.plan.solid_facts import no_facts

        wanted.answers.put(Answer(wanted.serial, {}, no_facts(why)))

    def _draw(self, wanted: Wanted, stages: list[Stage], known: Known) -> list[Fact]:
        """The current one first, then its neighbours as they are asked for; which could not be drawn."""
        drawings: dict[str, Drawing] = {}
        failed: list[Fact] = []
        for key in (wanted.current, *(key for key in wanted.keys if key != wanted.current)):
            if self._stale(wanted):
                return failed
            at = wanted.course.after(key)
            if key and not at:
                continue
            alone(
                lambda key=key, at=at: drawings.update({key: _drawn(wanted, stages, known, key, at)}),  # type: ignore[misc]
                lambda why, key=key: failed.append(_not_drawn(key, why)),  # type: ignore[misc]
            )
            if key == wanted.current:
                held = stages[at].cut
                spots = alone(lambda held=held: spots_of(stages, held) if held else (), lambda _: ())  # type: ignore[misc]
                wanted.answers.put(Answer(wanted.serial, dict(drawings), spots=spots))
        wanted.answers.put(Answer(wanted.serial, drawings))
        return failed

    def _check(self, wanted: Wanted, stages: list[Stage], failed: list[Fact]) -> None:
        """What the solids say, after the pictures; with what could not be drawn."""
        if self._stale(wanted):
            return
        from jobsheet.review.plan.solid_facts import facts_from

        job, reckoned = wanted.about
        wanted.answers.put(Answer(wanted.serial, {}, (*facts_from(job, reckoned, stages), *failed)))


def _drawn(wanted: Wanted, stages: list[Stage], known: Known, key: str, at: int) -> Drawing:
    """The picture of one stage, made once for the same solid."""
    large = key == wanted.current
    moment = wanted.moment if large and key else "after"
    stage = stages[at if moment == "after" else at - 1 if moment == "before" else 0]
    mark = (
        stage.body.mark,
        stage.tool is not None,
        large,
        wanted.units,
        lie_of(stages[at]),
        moment,
        key == "",
    )
    kept = known.get(mark)
    if kept is None:
        # A strip that shows more than that does not begin anew in the middle of itself.
        while len(known) >= max(KEPT, 2 * len(wanted.keys) + 2):
            del known[next(iter(known))]
        now = moment == "after" and bool(key)
        kept = known[mark] = picture_of(stage, stages[at].cut, large=large, units=wanted.units, now=now)
    return kept


def _not_drawn(key: str, why: str) -> Fact:
    from jobsheet.stages.checks import not_checked

    return not_checked(key, f"its picture could not be drawn: {why}")


WORKER = StageWork()
