"""The same words in less room: a sentence by its beginning, a figure without
what the head of its column says.
"""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication

from jobsheet.gui.column.views import HeadingView, RowView
from jobsheet.gui.ink.spoken import severity_word

translate = QCoreApplication.translate


def beginnings(text: str, *marks: str) -> tuple[str, ...]:
    """A text, then what stands before each of these marks in turn; a mark
    that is not there is passed over.
    """
    found = [text]
    for mark in marks:
        head, there, _ = found[-1].partition(mark)
        if there and head:
            found.append(head)
    return tuple(found)


def remark_forms(view: RowView) -> tuple[str, ...]:
    """The worst remark with its weight, then its first clause, then the weight
    alone; nothing where there is none.
    """
    if not view.remark:
        return ()
    weight = severity_word(view.severity)
    words = translate("Rows", "{severity}: {remark}")
    said = beginnings(view.remark, "; ", ": ", " (")
    return (*(words.format(severity=weight, remark=one) for one in said), weight)


def figures_line(view: RowView) -> str:
    """What the machine is asked for in one line: `500 rpm · 1.3 s a turn, x · 1.5 mm`."""
    spindle = view.spindle
    if spindle.isdigit():
        spindle = translate("Rows", "{speed} rpm").format(speed=spindle)
    return " · ".join(part for part in (spindle, view.pace, view.depth) if part)


def holding_forms(view: HeadingView) -> tuple[str, ...]:
    """Device and packing, then the packing that must be at hand, then the device."""
    return (view.holding, *(part for part in (view.packing, view.device) if part and part != view.holding))
