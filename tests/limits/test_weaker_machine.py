"""A weaker machine never has more capacity: no limit of any sample gets easier, and no verdict better."""

from __future__ import annotations

from unittest import mock

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from jobsheet.paths import sample_jobs
from jobsheet.reckoning import reckoner
from jobsheet.storage.card_files import find_card
from jobsheet.storage.job_file import read_job

SAMPLES = {path.stem: read_job(path) for path in sorted(sample_jobs().glob("hm-*.yaml"))}
RANK = ("cut before", "expected", "not tried", "tight", "beyond")


def marked(value, factor):
    return None if value is None else replace(value, value=value.value * factor)


def ranges(card, change):
    return replace(
        card, spindle=replace(card.spindle, ranges=tuple(change(one) for one in card.spindle.ranges))
    )


def handles(card, change):
    return replace(card, handles=tuple(change(one) for one in card.handles))


def vices(card, change):
    return replace(card, vices=tuple(change(one) for one in card.vices))


#: What is weaker -> the card with that made weaker by a factor below 1.
WEAKER = {
    "power": lambda card, by: replace(
        card, spindle=replace(card.spindle, power=marked(card.spindle.power, by))
    ),
    "efficiency": lambda card, by: ranges(
        card, lambda one: replace(one, efficiency=marked(one.efficiency, by))
    ),
    "cap": lambda card, by: ranges(card, lambda one: replace(one, cap=marked(one.cap, by))),
    "short peak": lambda card, by: replace(
        card, spindle=replace(card.spindle, short_peak=1 + (card.spindle.short_peak - 1) * by)
    ),
    "lever length": lambda card, by: replace(card, lever=replace(card.lever, length=card.lever.length * by)),
    "lever travel": lambda card, by: replace(card, lever=replace(card.lever, travel=card.lever.travel / by)),
    "lever spring": lambda card, by: replace(card, lever=replace(card.lever, spring=card.lever.spring / by)),
    "stiffness": lambda card, by: replace(card, frame=marked(card.frame, by)),
    "class": lambda card, _by: replace(card, stiffness_class="bench"),
    "crank": lambda card, by: handles(
        card, lambda one: replace(one, crank=None if one.crank is None else one.crank * by)
    ),
    "screw": lambda card, by: handles(card, lambda one: replace(one, efficiency=marked(one.efficiency, by))),
    "drag": lambda card, by: replace(card, drag=marked(card.drag, 1 / by)),
    "grip": lambda card, by: vices(card, lambda one: replace(one, efficiency=marked(one.efficiency, by))),
    # Jaws that are less deep on a bed that is as much higher: the work stands where it stood.
    "jaws": lambda card, by: vices(
        card,
        lambda one: replace(
            one, jaw_depth=one.jaw_depth * by, bed_height=(one.bed_height or 0.0) + one.jaw_depth * (1 - by)
        ),
    ),
    "travels": lambda card, by: replace(card, travel=tuple((axis, way * by) for axis, way in card.travel)),
    "daylight": lambda card, by: replace(card, daylight=(card.daylight[0], card.daylight[1] * by)),
    "table load": lambda card, by: replace(card, table=replace(card.table, load=card.table.load * by)),
}
#: The level of a class already holds its usual frame. The card's own frame only weighs how much of
#: the yielding is the cutter's (cutting-data section 7, S): with a softer one a slender cutter
#: matters less, and S rises towards 1.
EXCEPT = {("stiffness", "chatter")}


def limits_of(job, card):
    with mock.patch.object(reckoner, "find_card", return_value=card):
        found = reckoner.Reckoner().reckon(job)
    return {(key, one.name): one for key, outcome in found.operations.items() for one in outcome.limits}, {
        key: outcome.problem for key, outcome in found.operations.items()
    }


STRONG = {name: limits_of(job, find_card(job.machine)) for name, job in SAMPLES.items()}


def check(sample, weak, by):
    job = SAMPLES[sample]
    before, _ = STRONG[sample]
    after, problems = limits_of(job, WEAKER[weak](find_card(job.machine), by))
    assert not any(problems.values())
    assert after.keys() == before.keys()
    for where, one in after.items():
        if (weak, where[1]) in EXCEPT:
            continue
        strong = before[where]
        # Headroom that is too small asks the other way round where the spindle
        # cannot come down; no sample does.
        assert one.share >= strong.share * (1 - 1e-9), where
        assert RANK.index(one.verdict) >= RANK.index(strong.verdict), where
        if one.demand == strong.demand:
            assert one.capacity <= strong.capacity * (1 + 1e-9), where


@pytest.mark.parametrize("weak", sorted(WEAKER))
@pytest.mark.parametrize("sample", sorted(SAMPLES))
def test_half_as_strong_in_one_thing(sample, weak):
    check(sample, weak, 0.5)


@given(st.sampled_from(sorted(SAMPLES)), st.sampled_from(sorted(WEAKER)), st.floats(0.2, 0.999))
@settings(max_examples=80)
def test_weaker_by_any_factor(sample, weak, by):
    check(sample, weak, by)


@given(st.sampled_from(sorted(SAMPLES)), st.lists(st.sampled_from(sorted(set(WEAKER) - {"stiffness"})), min_size=2, max_size=6, unique=True), st.floats(0.3, 0.99))  # fmt: skip
@settings(max_examples=40)
def test_weaker_in_several_things_at_once(sample, several, by):
    job = SAMPLES[sample]
    card = find_card(job.machine)
    for weak in several:
        card = WEAKER[weak](card, by)
    before, after = STRONG[sample][0], limits_of(job, card)[0]
    for where, one in after.items():
        assert one.share >= before[where].share * (1 - 1e-9), where


@pytest.mark.parametrize("weak", sorted(WEAKER))
def test_every_one_of_them_is_felt_somewhere(weak):
    """A factor that nothing asks for would prove nothing: each changes at least one limit of one sample."""
    felt = False
    for sample, job in SAMPLES.items():
        after = limits_of(job, WEAKER[weak](find_card(job.machine), 0.1))[0]
        felt = felt or any(one != STRONG[sample][0][where] for where, one in after.items())
    assert felt
