"""Tests lie where one looks for them: a module has a test of its name, or the
one that holds it stands in a list.

A rule is tried by the cases of its id. A module without a function of its own needs none: what it holds is
tried where it is used, and it counts neither way. What `tests/where_tested.yaml` lists is no mirror: whoever
splits such a test takes the module out of the list, and the number below goes down.
"""

from __future__ import annotations

import ast
import re
from pathlib import Path

import pytest
import yaml

TESTS = Path(__file__).resolve().parent
HOUSE = TESTS.parent / "jobsheet"


def has_functions(path: Path) -> bool:
    """Whether a module does something: a function, a method or a lambda, not values alone."""
    nodes = ast.walk(ast.parse(path.read_text(encoding="utf-8")))
    return any(isinstance(node, ast.FunctionDef | ast.Lambda) for node in nodes)


MODULES = sorted(
    path.relative_to(HOUSE).as_posix()
    for path in HOUSE.rglob("*.py")
    if path.name not in ("__init__.py", "__main__.py") and has_functions(path)
)
LIST: dict[str, dict[str, list[str]]] = yaml.safe_load(
    (TESTS / "where_tested.yaml").read_text(encoding="utf-8")
)
#: How it is known that a test holds a module.
HOW = ("imports", "runs", "reaches")
#: So many modules in a hundred have a test of their own; it only rises.
OWN = 90


def own_test(module: str) -> bool:
    """Whether a test of its name lies under the folder of its layer, or, for a rule, the cases of its id."""
    path = HOUSE / module
    if module.startswith("review/rules/"):
        found = re.search(r'^@rule\(\s*"([^"]+)"', path.read_text(encoding="utf-8"), re.MULTILINE)
        return bool(found) and (TESTS / "review/cases" / f"{found[1]}.yaml").is_file()
    layer = module.split("/", maxsplit=1)[0] if "/" in module else ""
    return any((TESTS / layer).rglob(f"test_{path.name}"))


def listed() -> list[str]:
    """Every module of the list, as often as it stands there."""
    return [module for ways in LIST.values() for modules in ways.values() for module in modules]


def test_every_module_has_a_test_of_its_own_or_stands_in_the_list_once():
    known = listed()
    assert len(known) == len(set(known))
    new = [one for one in MODULES if not own_test(one) and one not in known]
    assert not new, "write a test of its name, or put it into where_tested.yaml under the test that holds it"


def test_the_list_names_what_is_there_and_nothing_that_has_its_own():
    assert set(listed()) <= set(MODULES)
    assert [one for one in listed() if own_test(one)] == []
    assert [name for name in LIST if not (TESTS / name).is_file()] == []
    assert all(set(ways) <= set(HOW) for ways in LIST.values())


@pytest.mark.parametrize("test", sorted(LIST))
def test_a_test_imports_what_it_is_said_to(test):
    tree = ast.parse((TESTS / test).read_text(encoding="utf-8"))
    said = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom) and node.module:
            said |= {node.module, *(f"{node.module}.{one.name}" for one in node.names)}
        if isinstance(node, ast.Import):
            said |= {one.name for one in node.names}
    wanted = {f"jobsheet.{one[:-3].replace('/', '.')}" for one in LIST[test].get("imports", ())}
    assert wanted <= said


def test_the_share_that_has_its_own_does_not_fall():
    assert 100 * sum(map(own_test, MODULES)) / len(MODULES) >= OWN
