"""What the words of an old step say of its cut, and those of an old header."""

from __future__ import annotations

from jobsheet.storage.words.cut_words import allowance, general_limits, how, stands_on


def test_a_bench_step_has_no_manner_and_nobody_knows_a_strange_kind():
    assert how("bench-step", "measure with the micrometer") == ()
    assert how("no-such-kind", "measure with the micrometer") == ()


def test_what_is_left_on_for_later_work():
    assert allowance("hardened and ground, 0.3 mm left on") == "0.3 mm"
    assert allowance("hardened and ground") == ""
    assert allowance("plated, nothing left on for it") == "0"
    assert allowance("painted") == "0"


def test_a_hardness_is_no_allowance():
    assert allowance("case harden to 58 HRC, ground") == ""
    assert allowance("harden, 58-60 HRC, leave 0.2 mm") == "0.2 mm"
    assert allowance("HRC 58 ±2, 0.3 left on") == "0.3"
    assert allowance("marked HB") == "0"


def test_general_limits_and_the_place_of_a_zero():
    assert general_limits("Dry. General limits ±0.1; deburr all", "") == "General limits ±0.1"
    assert general_limits("Dry.", "HM-9, ISO 2768-m") == "HM-9, ISO 2768-m"
    assert (stands_on("the bore, by indicator"), stands_on("hole 1"), stands_on("A and B")) == (
        "a bore",
        "another hole",
        "",
    )
