"""Files as a slip, a torn disk or a hostile hand leaves them: mutations by seed, for every reader of ours."""

from __future__ import annotations

import random
import re
from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path

import msgspec
from msgspec.structs import replace

from jobsheet.catalog.metals.own_materials import _Maker
from jobsheet.catalog.reading.own_files import OwnFile, _plain
from jobsheet.catalog.reading.strict_yaml import parse
from jobsheet.errors import DocumentError, JobsheetError
from jobsheet.model.job import Job
from jobsheet.model.what_ran import Entry
from jobsheet.operations.registry import kinds
from jobsheet.paths import resources, sample_jobs
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.engine import reviewed
from jobsheet.review.notes.notes import notes_for
from jobsheet.review.plan.solid_facts import facts_of
from jobsheet.storage.cabinet_file import cabinet_from_text
from jobsheet.storage.job_file import job_from_text
from jobsheet.storage.job_writing import write_job
from jobsheet.storage.machine_file import machine_from_text
from jobsheet.storage.records.proof_log import records_from
from jobsheet.storage.records.run_log import runs_from
from jobsheet.storage.records.run_record import entry_text
from jobsheet.storage.shop_file import OPINIONS, PLACE, SHOP, shop_from_text

HERE = Path(__file__).parent.parent
#: What breaks readers: signs that other notations know, numbers that are none,
#: characters that no file may hold.
NASTY = (
    "nan", "inf", "-inf", "-300 N", "1e999", "1e-999", "²", "½", "٣", "0", "-1", "50", "99999999999999999999", "x" * 300, "'", '"',
    "#7", "*a", "&a", "!!python/object:os.system", "|", ">", "{", "}", "[", "]", "---", "...", ":", ": ", "- ", "\t", "  ", "",
    "\x85", "\x9f", "\x1b[31m", "\x00", "\ufffe", "\uffff", "\u202e", "\ud7ff", "\U0010ffff", "µ", "\r", "\n", "\n\n", "yes", "no",
    "~", "null", "12:30", "format: 99", "kind: " + "k" * 300, "0 mm", "-5 mm", "1/0", "1/0 in", "1 1/0", "%", "<img src=x>", "@", "`",
    "9" * 5000, '"\\x85"', '"\\ud800"', '"\\uffff"', '"\\e[31m"', '"\\0"', "\u2028", "[nan, nan]", "[0, 0]", "[]", "{}", "[[]]", "through",
    "0.0001", "1e-9 mm", "60", "6000", "12 mm", "end mill 0 mm", "end mill 12 mm, 0 teeth", "drill #99", "M0", "M1e9", "1/4-0", "Ra 0",
    "circle of 0 on 40 around 50, 30", "circle of 99999999 on 40 around 50, 30", "row of 5 from 0, 0 by 0, 0", "16 H7", "40 ±50", "square nan",
    "top", "front", "left", "S235", "bench-mill-b-1", "../../etc/passwd", "in", "mm",
)  # fmt: skip


#: Of two numbers that belong together the greater one.
GREATER = ("strong_push", "strong_wrench", "stuck_crank", "most_finish", "close_limits", "fastest_pace")


def _workshop() -> str:
    """Every number of a workshop, with the least that it can be, or the most."""
    lines = [
        f"{one.name.replace('_', ' ')}: {(one.high if one.name in GREATER else one.low) or one.choices[0]}"
        for one in (*SHOP, *OPINIONS, *PLACE)
    ]
    return "\n".join(["format: 1", *lines]) + "\n"


WORKSHOP = "format: 1\nslowest pace: 10 rpm\nstrong push: 180 N\nclimb milling: never\npecks solid: 3\ncountry: none\n"


def _ran_text() -> str:
    base = Entry(
        job="HM-103",
        plan="D495-6QV9-7Y6",
        revision=2,
        machine="knee-mill-k-2",
        date="2026-12-02",
        about="step",
    )
    return "format: 1\n\n" + "\n".join(
        entry_text(one)
        for one in (
            replace(
                base,
                key="a",
                number=70,
                step="Step",
                outcome="noisy",
                layer=2,
                depth=4e-3,
                speed=5.0,
                note="rang\nat 4",
            ),
            replace(base, about="size", size="80.0", found=0.08002),
            replace(base, about="minutes", setting_up=2100.0, cutting=1260.0, set_up=5),
            replace(base, about="change", change="lighter"),
        )
    )


