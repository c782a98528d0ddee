"""Blocks share the width of their page."""

from __future__ import annotations

import pytest

from jobsheet.report.blocks import Columns
from tests.report.plans import pages, plate

from .pages_read import all_of


def test_columns_share_their_width():
    for columns in all_of(pages(plate()), Columns):
        assert sum(columns.shares) == pytest.approx(1.0)
