"""A job becomes its text, and any text comes back."""

from __future__ import annotations

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from jobsheet.edit.commands import SetField
from jobsheet.storage.job_file import job_from_text
from jobsheet.storage.job_writing import write_job

from .job_saved import JOB


@pytest.mark.parametrize(
    ("owner", "name", "text"),
    [
        ("face-rough", "depth", "25 thou"),
        ("face-rough", "depth", "1/64 in"),
        ("job:stock", "length", "3-1/8 in"),
        ("face-rough", "depth", "6,35 mm"),
        ("drill", "cutter", "drill #7"),
        ("drill", "cutter", "drill H"),
        ("tap", "thread", "M8x1.25"),
        ("tap", "thread", "5/16-18 UNC"),
        ("face-finish", "measure", "40 ±0.03"),
        ("face-finish", "measure", "16 H7"),
        ("tap", "hole", "#7"),
        ("tap", "hole", "H"),
    ],
)
def test_every_spelling_is_kept(owner, name, text):
    job = SetField(owner, name, text).apply(JOB)
    written = write_job(job)
    assert text in written
    assert job_from_text(written, "x") == job


@settings(max_examples=200, deadline=None)
@given(st.text(st.characters(exclude_categories=["Cs", "Cc"], include_characters="\n"), max_size=60))
def test_any_text_comes_back(text):
    job = SetField("clamp", "note", text).apply(JOB)
    written = write_job(job)
    assert job_from_text(written, "x") == job
    assert write_job(job_from_text(written, "x")) == written


@settings(max_examples=100, deadline=None)
@given(st.text(st.characters(exclude_categories=["Cs", "Cc"]), min_size=1, max_size=40))
def test_another_reader_of_yaml_reads_the_same_texts(text):
    """Outside check: PyYAML's own loader, all scalars as text."""
    job = SetField("job:part", "name", text).apply(JOB)
    if job.part.name:
        assert yaml.load(write_job(job), yaml.CBaseLoader)["part"]["name"] == job.part.name
