"""The three invented machines, and the cuts that answers are asked for."""

from __future__ import annotations

MACHINES = ("bench-mill-b-1", "bench-mill-b-2", "knee-mill-k-2")


SIDE = {"cutter": "end mill 12 mm, 4 teeth, 60 mm out", "width": "6", "depth": "1", "feed_per_tooth": "0.04"}
