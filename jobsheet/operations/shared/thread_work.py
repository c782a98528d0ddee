"""What both kinds of tapping share: the torque of a tap in its hole, and what two hands give on a wrench."""

from __future__ import annotations

from jobsheet.catalog.tools.taps import condition_factor, tap_factor
from jobsheet.cutting.tapping import (
    form_tap_torque,
    percent_of_thread,
    tap_strength,
    tap_torque,
    wrench_torque,
)
from jobsheet.errors import CalcError
from jobsheet.model.quantity import Quantity, Thread
from jobsheet.model.setting import Setting
from jobsheet.operations.shared import hole_words
from jobsheet.operations.shared.tally import Tally

#: The tap maker's specific forces describe a family of metals; spread taken as for milling (estimate).
TAP_BAND = (0.75, 1.35)
#: Wrench lengths by thread (common practice, cutting-data section 1.6): up to
#: this diameter [m], this length [m].
_WRENCHES = ((6e-3, 0.18), (12e-3, 0.28), (16e-3, 0.38))


def wrench_length(thread: Thread, typed: Quantity | None) -> float | None:
    """The whole length of the wrench [m]: as typed, or usual for the thread; None where none is usual."""
    if typed is not None:
        return typed.value
    return next((long for largest, long in _WRENCHES if thread.major <= largest * (1 + 1e-9)), None)


def thread_torque(
    tally: Tally, setting: Setting, thread: Thread, hole: float, styles: tuple[str, ...], condition: str
) -> float:
    """The torque of the heaviest tap of a set in the hole that is really
    there, times the state of the tap.
    """
    material = setting.material
    if hole >= thread.major:
        raise CalcError(
            "hole",
            hole_words.length(hole, setting),
            f"smaller than the thread, {hole_words.length(thread.major, setting)}",
        )
    if material.tap_kc is None:
        raise CalcError("material", material.name, "one whose force in tapping is on file")
    tally.show("tap_drill", hole)
    tally.figure("percent_thread", percent_of_thread, major=thread.major, hole=hole, pitch=thread.pitch)
    factor = max(tap_factor(style, material.tap_class, thread.fine) for style in styles)
    torque = tally.use(
        "torque",
        tap_torque,
        kc=material.tap_kc.value,
        tap_factor=factor,
        major=thread.major,
        hole=hole,
        condition=condition_factor(condition),
    )
    if "form" in styles:
        torque = tally.use("torque", form_tap_torque, torque=torque)
    tally.show("torque", torque, TAP_BAND)
    if torque > tally.figure("tap_strength", tap_strength, major=thread.major):
        tally.caveat("The tap breaks before it cuts this: drill a larger hole.")
    return torque


def wrench(tally: Tally, setting: Setting, long: float, torque: float) -> None:
    """What two hands give on a wrench of this length [m], comfortable and strong."""
    tally.figure("wrench_easy", wrench_torque, force=setting.shop.easy_wrench, length=long)
    strong = tally.figure("wrench_strong", wrench_torque, force=setting.shop.strong_wrench, length=long)
    if torque > strong:
        tally.caveat(
            "This asks more than two hands give on this wrench: drill a larger hole or take a longer wrench."
        )
