"""What a kind of holding is to rules, limits and drawings."""

from __future__ import annotations

from msgspec import Struct


class HoldingRoles(Struct, frozen=True, kw_only=True):
    """What one holding is to others, whatever its kind is called."""

    #: Whether anything holds the work at all.
    holds: bool = True
    #: Whether only words say how, so that nothing of it can be checked.
    in_words: bool = False
    #: Whether the work is between a fixed and a moving jaw: then one of its faces lies on the fixed one.
    jaws: bool = False
    #: Whether what presses it down stands on its upper face, in the way of a cutter that goes over it.
    on_top: bool = False
    #: Whether straps on the table press it down, each in a place of its own.
    straps: bool = False
    #: Whether clamps of its own press the work to it.
    clamped: bool = False
    #: Whether an upright face stands behind it.
    upright: bool = False
    #: Whether it is screwed through its own holes.
    screwed: bool = False
    #: Whether it is turned on an axis between cuts, which must be locked.
    turns: bool = False
    #: Whether round work cannot roll in it.
    round: bool = False
    #: Whether it stands a drill only, and how large a one is asked of its own bounds.
    drills_only: bool = False
    #: Whether a chuck grips it at one end.
    chuck: bool = False
    #: Whether the work stands between two points, driven by a dog.
    between: bool = False
    #: Whether it leans: one end is higher than the other.
    leans: bool = False
    #: Whether the work is set to an angle up or down, which the solids do not follow: they stand upright.
    tilted: bool = False
