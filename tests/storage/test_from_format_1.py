"""A file of format 1 as a whole: what its words say twice is kept once."""

from __future__ import annotations

from pathlib import Path

import pytest

from jobsheet.catalog.reading.strict_yaml import parse
from jobsheet.errors import DocumentError
from jobsheet.storage.job_file import job_from_text
from jobsheet.storage.words.from_format_1 import brought_up

OLD = """
format: 1
units: mm
part: {number: X-1, later: hardened}
material: S235
machine: bench-mill-b-1
note: General limits ±0.1. Mineral oil only.
stock: {length: 80, width: 50, height: 12}
set-ups:
  - key: one
    number: 1
    title: in the drill jig
    holding: {device: 80 mm vice, packing: "two 6 mm parallels, at the left end of the jaws", note: against an angle plate}
    zero: {named: centre of the bore}
    operations:
      - {key: d, number: 10, kind: drill, cutter: drill 5, at: [[10, 10]], depth: through, feed: "0.1", note: plugged}
      - {key: b, number: 20, kind: bench-step, what: "Measure the hole, plug gauge"}
"""


def test_words_that_are_repeated_are_kept_once():
    """Device and packing alike: the note has the words once, and its own behind them."""
    plate = OLD.replace("device: 80 mm vice", "device: angle plate").replace(
        '"two 6 mm parallels, at the left end of the jaws"', "angle plate"
    )
    assert job_from_text(plate, "old").set_ups[0].holding.note == "angle plate; against an angle plate"


def held(**words):
    """The facts that come of the words of a holding, by name."""
    lines = "".join(f"      {name.replace('_', ' ')}: {text}\n" for name, text in words.items())
    text = f"format: 1\ndatums: {{A: left, B: front}}\nset-ups:\n  - key: one\n    number: 1\n    holding:\n{lines}"
    (set_up,) = brought_up(parse(text, "old")).fields["set-ups"].items
    return {name: node.text for name, node in set_up.fields["holding"].fields.items()}


@pytest.mark.parametrize(
    ("words", "facts"),
    [
        ({"device": "magnet"}, {"kind": "other words", "device": "magnet"}),
        ({"packing": "held with tape"}, {"kind": "other words", "device": "held with tape"}),
        ({"device": "magnet", "packing": "thin card"}, {"kind": "other words", "device": "magnet", "packing": "thin card"}),
        ({"device": "magnet", "clamps": "two"}, {"kind": "other words", "device": "magnet", "note": "clamps two"}),
        ({"device": "Strap clamps"}, {"kind": "straps"}),
        ({"device": "toe clamps"}, {"kind": "straps", "press on": "sides", "note": "toe clamps"}),
        ({"device": "low clamps"}, {"kind": "straps", "press on": "a step", "note": "low clamps"}),
        ({"clamps": "two"}, {"kind": "straps", "clamps": "two"}),
        ({"above_jaws": "4 mm"}, {"kind": "vice", "above jaws": "4 mm"}),
        ({"packing": "wood"}, {"packing": "wood"}),  # nothing says how it is held: it stays as it was
        ({"note": "with care"}, {"note": "with care"}),
    ],
)  # fmt: skip
def test_the_kind_of_a_holding_and_what_stays_in_words(words, facts):
    """Nothing is lost: what is more than the facts made of it stays in the note, as the head of the module says."""
    assert held(**words) == facts


@pytest.mark.parametrize(
    ("kind", "stop", "side", "note"),
    [
        ("80 mm vice", "left", "left", None), ("80 mm vice", "Left end to the stop", "left", None),
        ("80 mm vice", "right, a pin", "right", "stop: right, a pin"), ("80 mm vice", "A to the stop", "left", "A to the stop"),
        ("80 mm vice", "pin", None, "stop: pin"), ("80 mm vice", "B to the pin", None, "stop: B to the pin"),
        ("magnet", "left", None, "stop: left"), ("magnet", "a stop at the left", None, "a stop at the left"),
    ],
)  # fmt: skip
def test_a_stop_is_a_fact_of_a_vice_and_words_anywhere_else(kind, stop, side, note):
    """Datum A lies at the left and B at the front, where no stop of a vice stands; the operator is at the front."""
    facts = held(device=kind, stop=stop)
    assert (facts.get("stop"), facts.get("note")) == (side, note)


def test_each_kind_takes_its_own_fields_and_the_others_go_into_the_note():
    every = {"above_jaws": "6 mm", "tighten": "firmly", "clamps": "two", "bolt": "M8"}
    vice = held(device="80 mm vice", **every)
    assert (vice["above jaws"], vice["tighten"], vice["note"]) == ("6 mm", "firmly", "clamps two; bolt M8")
    straps = held(device="straps", **every)
    assert (straps["tighten"], straps["clamps"], straps["bolt"], straps["note"]) == (
        "firmly",
        "two",
        "M8",
        "above jaws 6 mm",
    )
    plate = held(device="angle plate", **every)
    assert (plate["clamps"], plate["note"]) == ("two", "angle plate; above jaws 6 mm")
    chuck = held(device="chuck", **every, note="gently")
    assert chuck == {
        "kind": "chuck",
        "note": "chuck; above jaws 6 mm; tighten firmly; clamps two; bolt M8; gently",
    }


def test_which_kind_where_two_would_fit():
    """`vice, straps over it` is a vice, a hand vice none; a vee block in a vice is a vee block."""
    for device, kind in (
        ("vice, straps over it", "vice"), ("hand vice", "hand vice"), ("vee block in the vice", "vee block"),
        ("dividing head, angle plate", "chuck"), ("fixture plate, clamps", "fixture plate"),
    ):  # fmt: skip
        assert held(device=device)["kind"] == kind, device


def test_of_a_vice_each_part_becomes_a_fact_or_stays_in_the_note():
    """What is no jaw and no base is kept in words; the old spelling of the vice is brought up."""
    assert held(device="80 mm vise, soft jaws, on loan") == {
        "kind": "vice",
        "vice": "80 mm vice",
        "jaws": "soft",
        "reckon as": "plain jaws",
        "note": "on loan",
    }
    assert held(device="vice; vee jaws, swivel base")["jaws"] == "vee"
    assert held(device="vice; vee jaws, swivel base")["base"] == "swivel"


def test_a_datum_on_no_face_is_told_with_its_line_also_where_a_stop_names_it():
    text = (Path(__file__).parent / "files" / "job-format-1.yaml").read_text("utf-8")
    line = next(at for at, one in enumerate(text.split("\n"), 1) if one.startswith("  B: "))
    lines = text.split("\n")
    lines[line - 1] = "  B: beside it"
    with pytest.raises(DocumentError) as refused:
        job_from_text("\n".join(lines), "old.yaml")
    (problem,) = refused.value.problems
    assert (problem.line, problem.path) == (line, "datums.B")
