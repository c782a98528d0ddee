"""Style sheets for the few parts that the toolkit paints: menus and scroll bars."""

from __future__ import annotations

from jobsheet.gui.ink.look import Look


def menu_style(now: Look) -> str:
    """What a palette cannot say of menus; set on the menu bar alone, because
    every control pays for a rule.
    """
    t, px = now.tokens, now.px
    return f"""
QMenuBar {{ background: {t.bench}; padding: 0 {px(4)}px; }}
QMenuBar::item {{ padding: {px(5)}px {px(8)}px; background: transparent; }}
QMenuBar::item:selected {{ background: {t.chosen}; }}
QMenu {{ background: {t.field}; border: 1px solid {t.edge}; padding: {px(4)}px 0; }}
QMenu::item {{ padding: {px(5)}px {px(28)}px; }}
QMenu::item:selected {{ background: {t.chosen}; }}
QMenu::item:disabled {{ color: {t.pencil}; }}
QMenu::separator {{ height: 1px; background: {t.rule}; margin: {px(4)}px 0; }}
"""


def scroll_style(now: Look) -> str:
    """A scroll bar without buttons."""
    t, px = now.tokens, now.px
    return f"""
QScrollBar:vertical {{ background: {t.paper}; width: {px(10)}px; border: none; }}
QScrollBar::handle:vertical {{ background: {t.edge}; min-height: {px(32)}px; margin: {px(2)}px; }}
QScrollBar::add-line, QScrollBar::sub-line {{ height: 0; }}
QScrollBar::add-page, QScrollBar::sub-page {{ background: none; }}
"""
