"""The reader of cards knows the fields that the editor knows."""

from __future__ import annotations

from jobsheet.paths import resources
from jobsheet.storage import machine_file
from jobsheet.storage.card_layout import LAYOUT
from jobsheet.storage.paper_layout import asks

from .cards_typed import read


def test_layout_and_reader_know_the_same_fields(monkeypatch):
    """What the reader takes is asked of the reader itself, by a card that has everything."""
    taken = {}
    end, travel = machine_file._Card.end, {("travel", axis) for axis in ("x", "y", "head", "knee", "quill")}

    def watching(card, known):
        place = tuple(step.split("[")[0] for step in card.path.split(".") if step)
        taken.setdefault(place, set()).update(known)
        end(card, known)

    monkeypatch.setattr(machine_file._Card, "end", watching)
    read((resources() / "machines" / "bench-mill-b-1.yaml").read_text(encoding="utf-8"))
    fields = {(*place, name) for place, known in taken.items() for name in known} | travel
    groups = {place for place in taken if place} | {("travel",)}
    listed = [path for path, _ in asks(LAYOUT.parts)]
    assert len(listed) == len(set(listed))
    assert set(listed) == {one for one in fields if one not in groups}
