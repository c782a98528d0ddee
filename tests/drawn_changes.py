"""Changes of whole layers, drawn by seed: one at a time in the living program, and whether a test notices.

`python -m tests.drawn_changes review --seed 7 --count 150 --kept FILE` prints each change, the survivors, the
share that was noticed, and Wilson's interval of it (E. B. Wilson, Probable inference, 1927), nineteen times
in twenty; `limits reckoning` draws from two layers, and `reckoning/adviser` from a folder. What `--kept`
holds already is not tried again. What may be drawn stands in `tests/changes_drawn_from.py`.

Asked are the tests of a layer's folder and those that `tests/where_tested.yaml` names for its modules,
each only where it calls the changed function, the quickest first. What is read at import is changed in a
process of its own, by the tests that call the module at all; where nothing of it is called, by those of its
name and the kept readings of its layer. No window is opened: a toolkit that was
started does not live on in a child.
"""

from __future__ import annotations

import argparse
import cProfile
import gc
import hashlib
import json
import random
import signal
import subprocess
import sys
import time
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from functools import lru_cache
from math import sqrt
from pathlib import Path

import yaml

from jobsheet.remembered import forget_the_plan
from tests.changes_drawn_from import changes_of
from tests.cutting import mutation

TESTS = Path(__file__).parent
#: Tests that hold a folder from outside its layer, beside those of `where_tested.yaml`.
BESIDE = {
    "limits": ("reckoning",),
    "operations": ("reckoning/test_kept_readings.py",),
    "reckoning": ("limits", "operations/test_no_cliffs.py", "review/test_fix_tried.py"),
    "review": ("unseen",),
}
#: A test hangs where it takes longer than so many times its own time, and at least so long [s].
HANGS_TIMES, HANGS_LEAST = 10, 20
#: Tests that take longer are not asked [s, while calls are noted], nor more than so long for one
#: change [s]: what is left survives.
LONGEST, LONGEST_OF_ALL = 4, 25
#: Changes that are tried at the same time.
AT_ONCE = 2
_WINDOWS = {"qapp", "qtbot", "show", "window"}
_CACHE = type(lru_cache(lambda: None))


