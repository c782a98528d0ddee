"""Pieces that are left in or cut away: how large they are, and when nobody can say whose they are."""

from __future__ import annotations

from types import SimpleNamespace

from msgspec.structs import replace

from jobsheet.model.finished import Finished
from jobsheet.review.plan.as_asked import as_asked
from jobsheet.review.plan.part_pieces import cut_away, large, left_in, lists_all, size_is_out

from .views_read import sample, view_of


def test_how_large_a_piece_is_over_all():
    piece = SimpleNamespace(size=(0.06, 0.01, 0.001))
    assert large(piece, "mm") == "60 × 10 × 1 mm"
    assert large(SimpleNamespace(size=(0.0254, 0.0127, 0.00254)), "in") == "1 × 0.5 × 0.1 in"


def test_while_a_size_is_out_any_piece_may_come_from_that():
    job = sample(100)
    assert size_is_out(as_asked(view_of(replace(job, finished=Finished(sizes="80 x 50 x 11 ±0.1")))))
    assert size_is_out(
        as_asked(view_of(replace(job, finished=Finished(sizes="80 x 50", features=("M6 through",)))))
    )


def test_a_drawing_that_lists_nothing_tells_nothing_of_what_is_cut():
    view = view_of(replace(sample(100), finished=Finished(sizes="80 x 50 x 11.5")))
    asked = as_asked(view)
    assert not lists_all(asked)
    assert list(cut_away(view, asked)) == []
    assert left_in(view, asked) == {}
