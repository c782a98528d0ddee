"""How a step reads on the sheet: words only, the same in the window and on paper."""

from __future__ import annotations

from msgspec import Struct


class Row(Struct, frozen=True, kw_only=True):
    """One action in one line. `do` begins with a verb; `cutter` is its place in the cabinet.

    `pace` and `depth` hold what is set at the machine, ready to print: seconds a turn or to the
    depth, the depth or stop. `power_off` prints `stopped` in place of a speed.
    """

    do: str
    note: str = ""
    cutter: str = ""
    spindle: str = ""
    pace: str = ""
    pace_unit: str = ""
    depth: str = ""
    depth_unit: str = ""
    power_off: bool = False
    measure: str = ""
    #: The parts of `note` that say where a handle stands, in the decimals of its dial: a page
    #: that has the readings leaves them out.
    readings: tuple[str, ...] = ()
