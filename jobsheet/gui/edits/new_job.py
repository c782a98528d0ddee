"""A new job from four lines: what was typed, what was understood, and the job that it makes."""

from __future__ import annotations

import re

from msgspec.structs import replace
from PySide6.QtCore import QCoreApplication

from jobsheet.catalog.metals.materials import find
from jobsheet.errors import JobsheetError, QuantityError
from jobsheet.gui.forms.shown import Shown
from jobsheet.model.job import Job, Part
from jobsheet.model.quantity import Quantity
from jobsheet.model.stock import ALONG, BOX, Stock
from jobsheet.operations.entry import Entry
from jobsheet.stock.shape_kind import HEIGHT, LENGTH, WIDTH
from jobsheet.storage.card_files import card_names, find_card
from jobsheet.storage.job_file import blank_job

translate = QCoreApplication.translate
ENTRIES = (
    Entry(
        name="part",
        title="Part",
        asks="text",
        optional=True,
        hint="number and name, such as HM-200 Bearing block",
    ),
    Entry(name="material", title="Metal", asks="material", hint="by any of its names, such as mild steel"),
    Entry(name="stock", title="Stock", asks="text", hint="length × width × height, such as 80 × 50 × 12"),
    Entry(name="machine", title="Machine", asks="machine", hint="from the list"),
)
_TIMES = re.compile(r"\s*[x×*]\s*", re.IGNORECASE)
_UNIT = re.compile(r"[^\d.,/\s\-].*$")


#: What the stock line says where a bar or casting is kept as it is.
AS_IT_IS = "as it is"


class FourLines:
    """What stands in the four lines; the metal and the machine begin as those of the job on the desk.

    Where a new part is made from that job, `copies`, its stock stands there too and its steps come along.
    """

    def __init__(self, like: Job, *, copies: bool = False) -> None:
        self.units = like.units
        self.like = like if copies else None
        self.texts = {"part": "", "material": like.material, "stock": "", "machine": like.machine}
        if copies:
            self.texts["stock"] = _stock_words(like.stock)
        self._left: set[str] = set()

    def type(self, name: str, text: str) -> None:
        """Something was written into a line."""
        self.texts[name] = text

    def shown(self, *, asked: bool = False) -> dict[str, Shown]:
        """Every line with what was understood; an empty one is wrong only once the job is to begin."""
        return {entry.name: self._shown(entry, asked=asked) for entry in ENTRIES}

    def _shown(self, entry: Entry, *, asked: bool) -> Shown:
        text = self.texts[entry.name]
        if not text.strip() and not (asked and not entry.optional):
            return Shown(text, entry.hint)
        try:
            return Shown(text, self._understood(entry, text))
        except QuantityError as problem:
            return Shown(text, "", problem.kept())
        except JobsheetError as error:
            return Shown(text, "", QuantityError(str(error), 0, len(text)))

    def _understood(self, entry: Entry, text: str) -> str:
        """What a text means; raises where it means nothing."""
        if not text.strip() and not entry.optional:
            raise QuantityError(f"{entry.title} is empty; write {entry.hint}.", 0, 0)
        if entry.name == "material":
            material = find(text)
            return " · ".join(part for part in (material.title, material.hardness) if part)
        if entry.name == "machine":
            return find_card(_card(text)).title
        if entry.name == "stock" and self._keeps_stock():
            return translate("NewJob", "the same as that of the other part")
        if entry.name == "stock":
            sizes = _sizes(text, self.units)
            return " × ".join(f"{size.value * 1e3:g}" for size in sizes) + " mm"
        number, name = _part(entry.read(text, self.units))
        return translate("NewJob", "number {number}, name {name}").format(
            number=number or "–", name=name or "–"
        )

    @property
    def problem(self) -> str:
        """The first line that is wrong, or nothing."""
        return next((name for name, shown in self.shown(asked=True).items() if shown.problem), "")

    def job(self) -> Job:
        """The job; raises what is wrong."""
        number, name = _part(self.texts["part"])
        if self.like is not None:
            return self._copy(self.like, number, name)
        length, width, height = _sizes(self.texts["stock"], self.units)
        made = blank_job(_card(self.texts["machine"]), find(self.texts["material"]).name)
        return replace(
            made,
            units=self.units,
            part=Part(number=number, name=name),
            stock=Stock(length=length, width=width, height=height),
        )

    def _keeps_stock(self) -> bool:
        return (
            self.like is not None
            and self.texts["stock"].strip().casefold() == _stock_words(self.like.stock).casefold()
        )

    def _copy(self, like: Job, number: str, name: str) -> Job:
        """The plan of the new part: on another machine with the nearest speeds that it has."""
        from jobsheet.edit.made_from import made_from
        from jobsheet.reckoning.answers.fits_answer import for_card
        from jobsheet.reckoning.runs_kept import this_moment

        stock = None
        if not self._keeps_stock():
            length, width, height = _sizes(self.texts["stock"], self.units)
            stock = replace(like.stock, length=length, width=width, height=height)
            if like.stock.shape != BOX:
                stock = Stock(length=length, width=width, height=height)
        made = made_from(
            like, number=number, name=name, material=find(self.texts["material"]).name, stock=stock, day=this_moment()[0]
        )  # fmt: skip
        machine = _card(self.texts["machine"])
        return made if machine == like.machine else for_card(made, find_card(machine))[0]


def _stock_words(stock: Stock) -> str:
    """The three sizes of a block as they were typed; of anything else only that it stays."""
    return " × ".join(getattr(stock, name).text for name in ALONG) if stock.shape == BOX else AS_IT_IS


def _part(text: str) -> tuple[str, str]:
    """Number and name: a first word with a digit is the number."""
    words = text.split()
    if words and any(sign.isdigit() for sign in words[0]):
        return words[0], " ".join(words[1:])
    return "", " ".join(words)


def _card(text: str) -> str:
    """The name of a card by its name or its title."""
    wanted = text.strip().casefold()
    for name in card_names():
        try:
            if wanted in (name, find_card(name).title.casefold()):
                return name
        except JobsheetError:
            continue
    return text.strip()


def _sizes(text: str, units: str) -> tuple[Quantity, Quantity, Quantity]:
    """Three sizes; a unit behind the last one alone holds for all."""
    parts = [part.strip() for part in _TIMES.split(text.strip()) if part.strip()]
    if len(parts) != 3:
        raise QuantityError(
            f"Stock has three sizes; “{text.strip()}” has {len(parts)}. Write length × width × height, such as 80 × 50 × 12.",
            0,
            len(text),
        )
    unit = _UNIT.search(parts[2])
    if unit and not any(_UNIT.search(part) for part in parts[:2]):
        parts = [f"{parts[0]} {unit[0]}", f"{parts[1]} {unit[0]}", parts[2]]
    found = [entry.read(part, units) for entry, part in zip((LENGTH, WIDTH, HEIGHT), parts, strict=True)]
    return found[0], found[1], found[2]
