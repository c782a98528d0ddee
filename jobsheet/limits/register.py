"""All limits of an operation, the nearest to giving out first."""

from __future__ import annotations

import importlib
from pathlib import Path
from types import ModuleType
from typing import Any

from jobsheet.limits.verdict import nearness
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.setting import Setting

#: One limit a file; a name that begins with an underscore is none.
_EACH = Path(__file__).parent / "each"


def _found() -> tuple[ModuleType, ...]:
    """Every limit of the folder, by its `ORDER`: adding the file is the registration."""
    names = sorted(path.stem for path in _EACH.glob("[!_]*.py"))
    modules = [importlib.import_module(f"jobsheet.limits.each.{name}") for name in names]
    return tuple(sorted(modules, key=lambda module: module.ORDER))


LIMITS = _found()
#: Limits that trials teach: they are told which process it is.
LEARNING = tuple(module for module in LIMITS if getattr(module, "LEARNS", False))
#: All that any limit reads of a setting; each says its own.
READS: frozenset[str] = frozenset().union(*(module.READS for module in LIMITS))
#: What every limit says of one operation, in the order above; None where it does not apply.
Asked = tuple[Limit | None, ...]
#: Limits that ask whether something fits, not how hard it is loaded.
FITS = frozenset(
    module.__name__.rpartition(".")[2].replace("_", "-")
    for module in LIMITS
    if getattr(module, "FITS", False)
)


def limits_of(
    figures: Figures, setting: Setting, fields: object = None, process: str = ""
) -> tuple[Limit, ...]:
    """Every limit that applies, sorted by nearness; limits of one share stand in the order above.

    `process` is the kind of cut that is proved (`side`, `drill` …), or empty where it is none of them.
    """
    return in_order(asked(figures, setting, fields, process))


def asked(figures: Figures, setting: Setting, fields: object = None, process: str = "") -> Asked:
    """What every limit says."""
    return tuple(_ask(module, figures, setting, fields, process) for module in LIMITS)


def asked_again(
    before: Asked, changed: frozenset[str], figures: Figures, setting: Setting, fields: object, process: str
) -> Asked:
    """The same where only this of the setting has changed: no limit is asked that does not read it."""
    return tuple(
        was if module.READS.isdisjoint(changed) else _ask(module, figures, setting, fields, process)
        for module, was in zip(LIMITS, before, strict=True)
    )


def _ask(module: Any, figures: Figures, setting: Setting, fields: Any, process: str) -> Limit | None:
    limit: Limit | None = (
        module.limit(figures, setting, fields, process)
        if module in LEARNING
        else module.limit(figures, setting, fields)
    )
    return limit


def in_order(said: Asked) -> tuple[Limit, ...]:
    """Those that apply, the nearest to giving out first."""
    limits = [limit for limit in said if limit is not None]
    return tuple(sorted(limits, key=lambda limit: (_behind(limit), *nearness(limit))))


def _behind(limit: Limit) -> int:
    """What is expected from the class alone stands behind what is known of the
    machine, what only has to fit last.
    """
    return 2 if _no_load(limit) else int(_by_class_alone(limit))


def _by_class_alone(limit: Limit) -> bool:
    """What machines of the class carry says nothing of this one: where it is expected it never governs."""
    return limit.from_class and limit.verdict == "expected"


def _no_load(limit: Limit) -> bool:
    """What only has to fit is no load: where it does, it stands behind and never governs."""
    return limit.name in FITS and limit.verdict == "expected"


def governing(limits: tuple[Limit, ...]) -> Limit | None:
    """The one nearest to giving out; None where nothing is loaded."""
    for limit in limits:
        if not _behind(limit):
            return limit
    return None
