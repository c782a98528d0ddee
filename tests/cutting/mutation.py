"""Mutation testing of `jobsheet/cutting`: change one thing at a time, and see whether a test notices.

`python -m tests.cutting.mutation [MODULE ...]` prints the survivors and the score.

Of the published tools, mutmut leaves decorated functions alone, which all our formulas are, and cosmic-ray
starts an interpreter for each change and writes into the checkout. So this is a small runner of our own.
It collects the tests once, notes which of them call which function, and then forks: the child puts the
changed code into the living function and runs only those tests, cheapest first. What is read at import
(tables, constants, defaults, decorators) cannot be put in afterwards; there the child imports the changed
module itself and runs the tests anew.

Changed are operators, comparisons, numbers (a whole one + 1, another x 1.1), truth values, conditions (left
out), the parts of `and` and `or`, statements that only refuse, min and max, sine and cosine. Texts stay as
they are, and whether a record is frozen.
"""

from __future__ import annotations

import ast
import gc
import os
import signal
import sys
import time
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from importlib import import_module
from importlib.abc import MetaPathFinder
from importlib.machinery import SourceFileLoader
from importlib.util import spec_from_file_location
from pathlib import Path
from types import CodeType, FunctionType, ModuleType

HERE = Path(__file__).parent
ROOT = HERE.parents[1]
PACKAGE = "jobsheet.cutting"
TRIG = "jobsheet.cutting.trig"
FOLDER = ROOT / "jobsheet" / "cutting"
MOST_SECONDS = 30
#: A test of time would notice a busy machine, not a change; one of the whole suite would start itself.
LEFT_OUT = ("test_is_fast_enough_for_every_keystroke", "test_mutation")

OPERATORS: dict[type[ast.operator], type[ast.operator]] = {
    ast.Add: ast.Sub,
    ast.Sub: ast.Add,
    ast.Mult: ast.Div,
    ast.Div: ast.Mult,
    ast.Pow: ast.Mult,
    ast.Mod: ast.Mult,
    ast.FloorDiv: ast.Mult,
}
COMPARISONS: dict[type[ast.cmpop], tuple[type[ast.cmpop], ...]] = {
    ast.Lt: (ast.LtE, ast.GtE),
    ast.LtE: (ast.Lt, ast.Gt),
    ast.Gt: (ast.GtE, ast.LtE),
    ast.GtE: (ast.Gt, ast.Lt),
    ast.Eq: (ast.NotEq,),
    ast.NotEq: (ast.Eq,),
    ast.Is: (ast.IsNot,),
    ast.IsNot: (ast.Is,),
    ast.In: (ast.NotIn,),
    ast.NotIn: (ast.In,),
}
CALLED = {
    "min": "max",
    "max": "min",
    "sin": "cos",
    "cos": "sin",
    "asin": "acos",
    "acos": "asin",
    "floor": "ceil",
    "ceil": "floor",
}


@dataclass(slots=True)
class Mutant:
    """One change: where, what, and how to make it in the tree and take it back."""

    module: str
    line: int
    owner: str  # qualified name of the outermost function; empty for what is read at import
    what: str
    change: Callable[[], Callable[[], None]] = field(repr=False)

    @property
    def id(self) -> str:
        return f"{self.module}.py:{self.line} {self.owner or 'at import'}: {self.what}"


def _put(
    node: ast.AST, name: str, value: object, position: int | None = None
) -> Callable[[], Callable[[], None]]:
    """A change of one field of a node, which returns how to undo it."""

    def change() -> Callable[[], None]:
        if position is None:
            before = getattr(node, name)
            setattr(node, name, value)
            return lambda: setattr(node, name, before)
        held = getattr(node, name)
        before = held[position]
        held[position] = value

        def undo() -> None:
            held[position] = before

        return undo

    return change


def _words(node: ast.AST) -> str:
    return " ".join(ast.unparse(node).split())


def key_of_line(line: str) -> str:
    """A printed survivor without its line number, for a list that outlives an edit above it."""
    module, _, rest = line.removeprefix("survived").strip().partition(".py:")
    return f"{module} {rest.partition(' ')[2]}"


