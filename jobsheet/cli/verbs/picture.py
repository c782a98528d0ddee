"""`jobsheet picture JOB [--after NUMBER] [--view VIEW] -o FILE`: the work after a
step as a line drawing, SVG or PDF.
"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from jobsheet.cli.output import refuse_to_overwrite, say
from jobsheet.errors import CommandError

if TYPE_CHECKING:
    from jobsheet.model.job import Job

#: Size of the drawing [points]: half an A4 page.
WIDE, HIGH = 480.0, 360.0


@click.command("picture")
@click.argument("job", type=click.Path())
@click.option(
    "--after", type=int, help="the number of the step; without it the work when all is done; 0 for the stock"
)
@click.option("--view", type=click.Choice(["iso", "plan", "front", "side"]), default="iso", show_default=True)
@click.option("-o", "--output", type=click.Path(), required=True, help="FILE.svg or FILE.pdf")
def command(job: str, after: int | None, view: str, output: str) -> int:
    """The work as it is held after a step, hidden lines left out or dashed; what the step cut is heavy."""
    from jobsheet.cli.named_job import job_named
    from jobsheet.reckoning.reckoner import Reckoner
    from jobsheet.report.stage_view import stages_of
    from jobsheet.stages.pictures import picture
    from jobsheet.storage.disk import write_file

    target = Path(output)
    if target.suffix.lower() not in (".svg", ".pdf"):
        raise CommandError(f"{target.name} is neither .svg nor .pdf; write, for example, {target.stem}.svg.")
    refuse_to_overwrite(target, (job,), b"<svg" if target.suffix.lower() == ".svg" else b"%PDF")
    plan = job_named(job)
    reckoned = Reckoner().reckon(plan)
    plan, stages = reckoned.job, stages_of(reckoned.job, reckoned.settings)
    stage, words = stages[-1], "finished"
    if after is not None:
        found = [stage for stage in stages[1:] if stage.cut is not None and stage.cut.number == after]
        if after and not found:
            there = ", ".join(str(stage.cut.number) for stage in stages[1:] if stage.cut is not None)
            raise CommandError(f"There is no step {after} in this job; there are {there}.")
        stage, words = (found[0], f"after step {after}") if after else (stages[0], "stock")
    drawing = picture(
        stage, view, WIDE, HIGH, hidden=view != "iso", now=after is not None, margin=(24, 24, 24, 24)
    )
    title = f"{plan.part.number} {plan.part.name}, {words}".strip(" ,")
    if target.suffix.lower() == ".svg":
        from jobsheet.drawing.svg import svg_text

        write_file(target, svg_text(drawing, title).encode())
    else:
        from jobsheet.sheet.pdf import picture_pdf

        write_file(target, picture_pdf(drawing, title))
    say(f"{title}, {view}: {target}")
    if (heavy := _masses(plan, stages)) is not None:
        from jobsheet.report.cover import mass_text

        stock, part, chips = (mass_text(one) for one in heavy)
        say(f"stock {stock}, finished part {part}, chips {chips}")
    return 0


def _masses(plan: Job, stages: Any) -> tuple[float, float, float] | None:
    """Stock, part and chips [kg]; None where the density of the metal is not known."""
    from jobsheet.catalog.metals.densities import density
    from jobsheet.catalog.metals.materials import find
    from jobsheet.stages.checks import masses

    heavy = density(find(plan.material).family)
    return masses(stages, heavy) if heavy is not None else None
