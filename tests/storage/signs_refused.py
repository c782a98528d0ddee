"""Signs that no file holds."""

from __future__ import annotations

#: The 33 that were accepted, saved, and refused on opening; and others that no line of text has.
REFUSED = [*range(0x80, 0xA0), 0xFFFE, 0xFFFF, 0xD800, 0xDFFF, 0x7F, 0x0B, 0x0C, 0x1B, 0x00, 0x2028, 0x2029]
