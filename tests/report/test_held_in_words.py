"""A holding in words for its sheet."""

from __future__ import annotations

from jobsheet.model.lying import lying
from jobsheet.report.zero_view import zero_picture

from .holdings_drawn import CARD, HIGH, WIDE, said


def test_what_a_step_took_off_is_not_drawn_on_the_sheets_after_it(tmp_path):
    """The straps of the cover plate come off in step 40; screws hold it from there."""
    from jobsheet.paths import sample_jobs
    from jobsheet.report.held_in_words import changes, gone_by
    from jobsheet.storage.job_file import read_job

    (set_up,) = read_job(next(iter(sample_jobs().glob("hm-104*.yaml")))).set_ups
    assert gone_by(set_up, 34) == frozenset()
    assert changes(set_up, 34) == ""
    assert "strap" in gone_by(set_up, 40)
    assert changes(set_up, 58) == "straps off since 40, screws hold"
    lie = lying(set_up, ((0.0, 0.124), (0.0, 0.084), (0.0, 0.004)))
    counts = [
        len(zero_picture(set_up, lie, (), (), WIDE, HIGH, machine=CARD, without=gone).items)
        for gone in (frozenset(), gone_by(set_up, 40))
    ]
    assert counts[0] - counts[1] >= 4  # four straps


def test_clamps_and_bolts_are_printed_where_the_holding_is_not_named_by_them():
    from jobsheet.report.held_in_words import sits_words

    assert "m10" in sits_words(said("vee block", blocks="2", clamps="2", bolt="M10"), "mm").casefold()
    assert "clamps 3" in sits_words(said("sine plate", clamps="3"), "mm")
    assert "M12" not in sits_words(said("straps", clamps="4", bolt="M12"), "mm")  # 4 strap clamps M12
