"""Every shape as a solid fills its box and has its volume."""

from __future__ import annotations

import math

import pytest

from jobsheet.model.lying import stock_box
from jobsheet.model.stock import sides_of
from jobsheet.stages.solids import drawn_out
from jobsheet.stock.all_shapes import outline_of, shapes, volume_of
from jobsheet.storage.job_file import read_job

from .shaped_jobs import shaped


def share_of(radius):
    """A circle of n sides has so much of its area: (n / 2π) sin(2π / n)."""
    sides = sides_of(radius)
    return sides / (2 * math.pi) * math.sin(2 * math.pi / sides)


@pytest.mark.parametrize("along", ["length", "width", "height"])
@pytest.mark.parametrize("name", shapes())
def test_the_solid_fills_the_box_and_has_the_volume(name, along):
    job = shaped(name, along)
    solid = drawn_out(outline_of(job.stock))
    low, high = solid.bounding_box()[:3], solid.bounding_box()[3:]
    assert low == pytest.approx((0, 0, 0), abs=1e-6)
    assert high == pytest.approx([end * 1e3 for _, end in stock_box(job)], abs=2e-3)
    short = 0.0  # what the many short lines of a circle cut off, outside and in the bore
    if job.stock.is_round:
        bore = 0.02 - job.stock.wall.value if job.stock.wall else 0.0
        ring = 0.02**2 * (1 - share_of(0.02)) - bore**2 * (1 - share_of(bore))
        short = math.pi * ring * 0.09
    assert solid.volume() * 1e-9 == pytest.approx(volume_of(job.stock) - short, rel=2e-4)


def test_the_samples_keep_their_boxes(samples):
    for path in samples.glob("*.yaml"):
        stock = read_job(path).stock
        assert volume_of(stock) == pytest.approx(stock.length.value * stock.width.value * stock.height.value)
