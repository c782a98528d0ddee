"""Says what another checkout of the program gives that this one does not:
`python -m tests.compare_checkouts OLD NEW`.

Both are asked the same, each in a process of its own with an empty folder of the person: figures, remarks and
dials of every sample and of every kind's small job, the bytes of the sheets on both papers, the picture of
the finished work. What differs is printed, place by place; the exit code is then 1. The jobs are those of
OLD. A sheet bears the day it was made, so do not compare over midnight.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

FOLDERS = ("sample_jobs", "tests/operations/jobs")
#: Of what differs so many places are printed for one answer; after that, how many more there are.
SHOWN = 12

#: Runs in each checkout: the jobs come in, one line of JSON goes out for each.
ASK = """
import contextlib, hashlib, io, json, sys
from pathlib import Path
from jobsheet.__main__ import main

def ask(*words):
    out, err = io.StringIO(), io.StringIO()
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
        code = main(list(words))
    return code, out.getvalue(), err.getvalue()

def read(*words):
    code, out, err = ask(*words)
    try:
        return {"code": code, "said": json.loads(out), "problem": err}
    except ValueError:
        return {"code": code, "said": out, "problem": err}

def made(name, *words):
    target = Path(name)
    code, out, err = ask(*words, "-o", str(target))
    digest = hashlib.sha256(target.read_bytes()).hexdigest() if target.exists() else ""
    target.unlink(missing_ok=True)
    return {"code": code, "bytes": digest, "said": out, "problem": err}

for job in sys.stdin.read().split("\\n"):
    answers = {verb: read(verb, job, "--json") for verb in ("figures", "check", "dials")}
    for paper in ("a4", "letter"):
        answers[f"sheet on {paper}"] = made("sheet.pdf", "sheet", job, "--paper", paper)
    answers["picture"] = made("picture.svg", "picture", job)
    print(json.dumps(answers), flush=True)
"""


def jobs_of(checkout: Path) -> list[Path]:
    """Every job that is asked about."""
    found = [path for folder in FOLDERS for path in sorted((checkout / folder).glob("*.yaml"))]
    if not found:
        sys.exit(f"{checkout} has no jobs: name a checkout of this repository.")
    return found


def start(checkout: Path, jobs: list[Path], scratch: Path) -> subprocess.Popen[str]:
    """Ask one checkout about all jobs."""
    scratch.mkdir()
    variables = {
        **os.environ,
        "PYTHONPATH": str(checkout),
        "JOBSHEET_HOME": str(scratch / "home"),
        "PYTHONHASHSEED": "0",
    }
    process = subprocess.Popen(
        [sys.executable, "-P", "-c", ASK],
        cwd=scratch,
        env=variables,
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        encoding="utf-8",
    )
    assert process.stdin is not None
    process.stdin.write("\n".join(map(str, jobs)))
    process.stdin.close()
    return process


def differences(old: Any, new: Any, where: str = "") -> Iterator[str]:
    """Every place where the two are not the same, to the last bit."""
    if isinstance(old, dict) and isinstance(new, dict):
        for name in [*old, *(name for name in new if name not in old)]:
            if name not in old or name not in new:
                yield f"{where}.{name}: only in the {'new' if name in new else 'old'} one"
            else:
                yield from differences(old[name], new[name], f"{where}.{name}")
    elif isinstance(old, list) and isinstance(new, list) and len(old) == len(new):
        for index, (was, now) in enumerate(zip(old, new, strict=True)):
            yield from differences(was, now, f"{where}[{index}]")
    elif isinstance(old, list) and isinstance(new, list):
        yield f"{where}: {len(old)} became {len(new)}"
        yield from (f"{where}: gone: {one}" for one in old if one not in new)
        yield from (f"{where}: new: {one}" for one in new if one not in old)
    elif old != new:
        yield f"{where}: {old!r} became {new!r}"


def compare(old: Path, new: Path) -> int:
    """Print what differs; how many answers do."""
    jobs = jobs_of(old)
    with tempfile.TemporaryDirectory() as folder:
        asked = [start(each, jobs, Path(folder, name)) for each, name in ((old, "old"), (new, "new"))]
        differing = answered = 0
        for job in jobs:
            lines = [process.stdout.readline() if process.stdout else "" for process in asked]
            if not all(lines):
                sys.exit(f"{job.name}: {(new, old)[not lines[0]]} stopped answering.")
            was, now = map(json.loads, lines)
            for verb in was:
                answered += 1
                found = list(differences(was[verb], now[verb]))
                differing += bool(found)
                more = [f"and {len(found) - SHOWN} more"] if len(found) > SHOWN else []
                for line in [*found[:SHOWN], *more]:
                    print(f"{job.stem}, {verb}: {line}")
        for process in asked:
            process.wait()
    print(f"{len(jobs)} jobs, {answered} answers, {differing} of them differ.")
    return differing


def main() -> int:
    """The command line."""
    if len(sys.argv) != 3:
        sys.exit("python -m tests.compare_checkouts OLD NEW")
    old, new = (Path(name).resolve() for name in sys.argv[1:])
    return 1 if compare(old, new) else 0


if __name__ == "__main__":
    sys.exit(main())
