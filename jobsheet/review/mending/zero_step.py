"""A step that finds the zero of a set-up, as a fix writes it."""

from __future__ import annotations

from jobsheet.model.job import Job, SetUp
from jobsheet.operations.registry import roles


def usual_finder(units: str) -> str:
    """An edge finder as it is sold where sizes are in millimetres, or in inches (common practice)."""
    return "edge finder, 10 mm tip" if units == "mm" else "edge finder, 0.2 in tip"


def finding_texts(job: Job, set_up: SetUp) -> dict[str, str]:
    """The finding step of the set-up once more, else that of another one with
    this one's edges, else a usual finder.
    """
    here = next(
        (operation.fields for operation in set_up.operations if roles(operation).beside == "find"), None
    )
    edges = set_up.zero.named or f"the {set_up.zero.x_from} and the {set_up.zero.y_from} edge"
    if here is None:
        there = next(
            (operation.fields for _, operation in job.operations() if roles(operation).beside == "find"), None
        )
        return {
            "cutter": there.cutter.text if there is not None else usual_finder(job.units),
            "edges": edges,
        }
    texts = {"cutter": here.cutter.text, "edges": here.edges}
    for name in ("tip", "inside", "spindle"):
        value = getattr(here, name)
        if value is not None:
            texts[name] = value.text
    return texts
