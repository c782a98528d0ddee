"""How rows say their steps: the face and the size that are aimed at, in up to three lengths, never in
words of their own over a person's.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from msgspec.structs import replace

from jobsheet.operations.kind import Aim, fields_from
from jobsheet.operations.registry import kind, kinds
from jobsheet.operations.shared.aimed import size_text
from jobsheet.storage.job_file import read_job

JOBS = sorted((Path(__file__).parent / "jobs").glob("*.yaml"))
#: The block of the pivot job lying top up, its rear to the fixed jaw: 80 along, 50 across, 41.5 high.
LYING = Aim(up="top", near="front", far="rear", left="left", right="right", extent=(0.083, 0.050, 0.0415))


def said(name, aim=LYING, **texts):
    made = kind(name)
    fields = fields_from(made.fields, made.entries, made.example | texts, aim.units)
    return made.row_words(fields, aim)


@pytest.mark.parametrize("name", kinds())
@pytest.mark.parametrize("aim", [LYING, Aim()], ids=["lying", "nothing known"])
def test_every_kind_has_up_to_three_lengths(name, aim):
    words = said(name, aim)
    assert 1 <= len(words) <= 3
    assert all(words)
    assert sorted(words, key=len, reverse=True) == list(words)
    assert len(set(words)) == len(words)


@pytest.mark.parametrize("path", JOBS, ids=lambda path: path.stem)
def test_so_has_every_job_of_the_tests(path):
    for _, operation in read_job(path).operations():
        words = kind(operation.kind).row_words(operation.fields, LYING)
        assert sorted(words, key=len, reverse=True) == list(words)


@pytest.mark.parametrize(
    ("name", "texts", "expected"),
    [
        ("face", {"depth": "1.5", "measure": "40 ±0.1"}, ("Top to 40.0, 1.5 off", "Top to 40.0")),
        ("face", {"depth": "1.25"}, ("Top to 40.25, 1.25 off", "Top to 40.25")),
        ("fly-cut", {"depth": "0.5"}, ("Top to 41.0, 0.5 off, fly-cut", "Top to 41.0, fly-cut", "Top to 41.0")),
        (
            "side-mill",
            {"side": "right", "width": "3", "depth": "41.5", "measure": "80 ±0.1"},
            ("Right end to 80.0, 3 off", "Right end to 80.0"),
        ),
        ("side-mill", {"side": "front", "width": "2", "depth": "45"}, ("Front to 48.0, 2 off", "Front to 48.0")),
        ("side-mill", {"width": "20", "depth": "12"}, ("Step on the right, 20 × 12", "Step 20 × 12")),
        (
            "drill",
            {"cutter": "drill 6.8", "at": "10, 10; 20, 10", "depth": "20"},
            ("Drill 2 holes 6.8, 20 deep", "Drill 2 × 6.8, 20 deep", "Drill 2 × 6.8"),
        ),
    ],
)  # fmt: skip
def test_what_is_aimed_at_is_said(name, texts, expected):
    assert said(name, **texts) == expected


def test_a_size_that_is_what_comes_off_is_not_taken_for_what_is_left():
    assert said("face", depth="1.5", measure="1.5 ±0.1")[0] == "Top to 40.0, 1.5 off"


def test_a_persons_own_words_stand_alone():
    assert said("face", what="Clean the top") == ("Clean the top",)


def test_where_the_work_is_not_known_the_usual_words_stand():
    assert said("face", Aim(), depth="1.5") == ("Face 1.5 off",)
    flat = replace(LYING, extent=(0.08, 0.05, 0.001))
    assert said("face", flat, depth="1.5") == ("Face 1.5 off",)


def test_inches_have_three_decimals():
    assert size_text(1.5 * 0.0254, "in") == "1.500"
    assert size_text(40e-3, "mm") == "40.0"
