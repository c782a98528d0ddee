"""The toolkit's constants that painters need before the first figures are painted, as its documentation has them.

A painter takes numbers for these; to ask the toolkit for them costs 12 ms (see `waking`). A test compares.
"""

from __future__ import annotations

ALIGN_LEFT = 0x0001
ALIGN_RIGHT = 0x0002
ALIGN_H_CENTRE = 0x0004
ALIGN_TOP = 0x0020
ALIGN_V_CENTRE = 0x0080
WORD_WRAP = 0x1000
