"""Reference constants that make every empirical law complete in units.

An empirical law such as kc = kc1.1 h^-mc hides "of a chip 1 mm thick". Those hidden constants stand here,
once, and a formula asks for them as `reference.CHIP` when it runs, so that the test of dimensions can put
quantities with units in their place. All numbers are SI.
"""

from __future__ import annotations

import math
from typing import Final

CHIP: float = 1e-3
"""Chip thickness at which kc1.1 is given: 1 mm [m].

Source: kienzle1952."""

FEED: float = 1e-3
"""Feed at which the metric drilling laws, and the table of feed factors, count 1: 1 mm [m].

Source: mh31."""

DIAMETER: float = 1e-3
"""Diameter at which the metric drilling laws count 1: 1 mm [m].

Source: mh31."""

RAKE: float = math.radians(100.0)
"""Rake that would bring the force to nothing at 1 % a degree: 100 degrees [rad].

Source: kienzle1952, factor remembered."""

DRILL_LIPS: float = 0.05
"""Thrust of the lips with Kd 1 at 1 mm diameter and 1 mm a turn [N].

Source: mh31 p.1152; exact conversion 0.05029."""

DRILL_CHISEL: float = 0.007
"""Thrust of the chisel's indentation with Kd 1 at 1 mm diameter [N].

Source: mh31 p.1152; exact conversion 0.006895."""

DRILL_TORQUE: float = 0.000025
"""Torque with Kd 1 at 1 mm diameter and 1 mm a turn [N*m].

Source: mh31 p.1152; exact conversion 2.514e-5."""

TWIST_TORQUE: float = 0.01
"""The 1/100 of the twist-drill torque line, at 1 mm diameter [N*m].

Source: tun-d."""

TWIST_THRUST: float = 570.0
"""Thrust with K 1 at 1 mm diameter and 1 mm a turn [N].

Source: tun-d."""

TWIST_ENERGY: float = 0.06
"""The 1e-6 kW a turn a minute of the twist-drill power line, for one turn at 1 mm diameter [W*s].

Source: tun-d."""

HSS_SHEAR: float = 1200e6
"""Shear stress at which a high speed steel drill or tap breaks, nominal [Pa].

Source: estimate."""

TOOL_LIFE: float = 60.0
"""Life at which Taylor's constant is a speed: 1 minute [s].

Source: taylor1907."""

PECK: float = 3.0
"""Time to clear the chips once and go back down [s].

Source: common-practice."""

DRILL_RUN: float = 1e-3
"""Way in the air before a drill touches: 1 mm [m].

Source: common-practice."""

EQUAL_POINT: Final = 0.3
"""Point of a 118 degree drill as a share of its diameter [-].

Source: derived, 0.5 / tan 59 degrees."""
