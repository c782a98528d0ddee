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
        return (*self.steps.values(), *self.sizes.values(), *(entry for entry in rest if entry is not None))


def matter(entry: Entry) -> tuple[str, str]:
    """What an entry is about: there is one of each on a day."""
    return entry.about, entry.key if entry.about in ("step", "size") else ""


def standing(asked: RanAsked, entries: Iterable[Entry]) -> dict[tuple[str, str], tuple[Entry, ...]]:
    """The entries of a set-up by what they are about, the newest last; a size that was written
    in the shell is known by its name.
    """
    steps = {step_asked.key for step_asked in asked.steps}
    names = {size_asked.size: size_asked.key for size_asked in reversed(asked.sizes)}
    sizes = {size_asked.key for size_asked in asked.sizes}
    numbers = asked.numbers
    found: dict[tuple[str, str], tuple[Entry, ...]] = {}
    for entry in entries:
        here = (
            (entry.about == "step" and entry.key in steps)
            or (
                entry.about == "size"
                and (
                    entry.key in sizes
                    or (not entry.key and entry.size in names and entry.set_up in (0, *numbers))
                )
            )
            or (entry.about in ("minutes", "change") and entry.set_up in numbers)
        )
        if here:
            of = ("size", entry.key or names[entry.size]) if entry.about == "size" else matter(entry)
            found[of] = (*found.get(of, ()), entry)
    return found


def as_said(kept: Mapping[tuple[str, str], tuple[Entry, ...]]) -> Said:
    """What stands in the record, as it is shown again."""
    last = {of: some[-1] for of, some in kept.items()}
    return Said(
        steps={key: entry for (about, key), entry in last.items() if about == "step"},
        sizes={key: replace(entry, key=key) for (about, key), entry in last.items() if about == "size"},
        minutes=last.get(("minutes", "")),
        change=last.get(("change", "")),
    )


def difference(
    said: Said, kept: Mapping[tuple[str, str], tuple[Entry, ...]]
) -> tuple[tuple[Entry, ...], tuple[Entry, ...]]:
    """What is to be written, and what of the record is to be taken back for it."""
    now = {matter(entry): entry for entry in said.all()}
    fresh = tuple(entry for of, entry in now.items() if not (of in kept and _same(entry, kept[of][-1])))
    changed = {matter(entry) for entry in fresh} | (set(kept) - set(now))
    return fresh, tuple(entry for of in kept for entry in kept[of] if of in changed)


def _same(entry: Entry, other: Entry) -> bool:
    """Whether they say the same, to the digits of the record: not when, by whom and of which plan."""
    return _told(entry) == _told(other)


def _told(entry: Entry) -> tuple[str, ...]:
    said = Entry(
        job="", plan="", revision=0, machine=entry.machine, date=entry.date, about=entry.about, outcome=entry.outcome, layer=entry.layer,
        slipped=entry.slipped, speed=entry.speed, depth=entry.depth, length=entry.length, seconds=entry.seconds, found=entry.found,
        setting_up=entry.setting_up, cutting=entry.cutting, change=entry.change, note=entry.note,
    )  # fmt: skip
    return tuple(lines_of(said))
