"""Pictures of the stages, made beside the interface's thread: the newest question is answered, older ones are dropped."""

from __future__ import annotations

import atexit
import threading
import weakref
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from msgspec import Struct
from PySide6.QtCore import QObject, Signal

from jobsheet.drawing.picture import Drawing

if TYPE_CHECKING:
    from jobsheet.gui.strip import Strip
    from jobsheet.gui.window import Window
    from jobsheet.stages.course import Course
    from jobsheet.stages.solids import Stage

#: Room of a small drawing of the strip and of the current one [points], as the cells have it at 100 %.
SMALL, LARGE = (66.0, 80.0), (200.0, 90.0)
#: Pictures made are kept for so many stages.
KEPT = 2000


class Solids:
    """Between the window and the worker: asks when the strip shows something else, hands over what was drawn."""

    def __init__(self, window: Window) -> None:
        self._window = window
        self._strip: Strip | None = None
        self._asked: tuple[object, ...] = ()
        self._serial = 0
        self.work = StageWork(window)
        self.work.drawn.connect(self._drawn)
        window.destroyed.connect(self.work.halt)

    def ask(self, strip: Strip) -> None:
        """Draw what the strip shows, where that is not what was asked last."""
        from jobsheet.stages.course import course_of

        desk = self._window.desk
        if desk.reckoned is None:
            return
        asked = (id(desk.reckoned), strip.shown(), strip.current)
        if asked == self._asked:
            return
        self._asked, self._strip = asked, strip
        course = course_of(desk.job, desk.reckoned.settings)
        self._serial = self.work.ask(course, strip.shown(), strip.current, desk.job.units)

    def _drawn(self, serial: int, drawings: dict[str, Drawing]) -> None:
        if serial == self._serial and self._strip is not None:
            self._strip.draw(drawings)


class Wanted(Struct, frozen=True):
    """What to draw: the course, the keys in the order they matter, which one is large, and the job's units."""

    serial: int
    course: Any
    keys: tuple[str, ...]
    current: str
    units: str


class StageWork(QObject):
    """One worker for a window; `drawn` brings drawings by key, as many as are ready."""

    drawn = Signal(int, object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._lock = threading.Condition(threading.RLock())
        self._wanted: Wanted | None = None
        self._serial = 0
        self._stopped = False
        self._thread: threading.Thread | None = None
        #: The last stages, for whoever checks them; only replaced, never changed.
        self.stages: list[Stage] = []

    def ask(self, course: Course, keys: tuple[str, ...], current: str, units: str) -> int:
        """Draw these stages; the answer carries the number that is given back."""
        with self._lock:
            self._serial += 1
            self._wanted = Wanted(self._serial, course, keys, current, units)
            self._lock.notify()
        if self._thread is None:
            self._thread = threading.Thread(target=self._run, name="stages", daemon=True)
            self._thread.start()
            # The modeller complains at the end of the program about solids that a thread still holds.
            atexit.register(_finish, weakref.ref(self))
        return self._serial

    def halt(self) -> None:
        """No more answers."""
        with self._lock:
            self._stopped = True
            self._lock.notify()

    def finish(self) -> None:
        """No more answers, and the thread is gone with all that it holds."""
        self.halt()
        self.stages = []
        if self._thread is not None:
            self._thread.join(timeout=5)

    def _next(self) -> Wanted | None:
        with self._lock:
            while self._wanted is None and not self._stopped:
                self._lock.wait()
            wanted, self._wanted = self._wanted, None
            return None if self._stopped else wanted

    def _stale(self) -> bool:
        with self._lock:
            return self._stopped or self._wanted is not None

    def _run(self) -> None:
        from jobsheet.stages.solids import Modeller

        modeller = Modeller()
        known: dict[tuple[Any, ...], Drawing] = {}
        while (wanted := self._next()) is not None:
            stages: list[Stage] = []
            for stage in modeller.in_turn(wanted.course):
                if self._stale():
                    break
                stages.append(stage)
            else:
                self.stages = stages
                self._draw(wanted, stages, known)

    def _draw(self, wanted: Wanted, stages: list[Stage], known: dict[tuple[Any, ...], Drawing]) -> None:
        """The current one first, then its neighbours as they are asked for."""
        found: dict[str, Drawing] = {}
        for key in (wanted.current, *(one for one in wanted.keys if one != wanted.current)):
            if self._stale():
                return
            at = wanted.course.after(key)
            if key and not at:
                continue
            stage = stages[at]
            large = key == wanted.current
            mark = (id(stage.solid), id(stage.tool), large, wanted.units, _lie(stage), key == "")
            drawing = known.get(mark)
            if drawing is None:
                if len(known) > KEPT:
                    known.clear()
                drawing = known[mark] = _picture(stage, large=large, units=wanted.units, stock=not key)
            found[key] = drawing
            if large:
                self._tell(wanted.serial, found)
        self._tell(wanted.serial, found)

    def _tell(self, serial: int, found: Mapping[str, Drawing]) -> None:
        try:
            self.drawn.emit(serial, dict(found))
        except RuntimeError:
            return  # the window is gone


def _finish(work: weakref.ref[StageWork]) -> None:
    found = work()
    if found is not None:
        found.finish()


def _lie(stage: Stage) -> Any:
    return (stage.cut.before.near, stage.cut.before.up) if stage.cut is not None else None


def _picture(stage: Stage, *, large: bool, units: str, stock: bool) -> Drawing:
    """One stage as it is held, with its sizes where it is the large one."""
    from jobsheet.stages.pictures import fitted, picture, size_items, stage_items

    width, height = LARGE if large else SMALL
    margin = (14.0, 6.0, 30.0, 4.0) if large else (2.0, 2.0, 2.0, 2.0)
    if stock or stage.cut is None:
        return picture(stage, "iso", width, height, now=False, margin=margin)
    lie = stage.cut.before
    placed = fitted(lie.box, lie, "iso", width, height, margin)
    items = stage_items(stage, lie, "iso", placed, now=True)
    if large:
        items += size_items(stage, lie, placed, units)
    return Drawing(width, height, items)
