"""Sizes of chance from which the tests of cutting draw."""

from __future__ import annotations

from hypothesis import strategies as st

parts = st.floats(1e-3, 1.0)


feeds = st.floats(0.02e-3, 0.5e-3)


sizes = st.floats(2e-3, 30e-3)


speeds = st.floats(0.5, 100)
