"""One cut of a ladder, reckoned: from its fields as typed to what it asks, and the
fields that a ladder's cuts share.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

from msgspec import Struct

from jobsheet.errors import CalcError, CommandError
from jobsheet.model.job import Operation
from jobsheet.model.quantity import Cutter
from jobsheet.model.trials import Asked
from jobsheet.operations.kind import fields_from
from jobsheet.operations.registry import kind as kind_of
from jobsheet.reckoning.adviser.best_cut import best_cut
from jobsheet.reckoning.asked import asked_of
from jobsheet.reckoning.ladder import ladder_cuts as cuts
from jobsheet.reckoning.ladder.rung import Ladder
from jobsheet.reckoning.what_if import Tried, tried
from jobsheet.units.grammar import nearest


class Made(Struct, frozen=True, kw_only=True):
    """A cut that was chosen, before it is worded."""

    name: str
    cutter: Cutter
    texts: dict[str, str]
    found: Tried
    asked: tuple[Asked, ...]


def attempt(ladder: Ladder, texts: Mapping[str, str], name: str = "") -> Made:
    """The cut of these texts, reckoned. Raises QuantityError where one cannot be read."""
    kind = kind_of(ladder.kind)
    unknown = [text for text in texts if kind.entry(text) is None]
    if unknown:
        names = ", ".join(entry.name for entry in kind.entries)
        raise CalcError("field", f"“{unknown[0]}”", f"one of {names}")
    fields = fields_from(kind.fields, kind.entries, dict(texts), ladder.units)
    found = tried(ladder.kind, fields, ladder.setting)
    asked = asked_of(found.figures, ladder.setting) if found.figures is not None else ()
    return Made(name=name, cutter=fields.cutter, texts=dict(texts), found=found, asked=asked)


def _by_hand(ladder: Ladder, first: Made) -> dict[str, str]:
    """No faster than a hand winds evenly, where the feed was not typed."""
    typed = dict(ladder.texts)
    if first.found.figures is None or "feed" in typed or "feed_per_tooth" in typed:
        return {}
    step = Operation(key=ladder.kind, number=0, kind=ladder.kind, fields=first.found.fields)
    advised = best_cut(step, ladder.setting)
    values = {advice.name: advice.text for advice in advised.values} if advised is not None else {}
    return {name: text for name, text in values.items() if name == "feed_per_tooth"}


def base_texts(ladder: Ladder) -> dict[str, str]:
    """The fields of a milling ladder without what grows: at one speed and one
    feed, those of its lightest cut.
    """
    units, grows = ladder.units, ladder.grows
    texts = cuts.milling_texts(ladder.process, grows, ladder.cutter, ladder.setting, dict(ladder.texts))
    texts.pop(grows, None)
    first = attempt(ladder, {**texts, grows: cuts.size_text(cuts.LEAST[units][grows], units)})
    speed = first.found.value("spindle_speed")
    if speed is not None and "spindle" not in texts:
        texts["spindle"] = f"{speed * 60:.6g} rpm"
    return texts | _by_hand(ladder, first)


def listed_texts(ladder: Ladder, size: str = "") -> dict[str, str]:
    """The fields of the drill or thread of that name, or of the smallest; at
    speed and feed of the ladder's own.
    """
    choices = cuts.drills if ladder.process == "drill" else cuts.taps
    typed = dict(ladder.texts)
    if ladder.rungs:
        first = dict(ladder.rungs[0].texts)
        typed |= {name: first[name] for name in ("spindle", "feed") if name in first}
    rows = choices(ladder.cutter, ladder.setting, typed)
    row = next((choice for choice in rows if not size or choice.name == size.strip()), None)
    if row is None:
        near = nearest(size, tuple(choice.name for choice in rows))
        raise CommandError(f"There is no “{size}” on this ladder{f'; did you mean {near}?' if near else '.'}")
    return dict(row.texts)


def listed(ladder: Ladder, spindle: str = "", feed: str = "") -> list[Made]:
    """All drills or threads there are, reckoned, from the one that asks least."""
    choices = cuts.drills if ladder.process == "drill" else cuts.taps
    typed = dict(ladder.texts)
    for name, text in (("spindle", spindle), ("feed", feed)):
        if text:
            typed.setdefault(name, text)
    made = [
        attempt(ladder, dict(choice.texts), choice.name)
        for choice in choices(ladder.cutter, ladder.setting, typed)
    ]
    return sorted(made, key=lambda made: made.asked[0].share if made.asked else math.inf)
