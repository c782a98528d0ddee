"""The shipped files of materials: one name reads one row, and a row says what it must."""

from __future__ import annotations

import pytest
import yaml

from jobsheet.catalog.metals import material_files
from jobsheet.catalog.metals.material_files import GROUPS, all_rows, row_called
from jobsheet.catalog.metals.materials import find, group
from jobsheet.paths import resources


def test_the_cited_files_are_the_files_that_are_there():
    assert {path.stem for path in (resources() / "materials").glob("*.yaml")} == set(GROUPS)
    assert all(group(name) for name in GROUPS)


def test_a_name_is_found_without_reading_other_rows_or_files():
    """The window waits for the first name: nothing else may be read for it."""
    for remembered in (
        material_files._file,
        material_files._row,
        row_called,
        material_files.shipped_material,
    ):
        remembered.cache_clear()
    assert find("S235").title == "Mild steel S235"
    assert material_files._file.cache_info().currsize == 1
    assert material_files._row.cache_info().currsize == 1


@pytest.mark.parametrize("name", GROUPS)
def test_reading_row_by_row_is_reading_the_file(name):
    text = (resources() / "materials" / f"{name}.yaml").read_text(encoding="utf-8")
    whole = yaml.load(text, Loader=yaml.CBaseLoader)
    assert [row for row, _ in all_rows(name)] == list(whole["materials"])
    for row, fields in all_rows(name):
        assert fields == {"family": whole.get("family", ""), **whole["materials"][row]}
