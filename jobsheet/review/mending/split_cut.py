"""A finishing pass split off a cut that has none."""

from __future__ import annotations

from jobsheet.model.job import Job
from jobsheet.review.mending.fixes import Mend, added_after, in_turn, set_field
from jobsheet.review.plan.faces import Step
from jobsheet.review.plan.lengths import fine, round_up
from jobsheet.review.plan.rough_and_finish import LEFT, length_text


def where_it_belongs(later: Step | None) -> str:
    """What a person does with a size at a step whose face a later one cuts last; nothing where none does."""
    return f"write the size at step {later.number}, which cuts this face last" if later is not None else ""


def split_off(step: Step, units: str) -> Mend | None:
    """A last pass of its own for what a step takes: for a face a step behind
    it, for a wall what it leaves.
    """
    fields = step.fields
    thick = round_up(LEFT, units)
    left = fine(thick, units)
    if step.roles.mills == "wall":
        return set_field(step.key, "leave", left) if fields.width.value > thick else None
    if step.roles.mills != "flat" or fields.depth.value <= thick + 1e-9:
        return None
    texts = {"cutter": fields.cutter.text, "depth": left, "along": fields.along}
    for name in (
        "width",
        "feed_per_tooth",
        "feed",
        "spindle",
        "cutting_speed",
        "measure",
        "tolerances",
        "how",
    ):
        value = getattr(fields, name, None)
        if value is not None:
            texts[name] = value.text
    if fields.note:
        texts["note"] = fields.note
    rest = length_text(fields.depth.value - thick, units)
    adding = added_after(step.key, step.kind, texts)

    def mend(job: Job) -> Job:
        made = adding(job)
        if made is job:
            return job
        return in_turn(
            set_field(step.key, "depth", rest),
            set_field(step.key, "measure", ""),
            set_field(step.key, "tolerances", ""),
        )(made)

    return mend
