"""A shelf of two thousand jobs: reading it against reading the bytes of its files, a look
that finds nothing new, and questions.

Ten thousand took 7 s of one core and forty thousand four times that, a look without change
0.08 s and any question under 9 ms.
"""

from __future__ import annotations

import hashlib
import random
import re
import time

import pytest

from jobsheet.paths import sample_jobs
from jobsheet.shelf.shelf_index import Index
from jobsheet.shelf.shelf_questions import find

MANY = 2000
#: Reading and keeping against opening and hashing each file; a look without change against
#: walking the folder; questions [s].
READ, LOOK, ASKED = 90.0, 6.0, 0.020
#: Opening an index that is full [s].
OPENED = 0.1
NAMES = (
    "bearing block",
    "slide plate",
    "clamp bar",
    "cover",
    "bracket",
    "toggle",
    "lever",
    "gauge body",
    "fork",
    "stop",
)
METALS = ("S235", "6082-T6", "C45", "brass", "304", "EN-GJL-250")
QUESTIONS = (
    "drill 6.8",
    "M8 brass",
    "slot 10",
    "P-00012",
    "bearing block",
    "16 H7",
    "trouble first",
    "knee",
    "",
    "6.8 M8 brass",
)


@pytest.fixture(scope="module")
def shelf(tmp_path_factory):
    """Varied copies of the samples, 4 to 10 kB each."""
    draw, there = random.Random(5), tmp_path_factory.mktemp("shelf")
    texts = [path.read_text("utf-8") for path in sorted(sample_jobs().glob("*.yaml"))]
    for number in range(MANY):
        text = draw.choice(texts)
        text = re.sub(r"(?m)^  number: .*$", f"  number: P-{number:05d}", text, count=1)
        text = re.sub(
            r"(?m)^  name: .*$", f"  name: {draw.choice(NAMES)} {draw.randint(1, 99)}", text, count=1
        )
        text = re.sub(r"(?m)^material: .*$", f"material: {draw.choice(METALS)}", text, count=1)
        text = re.sub(r"drill \d+(\.\d)?", lambda _: f"drill {draw.choice((3.3, 5, 6.8, 8.5, 10.2))}", text)
        folder = there / f"{number // 400:03d}"
        folder.mkdir(exist_ok=True)
        (folder / f"p-{number:05d}.yaml").write_text(text, encoding="utf-8")
    time.sleep(2.1)  # what was written within two seconds of a look is looked at once more
    return there


def test_a_shelf_is_read_looked_at_and_asked(shelf, tmp_path, capsys):
    begun = time.perf_counter()
    for path in shelf.rglob("*.yaml"):
        hashlib.sha256(path.read_bytes()).hexdigest()
    floor = time.perf_counter() - begun
    index = Index(shelf, tmp_path / "index.sqlite")
    begun = time.perf_counter()
    assert index.refresh().read == MANY
    read = time.perf_counter() - begun
    begun = time.perf_counter()
    seen = sum(path.stat().st_size > 0 for path in shelf.rglob("*.yaml"))
    walk = time.perf_counter() - begun
    begun = time.perf_counter()
    assert index.refresh().read == 0
    look = time.perf_counter() - begun
    asked = []
    for question in QUESTIONS * 2:
        begun = time.perf_counter()
        find(index, question)
        asked.append(time.perf_counter() - begun)
    slowest = max(asked[len(QUESTIONS) :])
    index.close()
    begun = time.perf_counter()
    Index(shelf, tmp_path / "index.sqlite").close()
    opened = time.perf_counter() - begun
    with capsys.disabled():
        print(
            f"\nshelf of {seen}: read in {read:.2f} s, {read / floor:.0f} times opening them (at most {READ:.0f}); a look {look * 1e3:.0f} ms,"
            f" {look / walk:.1f} times a walk (at most {LOOK:.0f}); a question at most {slowest * 1e3:.1f} ms"
        )
    assert read / floor <= READ
    assert look / walk <= LOOK
    assert slowest <= ASKED
    assert opened <= OPENED
