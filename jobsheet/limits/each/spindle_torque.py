"""The torque that the spindle gives: mean torque of the cut against what it
holds, and what it reaches for seconds.
"""

from __future__ import annotations

from jobsheet.limits.spindle_curve import torque_limit as limit

#: What of its setting it reads.
READS = frozenset({"machine", "proof"})
#: Where it stands among limits of one share.
ORDER = 30
#: Trials teach it: it is told which process is cut.
LEARNS = True

__all__ = ["limit"]
