"""What is written of any text reads back."""

from __future__ import annotations

import pytest

from jobsheet.catalog.reading.strict_yaml import parse
from jobsheet.storage.writing import scalar

from .signs_refused import REFUSED


@pytest.mark.parametrize("code", REFUSED, ids=lambda code: f"U+{code:04X}")
def test_whatever_stands_in_a_text_the_written_one_reads_back(code):
    if 0xD800 <= code <= 0xDFFF:
        return  # no file holds one: the writer says so, below
    text = f"a{chr(code)}b"
    assert parse(f"one: {scalar(text)}\n", "x").fields["one"].text == text
