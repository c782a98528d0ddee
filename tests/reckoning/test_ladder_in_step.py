"""The layers of a real step as rungs: they grow as a ladder's do, never over the plan, and
come out at the depth of the step.
"""

from __future__ import annotations

from itertools import pairwise

import pytest

from jobsheet.errors import CommandError
from jobsheet.machine.handles import dial_text, reading
from jobsheet.operations.shared.common import depth_handle
from jobsheet.reckoning.ladder.ladder_in_step import in_step
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.proving_sheet import notes_of, proving_sheet
from jobsheet.storage.job_file import read_job

#: Sample, step, depth of the step and of its planned layer [mm]: read off the plans.
STEPS = (
    ("hm-103-pivot-block.yaml", 70, 12, 4),
    ("hm-102-slide-plate.yaml", 90, 12, 3),
    ("hm-104-cover-plate.yaml", 60, 4, 1),
)


def millimetres(rung):
    return float(rung.size.split()[0])


@pytest.mark.parametrize(("name", "number", "depth", "layer"), STEPS)
def test_the_layers_come_out_at_the_depth_and_grow_as_rungs_do(samples, own_home, name, number, depth, layer):
    ladder = in_step(Reckoner(learns=True).reckon(read_job(samples / name)), number)
    assert ladder.refused == ""
    depths = [millimetres(rung) for rung in ladder.rungs]
    assert sum(depths) == pytest.approx(depth, abs=1e-6)
    assert max(depths) <= layer
    assert all(rung.chance <= ladder.chance + 1e-4 for rung in ladder.rungs)
    assert all(above <= 1.25 * below + 0.051 for below, above in pairwise(depths))  # the dial sets 0.05
    # Each dial reading stands at all that is cut so far.
    handle, done = depth_handle(ladder.setting.machine), ladder.setting.wound or 0.0
    for rung, each in zip(ladder.rungs, depths, strict=True):
        done += each * 1e-3
        assert rung.dial == dial_text(handle, reading(handle, done))
    assert "the step is done" in ladder.ends


def test_where_the_planned_layer_may_be_tried_at_once_there_is_no_ladder(samples, own_home):
    ladder = in_step(Reckoner(learns=True).reckon(read_job(samples / "hm-102-slide-plate.yaml")), 10)
    assert (ladder.rungs, "no more than may be tried at once" in ladder.refused) == ((), True)


def test_a_step_without_layers_says_so(samples, own_home):
    reckoned = Reckoner().reckon(read_job(samples / "hm-100-drilled-plate-b1.yaml"))
    with pytest.raises(CommandError, match="not milled in layers"):
        in_step(reckoned, 50)
    with pytest.raises(CommandError, match="There is no step 7"):
        in_step(reckoned, 7)


def test_its_sheet_is_of_the_part_and_not_of_scrap(samples, own_home):
    ladder = in_step(Reckoner(learns=True).reckon(read_job(samples / "hm-103-pivot-block.yaml")), 70)
    page = proving_sheet(ladder).pages[0]
    assert (
        "Side cuts, HM-103, step 70" in {cell.text for cell in page.title.cells}
        if hasattr(page.title, "cells")
        else True
    )
    assert "proving-on-scrap" not in {row.id for row in notes_of(ladder)}
    assert "proving-stop-rule" in {row.id for row in notes_of(ladder)}
