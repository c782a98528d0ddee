"""Rows have all of their words: the longest that fit, at every width that is
drawn for, and nothing ends in dots.
"""

import pytest
from PySide6.QtGui import QPixmap

from jobsheet.gui.ink import ink
from jobsheet.paths import sample_jobs

SAMPLES = sorted(sample_jobs().glob("*.yaml"))


def made_rows(window):
    return [window.desk.view(operation.key) for _, operation in window.desk.job.operations()]


@pytest.fixture
def cut_short(monkeypatch):
    """What was written with dots at its end."""
    found = []
    write = ink.write

    def watching(painter, look, rect, text, font, *rest):
        if look.width(text, font) > rect.width():
            found.append(text)
        return write(painter, look, rect, text, font, *rest)

    monkeypatch.setattr(ink, "write", watching)
    return found


@pytest.mark.parametrize("size", [(1440, 900), (1024, 700)])
@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_nothing_in_the_rows_of_the_samples_is_cut_short(show, cut_short, path, size):
    window = show(str(path), size=size)
    ruled = window.bench.column.ruled
    ruled.choose(ruled.lines[-1].key)
    cut_short.clear()
    ruled.render(QPixmap(ruled.size()))
    assert cut_short == []


def test_the_row_says_face_size_and_the_cutter_by_name_and_place(show):
    window = show(str(sample_jobs() / "hm-103-pivot-block.yaml"))
    views = {one.number: one for one in made_rows(window)}
    assert views[52].titles == ("Top to 40.0, 0.4 off", "Top to 40.0")
    assert views[52].cutters == ("face mill 50 · drawer 2 no. 7", "drawer 2 no. 7")
    assert views[60].titles == ("Mill the right end to 80.0",)
    assert "Top to 40.0, 0.4 off; face mill 50 · drawer 2 no. 7" in views[52].spoken()


def test_the_words_follow_when_the_work_lies_otherwise_or_is_higher(window):
    from jobsheet.edit.commands import SetField

    def title():
        return next(one.title for one in made_rows(window) if one.key == "face-rough")

    assert title() == "Top to 11.6, 0.4 off"
    window.desk.do(SetField("job:stock", "height", "20"))
    assert title() == "Top to 19.6, 0.4 off"
    window.desk.do(SetField("setup:set-up-1", "up", "bottom"))
    assert title() == "Bottom to 19.6, 0.4 off"
