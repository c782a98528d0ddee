"""Nothing outside `operations/kinds/` asks a step for the name of its kind: it asks for roles, and what
is written anew stands in one file.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

import jobsheet
from jobsheet.model.trials import WORKED
from jobsheet.operations import written
from jobsheet.operations.registry import kind, kinds
from jobsheet.operations.roles import BESIDE, FEEDS, HOLES, MILLS, NEEDS, SPEEDS, Roles
from jobsheet.review.notes import notes, reminders
from jobsheet.review.notes.trigger_text import parsed

HERE = Path(jobsheet.__file__).parent
#: In `catalog/` a kind is one of cutters.
SOURCE = [
    path
    for path in sorted(HERE.rglob("*.py"))
    if not {"kinds", "catalog"} & set(path.relative_to(HERE).parts)
]
#: The one file that may name kinds. A rule about one kind by its nature says so in a
#: constant `ABOUT_KIND` and is counted here.
NAMING, ABOUT = ("operations/written.py",), 0
#: These are names of nothing else; the others are words too: of tools, of
#: processes, of what is done to a hole.
ONLY_KINDS = {name for name in kinds() if "-" in name}
#: What has a kind of its own: a cutter, a thing of the cabinet, a fact, a topic of the help.
OTHERS = (
    "cutter",
    "asked",
    "has",
    "need",
    "thing",
    "fact",
    "topic",
    "holding",
    "grip",
    "known",
    "first",
    "self",
)
#: Functions that make or reckon a kind by its name.
BY_NAME = (
    "kind_of",
    "kind",
    "tried",
    "best",
    "reckon_operation",
    "added_before",
    "added_after",
    "AddOperation",
)


def literals(node: ast.AST) -> set[str]:
    return {
        one.value for one in ast.walk(node) if isinstance(one, ast.Constant) and isinstance(one.value, str)
    }


def asks_a_step(node: ast.AST) -> bool:
    """Whether this is the kind of a step: `x.kind`, where x is no cutter; or a plain `kind`."""
    if isinstance(node, ast.Name):
        return node.id in ("kind", "kind_name")
    if not isinstance(node, ast.Attribute) or node.attr != "kind":
        return False
    owner = node.value.attr if isinstance(node.value, ast.Attribute) else getattr(node.value, "id", "")
    return owner not in OTHERS


def found_in(tree: ast.AST) -> Iterator[tuple[int, str]]:
    names = set(kinds())
    written_names = {name for name in vars(written) if name.isupper()}
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and node.value in ONLY_KINDS:
            yield node.lineno, f"“{node.value}”"
        if isinstance(node, ast.Compare):
            sides = [node.left, *node.comparators]
            if any(asks_a_step(side) for side in sides) and any(literals(side) & names for side in sides):
                yield node.lineno, "a step's kind is compared with a name"
            if any(
                isinstance(one, ast.Attribute) and one.attr in written_names
                for side in sides
                for one in ast.walk(side)
            ):
                yield node.lineno, "a kind to be written is compared with"
        if isinstance(node, ast.Call):
            called = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
            plain = {one.value for one in node.args if isinstance(one, ast.Constant)}
            if called in BY_NAME and plain & names:
                yield node.lineno, f"{called} is given a name"
            if called == "get" and any(asks_a_step(one) for one in node.args):
                yield node.lineno, "a step's kind is looked up"
        if isinstance(node, ast.Subscript) and asks_a_step(node.slice):
            yield node.lineno, "a step's kind is looked up"


def test_no_step_is_asked_for_the_name_of_its_kind():
    found = []
    for path in SOURCE:
        text = path.read_text(encoding="utf-8")
        where = path.relative_to(HERE).as_posix()
        if where not in NAMING and "\nABOUT_KIND = " not in text:
            found += [(where, *one) for one in found_in(ast.parse(text))]
    assert not found


def test_the_exceptions_are_counted():
    assert sum("\nABOUT_KIND = " in path.read_text(encoding="utf-8") for path in SOURCE) == ABOUT


@pytest.mark.parametrize(
    "line",
    [
        'step.kind == "drill"', 'step.operation.kind in ("drill", "enlarge")', '_WORK = {"fly-cut": "mill"}', 'tried("drill", own)',
        "_WORK[step.kind]", 'kind == "slot"', "_WORK.get(operation.kind)", "kind == written.DRILL", 'added_before(step.key, "drill", texts)',
    ],
)  # fmt: skip
def test_a_planted_name_is_found(line):
    assert list(found_in(ast.parse(line)))


@pytest.mark.parametrize(
    "line",
    [
        'step.fields.cutter.kind == "drill"',
        'cutter.kind == "tap"',
        'step.does == "ream"',
        "tried(written.DRILL, own)",
    ],
)
def test_a_word_of_something_else_is_not(line):
    assert not list(found_in(ast.parse(line)))


def test_what_the_program_writes_is_there():
    for name in (getattr(written, one) for one in vars(written) if one.isupper()):
        for one in (name,) if isinstance(name, str) else ():
            assert kind(one).name == one
    for process, name in written.PROVED.items():
        found = kind(name)
        assert found.plays(found.blank("mm")).process == process


@pytest.mark.parametrize("name", kinds())
def test_the_roles_of_a_kind_are_words_that_others_know(name):
    found = kind(name)
    roles = found.plays(found.blank("mm"))
    assert isinstance(roles, Roles)
    assert sum(bool(one) for one in (roles.mills, roles.hole, roles.beside)) == 1
    for word, known in (
        (roles.mills, MILLS), (roles.hole, HOLES), (roles.beside, BESIDE), (roles.speed, SPEEDS), (roles.feed, FEEDS),
        (roles.process, (*written.PROVED, *WORKED)),
    ):  # fmt: skip
        assert not word or word in known
    assert found.word
    assert set(NEEDS[roles.name]) <= set(found.fields.__struct_fields__)


def test_every_role_says_which_fields_it_is_read_by():
    assert set(NEEDS) == {*MILLS, *HOLES, *BESIDE}


def test_the_words_of_notes_and_reminders_are_those_of_kinds():
    """`kind in drilling, window`: each is a kind's own word or one that it shares; a
    window is a recess that goes through.
    """
    asked = set()

    def look(node):
        if node[0] in ("and", "or"):
            [look(part) for part in node[1]]
        elif node[0] == "not":
            look(node[1])
        elif node[0] == "in" and node[1] == "kind":
            asked.update(node[2])

    for row in (*notes.rows(), *reminders.rows()):
        look(parsed(row.trigger)[0])
    assert asked
    assert asked <= {word for name in kinds() for word in (kind(name).word, *kind(name).groups)} | {"window"}
