"""Places from above: in their proportions, away is up, and one beside the work is shown too."""

from __future__ import annotations

import pytest
from PySide6.QtGui import QColor

from jobsheet.gui.ink import look
from jobsheet.gui.margin.plan_view import HIGH, Plan, PlanView

PLAN = Plan(0.08, 0.05, (0.0, 0.0), ((0.01, 0.01), (0.07, 0.01), (0.07, 0.04)))


@pytest.fixture
def view(qtbot):
    look.apply("light")
    made = PlanView(None)
    qtbot.addWidget(made)
    made.resize(300, 128)
    return made


def test_without_places_there_is_no_picture(view):
    assert view.arrange(300) == 0
    assert view.spots() == []


def test_it_says_whether_the_picture_came_or_went(view):
    assert view.put(PLAN) is True
    assert view.put(PLAN) is False
    assert view.put(Plan(0.08, 0.05, (0, 0), ())) is False
    assert view.put(None) is True
    view.put(PLAN)
    assert view.arrange(300) == look.look().px(HIGH)
    assert view.arrange(0) == 0


def test_right_is_right_away_is_up_and_the_proportions_are_kept(view):
    view.put(PLAN)
    one, two, three = view.spots()
    assert two.y() == pytest.approx(one.y())
    assert three.x() == pytest.approx(two.x())
    assert three.y() < two.y()
    assert (two.x() - one.x()) / (two.y() - three.y()) == pytest.approx(0.06 / 0.03)


@pytest.mark.parametrize("place", [(-0.02, 0.01), (0.3, 0.01), (0.01, -0.2), (0.01, 0.2)])
def test_a_place_beside_the_work_is_shown_too(view, place):
    view.put(Plan(0.08, 0.05, (0, 0), (place,)))
    (spot,) = view.spots()
    assert 0 <= spot.x() <= 300
    assert 0 <= spot.y() <= 128


def test_the_one_in_hand_is_blue(view):
    view.put(PLAN)
    blue = look.look().colour("bluemark").name()

    def blues():
        image = view.grab().toImage()
        return sum(QColor(image.pixel(x, y)).name() == blue for x in range(300) for y in range(128))

    assert blues() == 0
    view.choose(1)
    assert blues() > 0
