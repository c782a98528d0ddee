"""Jobs with stock of every shape, and areas that any handbook has."""

from __future__ import annotations

import math
import re

from jobsheet.edit.commands import SetField
from jobsheet.storage.job_file import blank_job, job_from_text


def shaped(name, along="length"):
    job = blank_job("knee-mill-k-2")
    for field, text in (("length", "90"), ("width", "40"), ("height", "40"), ("shape", name)):
        job = SetField("job:stock", field, text).apply(job)
    if any(along != "length" and name in row for row in ("round bar", "tube", "hexagon")):
        job = SetField("job:stock", "along", along).apply(job)
    return job


def segment(radius, deep):
    """The area of a segment of a circle: r² acos((r − h) / r) − (r − h) √(2 r h − h²)."""
    return radius**2 * math.acos((radius - deep) / radius) - (radius - deep) * math.sqrt(
        2 * radius * deep - deep**2
    )


SHAPES = {
    "round bar": "shape: round bar; diameter: 40; bar length: 60",
    "tube": "shape: tube; diameter: 40; wall: 6; bar length: 60",
    "hexagon": "shape: hexagon; across flats: 36; bar length: 60",
    "radius flat": "shape: radius flat; length: 60; width: 40; height: 30; corner radius: 8",
    "casting": "shape: casting; length: 60; width: 40; height: 30; draft: 4°",
    "cut plate": "shape: cut plate; outline: 0, 0; 60, 0; 60, 25; 20, 40; 0, 40; height: 30",
}


def side_cut(way, kind):
    name, along, up, operator, side = way
    text = SHAPES[name] + (f"; along: {along}" if along else "")
    cut = "kind: saw-cut\n        off: 5"
    if kind == "side-mill":
        cut = "kind: side-mill\n        cutter: end mill 16 mm, 4 teeth\n        width: 5\n        depth: 6\n        feed per tooth: 0.05"
    return job_from_text(
        "format: 2\nunits: mm\nmaterial: S235\nmachine: knee-mill-k-2\nstock:\n"
        + "".join(f"  {line}\n" for line in re.split(r"; (?=[a-z])", text))
        + f"set-ups:\n  - key: set-up-1\n    number: 1\n    up: {up}\n    operator: {operator}\n    operations:\n"
        + f"      - key: cut\n        number: 10\n        {cut}\n        side: {side}\n",
        "job",
    )
