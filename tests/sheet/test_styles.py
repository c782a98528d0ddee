"""Type and tones of the sheet: large enough to be read at arm's length, dark enough to be copied."""

from __future__ import annotations

from jobsheet.sheet.styles import INKS, MM, STYLES, Style


def test_no_type_is_smaller_than_seven_points_and_what_is_read_from_afar_is_largest():
    """ISO 3098: 2.5 mm lettering is 7 points."""
    assert min(style.size for style in STYLES.values()) * 25.4 / 72 >= 2.5
    assert STYLES["dial"].size > STYLES["step"].size > STYLES["note"].size


def test_lines_have_room_between_them():
    assert Style(10).leading == 12.2
    assert MM * 25.4 == 72


def test_every_style_has_a_tone_that_is_there():
    assert {style.ink for style in STYLES.values()} <= set(INKS)
    assert all(0 <= tone <= 0.6 for name, tone in INKS.items() if name in ("ink", "pencil"))
