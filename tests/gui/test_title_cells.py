"""What the review could not ask is said where its answer would have stood; no
window says "no remarks" of it.
"""

from __future__ import annotations

from jobsheet.review import engine
from jobsheet.review.rule import RULES


def broken(monkeypatch, rule):
    """The rule of that id fails whenever it is asked."""
    engine.rules()

    def fails(_view):
        raise RuntimeError("torn")
        yield

    one = RULES[rule]
    changed = tuple(
        type(one)(id=r.id, title=r.title, severity=r.severity, needs=r.needs, check=fails)
        if r.id == rule
        else r
        for r in engine.rules()
    )
    monkeypatch.setattr(engine, "rules", lambda: changed)


def test_a_rule_that_fails_is_named_in_the_title_block(window, monkeypatch):
    broken(monkeypatch, "spot-before-drilling")
    window.parts.reading.forget()
    window.parts.review()
    window.show_job()
    shown = window.bench.title.cells["review"].shown
    assert "no remarks" not in shown.value
    assert "not checked" in shown.caption
    assert "“Spot before drilling” not checked" in shown.value
    assert "torn" in shown.value


def test_it_stands_beside_open_remarks_too(window, monkeypatch):
    window.open_key("spot")
    window.parts.edits.steps.delete()
    broken(monkeypatch, "dial-line-within-tolerance")
    window.parts.reading.forget()
    window.parts.review()
    window.show_job()
    assert window.bench.title.cells["review"].shown.caption.endswith("1 not checked")
