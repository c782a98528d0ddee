"""All kinds of step in the order of work, grouped by what they are to others: the
list from which a new step is taken.
"""

from __future__ import annotations

from functools import cache
from typing import Any

from jobsheet.operations import registry
from jobsheet.operations.kind import Kind
from jobsheet.operations.roles import Roles

#: Title of a group, and the roles that stand in it, in the order in which a part is usually
#: made (common practice, no source).
GROUPS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("hold and find", ("find", "tram", "saw")),
    ("faces, sides", ("flat", "wall")),
    ("slots, pockets", ("groove", "recess", "plunge")),
    ("holes", ("spot", "drill")),
    ("holes to size", ("bore", "ream")),
    ("ends, threads", ("counterbore", "countersink", "tap")),
    ("edges, bench", ("edge", "bench")),
)


@cache
def roles_of(name: str) -> Roles:
    """What a new step of that kind is to others."""
    kind = registry.kind(name)
    return kind.plays(kind.blank("mm"))


def role_of(name: str) -> str:
    """The one of them by which it is called."""
    return roles_of(name).name


@cache
def all_groups() -> tuple[tuple[str, tuple[Kind[Any], ...]], ...]:
    """Every group with its kinds: by role, then by title."""
    by_role: dict[str, list[Kind[Any]]] = {}
    for name in registry.kinds():
        by_role.setdefault(role_of(name), []).append(registry.kind(name))
    return tuple(
        (
            title,
            tuple(
                kind for role in roles for kind in sorted(by_role.get(role, ()), key=lambda kind: kind.title)
            ),
        )
        for title, roles in GROUPS
    )


@cache
def in_order() -> tuple[Kind[Any], ...]:
    """Every kind, group by group."""
    return tuple(kind for _, kinds in all_groups() for kind in kinds)


def group_of(name: str) -> str:
    """The title of its group."""
    return next(title for title, roles in GROUPS if role_of(name) in roles)
