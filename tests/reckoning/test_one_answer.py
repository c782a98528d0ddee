"""One answer to one question: the open row, the command line and the deepest pass say the
same of a step, and following it ends.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.cli.verbs.figures import _around
from jobsheet.model.job import SetUp
from jobsheet.paths import sample_jobs
from jobsheet.reckoning.adviser.best_cut import advice_on, best_cut
from jobsheet.reckoning.answers.all_answers import answers_in_parts
from jobsheet.reckoning.answers.inverse import deepest_here
from jobsheet.reckoning.by_value import reckon_operation
from jobsheet.reckoning.reckoner import Outcome, Reckoned, Reckoner
from jobsheet.reckoning.what_if import tried, with_texts
from jobsheet.storage.job_file import read_job
from tests.reckoning.test_adviser_grid import drawn

SHORT, LONG = 24, 200
SEEDS = [*range(SHORT), *(pytest.param(n, marks=pytest.mark.long) for n in range(SHORT, LONG))]


def outcome_of(one, setting):
    figures, limits, rows, dials, problem = reckon_operation(one.kind, one.fields, setting)
    return Outcome(
        key=one.key, title="", figures=figures, limits=limits, rows=rows, dials=dials, problem=problem
    )


@pytest.mark.parametrize("seed", SEEDS)
def test_window_and_command_line_say_the_same_and_following_it_ends(seed, hm100):
    one, setting = drawn(seed + 1000)
    outcome = outcome_of(one, setting)
    changed = advice_on(one, setting)
    said = _around(one, outcome, setting)["advice"]
    assert [(each["field"], each["text"]) for each in said["write"]] == list(changed.edits)
    reckoned = Reckoned(
        job=hm100, operations={one.key: outcome}, settings={one.key: setting}, shop=setting.shop
    )
    *_, last = answers_in_parts(SetUp(key="set-up-1", number=1, operations=(one,)), one, reckoned)
    if outcome.figures is not None:
        assert last.changed.edits == changed.edits
    # What is written in is what was said to come of it, and then nothing more is recommended.
    fields = with_texts(one.kind, one.fields, changed.edits, setting.units)
    after = replace(one, fields=fields)
    found = tried(one.kind, fields, setting)
    assert found.value("cutting_time") == pytest.approx(changed.found.value("cutting_time"))
    assert advice_on(after, setting).edits == ()
    assert {limit.name for limit in found.limits if limit.verdict == "beyond"} <= {
        limit.name for limit in changed.advised.stays
    }
    if one.kind in ("side-mill", "slot", "face"):
        best = best_cut(one, setting)
        layer = one.fields.depth.value / best.found.value("layers")
        deepest = deepest_here(one, setting).plan
        assert not best.easy or (deepest is not None and layer <= deepest * (1 + 1e-3))


@pytest.mark.parametrize("path", sorted(sample_jobs().glob("*.yaml")), ids=lambda path: path.stem)
def test_what_is_recommended_never_says_the_same_in_two_ways(path):
    job = read_job(path)
    settings = Reckoner().reckon(job).settings
    for _, operation in job.operations():
        advised = advice_on(operation, settings[operation.key])
        if advised is None:
            continue
        after = with_texts(operation.kind, operation.fields, advised.edits, job.units)
        for one, other in (("feed", "feed_per_tooth"), ("cutting_speed", "spindle")):
            both = [getattr(after, name, None) is not None for name in (one, other)]
            before = [getattr(operation.fields, name, None) is not None for name in (one, other)]
            assert not all(both) or all(before), (operation.number, advised.edits)
