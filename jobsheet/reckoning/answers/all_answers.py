"""All that the machine answers about one step: readings, headroom, the best cut, the
speeds beside it, how deep it goes.

It comes in parts, the cheap ones first, because all of it takes many times as long as the figures themselves:
a window asks for one part at a time after the figures are painted.
"""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.errors import JobsheetError
from jobsheet.limits.each.headroom import ROOM, tool_length
from jobsheet.model.figure import Figures
from jobsheet.model.job import Operation, SetUp
from jobsheet.model.setting import Setting
from jobsheet.reckoning.adviser.advised import Changed
from jobsheet.reckoning.adviser.best_cut import advice_on
from jobsheet.reckoning.answers.inverse import Answer, deepest_here
from jobsheet.reckoning.answers.mends import mends_for
from jobsheet.reckoning.answers.readings import Readings, readings_of
from jobsheet.reckoning.answers.speeds import Neighbours, neighbours_of, pilot_proposed, pilot_words
from jobsheet.reckoning.reckoner import Reckoned


class Headroom(Struct, frozen=True, kw_only=True):
    """Heights over the table and lengths under the spindle [m]: top of the work,
    holder, what stands out of it, room.
    """

    top: float
    holder: float
    stick_out: float
    room: float
    least: float
    greatest: float
    #: Where the bed of the vice stands, or None where no vice holds the work.
    bed: float | None = None
    #: The work's own height [m].
    work: float = 0.0


class Answers(Struct, frozen=True, kw_only=True):
    """What is known so far; `whole` once every part was asked."""

    readings: Readings | None = None
    headroom: Headroom | None = None
    neighbours: Neighbours | None = None
    #: What is recommended for this step, and what else would do, in words.
    changed: Changed | None = None
    rivals: tuple[str, ...] = ()
    deepest: Answer | None = None
    #: How high the work stands before this step [m].
    height: float = 0.0
    whole: bool = False


def answers_in_parts(set_up: SetUp, operation: Operation, reckoned: Reckoned) -> Iterator[Answers]:
    """Ever fuller answers about one step; nothing but the last where it cannot be reckoned.

    A part takes up to 45 ms on a small machine, where a list takes ten times the figures of one step.
    """
    setting, outcome = reckoned.settings.get(operation.key), reckoned.operations.get(operation.key)
    answers = Answers()
    if setting is None or outcome is None or outcome.figures is None:
        yield replace(answers, whole=True)
        return
    typed, operation = operation, reckoned.filled(operation)
    readings = next(
        (
            readings
            for readings in readings_of(set_up, reckoned, setting.machine)
            if readings.key == operation.key
        ),
        None,
    )
    answers = replace(
        answers, readings=readings, headroom=headroom_of(operation, setting), height=setting.extent[2]
    )
    yield answers
    changed = advice_on(operation, setting)
    if changed is not None:
        answers = replace(
            answers, changed=changed, rivals=_rivals(operation, setting, outcome.figures, changed)
        )
        yield answers
    answers = replace(answers, neighbours=neighbours_of(operation, setting, typed))
    yield answers
    try:
        deepest = deepest_here(operation, setting)
    except JobsheetError:
        yield replace(answers, whole=True)  # no milling cut with a depth: nothing to ask
        return
    yield replace(answers, deepest=deepest, whole=True)


def _rivals(
    operation: Operation, setting: Setting, figures: Figures | None, changed: Changed
) -> tuple[str, ...]:
    """What else would do, in words: a pilot first, other speeds that go, another cutter for the hand."""
    pilot = pilot_proposed(operation, setting, changed.advised)
    first = (pilot_words(pilot),) if pilot is not None else ()
    cutters = tuple(mend.label for mend in mends_for(operation, setting, figures))
    return (*first, *changed.advised.rivals, *cutters)


def headroom_of(operation: Operation, setting: Setting) -> Headroom | None:
    """The heights under the spindle, or None where card, work or stick-out do not say them."""
    long, daylight, top = tool_length(operation.fields, setting), setting.machine.daylight, setting.top
    if long is None or daylight is None or top is None:
        return None
    grip = setting.grip
    in_vice = grip is not None and grip.above is not None and grip.jaw_depth is not None
    # The top was reckoned from the vice that holds the work: its bed is what is left.
    bed = top - grip.above - grip.jaw_depth if in_vice else None  # type: ignore[union-attr,operator]
    holder = setting.shop.holder_length
    return Headroom(
        top=top, holder=holder, stick_out=long - holder, room=ROOM, least=daylight[0], greatest=daylight[1],
        bed=bed, work=setting.extent[2],
    )  # fmt: skip
