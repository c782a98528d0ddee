"""Plans spoilt at random by a seed: steps moved, taken out and resized; metals, tools, places
and holding changed; other machines.
"""

from __future__ import annotations

import re

from jobsheet.edit.commands import SetField
from jobsheet.edit.several_steps import DeleteSteps, MoveSteps
from jobsheet.edit.step_commands import AddOperation, MoveSetUp
from jobsheet.errors import JobsheetError, QuantityError
from jobsheet.holdings.all_holdings import kind_of

MACHINES = ("bench-mill-b-1", "bench-mill-b-2", "knee-mill-k-2")
METALS = ("S235", "6082-T6", "304", "EN-GJL-250", "Ti-6Al-4V", "AZ91", "C45", "CuZn39Pb3")


def spoilt(job, chance):
    """The job with one to four steps or set-ups moved or taken out."""
    for _ in range(chance.randint(1, 4)):
        what = chance.choice(("move", "take out", "set-up", "elsewhere", "size", "size"))
        steps = [(set_up, one) for set_up in job.set_ups for one in set_up.operations]
        set_up, step = chance.choice(steps)
        if what == "move":
            job = MoveSteps((step.key,), set_up.key, chance.randrange(len(set_up.operations))).apply(job)
        elif what == "take out":
            job = DeleteSteps((step.key,)).apply(job)
        elif what == "set-up":
            job = MoveSetUp(set_up.key, chance.randrange(len(job.set_ups))).apply(job)
        elif what == "size":
            job = resized(job, step, chance)
        else:
            other = chance.choice(job.set_ups)
            job = MoveSteps((step.key,), other.key, chance.randint(0, len(other.operations))).apply(job)
    return job


def resized(job, step, chance):
    """The job with one length of a step several times as large or small."""
    named = [
        name
        for name in ("depth", "width", "layer", "leave", "cut", "feed_per_tooth", "feed")
        if getattr(getattr(step.fields, name, None), "value", None) is not None
    ]
    if not named:
        return job
    name = chance.choice(named)
    factor = chance.choice((0.1, 0.5, 2, 5))
    found = re.match(r"[\d.]+", getattr(step.fields, name).text)
    text = f"{float(found[0]) * factor:.4g}" if found else ""
    try:
        return SetField(step.key, name, text).apply(job)
    except QuantityError:
        return job  # beyond what the field takes


def elsewhere(job, chance):
    """The job on any of the three machines, in either system of units."""
    job = SetField("job", "machine", chance.choice(MACHINES)).apply(job)
    return SetField("job", "units", chance.choice(("mm", "in"))).apply(job)


def upset(job, chance):
    """The job with one to three things in it that do not go together any more."""
    for _ in range(chance.randint(1, 3)):
        steps = [
            (set_up, one)
            for set_up, one in job.operations()
            if getattr(one.fields, "cutter", None) is not None
        ]
        set_up, step = chance.choice(steps)
        command = _upsetting(set_up, step, chance)
        try:
            job = command.apply(job) if command is not None else job
        except JobsheetError:
            continue  # there is no such thing, or it cannot be read
    return job


def _upsetting(set_up, step, chance):
    fields = step.fields
    what = chance.choice(("metal", "tool", "out", "place", "hold", "speed", "depth", "empty", "add"))
    if what == "metal":
        return SetField("job", "material", chance.choice(METALS))
    if what == "hold":
        held = kind_of(set_up.holding)
        facts = [entry.name for entry in held.entries if entry.optional] if held is not None else []
        return SetField(f"holding:{set_up.key}", chance.choice(("kind", *facts)), "")
    if what == "speed":
        return SetField(step.key, "spindle", chance.choice(("180 rpm", "900 rpm", "2300 rpm", "500 rpm")))
    if what == "empty":
        return SetField(
            step.key, chance.choice(("layer", "peck", "measure", "leave", "feed", "feed_per_tooth")), ""
        )
    if what == "add":
        kind = chance.choice(("drill", "face", "side-mill", "ream", "tap", "countersink"))
        return AddOperation(set_up.key, kind, step.key)
    if what == "out":
        return SetField(
            step.key,
            "cutter",
            re.sub(r"(\d+) mm out", lambda found: f"{int(found[1]) * 2} mm out", fields.cutter.text),
        )
    factor = chance.choice((0.5, 0.8, 1.25, 2))
    if what == "tool":
        return SetField(
            step.key,
            "cutter",
            re.sub(
                r"\d+(\.\d+)?", lambda found: f"{float(found[0]) * factor:.4g}", fields.cutter.text, count=1
            ),
        )
    if what == "place" and getattr(fields, "at", None):
        place = next(iter(fields.at))
        return SetField(
            step.key, "at", f"{place.x.value * 1e3 * factor:.3f} mm, {place.y.value * 1e3:.3f} mm"
        )
    if what == "depth" and getattr(getattr(fields, "depth", None), "value", None):
        return SetField(step.key, "depth", f"{fields.depth.value * 1e3 * factor * 2:.3f} mm")
    return None
