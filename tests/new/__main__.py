"""Writes the skeleton of what is added most often, with its test: `python -m tests.new kind "deburr wheel"`.

A sort is one text beside this file (`kind.txt`): each part begins with `=== PATH`, and a part
`=== PATH + KEY` goes to the end of what stands under that key in a file that is there. In it `@name` is the
name with dashes, `@file` with underscores, `@words` with blanks, `@Title` and `@Class` with capitals,
`@group` the folder or file that `--in` names. What is written passes lint, types and the tests of the house
as it stands; its figures stand in for those of a source.
"""

from __future__ import annotations

import argparse
import re
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

HERE = Path(__file__).resolve().parent
ROOT = HERE.parents[1]
#: Where it goes unless somebody says: the folder of a rule, the file of a material.
GROUPS = {"rule": "machine", "material": "steel"}
#: What is generated from a sort, and is written anew with it.
GENERATED = {"rule": "jobsheet.review.pages.help_page"}
_PART = re.compile(r"^=== (\S+)(?: \+ (\S+))?\n", re.MULTILINE)


def sorts() -> list[str]:
    """What there are skeletons of."""
    return sorted(path.stem for path in HERE.glob("*.txt"))


def filled(text: str, name: str, group: str, order: int = 0) -> str:
    """A skeleton with the name in it."""
    words = re.split(r"[ _-]+", name.strip().lower())
    meant = {
        "name": "-".join(words),
        "file": "_".join(words),
        "words": " ".join(words),
        "Title": " ".join(words).capitalize(),
        "Class": "".join(word.capitalize() for word in words),
        "group": group,
        "order": str(order),
    }
    return re.sub(r"@(Title|Class|name|file|words|group|order)", lambda found: meant[found[1]], text)


def parts(text: str) -> Iterator[tuple[str, str, str]]:
    """Path, key or nothing, and text of every part."""
    pieces = _PART.split(text)[1:]
    for index in range(0, len(pieces), 3):
        yield pieces[index], pieces[index + 1] or "", pieces[index + 2]


def added_under(text: str, key: str, piece: str) -> str:
    """A file with a piece at the end of what stands under a key of its first level."""
    found = re.search(rf"^{re.escape(key)}:\n(?:[ #].*\n|\n(?=[ #]))*", text, re.MULTILINE)
    if found is None:
        sys.exit(f"There is no key {key} to add to.")
    return text[: found.end()] + piece + text[found.end() :]


def _last_order(root: Path) -> int:
    """Behind every place but the help, which stands last."""
    texts = (
        path.read_text(encoding="utf-8") for path in (root / "jobsheet/gui/places").glob("*/__init__.py")
    )
    taken = {int(order) for text in texts for order in re.findall(r"\border=(\d+)", text)}
    return next(order for order in range(max(taken - {max(taken)}) + 1, 10_000) if order not in taken)


def write(root: Path, sort: str, name: str, group: str = "") -> list[Path]:
    """The files of a sort under a checkout; all of them or none.

    Raises
    ------
    SystemExit
        Where the name is none, there is no such folder or group, or a file is there already.
    """
    if not re.fullmatch(r"[A-Za-z]+(?:[ _-][A-Za-z]+)*", name.strip()):
        sys.exit(f"{name!r} is no name: write words of letters, such as “deburr wheel”.")
    group = group or GROUPS.get(sort, "")
    if not re.fullmatch(r"[a-z-]*", group):
        sys.exit(f"There is no folder or file {group!r}: name another with --in.")
    text = (HERE / f"{sort}.txt").read_text(encoding="utf-8")
    order = _last_order(root) if sort == "place" else 0
    wanted = {}
    for path, key, piece in parts(filled(text, name, group, order)):
        target = root / path
        if key and not target.is_file():
            sys.exit(f"{path} is not there to add to: name another with --in.")
        if not key and target.exists():
            sys.exit(f"{path} is there already: take another name.")
        if sort == "rule" and not key and path.endswith(".py") and not target.parent.is_dir():
            sys.exit(f"There is no folder {target.parent.relative_to(root)}: name another with --in.")
        before = target.read_text(encoding="utf-8") if key else ""
        wanted[target] = added_under(before, key, piece) if key else piece
    for target, content in wanted.items():
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(content, encoding="utf-8")
    return list(wanted)


def in_form(root: Path, written: list[Path]) -> None:
    """Imports in order and lines broken, as they depend on the name."""
    code = [str(path) for path in written if path.suffix == ".py"]
    for words in (["check", "--quiet", "--fix", "--select", "I"], ["format", "--quiet"]):
        subprocess.run([sys.executable, "-m", "ruff", *words, *code], cwd=root, check=True)


def main() -> int:
    """The command line."""
    asks = argparse.ArgumentParser(prog="python -m tests.new", description=(__doc__ or "").split("\n\n")[0])
    asks.add_argument("sort", choices=sorts())
    asks.add_argument("name", help="what it is called, in words")
    asks.add_argument(
        "--in", dest="group", default="", help="folder of a rule, file of a material: machine, steel"
    )
    said = asks.parse_args()
    written = write(ROOT, said.sort, said.name, said.group)
    in_form(ROOT, written)
    if said.sort in GENERATED:
        subprocess.run([sys.executable, "-m", GENERATED[said.sort]], cwd=ROOT, check=True)
    for path in written:
        print(path.relative_to(ROOT))
    return 0


if __name__ == "__main__":
    sys.exit(main())