@cache
def corpora() -> dict[str, tuple[str, ...]]:
    """Good files of each kind."""

    def texts(*places: tuple[Path, str]) -> tuple[str, ...]:
        return tuple(path.read_text("utf-8") for folder, mask in places for path in sorted(folder.glob(mask)))

    return {
        "job": texts((sample_jobs(), "*.yaml"), (HERE / "operations" / "jobs", "*.yaml"), (HERE / "review" / "jobs", "*.yaml")),
        "card": texts((resources() / "machines", "*.yaml"), (resources() / "machine-classes", "*.yaml")),
        "cabinet": texts((resources() / "cabinets", "*.yaml")),
        "log": texts((resources() / "proof", "*.txt")),
        "workshop": (WORKSHOP, _workshop()),
        "ran": (_ran_text(),),
    }  # fmt: skip


def _log(text: str) -> None:
    """A log is never refused whole: what is wrong stands beside what counts."""
    _, problems = records_from(text.encode("utf-8", "surrogatepass"))
    if problems:
        raise DocumentError("log.txt", problems)


def _ran(text: str) -> None:
    """What happened with a job is read as a log is."""
    _, problems = runs_from(text.encode("utf-8", "surrogatepass"))
    if problems:
        raise DocumentError("job.ran.txt", problems)


MATERIALS = """\
family: copper
materials:
  Bronze from the shelf:
    also: [shelf bronze]
    family: copper
    iso: N
    kc11: 900 MPa
    mc: 0.27
    kd: {value: 14000, source: mh-m, trust: interpolated}
    k second: 0.5
    speeds: {mill: 25 m/min, drill: {value: 20 m/min, source: own, trust: own}}
    hazards: []
    work hardens: no
"""


def materials_from(text: str) -> None:
    """A file of one's own materials, as it is taken up with those that came along."""
    lines: dict[tuple[str, ...], int] = {}
    name = "mine.yaml"
    maker = _Maker()
    maker.take(OwnFile(name, _plain(parse(text, name), (), lines), lines))
    maker.made()
    for _, problems in maker.problems:
        raise DocumentError(name, problems)


READERS: dict[str, Callable[[str], object]] = {
    "job": lambda text: job_from_text(text, "job.yaml"),
    "card": lambda text: machine_from_text(text, "card.yaml", "card"),
    "cabinet": lambda text: cabinet_from_text(text, "cabinet.yaml"),
    "log": _log,
    "ran": _ran,
    "workshop": lambda text: shop_from_text(parse(text, "workshop.yaml"), "workshop.yaml"),
}


def _value(line: str, chance: random.Random) -> str:
    """The line with another value behind its name, or behind one of several in braces."""
    inside = [found.span(1) for found in re.finditer(r"[{,]\s*[a-z ]+: ([^,}]*)", line)]
    if inside:
        start, end = chance.choice(inside)
        return line[:start] + chance.choice(NASTY) + line[end:]
    name, colon, _ = line.partition(":")
    return f"{name}{colon} {chance.choice(NASTY)}" if colon else chance.choice(NASTY)


def _kind(line: str, chance: random.Random) -> str:
    """A step of another kind, with the fields of this one; elsewhere another value."""
    if line.lstrip("- ").startswith("kind:"):
        return f"{line.partition(':')[0]}: {chance.choice(kinds())}"
    return _value(line, chance)


def _line(lines: list[str], chance: random.Random) -> None:
    """One change of whole lines or of what stands in one."""
    at = chance.randrange(len(lines))
    line = lines[at]
    match chance.randrange(13):
        case 0:
            del lines[at]
        case 1:
            lines.insert(at, line)
        case 2:
            other = chance.randrange(len(lines))
            lines[at], lines[other] = lines[other], line
        case 3:
            lines[at] = " " * chance.choice((1, 2, 3)) + line
        case 4:
            lines[at] = line.removeprefix(" " * chance.choice((1, 2, 4)))
        case 5 | 6 | 7:
            lines[at] = _value(line, chance)
        case 8:
            lines[at] = _kind(line, chance)
        case 9:
            lines[at] = line.partition(":")[0] + ":"
        case 10:
            place = chance.randrange(len(line) + 1)
            lines[at] = line[:place] + chance.choice(NASTY) + line[place:]
        case 11:
            # Another value of the same file, where it does not belong.
            other = chance.choice(lines).partition(":")[2]
            lines[at] = line.partition(":")[0] + ":" + other
        case _:
            place = chance.randrange(len(line) + 1)
            lines[at] = line[:place] + line[place + chance.choice((1, 2, 5)) :]


def mutated(text: str, chance: random.Random) -> str:
    """A text with one to four changes, now and then cut off."""
    lines = text.split("\n")
    for _ in range(chance.choice((1, 1, 1, 2, 2, 3, 4))):
        if lines:
            _line(lines, chance)
    made = "\n".join(lines)
    return made[: chance.randrange(len(made) + 1)] if chance.random() < 0.04 else made


def rounds(count: int, seed: int, first: int = 0) -> Iterator[tuple[str, str]]:
    """So many mutated files from that one on, every kind in turn: the kind and the text."""
    good = corpora()
    names = tuple(good)
    for index in range(first, first + count):
        chance = random.Random(f"{seed}-{index}")
        kind = names[index % len(names)]
        yield kind, mutated(chance.choice(good[kind]), chance)


