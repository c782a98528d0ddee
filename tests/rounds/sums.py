"""What was tried and what failed, kept by commit in a file that is not in the repository."""

from __future__ import annotations

import subprocess
from pathlib import Path

import msgspec

FOLDER = Path(__file__).parents[2] / ".rounds"


class Sum(msgspec.Struct):
    """Of one kind of round: where the next run begins, how often each thing was tried, and what failed."""

    next: int = 0
    tried: dict[str, int] = msgspec.field(default_factory=dict)
    failed: list[str] = msgspec.field(default_factory=list)

    def count(self, what: str, said: str) -> None:
        """One more; with what went wrong, if anything did."""
        self.next += 1
        self.tried[what] = self.tried.get(what, 0) + 1
        if said:
            self.failed.append(f"{what}: {said}")

    def words(self) -> str:
        """`1,200 (job 300, card 900), 0 failed`."""
        of = ", ".join(f"{what} {count:,}" for what, count in sorted(self.tried.items()))
        return f"{sum(self.tried.values()):,} ({of}), {len(self.failed)} failed"


def commit() -> str:
    """The commit that stands here; with a mark where something is changed that is not in it."""
    here = Path(__file__).parent
    name = subprocess.run(
        ["git", "rev-parse", "--short=12", "HEAD"], capture_output=True, text=True, check=True, cwd=here
    ).stdout.strip()
    changed = subprocess.run(
        ["git", "status", "--porcelain", "-uno"], capture_output=True, text=True, check=True, cwd=here
    ).stdout
    return f"{name}-changed" if changed else name


def read(of: str) -> dict[str, Sum]:
    """The sums of a commit."""
    path = FOLDER / f"{of}.json"
    return msgspec.json.decode(path.read_bytes(), type=dict[str, Sum]) if path.exists() else {}


def write(of: str, sums: dict[str, Sum]) -> None:
    """Keep them."""
    FOLDER.mkdir(exist_ok=True)
    (FOLDER / f"{of}.json").write_bytes(msgspec.json.format(msgspec.json.encode(sums)))
