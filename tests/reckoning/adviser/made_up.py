"""Cuts whose figures and limits are made up, so that what is best of them is
known without reckoning anything.
"""

from __future__ import annotations

from types import SimpleNamespace

from jobsheet.model.figure import Figure, Figures, Limit
from jobsheet.reckoning.adviser.advised import Advised, Candidate
from jobsheet.reckoning.what_if import Tried
from tests.reckoning.steps import around

#: Fields of which only the cutter is asked.
_PLAIN = SimpleNamespace(cutter=SimpleNamespace(kind="end mill"))


def limit(verdict="expected", share=0.1, name="torque", **more):
    """A limit of which only the word and the share matter."""
    return Limit(
        name=name, title=name, demand=share, capacity=1.0, unit="", share=share, verdict=verdict, low=1.0, high=1.0, **more
    )  # fmt: skip


def outcome(*limits, fields=None, setting=None, **values):
    """A cut with these limits and figures; a figure that is None is missing."""
    figures = tuple(
        Figure(name, value, "", f"{value:g} shown") for name, value in values.items() if value is not None
    )
    return Tried(
        fields=fields, setting=setting or around("bench-mill-b-1"), figures=Figures(figures), limits=limits
    )


def candidate(found=None, *, burden=(0, 0, 0), speed=10.0, feed=1e-4, passes=1, seconds=60.0, texts=()):
    """One way of cutting."""
    found = found or outcome(fields=_PLAIN)
    return Candidate(
        fields=found.fields, texts=texts, found=found, burden=burden, speed=speed, feed=feed, passes=passes, seconds=seconds
    )  # fmt: skip


def advised_of(found=None, *, values=(), fields=None, passes=1, seconds=60.0, **more):
    """An answer of the adviser's."""
    found = found or outcome()
    return Advised(values=values, fields=fields, found=found, passes=passes, seconds=seconds, **more)
