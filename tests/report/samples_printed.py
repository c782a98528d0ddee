"""The samples whose pages are read."""

from __future__ import annotations

SAMPLES = (
    "hm-100-drilled-plate-b1", "hm-100-drilled-plate-b2", "hm-100-drilled-plate-k2", "hm-101-setting-block", "hm-102-slide-plate",
    "hm-103-pivot-block", "hm-104-cover-plate",
)  # fmt: skip