class _Sites:
    """Walks a module in the order it is written and gathers every change."""

    def __init__(self, module: str, tree: ast.Module) -> None:
        self.module = module
        self.found: list[Mutant] = []
        self.body(tree, "", "")

    def add(self, node: ast.AST, owner: str, change: Callable[[], Callable[[], None]]) -> None:
        before = _words(node)
        undo = change()
        after = _words(node)
        undo()
        self.found.append(Mutant(self.module, node.lineno, owner, f"{before} -> {after}", change))  # type: ignore[attr-defined]

    def body(self, node: ast.AST, owner: str, prefix: str) -> None:
        for position, statement in enumerate(node.body):  # type: ignore[attr-defined]
            self.statement(node, position, statement, owner, prefix)

    def statement(self, holder: ast.AST, position: int, node: ast.stmt, owner: str, prefix: str) -> None:
        if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
            return  # a docstring
        if isinstance(node, ast.FunctionDef):
            here = owner or f"{prefix}{node.name}"
            for decorator in node.decorator_list:
                self.expressions(decorator, owner)
            for default in [*node.args.defaults, *node.args.kw_defaults]:
                if default is not None:
                    self.expressions(default, owner)
            self.body(node, here, prefix)
            return
        if isinstance(node, ast.ClassDef):
            self.body(node, owner, f"{prefix}{node.name}.")
            return
        if isinstance(node, ast.Import | ast.ImportFrom):
            return
        if isinstance(node, ast.Expr) and isinstance(node.value, ast.Call) and owner:
            here = f"without {_words(node)}"
            nothing = ast.copy_location(ast.Pass(), node)
            self.found.append(
                Mutant(self.module, node.lineno, owner, here, _put(holder, "body", nothing, position))
            )
        if isinstance(node, ast.If | ast.While):
            never = ast.copy_location(ast.Constant(False), node.test)
            what = f"{'if' if isinstance(node, ast.If) else 'while'} {_words(node.test)} -> never"
            self.found.append(Mutant(self.module, node.lineno, owner, what, _put(node, "test", never)))
        if isinstance(node, ast.AugAssign) and type(node.op) in OPERATORS:
            self.add(node, owner, _put(node, "op", OPERATORS[type(node.op)]()))
        for name, value in ast.iter_fields(node):
            if name in ("annotation", "returns"):
                continue
            if name == "body":
                self.body(node, owner, prefix)
            elif name in ("orelse", "finalbody") and value and isinstance(value, list):
                inner = ast.Module(value, [])
                self.body(inner, owner, prefix)
            elif isinstance(value, ast.expr):
                self.expressions(value, owner, (node, name, None))
            elif isinstance(value, list):
                for at, one in enumerate(value):
                    if isinstance(one, ast.expr):
                        self.expressions(one, owner, (node, name, at))

    def expressions(
        self, node: ast.AST, owner: str, place: tuple[ast.AST, str, int | None] | None = None
    ) -> None:
        if isinstance(node, ast.Constant):
            self.constant(node, owner)
        elif isinstance(node, ast.BinOp) and type(node.op) in OPERATORS:
            self.add(node, owner, _put(node, "op", OPERATORS[type(node.op)]()))
        elif isinstance(node, ast.Compare):
            for position, operator in enumerate(node.ops):
                for other in COMPARISONS[type(operator)]:
                    self.add(node, owner, _put(node, "ops", other(), position))
        elif isinstance(node, ast.BoolOp):
            for position in range(len(node.values)):
                rest = [value for at, value in enumerate(node.values) if at != position]
                if place is not None and len(rest) == 1:
                    what = f"{_words(node)} -> {_words(rest[0])}"
                    change = _put(place[0], place[1], rest[0], place[2])
                    self.found.append(Mutant(self.module, node.lineno, owner, what, change))
                elif len(rest) > 1:
                    self.add(node, owner, _put(node, "values", rest))
        elif isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.USub | ast.Not) and place is not None:
            what = f"{_words(node)} -> {_words(node.operand)}"
            self.found.append(
                Mutant(
                    self.module, node.lineno, owner, what, _put(place[0], place[1], node.operand, place[2])
                )
            )
        elif isinstance(node, ast.IfExp) and place is not None:
            for part in (node.body, node.orelse):
                what = f"{_words(node)} -> {_words(part)}"
                self.found.append(
                    Mutant(self.module, node.lineno, owner, what, _put(place[0], place[1], part, place[2]))
                )
        elif isinstance(node, ast.Call):
            self.call(node, owner)
        for name, value in ast.iter_fields(node):
            if isinstance(value, ast.expr | ast.keyword | ast.comprehension):
                self.expressions(value, owner, (node, name, None))
            elif isinstance(value, list):
                for at, one in enumerate(value):
                    if isinstance(one, ast.expr | ast.keyword | ast.comprehension):
                        self.expressions(one, owner, (node, name, at))

    def constant(self, node: ast.Constant, owner: str) -> None:
        value = node.value
        if isinstance(value, bool):
            self.add(node, owner, _put(node, "value", not value))
        elif isinstance(value, int):
            self.add(node, owner, _put(node, "value", value + 1))
        elif isinstance(value, float):
            self.add(node, owner, _put(node, "value", value * 1.1 if value else 1.0))

    def call(self, node: ast.Call, owner: str) -> None:
        called = node.func
        if isinstance(called, ast.Name) and called.id in CALLED:
            self.add(node, owner, _put(called, "id", CALLED[called.id]))
        elif isinstance(called, ast.Attribute) and called.attr in CALLED:
            self.add(node, owner, _put(called, "attr", CALLED[called.attr]))


