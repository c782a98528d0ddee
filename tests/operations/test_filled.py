"""A typed size stands in the form of the new step."""

import pytest

from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.edit.step_commands import AddOperation
from jobsheet.operations.choosing.filled import with_size
from jobsheet.operations.registry import kind, kinds
from jobsheet.storage.job_file import blank_job


@pytest.mark.parametrize("name", kinds())
@pytest.mark.parametrize("units", ["mm", "in"])
def test_a_size_is_read_by_the_form_that_it_is_written_into(name, units):
    texts = with_size(kind(name), "9" if units == "mm" else "0.375", units, None)
    job = blank_job("bench-mill-b-1")
    job = AddOperation(job.set_ups[0].key, name, texts=texts).apply(job)
    made = job.set_ups[0].operations[0].fields
    for field, text in texts:
        assert getattr(made, field).text == text
    if texts and texts[0][0] == "cutter":
        assert read_cutter(texts[0][1], units).diameter == pytest.approx(9e-3 if units == "mm" else 9.525e-3)
