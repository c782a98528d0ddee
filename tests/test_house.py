"""The house rules that a reader would otherwise have to watch for."""

from __future__ import annotations

import ast
import re
import subprocess
from collections import Counter
from functools import cache
from pathlib import Path
from typing import NamedTuple

import pytest

import jobsheet

HERE = Path(__file__).resolve().parent.parent
SOURCE = sorted(Path(jobsheet.__file__).parent.rglob("*.py"))
#: What must never be printed of a plan, a cut or a figure (design.md).
NEVER = re.compile(r"\b(safe|approved|guaranteed)\b", re.IGNORECASE)


class Read(NamedTuple):
    """What is asked of a file of ours: its texts, and how long its functions are
    without what is said about them.
    """

    texts: tuple[str, ...]
    functions: tuple[int, ...]


@cache
def read(path: Path) -> Read:
    """A file, parsed once for all that is asked of it; its tree is not kept."""
    texts, functions = [], []
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Constant) and isinstance(node.value, str):
            texts.append(node.value)
        if isinstance(node, ast.FunctionDef):
            said = node.body[0]
            about = isinstance(said, ast.Expr) and isinstance(said.value, ast.Constant)
            words = (said.end_lineno or said.lineno) - said.lineno + 1 if about else 0
            functions.append((node.end_lineno or node.lineno) - node.lineno + 1 - words)
    return Read(tuple(texts), tuple(functions))


def test_words_that_are_never_printed():
    found = [
        f"{path}: {line}"
        for path in SOURCE
        for line in path.read_text(encoding="utf-8").splitlines()
        if "NEVER" not in line and not line.strip().startswith("#")
        if any(NEVER.search(one) for one in re.findall(r'"([^"]*)"', line))
    ]
    assert not found


def test_only_the_agreed_entries_at_the_top():
    done = subprocess.run(["git", "ls-files"], cwd=HERE, capture_output=True, text=True, check=False)
    if done.returncode:
        pytest.skip("not a checkout")
    visible = {line.split("/")[0] for line in done.stdout.splitlines() if not line.startswith(".")}
    assert visible <= {
        "README.md",
        "DEVELOPERS.md",
        "pyproject.toml",
        "jobsheet",
        "resources",
        "tests",
        "sample_jobs",
        "packaging",
    }


def _lines(path: Path) -> int:
    return len(path.read_text(encoding="utf-8").splitlines())


def _share(values: list[int], part: float) -> int:
    return sorted(values)[int(part * (len(values) - 1))]


def test_files_are_read_in_one_go():
    """Half of the files under a page, nine in ten under four, none with two subjects grown together."""
    sizes = {path: _lines(path) for path in SOURCE if path.name != "__init__.py"}
    assert not [(size, path.name) for path, size in sizes.items() if size > 450]
    assert _share(list(sizes.values()), 0.5) <= 85
    assert _share(list(sizes.values()), 0.9) <= 250


def test_functions_are_short():
    """Nine in ten fit a glance: their code, without what is said about them."""
    sizes = [size for path in SOURCE for size in read(path).functions]
    assert _share(sizes, 0.9) <= 22


def test_no_folder_is_crowded():
    crowd = Counter(path.parent for path in SOURCE if path.name != "__init__.py")
    assert not [(folder.name, count) for folder, count in crowd.items() if count > 30]


def test_a_name_of_a_file_says_one_thing():
    """A verb is called as it is typed, so what it shows has another name."""
    places = Counter(path.name for path in SOURCE if path.name != "__init__.py")
    assert not sorted(name for name, count in places.items() if count > 1)


ROOMS = [path for path in SOURCE if path.name == "__init__.py"]


@pytest.mark.parametrize("room", ROOMS, ids=lambda path: path.parent.relative_to(HERE).as_posix())
def test_every_room_says_what_lives_in_it_and_where_to_begin(room):
    """Two sentences at least, and the file to begin with is there."""
    said = " ".join((ast.get_docstring(ast.parse(room.read_text(encoding="utf-8"))) or "").split())
    assert len(re.findall(r"[.!](?= |$)", said)) >= 2
    begin = re.search(r"Begin (?:in|with|at) `([^`]+)`", said)
    assert begin, "say where to begin reading"
    assert any((above / begin[1]).is_file() for above in room.parents[:3]), begin[1]


#: Words that people stumbled over, and what stands in their place: they do not come back.
REPLACED = (
    "Cannot be reckoned", "No depth of this cut is carried", "Write it in", "Depth of a layer", "Feed a tooth",
    "feed a tooth", "Feed a turn", "feed a turn", "Hole that is there", "In your own words", "A bare number is in",
    "Done to it afterwards", "Faces that stay as bought", "Their bolts", "Its card of", "Every dial reading is another",
    "Of a section that stays empty", "It ends badly with", "Kept: width", "asks · torque", "slide dragged", "parted by",
    "the class value", "lost motion", "jobsheet explain",
)  # fmt: skip


def test_words_that_were_replaced_do_not_come_back():
    shown = {path: path.read_text(encoding="utf-8") for path in HERE.glob("resources/*.yaml")}
    for path in SOURCE:
        shown[path] = "\n".join(text for text in read(path).texts if not _is_about(text, path))
    assert not [(path, one) for path, text in shown.items() for one in REPLACED if one in text]


def _is_about(text: str, path: Path) -> bool:
    """Whether it is a docstring, which nobody sees but who reads the code; those of rules are shown."""
    return "\n" in text and "rules" not in path.parts


def test_nobody_is_shown_a_vise():
    """The other spelling is only read: where people's words and older files are."""
    shown = re.compile(r"(?<![A-Za-z|(])[Vv]ises?(?![A-Za-z|])")
    found = [(path.name, text) for path in SOURCE for text in read(path).texts if shown.search(text)]
    readers = {
        "older_words.py",
        "from_format_1.py",
        "bench_words.py",
        "cut_words.py",
        "vice.py",
        "all_holdings.py",
        "grip.py",
        "explained.py",
        "vice_checked_for_the_limits.py",
        "clear_below_a_through_hole.py",
        "hold_before_drilling.py",
    }
    assert not [one for one in found if one[0] not in readers]
