"""The stock in a file: each shape by its own sizes, surfaces by face, words of an earlier day
as facts; what cannot be is refused.
"""

from __future__ import annotations

import math

import pytest

from jobsheet.catalog.trade.surfaces import read_faces, read_surfaces
from jobsheet.edit.commands import ChangeUnits, SetField
from jobsheet.errors import DocumentError, QuantityError
from jobsheet.stock.all_shapes import entries_of, shapes, volume_of
from jobsheet.storage.job_file import blank_job, job_from_text
from jobsheet.storage.job_writing import write_job

from .stock_lines import HEAD, stock


@pytest.mark.parametrize(
    ("lines", "box", "volume"),
    [
        # Areas of the circle, the ring, the hexagon (0.866 s²), a square with round
        # edges, a frustum: any book of formulas.
        ("length: 80; width: 50; height: 12", (80, 50, 12), 80 * 50 * 12),
        ("shape: round bar; diameter: 40; bar length: 100", (100, 40, 40), math.pi * 400 * 100),
        ("shape: round bar; diameter: 40; bar length: 100; along: height", (40, 40, 100), math.pi * 400 * 100),
        ("shape: tube; diameter: 40; wall: 5; bar length: 60", (60, 40, 40), math.pi * (400 - 225) * 60),
        ("shape: hexagon; across flats: 30; bar length: 50", (50, 34.641, 30), 0.8660254 * 900 * 50),
        ("shape: radius flat; length: 100; width: 40; height: 20; corner radius: 5", (100, 40, 20), (800 - 100 + math.pi * 25) * 100),
        ("shape: casting; length: 80; width: 50; height: 40; draft: 2°", (80, 50, 40), None),
        ('shape: cut plate; outline: "0, 0; 80, 0; 80, 30; 0, 50"; height: 10', (80, 50, 10), 80 * 40 * 10),
    ],
)  # fmt: skip
def test_each_shape_has_its_own_sizes(lines, box, volume):
    if "outline" in lines:
        text = (
            HEAD.format(2)
            + "  shape: cut plate\n  outline:\n    - [0, 0]\n    - [80, 0]\n    - [80, 30]\n    - [0, 50]\n  height: 10\n"
        )
        found = job_from_text(text, "job").stock
    else:
        found = stock(lines)
    assert [size * 1e3 for size in found.sizes] == pytest.approx(box, abs=1e-3)
    if volume is None:
        # A frustum by the rule of areas: ends and the middle, (A + 4 M + B) h / 6.
        lean = 40 * math.tan(math.radians(2))
        volume = sum(k * (80 - 2 * t) * (50 - 2 * t) for k, t in ((1, 0), (4, lean / 2), (1, lean))) * 40 / 6
    assert volume_of(found) * 1e9 == pytest.approx(volume, rel=1e-6)


@pytest.mark.parametrize(
    ("lines", "where", "words"),
    [
        ("shape: tube; diameter: 20; wall: 10; bar length: 60", "stock.wall", "leaves no bore"),
        ("shape: radius flat; length: 9; width: 8; height: 8; corner radius: 5", "stock.corner radius", "half of that at most"),
        ("shape: casting; length: 80; width: 50; height: 40; skin: 20", "stock.skin", "thinnest"),
        ("shape: casting; length: 80; width: 10; height: 100; draft: 10°", "stock.draft", "nothing is left"),
        ("shape: round bar; diameter: 20", "stock.bar length", "missing"),
        ("shape: ball; diameter: 20", "stock.shape", "not one of the choices"),
        ("length: 80; width: 50; height: 12; surfaces: blakc", "stock.surfaces", "Did you mean black"),
        ("length: 80; width: 50; height: 12; as bought: tpo", "stock.as bought", "Did you mean top"),
    ],
)  # fmt: skip
def test_what_cannot_be_is_one_sentence_at_its_line(lines, where, words):
    with pytest.raises(DocumentError) as told:
        stock(lines)
    (problem,) = told.value.problems
    assert problem.path == where
    assert words in problem.sentence


def test_every_shape_is_chosen_at_the_form_and_comes_back_from_its_file():
    job = blank_job("bench-mill-b-1")
    before = write_job(job)
    assert "shape" not in before
    for name in shapes():
        made = SetField("job:stock", "shape", name).apply(job)
        made = SetField("job:stock", "surfaces", "bright, ends sawn").apply(made)
        assert made.stock.shape == name
        assert job_from_text(write_job(made), "job") == made
        inches = ChangeUnits("in").apply(made)
        assert inches.stock.sizes == pytest.approx(made.stock.sizes)
        assert job_from_text(write_job(inches), "job") == inches
        for other in shapes():
            assert SetField("job:stock", "shape", other).apply(made).stock.shape == other
    assert write_job(SetField("job:stock", "shape", "").apply(made)).count("shape") == 0


