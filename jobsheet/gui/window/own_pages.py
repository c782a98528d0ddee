"""Pages of the help that only the window can make: its keys, the places beside
the job, and what the program is.
"""

from __future__ import annotations

from importlib.metadata import PackageNotFoundError, version
from pathlib import Path

from PySide6.QtCore import QCoreApplication

from jobsheet import paths
from jobsheet.gui.window import found_places
from jobsheet.review.pages.one_page import Page

#: So much of the end of the log is shown, in letters: the last one or two problems.
TAIL = 2_000
translate = QCoreApplication.translate


def own_pages(keys: str) -> tuple[Page, ...]:
    """Keys, places, and about."""
    lines = tuple((key, said) for key, _, said in (line.partition(": ") for line in keys.splitlines()))
    told = Page(
        id="keys", sort=translate("Help", "on one page"), title=translate("Help", "Keys"), lines=lines
    )
    return (told, *map(_place, found_places.names()), _about())


def _place(name: str) -> Page:
    """Where a place is found."""
    place = found_places.place(name)
    lines = tuple(
        (
            translate("Actions", way.text).replace("&", "").rstrip("…"),
            f"{', '.join(key.replace('+', ' + ') for key in way.keys)}: {translate('Actions', way.told)}"
            if way.keys
            else translate("Help", "in the menu Machine"),
        )
        for way in place.ways
    )
    lines += tuple((translate("PlaceHelp", key), translate("PlaceHelp", said)) for key, said in place.told)
    return Page(
        id=f"place:{name}", sort=translate("Help", "place beside the job"), title=place.title, lines=lines
    )


def _about() -> Page:
    """What this program is for, which one it is, and what went wrong lately."""
    log = paths.own_folder() / "problems.log"
    return Page(
        id="about",
        sort=translate("Help", "about this program"),
        title=translate("Help", "Job sheets for manual milling machines"),
        lines=(
            ("", translate("Help", "Computed for planning: start lighter; watch, listen and feel.")),
            ("", translate("Help", "The machine’s manual, your workshop’s rules and the law where you work come first.")),
            (translate("Help", "Version"), _version()),
            (translate("Help", "Log of problems"), str(log)),
            (translate("Help", "Its end"), _tail(log)),
        ),
    )  # fmt: skip


def _version() -> str:
    try:
        return version("jobsheet")
    except PackageNotFoundError:
        return translate("Help", "run from a checkout")


def _tail(log: Path) -> str:
    """The end of the log, where there is one."""
    try:
        text = log.read_text(encoding="utf-8", errors="replace")
    except FileNotFoundError:
        return translate("Help", "no problem so far")
    except OSError as error:
        return translate("Help", "cannot be read: {why}").format(why=error.strerror or error)
    return text[-TAIL:].strip() or translate("Help", "no problem so far")
