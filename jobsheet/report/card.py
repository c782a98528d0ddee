"""What a machine card means: torque at each speed, the pace of each handle, the push
of the lever, what is only guessed.
"""

from __future__ import annotations

from jobsheet.cutting.quill import thrust_from_push
from jobsheet.machine.spindle import at_speed, highest, lowest, steps
from jobsheet.model.facts import Facts
from jobsheet.model.machine import Machine
from jobsheet.storage.card_steps import STEPS
from jobsheet.storage.paper_layout import Layout, guessed
from jobsheet.storage.typed_paper import Paper, Path, text_at
from jobsheet.units.show import plain

#: The feed by which handles are compared [m/s]: 100 mm/min, as in the scenario's rule of thumb.
FEED = 0.1 / 60
#: How what is assumed is measured, by its word.
_HOW = {step.word: step.how for step in STEPS if step.word}
#: Comfortable and strong push at the grip [N]: cutting-data 1.13.
PUSHES = (100.0, 200.0)


def card_facts(machine: Machine | None, paper: Paper, layout: Layout) -> tuple[Facts, ...]:
    """Everything the margin says of a card; what is guessed is said also of one that cannot be used yet."""
    found: list[Facts] = []
    if machine is not None:
        found += [_torque(machine), _paces(machine)]
        if machine.lever is not None:
            found.append(_push(machine))
    return (*found, _guesses(paper, layout))


def _torque(machine: Machine) -> Facts:
    """Continuous and peak torque at each step, or at some speeds of a drive without steps."""
    rows = [
        (f"{speed.speed * 60:.0f}", _torque_text(speed.continuous), _torque_text(speed.peak))
        for speed in steps(machine)
    ]
    if not rows:
        ends = {lowest(machine), highest(machine)}
        for span in machine.spindle.ranges:
            ends |= {speed for speed in (span.lowest, span.base, span.highest) if speed is not None}
        for speed in sorted(ends):
            one = at_speed(machine, speed)
            if one is not None:
                rows.append((f"{speed * 60:.0f}", _torque_text(one.continuous), _torque_text(one.peak)))
    return Facts(
        title="Torque at the spindle, N·m",
        heads=("rpm", "lasting", "for seconds"),
        rows=tuple(rows),
    )


def _torque_text(value: float) -> str:
    return plain(value, 1 if value >= 10 else 2)


def _paces(machine: Machine) -> Facts:
    rows = tuple(
        (
            handle.name,
            f"{plain(FEED / handle.travel * 60, 1)} a minute",
            f"{plain(handle.travel / FEED, 1)} s a turn",
        )
        for handle in machine.handles
    )
    return Facts(
        title="100 mm/min by hand, in turns",
        rows=rows,
        note="A hand winds evenly from 8 to 50 turns a minute.",
    )


def _push(machine: Machine) -> Facts:
    lever = machine.lever
    assert lever is not None
    rows = tuple(
        (
            f"{push:.0f} N at the grip",
            f"{plain(thrust_from_push(push=push, lever=lever.length, travel=lever.travel, spring=lever.spring) / 1e3, 2)} kN at the drill",
        )
        for push in PUSHES
    )
    return Facts(title="Push of the quill lever", rows=rows)


def _guesses(paper: Paper, layout: Layout) -> Facts:
    rows = [
        (f"{_owner(paper, path)}{ask.entry.title}: {number}", ask.how)
        for path, ask, number in guessed(layout, paper)
    ]
    assumed = [word.strip() for word in text_at(paper, ("assumed",)).split(";") if word.strip()]
    rows += [(f"{word.capitalize()}: assumed", _HOW.get(word, "")) for word in assumed]
    note = "" if rows else "Nothing is marked as guessed."
    return Facts(title="Guessed, and how to measure it", rows=tuple(rows), note=note)


def _owner(paper: Paper, path: Path) -> str:
    """The name of the entry of a list in which a field stands."""
    for end in range(len(path) - 1, 0, -1):
        if isinstance(path[end - 1], int):
            name = text_at(paper, (*path[:end], "name"))
            return f"{name}, " if name else ""
    return ""