def test_a_size_typed_key_by_key_is_refused_only_where_it_makes_no_tube():
    job = SetField("job:stock", "shape", "tube").apply(blank_job("bench-mill-b-1"))
    for text in ("4", "40"):
        job = SetField("job:stock", "diameter", text).apply(job)
    assert job.stock.height.value == pytest.approx(0.04)
    with pytest.raises(QuantityError, match="leaves no bore"):
        SetField("job:stock", "wall", "20").apply(job)
    assert {entry.name for entry in entries_of(job.stock)} >= {"diameter", "wall", "bar_length", "along"}


@pytest.mark.parametrize(
    ("text", "faces"),
    [
        ("black, ends sawn", {"top": "black", "front": "black", "left": "sawn", "right": "sawn"}),
        ("ends sawn, black", {"top": "black", "left": "sawn"}),
        ("cast, top, bottom finished", {"top": "finished", "bottom": "finished", "left": "cast"}),
        ("bright, sawn right end", {"right": "sawn", "left": "bright"}),
        ("finished, edges sawn", {"top": "finished", "front": "sawn", "left": "sawn"}),
        ("Hot-rolled", {"rear": "black"}),
    ],
)
def test_surfaces_are_one_word_for_all_and_exceptions(text, faces):
    found = stock(f"length: 80; width: 50; height: 12; surfaces: {text}")
    assert {face: found.surface(face) for face in faces} == faces


@pytest.mark.parametrize("text", ["black, top", "black, bright", "black cast", "top", ",", "shiny"])
def test_half_typed_surfaces_are_a_sentence(text):
    with pytest.raises(QuantityError):
        read_surfaces(text)


def test_faces_are_named_alone_or_as_ends():
    assert read_faces("the top and both ends").items == ("top", "ends")
    assert stock("length: 80; width: 50; height: 12; as bought: ends").stays == {"left", "right"}


@pytest.mark.parametrize("version", [1, 2])
@pytest.mark.parametrize(
    ("words", "faces"),
    [
        ("bright flat, sawn, ends filed", {"top": "bright", "left": "finished"}),
        ("black hot-rolled flat, sawn", {"top": "black", "left": "sawn"}),
        ("casting, underside milled, top raw", {"bottom": "finished", "top": "cast", "left": "cast"}),
        ("hot-rolled, pickled", {"top": "pickled"}),
        ("sawn bar, raw on all sides", {"top": "sawn", "left": "sawn"}),
        ("sheared sheet, sharp edges", {"top": "", "left": "sheared"}),
    ],
)
def test_words_of_an_earlier_file_are_facts(version, words, faces):
    found = stock(f"length: 80; width: 50; height: 12; condition: {words}", version)
    assert {face: found.surface(face) for face in faces} == faces
    assert found.condition == words


def test_an_earlier_file_is_written_as_it_was_until_something_new_is_said():
    text = "length: 80; width: 20; height: 20; condition: bright round bar, ground; as bought: top"
    lines = HEAD.format(2) + "".join(f"  {line}\n" for line in text.split("; "))
    job = job_from_text(lines, "job")
    assert job.stock.shape == "round bar"
    written = write_job(job)
    assert "".join(f"  {line}\n" for line in text.split("; ")) in written
    changed = SetField("job:stock", "surfaces", "bright, ends sawn").apply(job)
    assert "diameter: 20" in write_job(changed)
    assert job_from_text(write_job(changed), "job") == changed


def test_words_that_are_typed_today_are_no_facts_when_the_file_is_read_again():
    job = SetField("job:stock", "condition", "black, from the rack").apply(blank_job("bench-mill-b-1"))
    assert job.stock.surfaces is None
    assert job_from_text(write_job(job), "job") == job


def test_sheared_sheet_has_sheared_edges():
    found = stock("length: 80; width: 50; height: 4; condition: sheared sheet")
    assert [found.surface(face) for face in ("top", "left", "front")] == ["", "sheared", "sheared"]
    assert stock("length: 80; width: 50; height: 4; surfaces: edges sheared").surface("rear") == "sheared"


def test_free_words_of_faces_stay_beside_the_faces():
    found = stock("length: 80; width: 50; height: 12; as bought: top as it is", 2)
    assert found.stays == {"top"}
    assert "top as it is" in found.condition