def modules(names: Sequence[str] = ()) -> list[str]:
    """Topics of the package, or those asked for."""
    paths = (path.relative_to(FOLDER).with_suffix("") for path in FOLDER.rglob("*.py"))
    every = sorted(".".join(path.parts) for path in paths if path.name != "__init__")
    return [name for name in every if not names or name in names]


def file_of(module: str) -> Path:
    """Where a topic stands; one of the text-book folder is named with it."""
    return FOLDER.joinpath(*module.split(".")).with_suffix(".py")


def mutants_of(module: str) -> tuple[ast.Module, list[Mutant]]:
    """The tree of a module and every change that can be made in it."""
    tree = ast.parse(file_of(module).read_text("utf-8"))
    found = _Sites(module, tree).found
    if module == "formula":  # what recorded the formulas has run already when the tests are collected
        for one in found:
            if one.owner == "formula":
                one.owner = ""
    return tree, found


def _changed(tree: ast.Module, mutant: Mutant) -> CodeType:
    undo = mutant.change()
    try:
        return compile(ast.fix_missing_locations(tree), str(file_of(mutant.module)), "exec")
    finally:
        undo()


# --- changes in living functions ----------------------------------------------------------------------------


def _functions(module: ModuleType) -> Iterator[FunctionType]:
    """Every function of a module and of its classes, unwrapped."""
    held = list(vars(module).values())
    for one in vars(module).values():
        if isinstance(one, type) and one.__module__ == module.__name__:
            held += vars(one).values()
    for one in held:
        inner = (
            getattr(one, "fget", None) or getattr(one, "__func__", None) or getattr(one, "__wrapped__", one)
        )
        if isinstance(inner, FunctionType) and inner.__module__ == module.__name__:
            yield inner


def _codes(code: CodeType) -> Iterator[CodeType]:
    for one in code.co_consts:
        if isinstance(one, CodeType):
            yield one
            yield from _codes(one)


def _exchange(mutant: Mutant, tree: ast.Module) -> None:
    """Put the changed code into the function that everybody holds."""
    new = [one for one in _codes(_changed(tree, mutant)) if one.co_qualname == mutant.owner]
    module = sys.modules[f"{PACKAGE}.{mutant.module}"]
    for name in (
        "sin",
        "cos",
        "asin",
        "acos",
    ):  # a name that is not imported would be noticed for the wrong reason
        vars(module).setdefault(name, getattr(import_module(TRIG), name))
    done = False
    for function in _functions(module):
        if function.__qualname__ == mutant.owner:
            for code in new:
                if code.co_firstlineno == function.__code__.co_firstlineno:
                    function.__code__ = code
                    done = True
    if not done:
        raise LookupError(mutant.id)
    _forget(module)


def _forget(module: ModuleType) -> None:
    """Empty what a module remembers of earlier calls."""
    for one in vars(module).values():
        if hasattr(one, "cache_clear"):
            one.cache_clear()


