"""Orders that were published, on a plate of our own: each is accepted without a
move, and turned round it is not.

Each source is named beside its order; of those that were read only in part it says so. The parts, sizes and
cutters are invented: what is published is which step comes before which.
"""

from __future__ import annotations

import pytest
import yaml

from jobsheet.lessons.needed_order import needed_order
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.job_file import job_from_text, read_job

AT = [[30, 25]]
STEPS = {
    "find the edges": {"kind": "pick-up-edge", "cutter": "edge finder, 10 mm tip", "spindle": "900 rpm", "edges": "A, B"},
    "face": {"kind": "face", "cutter": "end mill 20 mm, 4 teeth, 45 mm out", "depth": 0.5},
    "centre drill": {"kind": "centre-drill", "cutter": "centre drill 3.15 mm", "at": AT, "to": "6 mm", "feed": 0.04},
    "spot": {"kind": "spot-drill", "cutter": "spot drill 10 mm, 90°", "at": AT, "to": "9 mm", "feed": 0.05},
    "small drill": {"kind": "drill", "cutter": "drill 6 mm", "at": AT, "depth": "through", "feed": 0.1},
    "drill 6.6": {"kind": "drill", "cutter": "drill 6.6 mm", "at": AT, "depth": "through", "feed": 0.1},
    "tap drill": {"kind": "drill", "cutter": "drill 6.8 mm", "at": AT, "depth": "through", "feed": 0.1},
    "drill": {"kind": "enlarge", "cutter": "drill 15.7 mm", "at": AT, "depth": "through", "hole": 6, "feed": 0.15},
    "drill under size": {"kind": "drill", "cutter": "drill 9.8 mm", "at": AT, "depth": "through", "feed": 0.1},
    "ream": {"kind": "ream", "cutter": "reamer 16 H7, 6 edges", "at": AT, "depth": "through", "feed": 0.5, "measure": "16 H7"},
    "ream 10": {"kind": "ream", "cutter": "reamer 10 H7, 6 edges", "at": AT, "depth": "through", "feed": 0.4, "measure": "10 H7"},
    "bore": {
        "kind": "bore", "cutter": "boring bar 12 mm, carbide, 40 mm out", "at": AT, "to": "15.85 mm", "depth": "through", "cut": 0.1,
        "feed": 0.05, "by": "fine feed",
    },
    "counterbore": {"kind": "counterbore", "cutter": "counterbore 11 mm, 3 edges, pilot 6.6 mm", "at": AT, "depth": 6.5, "feed": 0.1},
    "countersink": {"kind": "countersink", "cutter": "countersink 25 mm, 90°, 3 edges", "at": AT, "to": "8.4 mm", "feed": 0.1},
    "deburr the hole": {"kind": "countersink", "cutter": "countersink 25 mm, 90°, 3 edges", "at": AT, "to": "17 mm", "hole": 15.7, "feed": 0.1},
    "tap": {"kind": "hand-tap", "cutter": "taps M8", "thread": "M8", "at": AT, "depth": "through", "taps": "taper, plug"},
    "step": {"kind": "side-mill", "cutter": "end mill 12 mm, 4 teeth, 30 mm out", "side": "left", "width": 4, "depth": 4},
    "slot": {
        "kind": "slot", "cutter": "slot drill 10 mm, 30 mm out", "ends": [[48, 25], [66, 25]], "depth": 4, "open ends": "closed",
    },
}  # fmt: skip
#: Source -> its order.
PUBLISHED = {
    "slides on the milling machine, hole operations (protolab.certifitrax.com, unit 8, slide 3; read): drilling": (
        "find the edges", "centre drill", "small drill", "drill", "deburr the hole",
    ),
    "the same, read: a reamer follows a drilled hole": ("find the edges", "centre drill", "drill under size", "ream 10"),
    "Applied Science for Metal Workers, 313 Operation of reaming (chestofbooks.com, read)": ("drill under size", "ream 10"),
    "TM 1-420 paragraph 37, 1941: a hole is drilled or bored to a little under size, then machine reamed (read)": (
        "small drill", "drill", "bore", "ream",
    ),
    "first operation in a tapped hole (curioustab.com 64664, read): drilling, countersink or spot face, tapping": (
        "tap drill", "countersink", "tap",
    ),
    "seven steps of drilling (mechbasic.com, read): spot, drill, counterbore": ("spot", "drill 6.6", "counterbore"),
    "holemaking operations (ctemag.com, read): centre drilling first, counterboring in an existing hole": (
        "centre drill", "drill 6.6", "counterbore",
    ),
    "process plan of a clamp's jaws (claymore.engineer.gvsu.edu/~woodards, read): faces, holes, threads": (
        "face", "find the edges", "spot", "tap drill", "tap",
    ),
    "Manual Mill Operation 251 (toolingu.com, outline read): faces, step, slot, centre drilling, drilling": (
        "face", "find the edges", "step", "slot", "centre drill", "small drill",
    ),
}  # fmt: skip


class Plain(yaml.SafeDumper):
    """Every value written out."""

    def ignore_aliases(self, data):
        return True


def planned(samples, order):
    """A plate with one set-up whose steps stand in that order."""
    data = yaml.safe_load((samples / "hm-100-drilled-plate-b1.yaml").read_text(encoding="utf-8"))
    for name in ("finished", "why", "also fetch", "card hash"):
        data.pop(name, None)
    steps = [
        {
            "key": name.replace(" ", "-").replace(".", "-"),
            "number": at * 10,
            "empty": "as recommended",
            **STEPS[name],
        }
        for at, name in enumerate(order, 1)
    ]
    (set_up,) = data["set-ups"]
    set_up["operations"] = steps
    text = yaml.dump(data, Dumper=Plain, allow_unicode=True, sort_keys=False)
    return Reckoner().reckon(job_from_text(text, "published"))


@pytest.mark.parametrize("source", PUBLISHED)
def test_an_order_that_was_published_is_right_as_it_stands(samples, source):
    reckoned = planned(samples, PUBLISHED[source])
    assert not [one.problem for one in reckoned.operations.values() if one.problem]
    keys = [operation.key for _, operation in reckoned.job.operations()]
    order = needed_order(reckoned).steps
    assert order.moves(keys) == 0
    assert order.moves(keys[::-1]) > 0


def test_a_block_is_squared_as_published(samples):
    """Modern Metalworking 26.7.2, Goodheart-Willcox (read): two sides, the two
    opposite to size, the ends last.
    """
    needed = needed_order(Reckoner().reckon(read_job(samples / "hm-101-setting-block.yaml")))
    keys = [one.key for one in needed.job.set_ups]
    six = needed.set_ups.only(keys[:6])
    assert six.moves(keys[:6]) == 0
    assert six.moves([keys[4], keys[5], *keys[:4]]) > 0
