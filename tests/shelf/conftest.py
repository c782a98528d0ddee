"""A shelf with the samples and others of them, and its index."""

from __future__ import annotations

import shutil

import pytest

from jobsheet.shelf.shelf_index import Index


@pytest.fixture
def shelf(samples, tmp_path, own_home):
    """The samples, one of them in a folder of its own."""
    there = tmp_path / "shelf"
    shutil.copytree(
        samples, there, ignore=lambda _, names: [name for name in names if not name.endswith(".yaml")]
    )
    (there / "old").mkdir()
    (there / "hm-104-cover-plate.yaml").rename(there / "old" / "hm-104-cover-plate.yaml")
    return there


@pytest.fixture
def index(shelf):
    made = Index(shelf)
    made.refresh()
    yield made
    made.close()