class _Collected:
    """A plugin of the test runner that, instead of one round of the tests, makes one for each change."""

    def __init__(self, names: Sequence[str], report: Callable[[str], None]) -> None:
        self.names = names
        self.report = report
        self.alive: list[Mutant] = []
        self.count = 0
        self.calls: dict[tuple[str, str], list[int]] = {}
        self.seconds: dict[int, float] = {}

    def pytest_collection_modifyitems(self, items: list) -> None:
        items[:] = [item for item in items if not any(name in item.nodeid for name in LEFT_OUT)]

    def pytest_runtestloop(self, session) -> bool:
        items = session.items
        self.note(items)
        gc.collect()
        gc.freeze()  # children then share what is there instead of copying it
        for name in self.names:
            tree, found = mutants_of(name)
            first: dict[str, list[int]] = {}
            for mutant in found:
                if not mutant.owner:
                    continue
                self.count += 1
                known = first.setdefault(mutant.owner, [])
                called = self.calls.get((name, mutant.owner), [])
                order = [*known, *(index for index in called if index not in known)]
                killer = _fork(lambda: self.run(mutant, tree, items, order))  # noqa: B023  used at once
                if killer == LOST:
                    self.count -= 1
                    self.report(f"not made  {mutant.id}")
                elif killer is None:
                    self.alive.append(mutant)
                    self.report(f"survived  {mutant.id}")
                elif killer < len(order) and order[killer] not in known:
                    known.insert(0, order[killer])
        return True

    def forget(self) -> None:
        """Empty what is remembered: a call whose answer is remembered would not be noted."""
        for name, module in list(sys.modules.items()):
            if name.startswith(PACKAGE):
                _forget(module)

    def note(self, items: list) -> None:
        """Run every test once, unchanged: which functions does it call, and how long does it take."""
        from _pytest.runner import runtestprotocol

        seconds = self.seconds
        folder = str(FOLDER)
        for index, item in enumerate(items):
            called: set[CodeType] = set()

            def look(frame, event, _, called=called) -> None:
                if event == "call":
                    called.add(frame.f_code)

            self.forget()
            begin = time.perf_counter()
            sys.setprofile(look)
            try:
                reports = runtestprotocol(item, nextitem=None, log=False)
            finally:
                sys.setprofile(None)
            seconds[index] = time.perf_counter() - begin
            if any(one.failed for one in reports):
                raise RuntimeError(f"fails without any change: {item.nodeid}")
            for code in called:
                if code.co_filename.startswith(folder):
                    owner = code.co_qualname.partition(".<locals>")[0]
                    topic = ".".join(Path(code.co_filename).relative_to(folder).with_suffix("").parts)
                    self.calls.setdefault((topic, owner), []).append(index)
        for found in self.calls.values():
            found[:] = sorted(set(found), key=lambda index: (round(seconds[index], 3), index))

    @staticmethod
    def run(mutant: Mutant, tree: ast.Module, items: list, order: Sequence[int]) -> int | None:
        """Position of the test that notices, or none."""
        from _pytest.runner import runtestprotocol

        _exchange(mutant, tree)
        _silent()
        for position, index in enumerate(order):
            following = items[order[position + 1]] if position + 1 < len(order) else None
            if any(one.failed for one in runtestprotocol(items[index], nextitem=following, log=False)):
                return position
        return None


#: The answer of a change that could not be placed: nobody was asked, so that it counts as not made.
LOST = -2


def _fork(job: Callable[[], int | None]) -> int | None:
    """Run a job in a child. What it finds comes back by a pipe; a child that
    hangs or falls over has noticed.
    """
    reading, writing = os.pipe()
    child = os.fork()
    if not child:
        status = 3
        try:
            os.close(reading)
            signal.alarm(MOST_SECONDS)
            answer = job()
            os.write(writing, str(-1 if answer is None else answer).encode())
            status = 0
        except LookupError as lost:
            os.write(2, f"cannot be placed: {lost}\n".encode())
            os.write(writing, b"lost")
        finally:
            os._exit(status)
    os.close(writing)
    with os.fdopen(reading) as pipe:
        text = pipe.read()
    os.waitpid(child, 0)
    if text == "lost":
        return LOST
    if not text:
        return sys.maxsize
    return None if text == "-1" else int(text)


# --- changes in what is read at import ----------------------------------------------------------------------