class Drawn(mutation._Collected):
    """The runner, for some of the changes only."""

    def __init__(self, layers: list[str], seed: int, count: int, kept: Path | None) -> None:
        super().__init__((), lambda line: print(line, flush=True))
        wanted = tuple(one.replace("/", ".") + "." for one in layers)
        every = []
        self.trees = {}
        for name in mutation.modules():
            if f"{name}.".startswith(wanted):
                self.trees[name], found = changes_of(name)
                every += found
        self.drawn = random.Random(seed).sample(every, min(count, len(every)))
        self.kept = kept
        self.calls_kept = kept and kept.parent / f"calls-{'-'.join(layers).replace('/', '.')}.json"
        lines = kept.read_text("utf-8").splitlines() if kept and kept.exists() else ()
        self.known = {one["change"]: one["noticed"] for one in map(json.loads, lines)}

    def pytest_collection_modifyitems(self, items) -> None:
        super().pytest_collection_modifyitems(items)
        items[:] = [one for one in items if not _WINDOWS & set(one.fixturenames)]

    def pytest_runtestloop(self, session) -> bool:
        self.names = [one.nodeid for one in session.items]
        self.note(session.items)
        gc.collect()
        self.caches = [one for one in gc.get_objects() if isinstance(one, _CACHE)]
        gc.freeze()
        quick = sorted({index for found in self.calls.values() for index in found[:1]})
        one = next(one for one in self.drawn if one.owner)
        same = replace(one, what="nothing", change=lambda: lambda: None)
        if mutation._fork(lambda: self.run(same, self.trees[one.module], session.items, quick)) is not None:
            raise RuntimeError("the tests fail without any change")
        with ThreadPoolExecutor(AT_ONCE) as pool:
            for mutant, noticed in zip(
                self.drawn, pool.map(lambda one: self.tried(one, session.items), self.drawn), strict=True
            ):
                self.told(mutant, noticed)
        return True

    def told(self, mutant, noticed: str | None) -> None:
        """Print what became of a change, and keep it."""
        if noticed == "not made":
            self.report(f"not made  {mutant.id}")
            return
        self.count += 1
        if noticed is None:
            self.alive.append(mutant)
        self.report(
            f"{self.count} {'survived ' if noticed is None else 'noticed  '} {mutant.id}{f'  by {noticed}' if noticed else ''}"
        )
        if self.kept and mutant.id not in self.known:
            with self.kept.open("a", encoding="utf-8") as file:
                file.write(json.dumps({"change": mutant.id, "noticed": noticed}) + "\n")

    def note(self, items: list) -> None:
        """Run every test once, unchanged: which functions does it call, and how long does
        it take. Kept by what it is given.
        """
        before = (
            json.loads(self.calls_kept.read_text("utf-8"))
            if self.calls_kept and self.calls_kept.exists()
            else {}
        )
        kept = {}
        mine = [
            sys.modules[name]
            for name in (f"{mutation.PACKAGE}.{one}" for one in self.trees)
            if name in sys.modules
        ]
        for index, item in enumerate(items):
            given = _digest(item)
            known = before.get(item.nodeid)
            if known is None or known[0] not in (given, ""):
                known = (given, *self._noted(item, mine))
            kept[item.nodeid] = known
            _, self.seconds[index], called = known
            for module, owner in called:
                self.calls.setdefault((module, owner), []).append(index)
        if self.calls_kept:
            self.calls_kept.write_text(json.dumps(before | kept), "utf-8")
        for found in self.calls.values():
            found[:] = sorted(set(found), key=lambda index: (round(self.seconds[index], 3), index))

    @staticmethod
    def _noted(item, mine: list) -> tuple[float, list[tuple[str, str]]]:
        """How long a test takes [s], and what it calls; what was remembered before
        hides no call of the layers drawn from.
        """
        from _pytest.runner import runtestprotocol

        forget_the_plan()
        for module in mine:
            mutation._forget(module)
        begin = time.process_time()
        look = cProfile.Profile()
        look.enable()
        try:
            reports = runtestprotocol(item, nextitem=None, log=False)
        finally:
            look.disable()
        seconds = time.process_time() - begin
        if any(one.failed for one in reports):  # what fails by itself notices nothing
            print(f"left out, fails without any change: {item.nodeid}", flush=True)
            return seconds, []
        folder, called, names = str(mutation.FOLDER), set(), {one.__name__ for one in mine}
        for code in {one.code for one in look.getstats() if not isinstance(one.code, str)}:
            if code.co_filename.startswith(folder):
                topic = ".".join(Path(code.co_filename).relative_to(folder).with_suffix("").parts)
                if f"{mutation.PACKAGE}.{topic}" in names:
                    called.add((topic, code.co_qualname.partition(".<locals>")[0]))
        return seconds, sorted(called)

    def tried(self, mutant, items) -> str | None:
        """By which test it is noticed, in a child of its own."""
        if mutant.id in self.known:
            return self.known[mutant.id]
        order, seconds = [], 0.0
        near = mutant.module.rpartition(".")[2]
        names = (near, near.replace("_", "-"))

        def place(index: int) -> tuple[bool, bool, str]:
            """Those of its name first, then what reads whole plans, then any: the
            quickest alone would be much the same.
            """
            name = items[index].nodeid
            return (
                not any(one in name for one in names),
                "test_kept_readings" not in name,
                hashlib.sha256(f"{mutant.id} {name}".encode()).hexdigest(),
            )

        for index in sorted(self.asked(mutant), key=place):
            seconds += self.seconds[index]
            if self.seconds[index] <= LONGEST and seconds <= LONGEST_OF_ALL:
                order.append(index)
        if not mutant.owner:
            return self.at_import(mutant, [items[index].nodeid for index in order])
        found = mutation._fork(lambda: self.run(mutant, self.trees[mutant.module], items, order))
        if found == mutation.LOST:
            return "not made"
        return found if found is None else items[order[found]].nodeid if found < len(order) else "its fall"

    def asked(self, mutant) -> list[int]:
        """The tests that call a function, or anything of its module where it is
        read at import, the quickest first.
        """
        if mutant.owner:
            return self.calls.get((mutant.module, mutant.owner), [])
        every = {
            index for (module, _), found in self.calls.items() if module == mutant.module for index in found
        }
        # A module of tables alone calls nothing: its own tests are asked, and what is kept of its layer.
        every = every or self.of_its_name(mutant.module)
        return sorted(every, key=lambda index: (round(self.seconds[index], 3), index))

    def of_its_name(self, module: str) -> set[int]:
        """The tests of a module's name, and the kept readings of its layer."""
        layer, near = module.partition(".")[0], f"test_{module.rpartition('.')[2]}.py"
        return {
            index
            for index, name in enumerate(self.names)
            if f"/{near}" in name or f"{layer}/test_kept_" in name
        }

    def run(self, mutant, tree, items, order) -> int | None:
        """Position of the test that notices, or none; each test with a watch of its own."""
        from _pytest.runner import runtestprotocol

        forget_the_plan()
        for one in self.caches:  # an answer that is remembered is not asked of the change
            one.cache_clear()
        mutation._exchange(mutant, tree)
        mutation._silent()
        for position, index in enumerate(order):
            following = items[order[position + 1]] if position + 1 < len(order) else None
            signal.alarm(max(HANGS_LEAST, round(HANGS_TIMES * self.seconds[index])))
            if any(one.failed for one in runtestprotocol(items[index], nextitem=following, log=False)):
                return position
        return None

    def at_import(self, mutant, names: list[str]) -> str | None:
        """A process that imports the changed module; it gives back 1 where a
        test fails, 0 where none does.
        """
        place = [one.id for one in changes_of(mutant.module)[1]].index(mutant.id)
        words = [sys.executable, "-m", "tests.drawn_changes", "--at-import", mutant.module, str(place)]
        done = subprocess.run(
            words,
            check=False,
            cwd=TESTS.parent,
            input="\n".join(names or ["tests/test_imports.py"]),
            text=True,
            capture_output=True,
        )
        return None if done.returncode == 0 else "a test in a process of its own"


