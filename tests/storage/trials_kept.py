"""Trials of a made-up machine, one by one and by chance."""

from __future__ import annotations

from hypothesis import strategies as st
from msgspec.structs import replace

from jobsheet.model.trials import OUTCOMES, PROCESSES, Asked, Trial

MACHINE = "test-mill"


def trial(**more) -> Trial:
    """A tap of the scenario's second story (section 3a), with other words where they are given."""
    base = Trial(
        machine=MACHINE, date="2026-11-13", time="09:20", role="Trainer", process="tap", kind="tap", cutter="tap 1/4-20, plug",
        cutter_kind="tap", material="C15", units="in", speed=70 / 60, asked=(Asked("spindle-torque", 3.0, 0.6040),),
        outcome="clean", note="oil", step=(("hole", "#7"), ("feed_per_tooth", "0.04 mm")),
    )  # fmt: skip
    return replace(base, **more)


TRIALS = st.builds(
    trial,
    date=st.dates().map(lambda day: day.isoformat()),
    time=st.sampled_from(("", "08:00", "19:05:30")),
    process=st.sampled_from(PROCESSES),
    outcome=st.sampled_from(OUTCOMES),
    note=st.text(max_size=30),
    asked=st.lists(
        st.builds(Asked, st.just("spindle-torque"), st.floats(1e-4, 1e4), st.floats(1e-4, 1e3)), max_size=1
    ).map(tuple),
)
