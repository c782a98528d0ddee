"""The shipped cards as typed text, and their reader."""

from __future__ import annotations

from jobsheet.paths import resources
from jobsheet.storage.machine_file import machine_from_text

CARDS = sorted((resources() / "machines").glob("*.yaml")) + sorted(
    (resources() / "machine-classes").glob("*.yaml")
)


def read(text, name="card.yaml"):
    return machine_from_text(text, name, "card")
