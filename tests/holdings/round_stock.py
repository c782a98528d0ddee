"""Round and six-sided stock in what holds it, as files say them."""

from __future__ import annotations

from jobsheet.model.lying import lying, stock_box
from jobsheet.stock.all_shapes import shape_of
from jobsheet.storage.job_file import job_from_text

BAR = "shape: round bar; diameter: 40; bar length: 90"


HEXAGON = "shape: hexagon; across flats: 36; bar length: 90"


VEE = "kind: vee block; angle: 90°; blocks: 2; clamps: 2; bolt: M10; tighten: 20 N·m"


CHUCK = "kind: chuck; 'on': dividing head; lies: along; grip length: 20; jaw force: 8 kN"


def job_of(stock, holding, first=""):
    lines = ["format: 2", "units: mm", "material: S235", "machine: knee-mill-k-2", "stock:"]
    lines += [f"  {line}" for line in stock.split("; ")]
    lines += [
        "set-ups:",
        "  - key: held",
        "    number: 1",
        "    up: top",
        "    operator: front",
        "    holding:",
    ]
    lines += [f"      {line}" for line in holding.split("; ")]
    lines += [
        "    operations:",
        "      - key: flat",
        "        number: 10",
        "        kind: face",
        "        cutter: face mill 50 mm, 4 teeth, carbide",
        "        depth: 6",
        "        feed per tooth: 0.1",
    ]
    return job_from_text("\n".join(lines) + "\n", "job")


def lie_of(job):
    return lying(job.set_ups[0], stock_box(job), shape_of(job.stock))
