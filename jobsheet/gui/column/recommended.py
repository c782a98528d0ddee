"""The adviser's answer in the words of the open row."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication

from jobsheet.catalog.reading.sources import words
from jobsheet.gui.column.suggested import NOTHING, Reason, Recommended
from jobsheet.model.job import Operation
from jobsheet.operations import registry
from jobsheet.reckoning.adviser.advised import Changed
from jobsheet.reckoning.adviser.left_empty import left_of
from jobsheet.reckoning.answers.all_answers import Answers

translate = QCoreApplication.translate


def recommended(operation: Operation, answers: Answers) -> Recommended:
    """What is recommended; nothing where the step is as good as the best, and the best clears every limit."""
    changed = answers.changed
    if changed is None or (not changed.values and changed.advised.clears):
        return NOTHING
    if type(changed.fields) is not type(operation.fields):  # what was answered last is not about this step
        return NOTHING
    titles = {entry.name: entry.title for entry in registry.kind(operation.kind).entries}
    reasons = [
        Reason(titles[advice.name], _text(advice.name, advice.text), f"{advice.why}; {words(advice.source)}")
        for advice in changed.values
    ]
    reasons += [
        Reason("", "", translate("Suggestions", "or {way}").format(way=rival)) for rival in answers.rivals
    ]
    return Recommended(words=_line(changed, titles), edits=_edits(operation, changed), reasons=tuple(reasons))


def _edits(operation: Operation, changed: Changed) -> tuple[tuple[str, str], ...]:
    """What to type; in a step that leaves something to the adviser what is typed otherwise is given back to it."""
    left = left_of(operation)
    if not left.names:
        return changed.edits
    back = tuple((name, "") for name, _ in changed.edits if name not in left.names)
    return back or changed.edits


def _text(name: str, text: str) -> str:
    """What stands in the field then; an empty one in words."""
    if text:
        return text
    return (
        translate("Suggestions", "all at once")
        if name in ("layer", "cut")
        else translate("Suggestions", "empty")
    )


def _line(changed: Changed, titles: dict[str, str]) -> str:
    """All that would be written, what comes of it, and what stays wrong."""
    parts = [
        f"{titles[advice.name].lower()} {_text(advice.name, advice.text)}"
        for advice in changed.values
        if advice.text or advice.name in ("layer", "cut")
    ]
    tried, count = changed.found, round(changed.found.value("passes") or 0)
    time = tried.shown("cutting_time")
    ends = (
        translate("Suggestions", "{count} passes, {time}").format(count=count, time=time)
        if count > 1
        else time
    )
    said = f"{', '.join(parts)}: {ends}." if parts else ""
    stays = ", ".join(limit.title.lower() for limit in changed.advised.stays)
    if not changed.advised.clears:
        best = translate(
            "Suggestions", "No cut of this kind clears every limit here; beyond stays: {limits}."
        ).format(limits=stays)
        return " ".join(
            part
            for part in (said, best, f"{changed.advised.other_way}." if changed.advised.other_way else "")
            if part
        )
    if stays:
        return f"{said} " + translate("Suggestions", "At its edge or not tried yet: {limits}.").format(
            limits=stays
        )
    return said
