"""What a place is: a window beside the job, the ways of the menu that lead to it,
and what it is given when it opens.

A place is a module or a folder of `gui/places` with a `PLACE`; it is read when the menus are made, so it
imports what it shows only when somebody goes there.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Literal

from msgspec import Struct
from PySide6.QtWidgets import QWidget

from jobsheet.gui.desk.desk import Desk

if TYPE_CHECKING:
    from jobsheet.model.job import Job
    from jobsheet.review.pages.one_page import Page

#: What a place shows when it opens: the job, its machine, something new, or what belongs to the person.
OpensOn = Literal["job", "machine", "new", "own"]


class Visit(Struct, frozen=True, kw_only=True):
    """What a place gets: what lies on the desk, the widget it belongs to, and whom to tell of what."""

    desk: Desk
    parent: QWidget
    say: Callable[[str], None]
    #: A trial was recorded or struck out.
    proof_changed: Callable[[], None]
    #: A machine card was saved.
    machines_changed: Callable[[], None]
    #: The cabinet was saved.
    tools_changed: Callable[[], None]
    #: Save the job as the menu does; whether it was saved.
    save: Callable[[], bool] = bool
    #: The key of the set-up that one is on.
    on: Callable[[], str] = str
    #: The key of the step that is chosen in the column; nothing on a heading.
    at: Callable[[], str] = str
    #: Gives the keyboard to a line of the column, by its key.
    show: Callable[[str], None] = lambda _key: None
    #: Begins an exercise: a job without steps, and the one that it is marked by; whether it lies on the desk.
    begin_exercise: Callable[[Job, Job], bool] = lambda _job, _asked: False
    #: Opens a job's file on the desk, once what lies there may go; whether it does.
    open_job: Callable[[str], bool] = lambda _path: False
    #: The page that the help is asked for; empty for that of what has the focus.
    about: str = ""
    #: Pages that only the window can make: its keys, its places, what it is.
    pages: Callable[[], tuple[Page, ...]] = tuple


class Way(Struct, frozen=True, kw_only=True):
    """One entry of the menu that leads to a place."""

    id: str
    #: The words of the menu, marked for translation in the context `Actions`.
    text: str
    keys: tuple[str, ...] = ()
    #: Its words in the list of keys, marked in the same context.
    told: str = ""
    opens_on: OpensOn
    #: The menu that it stands in.
    menu: Literal["machine", "file", "help"] = "machine"
    #: Where it stands in the menu, from the top.
    order: int
    open: Callable[[Visit], object]


class Place(Struct, frozen=True, kw_only=True):
    """A place: its title, and the ways to it."""

    title: str
    ways: tuple[Way, ...]
    #: What its page of the help says beside the ways to it: a key or a word, and what it does;
    #: marked in the context `PlaceHelp`.
    told: tuple[tuple[str, str], ...] = ()
