"""What a workshop writes in its own file moves the remarks: numbers, and the
choice about cutting with the rotation.
"""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.edit.commands import SetField
from jobsheet.model.machine import Marked
from jobsheet.model.shop import Shop
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.engine import review
from jobsheet.storage.job_file import read_job


def told(job, shop, rule, change=None):
    reckoned = Reckoner(shop).reckon(job)
    if change is not None:
        settings = {key: replace(one, machine=change(one.machine)) for key, one in reckoned.settings.items()}
        reckoned = replace(reckoned, settings=settings)
    return [one.message for one in review(job, reckoned) if one.rule == rule]


def test_a_thicker_skin_asks_for_a_deeper_first_cut(samples):
    job = read_job(samples / "hm-103-pivot-block.yaml")
    assert not told(job, Shop(), "first-cut-under-the-skin")
    assert told(job, Shop(casting_skin=2e-3), "first-cut-under-the-skin")


def test_a_workshop_with_little_patience_saws_earlier(samples):
    """HM-101 is about half an hour in the cut, in several blocks."""
    job = read_job(samples / "hm-101-setting-block.yaml")
    assert not told(job, Shop(), "saw-the-bulk-first")
    assert told(job, Shop(bulk_minutes=5 * 60.0), "saw-the-bulk-first")


def test_a_light_finish_with_the_rotation_needs_four_things_in_order(samples):
    """Chosen by the workshop, little backlash, a dragged slide, and a thin pass
    (section 4 of the sequencing rules).
    """
    rule = "no-climb-with-slack"
    job = read_job(samples / "hm-103-pivot-block.yaml")
    job = SetField("end-right", "way", "climb").apply(job)
    light = Shop(climb_milling="light finish")
    assert "never" in told(job, Shop(), rule)[0]
    assert "mm of backlash" in told(job, light, rule)[0]

    def tight(machine):
        handles = tuple(replace(one, backlash=0.02e-3) for one in machine.handles)
        return replace(machine, handles=handles, drag=None)

    def dragged(machine):
        return replace(tight(machine), drag=Marked(value=100.0, mark="guessed"))

    assert "no drag" in told(job, light, rule, tight)[0]
    assert "only a light finish" in told(job, light, rule, dragged)[0]
    thin = SetField("end-right", "cut", "0.2").apply(job)
    assert not told(thin, light, rule, dragged)
