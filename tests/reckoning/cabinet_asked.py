"""A cabinet, and jobs that ask it."""

from __future__ import annotations

from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.reckoning.cabinet.cabinet_look import look_up
from jobsheet.reckoning.cabinet.cabinet_needs import cutter_need
from jobsheet.storage.cabinet_file import cabinet_from_text
from jobsheet.storage.job_file import read_job

CABINET = cabinet_from_text(
    """format: 1
cutters:
  - {what: "end mill 12 mm, 4 teeth, HSS", place: drawer 1 no. 1}
  - {what: "end mill 12 mm, 4 teeth, HSS, flutes 50 mm", place: drawer 1 no. 2, out: at the grinder}
  - {what: "end mill 1/2 in, 2 teeth, carbide", place: drawer 1 no. 3}
  - {what: "face mill 50 mm, 4 teeth, carbide", place: drawer 2 no. 7}
drills:
  - {what: "drills 1 mm to 10 mm by 0.5 mm", place: drawer 3, missing: 7 mm}
  - {what: "drills A to Z", place: drawer 4}
  - {what: "spot drill 10 mm, 90°", place: drawer 3 no. 1}
taps:
  - {what: "taps M6, taper and plug", place: drawer 5}
  - {what: "taps M8x1, plug", place: drawer 5}
reamers:
  - {what: "reamer 16 mm H7, 6 edges", place: drawer 6 no. 1}
countersinks:
  - {what: "counterbore 11 mm, pilot 6.6 mm, 3 edges", place: drawer 6 no. 2}
finders:
  - {what: "edge finder, 0.200 in tip", place: drawer 7 no. 1}
holders:
  - {what: "drill chuck 1 mm to 13 mm", place: shelf 3}
  - {what: "collet chuck, collets 6 mm, 10 mm", place: shelf 3, out: lent}
parallels:
  - {what: "parallels 6 x 20 x 100 mm", place: shelf 1}
gauges:
  - {what: "micrometer 0 mm to 25 mm", place: shelf 2}
  - {what: "micrometer 25 mm to 50 mm", place: shelf 2}
  - {what: "plug gauge 16 mm H7", place: shelf 2}
  - {what: "slot gauge 10.00/10.05 mm", place: shelf 2}
wrenches:
  - {what: "tap wrench 180 mm", place: drawer 5}
""",
    "cabinet.yaml",
)


def look(line: str, units: str = "mm", **more):
    return look_up(cutter_need(read_cutter(line, units), **more), CABINET)


def plate():
    return read_job(sample_jobs_read()[0])


def sample_jobs_read():
    from jobsheet.paths import sample_jobs

    return sorted(sample_jobs().glob("*.yaml"))
