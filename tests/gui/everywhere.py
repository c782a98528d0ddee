"""The same words in every text field of a job, a card and a cabinet: a line at a
time, kept where the reader takes it.
"""

import json
import re
import shutil

from jobsheet.catalog.reading.strict_yaml import read_file
from jobsheet.errors import JobsheetError
from jobsheet.paths import own_folder, resources, sample_jobs
from jobsheet.storage.cabinet_file import cabinet_from_text
from jobsheet.storage.job_file import job_from_text
from jobsheet.storage.machine_file import machine_from_text

SAMPLE = sample_jobs() / "hm-100-drilled-plate-b1.yaml"
#: Fields of the sample that may be empty, and stand in it nowhere.
MORE = {"        kind: ": ("what", "note"), "    holding:": ("  note",), "    number: ": ("note",)}
#: What the window is opened with stays: the rest of the file hangs on it.
KEPT = ("machine", "kind", "key", "workshop", "units", "card hash", "card date")


def filled(text, words, read):
    """The text of a file with the words in every field that takes them; how many those are.

    Each field is tried alone, in a file that is otherwise short: with long words everywhere
    each reading takes five times as long.
    """
    lines, taken = text.splitlines(), {}
    for at, line in enumerate(lines):
        found = re.match(r"^(\s*(?:- )?([a-z ]+): )[^\[{]", line)
        if found is None or found[2] in KEPT:
            continue
        with_words = found[1] + json.dumps(words, ensure_ascii=False)
        try:
            read("\n".join([*lines[:at], with_words, *lines[at + 1 :]]) + "\n")
        except JobsheetError:
            continue
        taken[at] = with_words
    kept = together({}, list(taken.items()), lambda some: read(laid(lines, some)))
    return laid(lines, kept), len(kept)


def laid(lines, others):
    """The text of these lines with others at some places."""
    return "\n".join(others.get(at, line) for at, line in enumerate(lines)) + "\n"


def together(kept, more, read):
    """What was kept, and of more all that can be read beside it: two fields that
    may not say the same take turns.
    """
    try:
        read(kept | dict(more))
    except JobsheetError:
        if len(more) == 1:
            return kept
        half = len(more) // 2
        return together(together(kept, more[:half], read), more[half:], read)
    return kept | dict(more)


def with_more(text):
    """The sample with the fields that it leaves empty."""
    lines = []
    for line in text.splitlines():
        lines.append(line)
        for start, names in MORE.items():
            if line.startswith(start):
                deep = start[: len(start) - len(start.lstrip())]
                lines += [f"{deep}{name}: x" for name in names]
    seen, kept = set(), []
    for line in reversed(lines):  # an own line of the sample goes before one that was put in
        key = line.split(":")[0]
        if line.lstrip().startswith("- key: "):
            seen = set()
        elif line.endswith(": x") and key in seen:
            continue
        seen.add(key)
        kept.append(line)
    return "\n".join(reversed(kept)) + "\n"


def lay_everything(words):
    """A job with these words everywhere, for a card and a cabinet of the own folder that have them too."""
    folder = own_folder()
    (folder / "machines").mkdir(parents=True, exist_ok=True)
    card = read_file(resources() / "machines" / "bench-mill-b-1.yaml")
    card, in_card = filled(card, words, lambda text: machine_from_text(text, "card", "mine"))
    (folder / "machines" / "mine.yaml").write_text(card, encoding="utf-8")
    shutil.copy(folder / "machines" / "mine.yaml", folder / "machines" / "other.yaml")
    cabinet = read_file(resources() / "cabinets" / "harrowmoss.yaml")
    cabinet, in_cabinet = filled(cabinet, words, lambda text: cabinet_from_text(text, "cabinet", own=True))
    (folder / "cabinet.yaml").write_text(cabinet, encoding="utf-8")
    job = with_more(read_file(SAMPLE)).replace("machine: bench-mill-b-1", "machine: mine")
    job, in_job = filled(job, words, lambda text: job_from_text(text, "job"))
    path = folder / "everywhere.yaml"
    path.write_text(job, encoding="utf-8")
    return path, (in_job, in_card, in_cabinet)
