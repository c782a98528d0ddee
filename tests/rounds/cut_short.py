"""Writers that are killed at any moment, two at one file, and disks that refuse,
each in a process of its own.
"""

from __future__ import annotations

import os
import random
import resource
import select
import shutil
import signal
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from jobsheet.errors import JobsheetError
from tests.rounds.writers import WRITERS, Writer, made_ready

#: A writer is killed so long after it said its first value, at most [s].
LONGEST = 0.03
#: So many rounds go on in the same folder: what only grows is soon too long to be written quickly.
TOGETHER = 12
#: Nobody: a folder that only the owner may write to is read-only for this one.
NOBODY = 65534


@contextmanager
def a_home() -> Iterator[Path]:
    """A folder, and in it a home of one's own; the one of before comes back."""
    before = os.environ.get("JOBSHEET_HOME")
    with tempfile.TemporaryDirectory() as name:
        os.environ["JOBSHEET_HOME"] = str(Path(name) / "home")
        (Path(name) / "home").mkdir()
        (Path(name) / "work").mkdir()
        try:
            yield Path(name)
        finally:
            if before is None:
                del os.environ["JOBSHEET_HOME"]
            else:
                os.environ["JOBSHEET_HOME"] = before


class Child:
    """A process that writes one value after the other and says each once it is written."""

    def __init__(self, work: Callable[[Callable[[str], None]], None]) -> None:
        self._read, write = os.pipe()
        self._pid = os.fork()
        if not self._pid:
            os.close(self._read)
            code = 1
            try:
                work(lambda said: void(os.write(write, f"{said}\n".encode())))
                code = 0
            except BaseException as error:  # noqa: BLE001  whatever it is, the parent must hear of it
                os.write(write, f"!{type(error).__name__}: {' '.join(str(error).split())}\n".encode())
            finally:
                os._exit(code)
        os.close(write)

    def wait_for_first(self) -> None:
        """Until it says something, or is gone."""
        select.select([self._read], [], [], 20)

    def end(self, how: int | None = None) -> list[str]:
        """All that it said; killed first, where that is asked."""
        if how is not None:
            os.kill(self._pid, how)
        raw = bytearray()
        while part := os.read(self._read, 65536):
            raw += part
        os.close(self._read)
        os.waitpid(self._pid, 0)
        return raw.decode("utf-8", "replace").split("\n")[:-1]


def void(_: object) -> None:
    """Nothing."""


def _looked(writer: Writer, folder: Path, said: list[str]) -> str:
    """What is wrong in a folder; an error of the reader is wrong too."""
    try:
        return writer.wrong(folder, said)
    except Exception as error:  # noqa: BLE001  this is the question
        return f"{type(error).__name__}: {' '.join(str(error).split())[:300]}"


def _fell(lines: list[str]) -> tuple[list[str], str]:
    """What a child said, and how it fell where it did."""
    return [one for one in lines if not one.startswith("!")], next(
        (one[1:] for one in lines if one.startswith("!")), ""
    )


def killed(seed: int, first: int) -> Iterator[tuple[str, str]]:
    """Writers in turn, each killed at a moment of chance: which, and what was wrong afterwards."""
    made_ready()
    index = first
    while True:
        for name, writer in WRITERS.items():
            writer_said: list[str] = []
            with a_home() as home:
                count = 0
                for _ in range(TOGETHER):
                    chance = random.Random(f"{seed}-{index}")
                    index += 1

                    def work(say: Callable[[str], None], begin: int = count) -> None:
                        at = begin
                        while True:
                            at += 1
                            say(writer.write(home / "work", at))  # noqa: B023  used at once

                    child = Child(work)
                    child.wait_for_first()
                    time.sleep(chance.random() * LONGEST)
                    said, fell = _fell(child.end(signal.SIGKILL))
                    writer_said += said
                    count += len(said) + 1
                    yield name, fell or _looked(writer, home / "work", writer_said)
                    if name == "journal":
                        shutil.rmtree(home / "home" / "journal", ignore_errors=True)
                        writer_said.clear()


def two(seed: int, first: int) -> Iterator[tuple[str, str]]:
    """Two at one file: each says what it wrote or is refused with a sentence, and
    what stands there in the end is whole.
    """
    made_ready()
    index = first
    while True:
        for name, writer in WRITERS.items():
            chance = random.Random(f"{seed}-two-{index}")
            index += 1
            with a_home() as home:

                def work(say: Callable[[str], None], begin: int, rounds: int) -> None:
                    for at in range(begin, begin + 2 * rounds, 2):
                        try:
                            say(writer.write(home / "work", at))  # noqa: B023  used at once
                        except JobsheetError:
                            continue

                children = [
                    Child(lambda say, begin=begin, rounds=rounds: work(say, begin, rounds))  # type: ignore[misc]
                    for begin, rounds in ((1, chance.randint(1, 6)), (2, chance.randint(1, 6)))
                ]
                ends = [_fell(child.end()) for child in children]
                grows = name in ("closed plan", "record of a job", "proof log")
                said = [one for lines, _ in ends for one in lines] if grows else []
                yield (
                    name,
                    next((fell for _, fell in ends if fell), "") or _looked(writer, home / "work", said),
                )


def _full(chance: random.Random, _home: Path) -> None:
    """The disk takes so many bytes of a file and no more."""
    signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
    room = chance.choice((0, 1, chance.randrange(4000), chance.randrange(40_000)))
    resource.setrlimit(resource.RLIMIT_FSIZE, (room, room))


def _read_only(_chance: random.Random, home: Path) -> None:
    """Folders that one may look at and not write to."""
    for folder in (home, *(one for one in home.rglob("*") if one.is_dir())):
        folder.chmod(0o755)
    os.setuid(NOBODY)


def _gone(_chance: random.Random, home: Path) -> None:
    """The folder was taken away."""
    shutil.rmtree(home / "work")


def _earlier(chance: random.Random, _home: Path) -> None:
    """The clock was set back."""
    back = chance.choice((3600.0, 86400.0 * 400, 1.7e9))
    real, exact = time.time, time.time_ns
    time.time = lambda: real() - back
    time.time_ns = lambda: exact() - int(back * 1e9)


#: What a disk does, and whether a writer may do its work all the same.
WAYS = {"full": _full, "read-only": _read_only, "gone": _gone, "clock back": _earlier}


def refused(seed: int, first: int) -> Iterator[tuple[str, str]]:
    """A disk that refuses: a sentence is said and nothing else, and what stood there before still stands."""
    made_ready()
    index = first
    while True:
        for name, writer in WRITERS.items():
            for way, spoil in WAYS.items():
                chance = random.Random(f"{seed}-refused-{index}")
                index += 1
                with a_home() as home:
                    before = Child(lambda say: say(writer.write(home / "work", 1)))  # noqa: B023
                    said, fell = _fell(before.end())

                    def work(say: Callable[[str], None]) -> None:
                        spoil(chance, home)  # noqa: B023
                        try:
                            say(writer.write(home / "work", 2))  # noqa: B023
                        except JobsheetError as error:
                            if not str(error).strip():
                                raise AssertionError("refused without a sentence") from None

                    later, fell_too = _fell(Child(work).end())
                    if way == "gone":
                        said = later if (home / "work").exists() else []
                    else:
                        said += later
                    yield f"{name}, {way}", fell or fell_too or _looked(writer, home / "work", said)
