"""Results remembered by value, in a room that follows the plan."""

from __future__ import annotations

from jobsheet.reckoning.roomy import FOR_EACH, LEAST, Roomy


def counted():
    made = []

    def double(number):
        made.append(number)
        return 2 * number

    return Roomy(double), made


def test_what_was_asked_before_is_not_made_again_until_it_is_forgotten():
    roomy, made = counted()
    assert (roomy(3), roomy(3), roomy.misses) == (6, 6, 1)
    roomy.forget()
    assert roomy(3) == 6
    assert made == [3, 3]


def test_a_short_plan_has_room_for_undo():
    roomy, made = counted()
    for _ in range(2):
        for number in range(LEAST):
            roomy(number)
    assert len(made) == LEAST


def test_a_long_plan_has_room_for_each_of_its_steps():
    roomy, made = counted()
    roomy.make_room(500)
    for _ in range(2):
        for number in range(FOR_EACH * 500):
            roomy(number)
    assert len(made) == FOR_EACH * 500


def test_room_that_still_fits_keeps_what_is_remembered():
    roomy, made = counted()
    roomy.make_room(200)
    roomy(1)
    roomy.make_room(190)
    roomy(1)
    assert made == [1]
    roomy.make_room(5000)
    roomy(1)
    assert made == [1, 1]
