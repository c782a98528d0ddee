"""`jobsheet open [JOB]`: the window."""

from __future__ import annotations

import click


@click.command("open")
@click.argument("job", required=False, type=click.Path())
@click.pass_obj
def command(open_window: object, job: str | None) -> int:
    """Open the window, with a job file if one is named."""
    assert callable(open_window)
    return int(open_window(job))