@cache
def _values() -> dict[str, tuple[str, ...]]:
    """What stands behind each name in any good job: slips that a reader takes."""
    found: dict[str, dict[str, None]] = {}
    for text in corpora()["job"]:
        for line in text.split("\n"):
            name, colon, value = line.strip().removeprefix("- ").partition(": ")
            if colon and value not in ("|-", ""):
                found.setdefault(name, {})[value] = None
    return {name: tuple(values) for name, values in found.items()}


def slips(text: str, chance: random.Random) -> str:
    """A job with one to five values as a person mistypes them: a point lost, another step's
    value, a field or a step left out.
    """
    lines = text.split("\n")
    fields = [
        at for at, line in enumerate(lines) if re.match(r"\s*(- )?[a-z ]+: \S", line) and "key:" not in line
    ]
    for at in sorted(chance.sample(fields, min(len(fields), chance.choice((1, 1, 2, 3, 5)))), reverse=True):
        name, _, value = lines[at].partition(": ")
        plain = name.strip().removeprefix("- ")
        match chance.randrange(4):
            case 0 if re.match(r"[\d.]+", value):
                number = float(re.match(r"\d*\.?\d*", value)[0] or 0) * chance.choice((0.01, 0.1, 10, 100))
                lines[at] = f"{name}: {number:.6f}".rstrip("0").rstrip(".") + re.sub(r"^[\d.]+", "", value)
            case 1 if not lines[at].lstrip().startswith("-"):
                del lines[at]
            case _:
                lines[at] = f"{name}: {chance.choice(_values().get(plain, (value,)))}"
    return "\n".join(lines)


def slipped(count: int, seed: int, first: int = 0) -> Iterator[tuple[int, str]]:
    """So many jobs with slips, from that one on."""
    for index in range(first, first + count):
        chance = random.Random(f"{seed}-slip-{index}")
        yield index, slips(chance.choice(corpora()["job"]), chance)


def every_value() -> Iterator[tuple[str, str]]:
    """Every line of one good file of each kind, with every nasty value in the place of its own."""
    for kind, texts in corpora().items():
        lines = texts[-1 if kind == "workshop" else 0].split("\n")
        for at, line in enumerate(lines):
            for nasty in NASTY if line.strip() and not line.startswith("#") else ():
                spoilt = f"{line.partition(':')[0]}: {nasty}"
                yield kind, "\n".join([*lines[:at], spoilt, *lines[at + 1 :]])


def what_is_wrong(kind: str, text: str) -> str:
    """Nothing where the reader took the file or refused it as it should; else what happened instead."""
    return wrong_in(READERS[kind], text)


def wrong_in(reader: Callable[[str], object], text: str) -> str:
    """The same for any reader."""
    try:
        reader(text)
    except DocumentError as refused:
        if not refused.problems:
            return "refused without a problem"
        bare = [problem for problem in refused.problems if not problem.line]
        return f"no line: {bare[0]}" if bare else ""
    except Exception as error:  # noqa: BLE001  this is the question
        return f"{type(error).__name__}: {error}"
    return ""


def read_through(job: Job) -> str:
    """Nothing where figures, review and solids of a job say what they say; else what failed."""
    try:
        if job_from_text(write_job(job), "again.yaml") != job:
            return "it comes back as another job"
        reckoned = Reckoner().reckon(job)
        notes_for(job, reckoned)
        read = reviewed(job, reckoned, facts_of(job, reckoned))
    except JobsheetError as error:
        return "" if str(error).strip() else "refused without a sentence"
    except Exception as error:  # noqa: BLE001  this is the question
        return f"{type(error).__name__}: {error}"
    said = [one.problem for one in reckoned.operations.values()] + [one.words() for one in read.not_checked]
    broken = [words for words in said if "the program failed here" in words]
    return broken[0] if broken else ""


def loaded(text: str) -> Job | None:
    """The job in a text; None where it is refused."""
    try:
        return job_from_text(text, "job.yaml")
    except JobsheetError:
        return None


def journals(count: int, seed: int) -> Iterator[bytes]:
    """Journals as a crash may leave them: cut off, with other bytes, of another make."""
    whole = msgspec.json.encode(
        {"job": corpora()["job"][0], "drafts": [["a", "b", "c"]], "path": "x", "name": "y", "digest": "z"}
    )
    for index in range(count):
        chance = random.Random(f"{seed}-journal-{index}")
        made = bytearray(whole)
        for _ in range(chance.choice((1, 1, 2, 8))):
            made[chance.randrange(len(made))] = chance.randrange(256)
        yield bytes(made[: chance.randrange(len(made))] if chance.random() < 0.3 else made)
