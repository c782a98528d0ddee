"""One of each skeleton in a copy of the house: as written it passes lint, form, types,
imports, its own test and the house's.

Types and the tests of all neighbours take minutes, so that they run with `--long` only.
"""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.new.__main__ import ROOT, added_under, filled, parts, sorts, write

#: What is made in the copy: names that no file of the house has.
MADE = (
    ("kind", "brush down", ""),
    ("rule", "not too many parts", "order"),
    ("limit", "hold of a brush", ""),
    ("material", "plain trial steel", "steel"),
    ("verb", "count", ""),
    ("holding", "block with pins", ""),
    ("place", "step count", ""),
)
#: What the house asks of whatever is added.
HOUSE = ("tests/test_house.py", "tests/test_kind_names.py", "tests/test_docs.py", "tests/gui/test_places.py")
#: What their neighbours ask of each of their kind.
NEIGHBOURS = (
    "tests/operations/test_every_kind.py",
    "tests/operations/test_reads.py",
    "tests/operations/test_row_words.py",
    "tests/review/test_help_pages.py",
    "tests/review/test_rules.py",
    "tests/review/test_no_free_words.py",
    "tests/limits",
    "tests/catalog",
    "tests/holdings",
    "tests/stock",
    "tests/edit/test_every_command.py",
    "tests/cli/test_hostile_inputs.py",
    "tests/cli/test_why.py",
    "tests/gui/test_places_without_card.py",
    "tests/gui/test_choosers.py",
    "tests/test_sources_page.py",
)


def copied(into: Path) -> Path:
    """This checkout without what was compiled."""
    for name in ("jobsheet", "resources", "sample_jobs", "tests", "packaging"):
        shutil.copytree(ROOT / name, into / name, ignore=shutil.ignore_patterns("__pycache__"))
    for name in ("pyproject.toml", "DEVELOPERS.md", "README.md"):
        shutil.copy(ROOT / name, into)
    return into


def run(copy: Path, *words: str) -> None:
    """One check in the copy; what it printed is shown where it fails."""
    around = {**os.environ, "PYTHONPATH": str(copy), "QT_QPA_PLATFORM": "offscreen"}
    done = subprocess.run(
        [sys.executable, *words], cwd=copy, env=around, capture_output=True, text=True, check=False
    )
    assert not done.returncode, f"{' '.join(words)}\n{done.stdout[-6000:]}{done.stderr[-2000:]}"


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    """The copy with one of each, made as a person would, and the example of the guide as it is printed."""
    copy = copied(tmp_path_factory.mktemp("house"))
    for sort, name, group in MADE:
        run(copy, "-m", "tests.new", sort, name, *(["--in", group] if group else []))
    guide = (copy / "DEVELOPERS.md").read_text(encoding="utf-8")
    printed = re.search(r'```python\n("""Deburring.*?)```', guide, re.DOTALL)
    job = re.search(r"```yaml\n(format: 2\n.*?)```", guide, re.DOTALL)
    (copy / "jobsheet/operations/kinds/deburr_wheel.py").write_text(printed[1], encoding="utf-8")
    (copy / "tests/operations/jobs/deburr-wheel.yaml").write_text(job[1], encoding="utf-8")
    return copy


def own_tests(copy: Path) -> list[str]:
    """The tests that came with what was made."""
    files = [name.replace(" ", "_") for _, name, _ in MADE]
    return [str(path) for file in files for path in copy.glob(f"tests/*/test_{file}.py")]


def test_there_is_a_skeleton_for_each_and_each_is_made():
    assert sorts() == sorted(sort for sort, _, _ in MADE)


def test_lint_and_form(made):
    run(made, "-m", "ruff", "check", ".")
    run(made, "-m", "ruff", "format", "--check", ".")


def test_their_own_tests_pass(made):
    found = own_tests(made)
    assert len(found) == len(MADE) - 1  # a rule is tried by its cases
    run(made, "-m", "pytest", "-q", "-p", "no:xdist", "-p", "no:cacheprovider", *found)


@pytest.mark.long
def test_types_imports_and_the_tests_of_house_and_neighbours(made):
    run(made, "-m", "mypy", "jobsheet")
    run(made, "-c", "from importlinter.cli import lint_imports_command; lint_imports_command()")
    run(made, "-m", "pytest", "-q", "-p", "no:xdist", "-p", "no:cacheprovider", *HOUSE, *NEIGHBOURS)


@pytest.mark.long
@pytest.mark.parametrize("wrong", ["rows=rows,", "words=words,", "sweep=sweep,"])
def test_a_part_for_the_fields_of_another_kind_is_a_type_error(made, wrong):
    """The kind of the skeleton with one part of the drill's."""
    path = made / "jobsheet/operations/kinds/brush_down.py"
    before = path.read_text(encoding="utf-8")
    part = wrong.split("=")[0]
    stranger = (
        "from jobsheet.operations.kinds import drill\n\n\nclass Fields(Struct, frozen=True, kw_only=True):"
    )
    text = before.replace("class Fields(Struct, frozen=True, kw_only=True):", stranger, 1)
    name = {"words": "_words"}.get(part, part)
    try:
        path.write_text(text.replace(wrong, f"{part}=drill.{name},"), encoding="utf-8")
        with pytest.raises(AssertionError, match=r"brush_down.*error"):
            run(made, "-m", "mypy", "jobsheet/operations/kinds/brush_down.py")
    finally:
        path.write_text(before, encoding="utf-8")


@pytest.mark.parametrize("name", ["", "9 lives", "../face", "drill;", "a  -b"])
def test_what_is_no_name_writes_nothing(tmp_path, name):
    with pytest.raises(SystemExit, match="is no name"):
        write(tmp_path, "kind", name)
    assert not list(tmp_path.iterdir())


@pytest.mark.parametrize(
    ("sort", "name", "group", "says"),
    [
        ("kind", "drill", "", "drill.py is there already"),
        ("rule", "trial", "no such folder", "name another with --in"),
        ("rule", "trial", "nowhere", "name another with --in"),
        ("material", "trial", "wood", "wood.yaml is not there"),
    ],
)
def test_nothing_is_written_over_or_beside(sort, name, group, says):
    with pytest.raises(SystemExit, match=says):
        write(ROOT, sort, name, group)


def test_names_are_put_in_everywhere():
    for sort in sorts():
        for path, _, piece in parts(
            filled((Path(__file__).parent / f"{sort}.txt").read_text(), "Two Words", "x")
        ):
            assert "@" not in path + re.sub(r"^@(rule|click|pytest)\b", "", piece, flags=re.MULTILINE)


def test_a_piece_goes_to_the_end_of_its_key():
    text = "# head\nfirst:\n  a: 1\n\n  # of b\n  b: 2\n\nsecond:\n  c: 3\n"
    assert added_under(text, "first", "  d: 4\n") == text.replace("  b: 2\n", "  b: 2\n  d: 4\n")
    with pytest.raises(SystemExit):
        added_under(text, "third", "x")
