"""What the shell says of the dials."""

from __future__ import annotations

from jobsheet.report.blocks import Steps
from jobsheet.storage.job_file import read_job
from jobsheet.units.show import MINUS
from tests.report.pages_read import all_of
from tests.report.plans import pages


def test_the_shell_and_the_sheet_say_the_same_lines_of_cuts_along_the_outside(samples):
    """`jobsheet dials` of HM-103 and HM-104: turns and lines of every such cut
    are those in the rows of the sheet.
    """
    from click.testing import CliRunner
    from msgspec import json

    from jobsheet.cli.verbs.dials import command

    for name in ("hm-103-pivot-block.yaml", "hm-104-cover-plate.yaml"):
        done = CliRunner().invoke(command, [str(samples / name), "--json"])
        told = {
            str(step["number"]): [
                f"{one['turns']} + {one['line']}".replace("-", MINUS) for one in step["outside"]["cuts"]
            ]
            for set_up in json.decode(done.output)["set-ups"]
            for step in set_up["steps"]
            if step["outside"] is not None
        }
        rows = {
            row.number: row for steps in all_of(pages(read_job(samples / name)), Steps) for row in steps.rows
        }
        assert told
        for number, cuts in told.items():
            assert list(rows[number].dials[0].readings) == cuts
