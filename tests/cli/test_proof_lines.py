"""What a proof log holds, in lines of a terminal."""

from __future__ import annotations

from jobsheet.cli.proof_lines import asked_words, percent, show_needs, show_odd
from tests.proving.trials import trial


def test_shares_are_hundredths():
    assert percent(0.284) == "28 %"
    assert percent(1.0) == "100 %"


def test_what_was_asked_of_each_limit():
    said = asked_words(trial("clean", torque=0.5, chatter=0.8))
    assert "80 % of what its class carries" in said
    assert "(50 % of the peak)" in said
    assert asked_words(trial("clean")) == ""


def test_nothing_to_prove_and_nothing_odd(capsys):
    show_odd("b-1", ())
    assert capsys.readouterr().out == ""
    show_needs(())
    assert "Nothing of this job needs proving" in capsys.readouterr().out