def _digest(item) -> str:
    """What a test is given: a case that was written anew is noted anew."""
    given = getattr(getattr(item, "callspec", None), "params", {})
    return hashlib.sha256(repr(sorted(given.items(), key=str)).encode()).hexdigest()[:16]


def tests_of(layers: list[str]) -> list[str]:
    """The folders and files of tests that may notice a change of these layers."""
    listed = yaml.safe_load((TESTS / "where_tested.yaml").read_text(encoding="utf-8"))
    found = {layer.partition("/")[0]: None for layer in layers}
    for layer in layers:
        found |= dict.fromkeys(BESIDE.get(layer.partition("/")[0], ()))
        for test, ways in listed.items():
            if any(one.startswith(f"{layer}/") for modules in ways.values() for one in modules):
                found[test] = None
    folders = {one for one in found if not one.endswith(".py")}
    return [
        str(TESTS / one)
        for one in found
        if one in folders or (one.partition("/")[0] not in folders and not one.startswith("gui/"))
    ]


def interval(noticed: int, made: int, z: float = 1.959964) -> tuple[float, float]:
    """Wilson's interval of a share."""
    share, square = noticed / made, z * z / made
    middle = (share + square / 2) / (1 + square)
    reach = z * sqrt(share * (1 - share) / made + square / (4 * made)) / (1 + square)
    return middle - reach, middle + reach


def _in_a_process_of_its_own(module: str, place: int) -> int:
    import pytest

    tree, found = changes_of(module)
    code = mutation._changed(tree, found[place])
    for name in [one for one in sys.modules if one.partition(".")[0] == mutation.PACKAGE]:
        del sys.modules[name]
    sys.meta_path.insert(
        0, mutation._Changed(f"{mutation.PACKAGE}.{module}", str(mutation.file_of(module)), code)
    )
    return int(pytest.main([*mutation.OPTIONS, "-x", *sys.stdin.read().splitlines()]) != 0)


def main() -> int:
    """Draw, try, and print."""
    import pytest

    words = argparse.ArgumentParser(description=__doc__)
    words.add_argument("layers", nargs="*")
    words.add_argument("--seed", type=int, default=1)
    words.add_argument("--count", type=int, default=150)
    words.add_argument("--kept", type=Path)
    words.add_argument("--at-import", nargs=2, metavar=("MODULE", "PLACE"))
    asked = words.parse_args()
    mutation.PACKAGE, mutation.FOLDER, mutation.MOST_SECONDS = "jobsheet", TESTS.parent / "jobsheet", 0
    mutation._steady()
    if asked.at_import:
        return _in_a_process_of_its_own(asked.at_import[0], int(asked.at_import[1]))
    runner = Drawn(asked.layers, asked.seed, asked.count, asked.kept)
    pytest.main([*mutation.OPTIONS, *tests_of(asked.layers)], plugins=[runner])
    print("\nsurvived:", *sorted(one.id for one in runner.alive), sep="\n")
    if not runner.count:
        return 1
    noticed = runner.count - len(runner.alive)
    low, high = interval(noticed, runner.count)
    print(f"{noticed} of {runner.count} noticed: {noticed / runner.count:.1%}, {low:.1%} to {high:.1%}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
