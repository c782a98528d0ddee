"""What the strict readers say of many spoilt files, and what they write back: kept as the pictures of the pages are.

A reading that is kept proves nothing of right or wrong, that is for the tests of each reader: it says that
something reads otherwise now. After a change that is meant, look through what changed in `readings.yaml`, then
`python -m tests.storage.kept_readings` writes it anew. The files were spoilt by chance, by the hand of
`mutated.py`; of some ten thousand those are kept that go a way through `storage` which none before them went.
"""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Iterator
from difflib import ndiff
from functools import cache
from pathlib import Path

import yaml

from jobsheet.catalog.reading.strict_yaml import parse
from jobsheet.errors import DocumentError, JobsheetError
from jobsheet.paths import resources, sample_jobs
from jobsheet.storage.cabinet_file import cabinet_from_text
from jobsheet.storage.job_file import job_from_text
from jobsheet.storage.job_writing import write_job
from jobsheet.storage.machine_file import machine_from_text
from jobsheet.storage.own_paper import problems as paper_problems
from jobsheet.storage.paper_file import paper_from_text
from jobsheet.storage.paper_text import paper_text
from jobsheet.storage.records.closed_records import END, id_of
from jobsheet.storage.records.proof_log import records_from
from jobsheet.storage.records.proof_record import record_text
from jobsheet.storage.records.run_log import runs_from
from jobsheet.storage.records.run_record import entry_text
from jobsheet.storage.shop_file import shop_from_text
from jobsheet.storage.steps_text import Copied, read_copied, write_copied
from tests.storage.mutated import WORKSHOP, _ran_text, _workshop
from tests.told import told

HERE = Path(__file__).parent
FILE = HERE / "readings.yaml"
_JOBS = (
    sample_jobs(),
    HERE.parent / "operations" / "jobs",
    HERE.parent / "review" / "jobs",
    HERE / "files",
    HERE.parent / "old" / "format-1" / "jobs",
)
Lines = Iterator[str]


@cache
def good(kind: str, base: str) -> str:
    """A good file of that kind by its name."""
    if kind in ("card", "card as typed"):
        folder = resources() / (
            "machines" if (resources() / "machines" / f"{base}.yaml").exists() else "machine-classes"
        )
        return (folder / f"{base}.yaml").read_text("utf-8")
    if kind in ("cabinet", "cabinet as typed"):
        return (resources() / "cabinets" / f"{base}.yaml").read_text("utf-8")
    if kind == "log":
        return (resources() / "proof" / f"{base}.txt").read_text("utf-8")
    if kind == "job":
        return next(path for home in _JOBS if (path := home / f"{base}.yaml").exists()).read_text("utf-8")
    if kind == "copied":
        job = job_from_text(good("job", base), "job.yaml")
        return write_copied(Copied(units=job.units, set_ups=job.set_ups))
    if kind == "workshop":
        return _workshop() if base == "every number" else WORKSHOP
    return _ran_text()


def spoilt(asked: dict) -> str:
    """The file with its changes: from that line on, so many lines out, these in their place."""
    lines = good(asked["kind"], asked["base"]).split("\n")
    for first, out, new in sorted(asked["changes"], key=lambda one: int(one[0]), reverse=True):
        lines[int(first) - 1 : int(first) - 1 + int(out)] = new
    return closed_anew(lines) if "closed" in asked else "\n".join(lines)


def closed_anew(lines: list[str]) -> str:
    """Records with the closing lines that are right for what stands in them: not torn, but wrong."""
    made: list[str] = []
    block: list[str] = []
    for line in lines:
        if line.startswith(f"{END}: "):
            made += [*block, f"{END}: {id_of(one for one in block if not one.startswith('#'))}"]
            block = []
        elif line.strip() and not line.startswith("format"):
            block.append(line)
        else:
            made += [*block, line]
            block = []
    return "\n".join([*made, *block])


def _differs(before: str, after: str) -> Lines:
    """What is written otherwise than before."""
    yield from (line for line in ndiff(before.split("\n"), after.split("\n")) if line[:1] in "+-")


