"""The longest words that fit."""

from jobsheet.gui.column.shorter_words import beginnings, remark_forms
from jobsheet.gui.column.views import RowView


def test_less_room_takes_the_beginning():
    assert beginnings("1.3 s a turn, x", ", ", " a turn") == ("1.3 s a turn, x", "1.3 s a turn", "1.3 s")
    assert beginnings("15 s to depth", ", ", " a turn") == ("15 s to depth",)
    view = RowView(
        key="x", number=1, icon="", titles=("Do",), severity="scrap", remark="Drill first: it wanders; 8 mm"
    )
    assert remark_forms(view) == (
        "scrap: Drill first: it wanders; 8 mm", "scrap: Drill first: it wanders", "scrap: Drill first", "scrap",
    )  # fmt: skip
