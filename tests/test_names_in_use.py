"""A name that only tests call, or nobody, goes: what stays stands here with its reason."""

from __future__ import annotations

import ast
import re
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

import jobsheet

HERE = Path(jobsheet.__file__).parent
SOURCE = {path: path.read_text(encoding="utf-8") for path in sorted(HERE.rglob("*.py"))}
WORDS = Counter(word for text in SOURCE.values() for word in re.findall(r"[A-Za-z_]\w*", text))

#: A name -> why it stays though nothing in the program says it.
STAYS = {
    "ALUMINIUM_EXPANSION": "figure of a published table, for worked examples",
    "STEEL_EXPANSION": "figure of a published table, for worked examples",
    "WEAR_FACTORS": "published table beside its formula",
    "EFFICIENCIES": "published table beside its formula",
    "zeroth_order": "the theory from which the shorter formula of chatter is checked",
    "side_arc": "where a cut begins and ends, for published forces",
    "face_arc": "where a cut begins and ends, for published forces",
    "MILLS": "words that a role may say: tests hold the kinds to them",
    "SPEEDS": "words that a role may say: tests hold the kinds to them",
    "FEEDS": "words that a role may say: tests hold the kinds to them",
    "NEEDS": "fields that a role is read by: tests hold the kinds to them",
    "power_feed": "a field of the card, written and read by its name",
    "_BLOCKS": "modules that register how their block is laid when they are read",
}
#: Begun, and not yet asked by anything.
BEGUN = {"times_on"}
#: Called by the toolkit or the command line, under the name that these want.
BY_OTHERS = {"get_command", "hitButton", "scrollContentsBy"}


def defined(tree: ast.Module) -> Iterator[tuple[int, str]]:
    """Functions, classes and constants of a module, methods and fields of its classes; a
    decorator binds what it stands over.
    """
    for node in tree.body:
        if isinstance(node, ast.FunctionDef | ast.ClassDef) and not node.decorator_list:
            yield node.lineno, node.name
        if isinstance(node, ast.Assign):
            yield from ((node.lineno, one.id) for one in node.targets if isinstance(one, ast.Name))
        if isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name):
            yield node.lineno, node.target.id
        for part in node.body if isinstance(node, ast.ClassDef) else ():
            if isinstance(part, ast.FunctionDef) and not part.name.startswith("__"):
                yield part.lineno, part.name
            if isinstance(part, ast.AnnAssign) and isinstance(part.target, ast.Name):
                yield part.lineno, part.target.id


def unsaid() -> list[tuple[str, str]]:
    """Names that stand once in the whole program: where they are defined."""
    return [
        (path.relative_to(HERE).as_posix(), name)
        for path, text in SOURCE.items()
        for _, name in defined(ast.parse(text))
        if WORDS[name] == 1
    ]


def test_every_name_is_said_somewhere_else():
    found = [one for one in unsaid() if one[1] not in {*STAYS, *BY_OTHERS, *BEGUN}]
    assert not [one for one in found if not one[1].endswith("Event")]


def test_what_stays_is_there_and_says_why():
    names = {name for _, name in unsaid()}
    assert all(STAYS.values())
    assert set(STAYS) - names == set()
