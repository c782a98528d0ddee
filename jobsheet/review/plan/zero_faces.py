"""Which faces of the stock a set-up's zero stands on, and what the drawing calls them."""

from __future__ import annotations

from jobsheet.model.job import SetUp
from jobsheet.model.lying import lying, stock_box
from jobsheet.review.rule import View


def zero_faces(view: View, set_up: SetUp) -> tuple[str, str]:
    """The faces of the stock that x and y count from."""
    lie = lying(set_up, stock_box(view.job))
    x = lie.left if set_up.zero.x_from == "left" else lie.right
    return x, lie.near if set_up.zero.y_from == "front" else lie.far


def letters_at_zero(view: View, set_up: SetUp) -> str:
    """The datums at a set-up's zero, as `A and B`; nothing where one of the two faces is no datum."""
    letters = {face: letter for letter, face in view.job.datums}
    x, y = zero_faces(view, set_up)
    if x not in letters or y not in letters:
        return ""
    return " and ".join(sorted((letters[x], letters[y])))
