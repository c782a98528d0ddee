"""What was said so far of a run, before it is kept; and what of it is new, other, or
gone beside what stands in the record.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.gui.places.ran.ran_asked import RanAsked
from jobsheet.model.what_ran import Entry
from jobsheet.storage.records.run_record import lines_of


class Said(Struct, frozen=True, kw_only=True):
    """Everything on the screen as entries without a day: by step, by size, the
    minutes, what would be changed.
    """

    steps: Mapping[str, Entry] = {}
    sizes: Mapping[str, Entry] = {}
    minutes: Entry | None = None
    change: Entry | None = None

    def all(self) -> tuple[Entry, ...]:
        """In the order in which they are written down."""
        rest = (self.minutes, self.change)
        return (*self.steps.values(), *self.sizes.values(), *(one for one in rest if one is not None))


def matter(entry: Entry) -> tuple[str, str]:
    """What an entry is about: there is one of each on a day."""
    return entry.about, entry.key if entry.about in ("step", "size") else ""


def standing(asked: RanAsked, entries: Iterable[Entry]) -> dict[tuple[str, str], tuple[Entry, ...]]:
    """The entries of a set-up by what they are about, the newest last; a size that was written
    in the shell is known by its name.
    """
    steps = {one.key for one in asked.steps}
    names = {one.size: one.key for one in reversed(asked.sizes)}
    sizes = {one.key for one in asked.sizes}
    numbers = asked.numbers
    found: dict[tuple[str, str], tuple[Entry, ...]] = {}
    for one in entries:
        here = (
            (one.about == "step" and one.key in steps)
            or (
                one.about == "size"
                and (one.key in sizes or (not one.key and one.size in names and one.set_up in (0, *numbers)))
            )
            or (one.about in ("minutes", "change") and one.set_up in numbers)
        )
        if here:
            of = ("size", one.key or names[one.size]) if one.about == "size" else matter(one)
            found[of] = (*found.get(of, ()), one)
    return found


def as_said(kept: Mapping[tuple[str, str], tuple[Entry, ...]]) -> Said:
    """What stands in the record, as it is shown again."""
    last = {of: some[-1] for of, some in kept.items()}
    return Said(
        steps={key: one for (about, key), one in last.items() if about == "step"},
        sizes={key: replace(one, key=key) for (about, key), one in last.items() if about == "size"},
        minutes=last.get(("minutes", "")),
        change=last.get(("change", "")),
    )


def difference(
    said: Said, kept: Mapping[tuple[str, str], tuple[Entry, ...]]
) -> tuple[tuple[Entry, ...], tuple[Entry, ...]]:
    """What is to be written, and what of the record is to be taken back for it."""
    now = {matter(one): one for one in said.all()}
    fresh = tuple(one for of, one in now.items() if not (of in kept and _same(one, kept[of][-1])))
    changed = {matter(one) for one in fresh} | (set(kept) - set(now))
    return fresh, tuple(one for of in kept for one in kept[of] if of in changed)


def _same(one: Entry, other: Entry) -> bool:
    """Whether they say the same, to the digits of the record: not when, by whom and of which plan."""
    return _told(one) == _told(other)


def _told(one: Entry) -> tuple[str, ...]:
    said = Entry(
        job="", plan="", revision=0, machine=one.machine, date=one.date, about=one.about, outcome=one.outcome, layer=one.layer,
        slipped=one.slipped, speed=one.speed, depth=one.depth, length=one.length, seconds=one.seconds, found=one.found,
        setting_up=one.setting_up, cutting=one.cutting, change=one.change, note=one.note,
    )  # fmt: skip
    return tuple(lines_of(said))