def _job(text: str, before: str) -> Lines:
    yield from _differs(
        write_job(job_from_text(before, "job.yaml")), write_job(job_from_text(text, "job.yaml"))
    )


def _record(read: Callable[[str], object]) -> Callable[[str, str], Lines]:
    """By what a file means, field by field."""

    def lines(text: str, before: str) -> Lines:
        was, now = (_fields(read(one)) for one in (before, text))
        yield from _differs("\n".join(was), "\n".join(now))

    return lines


def _fields(value) -> list[str]:
    return [f"{name}: {told(getattr(value, name))}" for name in value.__struct_fields__]


def _cabinet(text: str, before: str) -> Lines:
    was, now = ("\n".join(map(told, cabinet_from_text(one, "cabinet.yaml").things)) for one in (before, text))
    yield from _differs(was, now)


def _problems(problems) -> Lines:
    yield from (f"! {one}" for one in problems)


def _log(text: str, before: str) -> Lines:
    found, problems = records_from(text.encode("utf-8", "surrogatepass"))
    yield from _problems(problems)
    was = "".join(map(record_text, records_from(before.encode())[0]))
    yield from _differs(was, "".join(map(record_text, found)))


def _ran(text: str, before: str) -> Lines:
    found, problems = runs_from(text.encode("utf-8", "surrogatepass"))
    yield from _problems(problems)
    was = runs_from(before.encode())[0]
    yield from _differs("".join(map(entry_text, was.entries)), "".join(map(entry_text, found.entries)))


def _typed(read: Callable[[str, str], object]) -> Callable[[str, str], Lines]:
    """A paper that is edited: what nobody understands stays, what is wrong is said at its field."""

    def lines(text: str, before: str) -> Lines:
        paper = paper_from_text(text, "paper.yaml")
        yield from _differs(paper_text(paper_from_text(before, "paper.yaml")), paper_text(paper))
        yield from _problems(paper_problems(paper, "paper.yaml", read)[1])

    return lines


def _copied(text: str, before: str) -> Lines:
    yield from _differs(write_copied(read_copied(before)), write_copied(read_copied(text)))


READERS: dict[str, Callable[[str, str], Lines]] = {
    "job": _job,
    "card": _record(lambda text: machine_from_text(text, "card.yaml", "card")),
    "card as typed": _typed(lambda text, name: machine_from_text(text, name, "card")),
    "cabinet": _cabinet,
    "cabinet as typed": _typed(cabinet_from_text),
    "log": _log,
    "ran": _ran,
    "workshop": _record(lambda text: shop_from_text(parse(text, "workshop.yaml"), "workshop.yaml")),
    "copied": _copied,
}


def reading(asked: dict) -> list[str]:
    """What is said: every problem, or what the file means otherwise than the good one."""
    lines: list[str] = []
    before = good(asked["kind"], asked["base"])
    try:
        lines.extend(READERS[asked["kind"]](spoilt(asked), before))
    except DocumentError as error:
        lines += [f"! {one}" for one in error.problems]
    except JobsheetError as error:
        lines.append(f"! {error}")
    return lines


def quoted(value: object) -> str:
    """As YAML in one line: signs that may not stand in a file are written by their numbers."""
    return re.sub(
        "[\x7f-\x9f\u2028\u2029\ufeff\ufffe\uffff]",
        lambda sign: f"\\u{ord(sign[0]):04x}",
        json.dumps(value, ensure_ascii=False),
    )


def files() -> list[dict]:
    """Each spoilt file, with what was said of it."""
    return yaml.load(FILE.read_text(encoding="utf-8"), yaml.CBaseLoader)


def write(kept: list[dict]) -> None:
    """Write every file with what is said of it now."""
    lines = []
    for one in kept:
        first = "- "
        for name, value in one.items():
            if name != "says":
                lines.append(f"{first}{name}: {quoted(value)}")
                first = "  "
        said = [quoted(line) for line in reading(one)]
        lines += ["  says:", *(f"    - {line}" for line in said)] if said else ["  says: []"]
    FILE.write_text("\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    write(files())
