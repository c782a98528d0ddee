"""The card of what a machine can, from its window."""

from jobsheet.gui.forms import ask


def test_the_capability_card_of_two_machines(window, qtbot, tmp_path, monkeypatch):
    from jobsheet.gui.places.capability.capability_window import CapabilityWindow

    card = CapabilityWindow(window.desk, window)
    qtbot.addWidget(card)
    assert card.pdf.startswith(b"%PDF")
    card.second.setCurrentIndex(card.second.findData("bench-mill-b-2"))
    assert card.view.count == 1
    card.second.setCurrentIndex(card.second.findData("bench-mill-b-1"))
    assert "another" in card.said.text()
    card.second.setCurrentIndex(0)
    card.metals.setText("unobtainium")
    card.make()
    assert "unobtainium" in card.said.text()
    target = tmp_path / "card.pdf"
    monkeypatch.setattr(ask, "export_path", lambda *_: target)
    card.export()
    assert target.read_bytes() == card.pdf
