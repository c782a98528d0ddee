"""A scan of an old sheet is put on the shelf in the real window, found by a word typed beside it, and opened."""

import pytest
from reportlab.pdfgen.canvas import Canvas

from jobsheet.storage.photos.old_sheets import ENDING, read_old_sheets
from tests.e2e.counted_hand import CountedHand

pytestmark = pytest.mark.e2e


def test_an_old_sheet_from_the_scanner_to_the_screen(program, tmp_path):
    hand = CountedHand(program())
    shelf, scan = tmp_path / "shelf", tmp_path / "front.pdf"
    shelf.mkdir()
    (hand.running.home / "shelf.json").write_text(f'{{"folder": "{shelf}"}}\n', encoding="utf-8")
    canvas = Canvas(str(scan))
    canvas.drawString(72, 700, "Lever, milled from bar 30 x 12")
    canvas.save()
    hand.keys("ctrl+shift+o")
    hand.asked("The shelf")
    hand.click("Put old sheets on it...")
    hand.asked("Old sheets of one part")
    hand.type(str(scan))
    hand.keys("Return")
    hand.asked("Old sheets")
    hand.fill("HM-77", "Lever", "gudgeon 16 H7", "drawer 4")
    hand.type("RK")
    hand.keys("Return")
    record = shelf / f"HM-77{ENDING}"
    hand.running.until(record.exists)
    said = read_old_sheets(record)
    assert (said.number, said.name, said.words, said.drawer, said.who) == (
        "HM-77",
        "Lever",
        "gudgeon 16 H7",
        "drawer 4",
        "RK",
    )
    hand.running.take_keys("The shelf")
    hand.write_in("Find", "gudgeon")
    hand.keys("Return")
    hand.asked("HM-77 Lever")
    hand.keys("Escape")
    hand.running.take_keys("The shelf")
