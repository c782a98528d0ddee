"""The work after each step of a job: as it lies in each set-up, with what earlier ones took off gone."""

from __future__ import annotations

import pytest

from jobsheet.errors import CommandError
from jobsheet.gui.strip.stage_blocks import held, stages
from jobsheet.model.shape import Hole, Slab
from jobsheet.paths import sample_jobs
from jobsheet.storage.job_file import read_job


@pytest.fixture(scope="module")
def plate():
    return read_job(sample_jobs() / "hm-104-cover-plate.yaml")


@pytest.fixture(scope="module")
def block():
    return read_job(sample_jobs() / "hm-101-setting-block.yaml")


def test_the_stock_lies_as_its_set_up_turns_it(block):
    sizes = {
        "length": block.stock.length.value,
        "width": block.stock.width.value,
        "height": block.stock.height.value,
    }
    for set_up in block.set_ups:
        lying = held(block, set_up)
        assert sorted(lying) == pytest.approx(sorted(sizes.values()))
        if set_up.up in ("top", "bottom"):
            assert lying[2] == sizes["height"]
        if set_up.up in ("front", "rear"):
            assert lying[2] == sizes["width"]


def test_stock_then_each_step_of_the_open_set_up_and_one_for_each_other(qapp, block):
    opened = block.set_ups[1]
    shown = stages(block, lambda _: (), opened.key)
    assert shown[0].spoken == "stock"
    keys = [stage.key for stage in shown[1:]]
    assert [key for key in keys if key in {one.key for one in opened.operations}] == [
        one.key for one in opened.operations
    ]
    assert [key for key in keys if key.startswith("set-up")] == [
        one.key for one in block.set_ups if one.key != opened.key
    ]


def test_what_a_set_up_took_off_is_gone_in_the_next(qapp, block):
    first = block.set_ups[0]
    shown = stages(block, lambda one: (Slab(0.001),) if one.key == "face-1-rough" else (), first.key)
    whole, after = held(block, first), next(stage.after for stage in shown if stage.key == "face-1-rough")
    assert after.height == pytest.approx(whole[2] - 0.001)
    bare = stages(block, lambda _: (), first.key)
    for one, other in zip(shown, bare, strict=True):
        if one.set_up not in ("", first.key):
            volumes = [part.length * part.width * part.height for part in (one.before, other.before)]
            assert volumes[0] < volumes[1]


def test_a_step_that_cannot_be_reckoned_takes_nothing_off(qapp, plate):
    def sweeps(_operation):
        raise CommandError("no figures")

    shown = stages(plate, sweeps, plate.set_ups[0].key)
    assert all(stage.before == stage.after for stage in shown)


def test_a_hole_lies_where_its_set_up_counts_to(qapp, plate):
    set_up = plate.set_ups[0]
    shown = stages(
        plate, lambda one: (Hole(0.01, 0.02, 0.005, None),) if one.key == "drill" else (), set_up.key
    )
    (hole,) = next(stage.after for stage in shown if stage.key == "drill").holes
    length, width, _ = held(plate, set_up)
    right = set_up.zero.x_counts == "right"
    x0 = 0 if set_up.zero.x_from == "left" else length
    y0 = 0 if set_up.zero.y_from == "front" else width
    assert hole.x == pytest.approx(x0 + (0.01 if right else -0.01))
    assert hole.y == pytest.approx(y0 + (0.02 if set_up.zero.y_counts == "away" else -0.02))


def test_a_picture_is_made_of_what_stands_before_and_after(qapp, plate):
    stock = stages(plate, lambda _: (), plate.set_ups[0].key)[0]
    assert {stroke.line for stroke in stock.picture().strokes} == {"thin"}
