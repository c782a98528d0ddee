"""Facts of one thing: said line by line, and painted from the top."""

from __future__ import annotations

from jobsheet.gui.forms.facts_shown import Facts, FactsShown
from jobsheet.gui.ink import look


def test_a_screen_reader_has_every_line(qtbot):
    shown = FactsShown(None)
    qtbot.addWidget(shown)
    shown.put(
        Facts(
            title="HM-104 Cover plate",
            facts=(("Material", "S235"),),
            blocks=(("Revisions", (("1", "begun"),)),),
            problem="torn",
        )
    )
    assert shown.accessibleName().split("\n") == [
        "HM-104 Cover plate",
        "Material S235",
        "torn",
        "Revisions: 1 begun",
    ]
    shown.put(Facts())
    assert shown.accessibleName() == ""


def test_what_went_wrong_is_painted_in_its_own_ink(qtbot):
    look.apply("light")
    shown = FactsShown(None)
    qtbot.addWidget(shown)
    shown.resize(300, 200)
    verm = look.look().colour("verm").name()

    def inks():
        image = shown.grab().toImage()
        return {image.pixelColor(x, y).name() for x in range(300) for y in range(200)}

    shown.put(Facts(title="HM-104", facts=(("Material", "S235"),)))
    assert verm not in inks()
    shown.put(Facts(title="HM-104", problem="The file cannot be read."))
    assert verm in inks()
