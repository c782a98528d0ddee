"""Times whole fresh processes against each other, in turn, so that a busy machine slows both."""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
import time
from collections.abc import Sequence

ROUNDS = 15


def once(arguments: Sequence[str], environment: dict[str, str] | None = None) -> float:
    """Seconds of one process from start to end."""
    began = time.perf_counter()
    inherited = {**os.environ, **(environment or {})}
    # A person's Python keeps its compiled modules; a test machine may be told not to.
    inherited.pop("PYTHONDONTWRITEBYTECODE", None)
    subprocess.run([sys.executable, *arguments], check=True, capture_output=True, env=inherited)
    return time.perf_counter() - began


def in_turn(
    one: Sequence[str], other: Sequence[str], environment: dict[str, str] | None = None
) -> tuple[float, float, float]:
    """Medians of both [s] and the median of the ratios one/other, pair by pair, after a warm-up."""
    once(one, environment), once(other, environment)
    pairs = [(once(one, environment), once(other, environment)) for _ in range(ROUNDS)]
    return (
        statistics.median(a for a, _ in pairs),
        statistics.median(b for _, b in pairs),
        statistics.median(a / b for a, b in pairs),
    )
