"""What a step leaves empty of feed, speed, layers, width and pecks is the adviser's: the step
is filled in where it is reckoned.

A step that states its feed means what it always meant, unless it says that what is empty is as recommended.
"""

from __future__ import annotations

from collections import OrderedDict
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.model.identity import while_it_lives
from jobsheet.model.job import AS_RECOMMENDED, Operation
from jobsheet.model.setting import Setting
from jobsheet.operations.registry import roles
from jobsheet.operations.roles import Roles
from jobsheet.remembered import forgotten_with_the_plan

#: So many recommendations are kept: those of a long plan with what is undone in it.
_ROOM = 256


class Left(Struct, frozen=True, kw_only=True):
    """The fields that are the adviser's, and those that are typed among what it may choose."""

    names: tuple[str, ...] = ()
    pinned: frozenset[str] = frozenset()


NOTHING = Left()
#: What it means where the best is that nothing stands there.
IN_WORDS = {"layer": "all at once", "cut": "all at once", "peck": "in one go", "spindle": "the slowest"}


@while_it_lives
def left_of(operation: Operation) -> Left:
    """What of a step is the adviser's; nothing where the step states its feed and does not say so."""
    fields = operation.fields
    cutter = getattr(fields, "cutter", None)
    if cutter is None or not cutter.diameter:
        return NOTHING
    plays = roles(operation)
    chosen = chosen_of(plays, fields)
    if not chosen or getattr(fields, "feed_per_edge", None) is not None:
        return NOTHING
    feeds = [name for name in ("feed_per_tooth", "feed") if getattr(fields, name, None) is not None]
    if not operation.empty and (feeds or plays.hole == "ream"):  # a reamer without a feed starts by its edges
        return NOTHING
    typed = frozenset(name for name in chosen if getattr(fields, name) is not None) | frozenset(feeds)
    gone = {"feed_per_tooth"} if feeds else set()
    if fields.cutting_speed is not None:
        typed |= {"cutting_speed"}
        gone.add("spindle")
    return Left(names=tuple(name for name in chosen if name not in typed | gone), pinned=typed)


def chosen_of(plays: Roles, fields: object) -> tuple[str, ...]:
    """What the adviser may choose of such a step, by the names of its fields."""
    if plays.mills:
        width = {"wall": "cut", "flat": "width"}.get(plays.mills)
        names = ("spindle", "feed_per_tooth", "layer", *((width,) if width else ()))
    elif plays.feed:
        names = ("spindle", "feed", *(("peck",) if plays.hole in ("drill", "plunge") else ()))
    else:
        return ()
    return tuple(name for name in names if hasattr(fields, name))


# --- what is recommended for them ---

_KNOWN: OrderedDict[Any, Any] = OrderedDict()
forgotten_with_the_plan(_KNOWN.clear)


def filled(operation: Operation, setting: Setting, *, at_once: bool = True) -> Operation | None:
    """The step with what it leaves empty as recommended here, the very same where nothing
    is; None where that is not known yet.

    Parameters
    ----------
    at_once : bool
        Whether to ask the adviser where the same was not asked before: it takes 10 to 100 ms
    """
    left = left_of(operation)
    if not left.names:
        return operation
    from jobsheet.reckoning.adviser import best_cut

    key = (*best_cut.question(operation, setting, left.pinned), setting.skin)
    if key not in _KNOWN:
        if not at_once:
            return None
        advised = best_cut.best_cut(operation, setting, pinned=left.pinned)
        _KNOWN[key] = advised.fields if advised is not None else None
        while len(_KNOWN) > _ROOM:
            _KNOWN.popitem(last=False)
    fields = _KNOWN[key]
    return operation if fields is None else with_values(operation, fields)


def with_values(operation: Operation, fields: object) -> Operation:
    """The step with what it leaves empty as it stands in these fields of the same kind."""
    values = {name: getattr(fields, name) for name in left_of(operation).names}
    return replace(operation, fields=replace(operation.fields, **values))


#: Two fields that say the same are given back together.
_TOGETHER = {
    "feed_per_tooth": "feed",
    "feed": "feed_per_tooth",
    "spindle": "cutting_speed",
    "cutting_speed": "spindle",
}


def given_back(operation: Operation, *names: str) -> Operation | None:
    """The step with these fields left to the adviser, without a name all that it may choose;
    None where it chooses none of them.
    """
    chosen = chosen_of(roles(operation), operation.fields)
    asked = names or chosen
    both = {*asked, *(_TOGETHER[name] for name in asked if name in _TOGETHER)}
    if both.isdisjoint(chosen):
        return None
    empty = {name: None for name in both if hasattr(operation.fields, name)}
    return replace(operation, fields=replace(operation.fields, **empty), empty=AS_RECOMMENDED)


def filled_texts(operation: Operation, done: Operation) -> dict[str, str]:
    """What was filled in, by the names of its fields, as it would be typed;
    in words where nothing would be.
    """
    values = {name: getattr(done.fields, name) for name in left_of(operation).names}
    if all(value is None for value in values.values()):
        return {}
    return {
        name: value.text if value is not None else IN_WORDS.get(name, "") for name, value in values.items()
    }


class Filler:
    """Fills steps in, one after the other; asks the adviser no more often than there is patience for."""

    def __init__(self, patience: int | None) -> None:
        self._patience = patience
        self._waiting: list[Operation] = []

    def fill(self, operation: Operation, setting: Setting, before: Operation | None) -> Operation:
        """The step filled in; as it was before, where there is no patience
        left and it was reckoned before.
        """
        at_once = self._patience is None or self._patience > 0
        done = filled(operation, setting, at_once=False)
        if done is not None:
            return done
        if not at_once and before is not None and before.kind == operation.kind:
            done = with_values(operation, before.fields)
            self._waiting.append(done)
            return done
        if self._patience:
            self._patience -= 1
        done = filled(operation, setting)
        assert done is not None
        return done

    def waits(self, operation: Operation) -> bool:
        """Whether it stands as it was recommended before."""
        return any(other is operation for other in self._waiting)
