"""What to try next: never tried before wide still, the widest first, nothing where
test cuts have no say, three at most.
"""

from jobsheet.reckoning.answers.what_next import Answered, Shown, what_next


def row(name, ratio, cuts=0):
    shown = Shown(
        process=name, cutter_kind="end mill", cuts=cuts, newest="2026-11-12" if cuts else "", ratio=ratio
    )
    return Answered(name=name, low="1 mm", high="4 mm", plan="1.2 mm", shown=shown)


def test_what_was_never_tried_goes_before_what_is_wide_still_and_the_widest_first():
    said = what_next([row("side cut", 9.0, 5), row("slot", 3.0), row("facing", 12.0)])
    assert [one.partition(":")[0] for one in said] == ["Facing", "Slot", "Side cut"]
    assert (
        said[0] == "Facing: never tried, nine in ten between 1 mm and 4 mm. A ladder begins at about 1.2 mm."
    )
    assert (
        said[2]
        == "Side cut: 5 cuts, the newest 2026-11-12, and still nine in ten between 1 mm and 4 mm. A finer ladder narrows it."
    )


def test_what_is_narrow_or_not_learned_is_not_proposed():
    assert what_next([row("side cut", 1.9, 5), row("drill from solid", 0.0)]) == ()


def test_an_afternoon_has_room_for_three():
    assert len(what_next([row(f"cut {number}", 4.0) for number in range(7)])) == 3
