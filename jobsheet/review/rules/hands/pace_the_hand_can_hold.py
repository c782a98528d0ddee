"""Asks whether a hand can wind the feed evenly."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.machine.spindle import neighbours
from jobsheet.model.remark import Remark
from jobsheet.review.rule import Needs, View, remark, rule


@rule("pace-the-hand-can-hold", "A pace that the hand can hold", "rework", needs=Needs.FIGURES)
def pace_the_hand_can_hold(view: View) -> Iterator[Remark]:
    """A handle is wound evenly between some 8 and 50 turns a minute.

    Because: Very slow hands dwell and rub, very fast ones jerk.
    Not so: 72 turns a minute
    So: 45 turns a minute
    From: common practice; the two numbers are the workshop's setting
    """
    for set_up, operation, outcome in view.steps():
        pace = outcome.figures.value("handle_pace") if outcome.figures else None
        if pace is None or outcome.figures is None:
            continue
        setting = view.reckoned.settings[operation.key]
        shop = setting.shop
        way = shop.out_of_hand(pace)
        if way > 0:
            message = f"{pace * 60:.0f} turns a minute is more than the hand keeps even"
            below = neighbours(setting.machine, outcome.figures.value("spindle_speed") or 0.0)[0]
            if below is not None and getattr(operation.fields, "feed_per_tooth", None) is not None:
                slower = pace * below.speed / (outcome.figures.value("spindle_speed") or 1.0)
                if shop.out_of_hand(slower) <= 0:
                    message += f": {below.marked} rpm gives {slower * 60:.1f}"
        elif way < 0:
            message = (
                f"One turn takes {1 / pace:.1f} s: hard to keep even; feed more, or take more teeth or speed"
            )
        else:
            continue
        yield remark(view, "pace-the-hand-can-hold", message, operation.key, set_up=set_up.key)
