"""Photographs on paper: none changes nothing, and what is too much together is said."""

from __future__ import annotations

from types import SimpleNamespace

from jobsheet.report.blocks import Words
from jobsheet.report.photograph_pages import attached, photograph_pages, with_photograph
from jobsheet.storage.photos.kept_photographs import TOGETHER

from .plans import plate
from .seen_from_above import plan_of


def shot(name, raw=b"x", problem=""):
    return SimpleNamespace(name=name, raw=raw, problem=problem)


def test_a_plan_without_photographs_is_as_it_was():
    plan = plan_of(plate())
    blocks = (Words("a", "body"),)
    assert with_photograph(plan, plan.job.set_ups[0], blocks) is blocks
    assert photograph_pages(plan) == []


def test_each_is_carried_once_and_what_is_gone_is_not():
    carried, said = attached(
        (shot("a.jpg", b"1"), shot("a.jpg", b"1"), shot("b.jpg", b"2"), shot("c.jpg", problem="gone"))
    )
    assert carried == (("a.jpg", b"1"), ("b.jpg", b"2"))
    assert said == ()


def test_what_is_too_much_to_be_read_back_is_printed_and_not_carried():
    half = bytes(TOGETHER // 2 + 1)
    carried, (sentence,) = attached((shot("a.jpg", half), shot("b.jpg", half)))
    assert [name for name, _ in carried] == ["a.jpg"]
    assert sentence.startswith("1 photographs are printed and not carried inside")
