"""A face that is fed by hand."""

from __future__ import annotations

FACE = {"cutter": "face mill 50 mm, 4 teeth, carbide, drawer 2 no. 7", "depth": "0.4", "width": "30"}
