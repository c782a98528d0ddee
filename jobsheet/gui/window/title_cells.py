"""What the cells of the title block say about the job on the desk."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication

from jobsheet import paths
from jobsheet.errors import JobsheetError
from jobsheet.gui.desk.desk import Desk
from jobsheet.gui.forms.title_cell import CellText
from jobsheet.model.job import Job
from jobsheet.model.remark import SEVERITIES
from jobsheet.reckoning.minutes import minutes_of_job
from jobsheet.reckoning.reckoner import Reckoned
from jobsheet.stock.all_shapes import words_of
from jobsheet.storage.kept.own_pace import own_pace

translate = QCoreApplication.translate
#: The time of a job waits until the hand rests where more steps than this are not reckoned yet:
#: each takes a third of a millisecond.
AT_ONCE = 40


def cells(desk: Desk) -> dict[str, CellText]:
    """All cells by name."""
    return {
        "part": _part(desk),
        "machine": CellText(translate("TitleBlock", "Machine"), _machine(desk)),
        "material": CellText(translate("TitleBlock", "Material and stock"), _material(desk)),
        "time": CellText(translate("TitleBlock", "Time"), _time(desk), more=_paces(desk)),
        "review": _review(desk),
        "file": CellText(translate("TitleBlock", "File"), file_words(desk)),
    }


def _part(desk: Desk) -> CellText:
    part = desk.job.part
    caption = (
        translate("TitleBlock", "Part, revision {revision}").format(revision=part.revision)
        if part.revision
        else translate("TitleBlock", "Part")
    )
    name = " ".join(text for text in (part.number, part.name) if text)
    return CellText(caption, name or translate("TitleBlock", "not named yet"))


def _machine(desk: Desk) -> str:
    from jobsheet.storage.card_files import find_card

    try:
        return find_card(desk.job.machine).title
    except JobsheetError:
        return desk.job.machine or translate("TitleBlock", "none chosen")


def _material(desk: Desk) -> str:
    from jobsheet.catalog.metals.materials import find

    stock = desk.job.stock
    try:
        material = find(desk.job.material).title
    except JobsheetError:
        material = desk.job.material
    material = material.split(" (")[0]
    size = words_of(stock)
    return translate("TitleBlock", "{material}, {size}").format(material=material, size=size)


def _hours(seconds: float) -> str:
    """A time as it is said at the bench."""
    minutes = max(1, round(seconds / 60))
    if minutes < 60:
        return translate("TitleBlock", "{minutes} min").format(minutes=minutes)
    return translate("TitleBlock", "{hours} h {minutes} min").format(
        hours=minutes // 60, minutes=minutes % 60
    )


def _time(desk: Desk) -> str:
    """The time of all steps; as it was said last, until the hand rests, where too
    many of them are not reckoned yet.
    """
    if desk.reckoned is None:
        return ""
    desk.time_is_old = desk.reckoned.operations.open > AT_ONCE
    if desk.time_is_old:
        return desk.time_said or translate("TitleBlock", "not added up yet")
    desk.time_said = _time_of(desk.reckoned, desk.job)
    return desk.time_said


def _time_of(reckoned: Reckoned, job: Job) -> str:
    minutes = minutes_of_job(reckoned)
    cutting, total = minutes.cut, minutes.whole
    if (own := own_pace()) is not None and total >= 1:
        ran = minutes.set_up * own.set_up + (total - minutes.set_up) * own.work
        return translate("TitleBlock", "{total} by your own times").format(total=_hours(ran))
    if total < 1:
        return translate("TitleBlock", "no steps yet") if not any(job.operations()) else ""
    if not cutting:
        return translate("TitleBlock", "{total}, none of it cutting").format(total=_hours(total))
    return translate("TitleBlock", "{total}, {cutting} cutting").format(
        total=_hours(total), cutting=max(1, round(cutting / 60))
    )


def _paces(desk: Desk) -> str:
    """By what real times differ here, and by which factors the time is shown; nothing
    where too few runs are written down.
    """
    lines = [pace.words() for pace in desk.paces]
    if lines:
        lines.insert(0, translate("TitleBlock", "As it went here, against what was planned:"))
    if desk.reckoned is not None and (own := own_pace()) is not None:
        planned = minutes_of_job(desk.reckoned)
        words = translate(
            "TitleBlock",
            "planned {total}, {cutting} min of it cutting; shown with × {set_up} for setting up and × {work} for the rest, from {runs} runs",
        )
        lines.append(
            words.format(
                total=_hours(planned.whole), cutting=max(1, round(planned.cut / 60)), set_up=f"{own.set_up:.2g}",
                work=f"{own.work:.2g}", runs=own.runs,
            )
        )  # fmt: skip
    return "\n".join(lines)


def _review(desk: Desk) -> CellText:
    drafts = len(desk.history.state.drafts)
    if drafts:
        words = (
            translate("TitleBlock", "1 field cannot be read")
            if drafts == 1
            else translate("TitleBlock", "{count} fields cannot be read").format(count=drafts)
        )
        return CellText(translate("TitleBlock", "Review, to mend first"), words, tone="verm")
    if desk.not_checked and not desk.remarks:
        numbers = {operation.key: operation.number for _, operation in desk.job.operations()}
        words = "; ".join(
            not_checked.words(numbers.get(not_checked.operation)) for not_checked in desk.not_checked
        )
        caption = translate("TitleBlock", "Review, not whole: {count} not checked").format(
            count=len(desk.not_checked)
        )
        return CellText(caption, words, tone="verm")
    if not desk.is_read:
        return CellText(translate("TitleBlock", "Review"), translate("TitleBlock", "not read yet"))
    if not desk.remarks:
        return CellText(translate("TitleBlock", "Review"), translate("TitleBlock", "no remarks"))
    caption = translate("TitleBlock", "Review, {count} open").format(count=len(desk.remarks))
    if desk.not_checked:
        caption = translate("TitleBlock", "Review, {count} open, {more} not checked").format(
            count=len(desk.remarks), more=len(desk.not_checked)
        )
    counts = []
    for severity in SEVERITIES:
        count = sum(remark.severity == severity for remark in desk.remarks)
        if count:
            counts.append((severity, _counted(severity, count)))
    return CellText(caption, "", tuple(counts))


def _counted(severity: str, count: int) -> str:
    words = {
        "hazard": translate("TitleBlock", "{count} hazard"),
        "scrap": translate("TitleBlock", "{count} scrap"),
        "rework": translate("TitleBlock", "{count} rework"),
        "habit": translate("TitleBlock", "{count} habit"),
    }
    return words[severity].format(count=count)


def file_words(desk: Desk) -> str:
    """How the job stands to its file."""
    if desk.recovered:
        return translate("TitleBlock", "recovered, not saved")
    if desk.path is None:
        if desk.named and not (paths.sample_jobs() / desk.named).is_file():
            return translate("TitleBlock", "from printed sheets, not saved")
        if desk.named:
            return translate("TitleBlock", "sample, not saved")
        return translate("TitleBlock", "not saved yet")
    if desk.history.changed:
        return translate("TitleBlock", "changed, not saved")
    if desk.saved_at:
        return translate("TitleBlock", "saved {time}").format(time=desk.saved_at)
    return translate("TitleBlock", "as saved")
