"""Blocks of stock that are squared, and the sizes that are typed for them."""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.model.quantity import Quantity
from jobsheet.storage.job_file import blank_job


def block(length=64, width=45, height=30, datums=()):
    job = blank_job("bench-mill-b-1")
    sizes = {
        name: Quantity(value / 1e3, f"{value} mm")
        for name, value in (("length", length), ("width", width), ("height", height))
    }
    return replace(job, stock=replace(job.stock, **sizes), datums=datums)


def typed(length="60", width="40", height="25"):
    return {"length": length, "width": width, "height": height}
