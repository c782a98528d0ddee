"""What an arm gives at the lever, and for how long (holding-and-more-kinds C1)."""

from __future__ import annotations

import pytest

from jobsheet.limits.each import quill_push

from .hands_by_chance import chance, with_own
from .one_cut import around, figures


class TestLever:
    """200 N for seconds, spread 0.30; share(t) = 0.5 (t / 63.3 s)^−0.433, at most 1."""

    @pytest.mark.parametrize(
        ("push", "verdict", "sentence", "odds"),
        [
            (100.0, "expected", "", "1 in 96 tires"),
            (178.0, "tight", "only for seconds: pecks rest the arm, and a pilot hole makes it easy", "1 in 3 tires"),
            (217.0, "beyond", "more than an arm gives: drill a pilot hole first, or feed less a turn", "6 in 10 tire"),
        ],
    )  # fmt: skip
    def test_what_is_said_of_seconds(self, push, verdict, sentence, odds):
        found = quill_push.limit(figures(lever_push=push), with_own())
        assert (found.verdict, found.sentence, found.odds) == (verdict, sentence, odds)
        assert (found.name, found.title, found.unit, found.shown) == ("quill-push", "Quill push", "N", f"{push:.0f} of 200 N")  # fmt: skip
        assert (found.demand, found.capacity, found.chance) == (push, 200.0, chance(push / 200, 0.3))
        assert found.working == "one stroke lasts 0 s"

    @pytest.mark.parametrize(
        ("seconds", "strokes", "lasts"),
        [
            (10.0, None, 10.0), (10.0, 1.0, 10.0), (10.0, 0.0, 10.0), (60.0, None, 60.0),
            # Between two strokes it clears the chips: 3 s each, which rest the arm.
            (63.0, 2.0, 30.0), (66.0, 3.0, 20.0),
            (3.0, 2.0, 0.0), (2.0, 2.0, 0.0),  # all of it clearing
            (None, None, 0.0), (None, 3.0, 0.0),
        ],
    )  # fmt: skip
    def test_how_long_one_stroke_lasts(self, seconds, strokes, lasts):
        made = figures(lever_push=50.0, time_each=seconds, strokes=strokes)
        assert quill_push.longest_peck(made) == pytest.approx(lasts)
        part = min(1.0, 0.5 * (lasts / 63.3) ** -0.433) if lasts else 1.0
        found = quill_push.limit(made, with_own())
        assert found.capacity == pytest.approx(200 * part)
        assert found.shown == f"50 of {200 * part:.0f} N"
        assert found.working.startswith(f"one stroke lasts {lasts:.0f} s")
        assert (
            f": {part * 100:.0f} % of a strong push is what an arm keeps up so long" in found.working
        ) is (part < 1)

    @pytest.mark.parametrize("seconds", [0.0, 0.01, 0.5, 5.0, 12.7])
    def test_a_strong_push_counts_whole_to_13_seconds(self, seconds):
        assert quill_push.share_of_strength(seconds) == 1.0
        assert quill_push.limit(figures(lever_push=10.0, time_each=seconds), with_own()).capacity == 200.0

    @pytest.mark.parametrize(("seconds", "part"), [(21.0, 0.8), (63.3, 0.5), (3600.0, 0.087)])
    def test_the_part_that_is_kept_up(self, seconds, part):
        """Half for 63 s, eight tenths for 21, 8.7 % for an hour (holding-and-more-kinds C1)."""
        assert quill_push.share_of_strength(seconds) == pytest.approx(part, rel=0.01)

    def test_the_workshop_s_own_push(self):
        assert quill_push.limit(figures(lever_push=50.0), with_own(strong_push=160.0)).capacity == 160.0

    def test_none_where_nothing_is_fed_by_the_lever(self):
        assert quill_push.limit(figures(time_each=5.0), with_own()) is None


@pytest.mark.parametrize(
    ("seconds", "median"), [(5, 200), (20, 165), (40, 122), (63.3, 100), (120, 76), (240, 56), (600, 38)]
)
def test_an_arm_keeps_up_less_the_longer_it_pushes(seconds, median):
    """The table of holding-and-more-kinds C1; pecks rest the arm, and their own seconds do not count."""
    one = quill_push.limit(figures(lever_push=10.0, time_each=seconds), around())
    assert one.capacity == pytest.approx(median, abs=0.6)
    pecked = figures(lever_push=10.0, time_each=3 * seconds + 2 * 3.0, strokes=3.0)
    assert quill_push.limit(pecked, around()).capacity == pytest.approx(one.capacity)


@pytest.mark.parametrize(("push", "chance"), [(217, 0.61), (178, 0.35), (100, 0.01)])
def test_pushes_of_the_demonstration(push, chance):
    """The same place: 217 N `beyond` 61 %, 178 `tight` 35 %, 100 `expected` 1 %."""
    assert quill_push.limit(figures(lever_push=push), around()).chance == pytest.approx(chance, abs=0.006)


@pytest.mark.parametrize(
    ("push", "verdict"), [(136.0, "expected"), (136.5, "tight"), (200.0, "tight"), (200.1, "beyond")]
)
def test_quill_push_goes_by_its_band(push, verdict):
    """Median 200 N for seconds, spread 0.30: tight from 136 N (the same place)."""
    assert quill_push.limit(figures(lever_push=push), around()).verdict == verdict
