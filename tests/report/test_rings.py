"""If it rings: the mildest measure first, with the machine's own next speed;
nothing for a step that does not mill.
"""

from __future__ import annotations

from types import SimpleNamespace

from jobsheet.edit.commands import SetField
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.rows.rings import rings
from jobsheet.storage.card_files import find_card


def said(job, key):
    plan = SimpleNamespace(reckoned=Reckoner().reckon(job), card=find_card(job.machine))
    return rings(plan, job.find(key)[1])


def test_the_next_speed_down_is_one_that_the_machine_has(hm100):
    """The bench mill has 180, 320, 560, 900 rpm (its card)."""
    words = said(SetField("face-rough", "spindle", "560 rpm").apply(hm100), "face-rough")
    assert words == "If it rings: lock the slides · next speed down, 320 · half the width · half the depth"


def test_at_the_slowest_there_is_none(hm100):
    assert "no slower speed here" in said(
        SetField("face-rough", "spindle", "180 rpm").apply(hm100), "face-rough"
    )


def test_a_hole_does_not_ring(hm100):
    assert said(hm100, "drill") == ""
