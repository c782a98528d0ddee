"""Words of a person as they stand: never read as markup, never a key, and no width comes from them.

The toolkit guesses in tooltips, labels and boxes whether a text is rich; a text of a job file that looks so
could then open files. Every tooltip, and every title and menu entry with more than the program's own words,
goes through here; every label, box and list of choices is one of `plain_widgets.py`.
`tests/gui/test_plain_words.py` holds that.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from jobsheet.units.lazily import pattern

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

#: A line of a tooltip and an entry of a menu, in letters; common practice for
#: lines that are read at a glance.
LINE = 75
ENTRY = 70
#: More than this is read nowhere in passing.
WHOLE = 6_000
#: What turns the words behind it round, or is no letter at all.
_TURNING = pattern(
    "[\\x00-\\x08\\x0b-\\x1f\\x7f-\\x9f\\u061c\\u200e\\u200f\\u2028-\\u202e\\u2066-\\u2069\\ud800-\\udfff\\ufeff\\ufffe\\uffff]"
)


def literal(words: str) -> str:
    """Signs that would turn the rest of a sentence round show as one that does nothing."""
    return words if words.isprintable() else _TURNING.sub("\ufffd", words)


def shortened(words: str, longest: int) -> str:
    """At most so many letters, an ellipsis where there were more."""
    return words if len(words) <= longest else f"{words[: longest - 1]}…"


def folded(words: str, line: int = LINE) -> str:
    """Lines that are no longer than a tooltip is wide, even where a word is."""
    if len(words) <= line and words.isprintable():
        return words
    from textwrap import wrap

    return "\n".join(
        part
        for one in shortened(literal(words), WHOLE).split("\n")
        for part in ([one] if len(one) <= line else wrap(one, line) or [""])
    )


def tip(words: str) -> str:
    """The words as a tooltip takes them: escaped where the toolkit would read them as markup."""
    text = folded(words)
    if "<" not in text and "&" not in text:
        return text
    from html import escape

    from PySide6.QtGui import Qt

    if not Qt.mightBeRichText(text):
        return text
    return f"<p style='white-space:pre'>{escape(text, quote=False)}</p>"


def hover(widget: QWidget, words: str) -> None:
    """Show words when the mouse rests on a widget."""
    widget.setToolTip(tip(words))


def entry(words: str) -> str:
    """The words as an entry of a menu takes them: one line, no sign a key."""
    line = " ".join(literal(words).split())
    return shortened(line, ENTRY).replace("&", "&&")


def window_title(words: str) -> str:
    """A title whose words do not stand for the mark of changes."""
    return shortened(literal(words), ENTRY).replace("[*]", "[*][*]")
