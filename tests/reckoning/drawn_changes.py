"""Changes of adviser and limits, drawn by seed: one at a time in the living program, and whether a test notices.

`python -m tests.reckoning.drawn_changes [--longest SECONDS] [SEED [COUNT [MODULE ...] [tests/FILE ...]]]` prints each change, the share that
was noticed, and Wilson's interval of it (E. B. Wilson, Probable inference, 1927), nineteen times in twenty. The runner is the one of the formulas.
`--longest` asks tests too that take longer than the usual here: on a machine that has other work as well, where every test is slower.
"""

from __future__ import annotations

import gc
import random
import signal
import sys
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from functools import lru_cache
from math import sqrt
from pathlib import Path

from jobsheet.remembered import forget_the_plan
from tests.cutting import mutation

ROOT = Path(__file__).parents[2]
#: What is changed, as folders of the package, and the tests that may notice.
CHANGED = ("limits", "reckoning/adviser")
TESTS = (
    "limits",
    "reckoning",
    "operations/test_no_cliffs.py",
    "cli/test_reach.py",
    "review/test_fix_tried.py",
)
#: A test hangs where it takes longer than so many times its own time, and at least so long [s]. Each test has its own
#: watch: what survives is asked of every test that calls it, however long that takes, and a slow survivor stays one.
HANGS_TIMES, HANGS_LEAST = 10, 20
#: Tests that take longer are not asked [s, while calls are noted]: what only they notice counts as survived.
LONGEST = 4
#: Changes that are tried at the same time.
AT_ONCE = 2
_CACHE = type(lru_cache(lambda: None))


class Drawn(mutation._Collected):
    """The runner, for some of the changes only."""

    def __init__(self, seed, count, report, changed=CHANGED, longest=LONGEST) -> None:
        super().__init__((), report)
        self.longest = longest
        chosen = [
            name
            for name in mutation.modules()
            if name.startswith(tuple(one.replace("/", ".") for one in changed))
        ]
        self.trees = {name: mutation.mutants_of(name) for name in chosen}
        every = [one for _, found in self.trees.values() for one in found if one.owner]
        self.drawn = random.Random(seed).sample(every, min(count, len(every)))

    def pytest_collection_modifyitems(self, items) -> None:
        """No windows: a toolkit that was started does not live on in a child."""
        super().pytest_collection_modifyitems(items)
        items[:] = [one for one in items if not {"qapp", "qtbot", "show", "window"} & set(one.fixturenames)]

    def pytest_runtestloop(self, session) -> bool:
        self.note(session.items)
        gc.collect()
        gc.freeze()
        quick = sorted({index for found in self.calls.values() for index in found[:1]})
        for mutant in self.drawn[:3]:
            same = replace(mutant, what="nothing", change=lambda: lambda: None)
            tree = self.trees[mutant.module][0]
            if mutation._fork(lambda: self.run(same, tree, session.items, quick)) is not None:  # noqa: B023  used at once
                raise RuntimeError("the tests fail without any change")
        with ThreadPoolExecutor(AT_ONCE) as pool:
            for mutant, killer in zip(
                self.drawn, pool.map(lambda one: self.tried(one, session.items), self.drawn), strict=True
            ):
                if killer == mutation.LOST:
                    self.report(f"not made  {mutant.id}")
                    continue
                self.count += 1
                if killer is None:
                    self.alive.append(mutant)
                self.report(f"{self.count} {'survived ' if killer is None else 'noticed '} {mutant.id}")
        return True

    def forget(self) -> None:
        """What is remembered by value of one plan too: else only the first test that asks would be noted."""
        super().forget()
        forget_the_plan()

    def tried(self, mutant, items) -> int | None:
        """Where it is noticed, in a child of its own."""
        called = self.calls.get((mutant.module, mutant.owner), [])
        order = [index for index in called if self.seconds[index] <= self.longest]
        return mutation._fork(lambda: self.run(mutant, self.trees[mutant.module][0], items, order))

    def run(self, mutant, tree, items, order) -> int | None:
        """Position of the test that notices, or none; each test with a watch of its own."""
        from _pytest.runner import runtestprotocol

        forget_all()
        mutation._exchange(mutant, tree)
        mutation._silent()
        for position, index in enumerate(order):
            following = items[order[position + 1]] if position + 1 < len(order) else None
            signal.alarm(max(HANGS_LEAST, round(HANGS_TIMES * self.seconds[index])))
            if any(one.failed for one in runtestprotocol(items[index], nextitem=following, log=False)):
                return position
        return None


def forget_all() -> None:
    """Empty all that the program remembers: an answer that is remembered is not asked of the change."""
    forget_the_plan()
    gc.unfreeze()
    for one in gc.get_objects():
        if isinstance(one, _CACHE):
            one.cache_clear()


def interval(noticed: int, made: int, z: float = 1.959964) -> tuple[float, float]:
    """Wilson's interval of a share."""
    share, square = noticed / made, z * z / made
    middle = (share + square / 2) / (1 + square)
    reach = z * sqrt(share * (1 - share) / made + square / (4 * made)) / (1 + square)
    return middle - reach, middle + reach


def main(seed: int = 1, count: int = 150, only: tuple[str, ...] = (), longest: float = LONGEST) -> float:
    """Run it, for some modules or with some tests only where they are named; the share that was noticed."""
    import pytest

    mutation.PACKAGE, mutation.FOLDER, mutation.MOST_SECONDS = "jobsheet", ROOT / "jobsheet", 0
    mutation._steady()
    chosen = tuple(one for one in only if not one.startswith("tests/"))
    runner = Drawn(seed, count, lambda line: print(line, flush=True), chosen or CHANGED, longest)
    named = tuple(one.removeprefix("tests/") for one in only if one.startswith("tests/"))
    tests = [str(ROOT / "tests" / name) for name in named or TESTS if (ROOT / "tests" / name).exists()]
    pytest.main([*mutation.OPTIONS, *tests], plugins=[runner])
    noticed = runner.count - len(runner.alive)
    low, high = interval(noticed, runner.count)
    print(f"{noticed} of {runner.count} noticed: {noticed / runner.count:.1%}, {low:.1%} to {high:.1%}")
    return noticed / runner.count


def asked(words: list[str]) -> tuple[int, int, tuple[str, ...], float]:
    """Seed, count, what is named, and how long a test may take [s], of what stands on the command line."""
    words, longest = list(words), float(LONGEST)
    if "--longest" in words:
        at = words.index("--longest")
        longest = float(words[at + 1])
        del words[at : at + 2]
    numbers = [int(one) for one in words[:2]]
    return (*numbers, *(1, 150)[len(numbers) :], tuple(words[2:]), longest)


if __name__ == "__main__":
    main(*asked(sys.argv[1:]))