class _Changed(SourceFileLoader, MetaPathFinder):
    """Finds and loads the one changed module; all others go their usual way."""

    def __init__(self, name: str, path: str, code: CodeType) -> None:
        super().__init__(name, path)
        self.code = code

    def find_spec(self, name, path=None, target=None):
        return spec_from_file_location(name, self.path, loader=self) if name == self.name else None

    def get_code(self, fullname):
        return self.code


def _import_and_test(mutant: Mutant, tree: ast.Module) -> int | None:
    import pytest

    code = _changed(tree, mutant)
    sys.meta_path.insert(0, _Changed(f"{PACKAGE}.{mutant.module}", str(file_of(mutant.module)), code))
    _silent()
    names = (
        "test_constants",
        f"test_{mutant.module.rpartition('.')[2]}",
        "test_contract",
        "test_published",
    )  # where such a change shows
    nearest = [str(HERE / f"{name}.py") for name in names if (HERE / f"{name}.py").exists()]
    rest = [str(path) for path in sorted(HERE.glob("test_*.py")) if str(path) not in nearest]
    rounds = [*([one] for one in nearest), rest]
    return 0 if any(pytest.main([*OPTIONS, "-x", *one], plugins=[_LeftOut()]) for one in rounds) else None


def _silent() -> None:
    sink = os.open(os.devnull, os.O_WRONLY)
    os.dup2(sink, 1)
    os.dup2(sink, 2)


class _LeftOut:
    """Leaves out the tests that would notice something else than a change."""

    def pytest_collection_modifyitems(self, items: list) -> None:
        items[:] = [item for item in items if not any(name in item.nodeid for name in LEFT_OUT)]


OPTIONS = (
    *("-q", "--no-header", "--tb=native", "-W", "ignore::pytest.PytestAssertRewriteWarning"),
    *("-p", "no:cacheprovider", "-p", "no:xdist", "-p", "no:cov", "-p", "no:benchmark"),
)


def _steady() -> None:
    """Make hypothesis try the same values each time, and not look for the simplest one that fails."""
    from hypothesis import HealthCheck, Phase, settings

    settings.register_profile(
        "mutation",
        derandomize=True,
        database=None,
        deadline=None,
        max_examples=40,
        phases=(Phase.explicit, Phase.generate),
        suppress_health_check=list(HealthCheck),
    )
    settings.load_profile("mutation")


@dataclass(frozen=True, slots=True)
class Outcome:
    """How many changes were made, and which of them no test noticed."""

    made: int
    survivors: tuple[Mutant, ...]

    @property
    def score(self) -> float:
        return 1 - len(self.survivors) / self.made


def run(names: Sequence[str] = (), report: Callable[[str], None] = print) -> Outcome:
    """Make every change in turn; a fresh process that has not imported the package is needed."""
    if any(name.startswith(PACKAGE) for name in sys.modules):
        raise RuntimeError("the package is imported already")
    import pint  # noqa: F401  so that the children need not
    import pytest
    import yaml  # noqa: F401

    _steady()
    asked = modules(names)
    tree, _ = mutants_of(asked[0])
    if (
        _fork(lambda: _import_and_test(Mutant(asked[0], 0, "", "nothing", lambda: lambda: None), tree))
        is not None
    ):
        raise RuntimeError("the tests fail without any change")
    made, survivors = 0, []
    for name in asked:
        tree, found = mutants_of(name)
        for mutant in found:
            if mutant.owner:
                continue
            made += 1
            if _fork(lambda: _import_and_test(mutant, tree)) is None:  # noqa: B023  used at once
                survivors.append(mutant)
                report(f"survived  {mutant.id}")
    plugin = _Collected(asked, report)
    code = pytest.main([*OPTIONS, "-s", str(HERE)], plugins=[plugin])
    if code not in (0, 5) or not plugin.calls:
        raise RuntimeError(f"the tests could not be collected: {code}")
    return Outcome(made + plugin.count, (*survivors, *plugin.alive))


def main() -> None:
    """Print the survivors as they are found, and the score."""
    begin = time.perf_counter()
    outcome = run(sys.argv[1:], lambda text: print(text, flush=True))
    minutes = (time.perf_counter() - begin) / 60
    noticed = outcome.made - len(outcome.survivors)
    print(f"{noticed} of {outcome.made} changes noticed: {outcome.score:.1%}, in {minutes:.1f} min")


if __name__ == "__main__":
    main()
