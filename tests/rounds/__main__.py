"""`python -m tests.rounds [KIND ...] [--minutes M] [--seed S]`: rounds of chance, the sums kept by commit."""

from __future__ import annotations

import argparse
import sys
import time

from tests.rounds import sums
from tests.rounds.cut_short import killed, refused, two
from tests.rounds.spoilt_files import mutated, through

KINDS = {"mutated": mutated, "through": through, "killed": killed, "two": two, "refused": refused}


def run(kind: str, seconds: float, seed: int, of: dict[str, sums.Sum]) -> sums.Sum:
    """Rounds of one kind from where the last run ended, for so long."""
    held = of.setdefault(kind, sums.Sum())
    end = time.monotonic() + seconds
    for what, said in KINDS[kind](seed, held.next):
        held.count(what, said)
        if said:
            print(f"{kind} {held.next - 1}: {what}: {said}", flush=True)
        if time.monotonic() > end:
            break
    return held


def main() -> int:
    """Run what is asked, print the page of counts; 1 where anything failed."""
    asked = argparse.ArgumentParser()
    asked.add_argument("kinds", nargs="*", choices=[*KINDS, []])
    asked.add_argument("--minutes", type=float, default=1.0)
    asked.add_argument("--seed", type=int, default=22)
    given = asked.parse_args()
    of = sums.commit()
    for kind in given.kinds:
        # Read anew each time: two of these may run beside each other, for different kinds.
        alone = {kind: sums.read(of).get(kind, sums.Sum())}
        run(kind, given.minutes * 60, given.seed, alone)
        sums.write(of, {**sums.read(of), **alone})
    print(f"commit {of}")
    for kind, held in sums.read(of).items():
        print(f"{kind}: {held.words()}")
        for one in held.failed[:20]:
            print(f"  {one}")
    return int(any(held.failed for held in sums.read(of).values()))


if __name__ == "__main__":
    sys.exit(main())
