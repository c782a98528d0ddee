"""What every start would compile anew is kept: for the very same source and the
very same Python, and never needed.
"""

from __future__ import annotations

import builtins
import inspect
import marshal
import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

from jobsheet.catalog.reading import data
from jobsheet.gui.start import compiled

SOURCE = b"from __future__ import annotations\nX: int = 1\ndef f(a: Y) -> Z:\n    return a + X\n"
PATTERNS = [
    (r"\s*(?P<sign>[+\-−]?)\s*(?P<n>\d+(?:[.,]\d*)?)", 0),
    (r"^(yes|no)$", re.IGNORECASE),
    ("(?x) a # comment\n b+", 0),
    (r"(?P<a>x)(?:y(z)?)|[À-ɏ½¼]|\bword\b(?=!)(?<!n)", re.MULTILINE | re.DOTALL),
    (rb"^[ \t]*#.*?coding[:=]([-\w.]+)", re.ASCII),
]


@pytest.fixture
def path(tmp_path, monkeypatch):
    monkeypatch.setattr(sys, "dont_write_bytecode", False)
    return str(tmp_path / "cache" / "start")


def start(path):
    """One start: a module of the toolkit, and patterns."""
    one = compiled.Compiled(path)
    re.purge()
    with one.used():
        code = compile(SOURCE, "shibokensupport/a.py", "exec")
        patterns = [re.compile(*given) for given in PATTERNS]
    one.keep()
    re.purge()
    return one, code, patterns


def test_the_second_start_compiles_nothing(path, monkeypatch):
    start(path)
    one = compiled.Compiled(path)
    re.purge()
    with monkeypatch.context() as none, one.used():
        none.setattr(re._parser, "parse", None)
        none.setattr(one, "_compile", None)
        code = compile(SOURCE, "shibokensupport/a.py", "exec")
        for given in PATTERNS:
            re.compile(*given)
    re.purge()
    assert not one.new
    names = {}
    exec(code, names)
    assert names["f"](2) == 3


def test_what_is_kept_is_what_python_makes(path):
    plain = compile(SOURCE, "shibokensupport/a.py", "exec", 0, True)
    for _ in range(2):
        _, code, patterns = start(path)
        assert code == plain
        for (text, given), found in zip(PATTERNS, patterns, strict=True):
            made = re.compile(text, given)
            assert (found.pattern, found.flags, found.groups) == (made.pattern, made.flags, made.groups)
            assert dict(found.groupindex) == dict(made.groupindex)
            assert found == made
        sign = patterns[0].match(" - 12,5 mm")
        assert sign.groupdict() == {"sign": "-", "n": "12,5"}
        assert patterns[1].match("YES")
        assert patterns[2].fullmatch("abbb")


def test_a_shipped_table_is_read_once_and_everybody_gets_one_of_his_own(path, monkeypatch):
    one = compiled.Compiled(path)
    with one.used():
        plain = data.shipped("fluids.yaml")
    one.keep()
    assert plain == data.shipped("fluids.yaml")
    two = compiled.Compiled(path)
    with two.used(), monkeypatch.context() as none:
        none.setattr(two, "_parse", None)
        first, second = data.shipped("fluids.yaml"), data.shipped("fluids.yaml")
    assert first == second == plain
    assert first is not second
    assert not two.new


def test_a_changed_source_is_compiled_anew(path):
    start(path)
    one = compiled.Compiled(path)
    with one.used():
        code = compile(SOURCE.replace(b"= 1", b"= 5"), "shibokensupport/a.py", "exec")
    names = {}
    exec(code, names)
    assert names["X"] == 5
    assert one.new


def test_the_future_of_the_caller_is_handed_down(path):
    one = compiled.Compiled(path)
    with one.used():  # this module has annotations from the future, so what it compiles has too
        code = compile(b"def f(a: Unknown): pass", "shibokensupport/b.py", "exec")
    names = {}
    exec(code, names)
    assert names["f"].__annotations__ == {"a": "Unknown"}


def test_other_modules_go_their_usual_way(path):
    one = compiled.Compiled(path)
    with one.used():
        assert eval(compile("1 + 1", "<a>", "eval")) == 2
        compile(b"x = 1", "other.py", "exec")
        compile(SOURCE, "shibokensupport/a.py", "exec", dont_inherit=True)
    assert not one.new


def test_everything_is_put_back(path):
    before = builtins.compile, re._compiler.compile, re._compiler._sre, data.parsed
    with pytest.raises(ZeroDivisionError), compiled.Compiled(path).used():
        raise ZeroDivisionError
    with pytest.raises(re.error), compiled.Compiled(path).used():
        re.compile("(")
    assert (builtins.compile, re._compiler.compile, re._compiler._sre, data.parsed) == before


@pytest.mark.parametrize(
    "damage",
    [
        lambda raw: b"",
        lambda raw: raw[:5],
        lambda raw: raw[:-1],
        lambda raw: raw[:100] + b"\x00" + raw[101:],
        lambda raw: os.urandom(500),
        lambda raw: sealed(marshal.dumps(None)),
        lambda raw: sealed(marshal.dumps(("another Python", {}, {}, {}))),
        lambda raw: sealed(marshal.dumps((compiled._PYTHON, {}, {}))),
        lambda raw: sealed(b"?"),
    ],
    ids=[
        "empty",
        "short",
        "cut",
        "a byte",
        "noise",
        "shape",
        "another Python",
        "an older shape",
        "no marshal",
    ],
)
def test_damage_is_as_good_as_nothing(path, damage):
    start(path)
    Path(path).write_bytes(damage(Path(path).read_bytes()))
    one, code, patterns = start(path)
    assert one.new is False
    assert code == compile(SOURCE, "shibokensupport/a.py", "exec", 0, True)
    assert patterns[1].match("no")
    assert start(path)[1] == code


def sealed(body):
    return compiled.source_hash(body) + body


def test_where_it_cannot_be_written_nothing_happens(tmp_path, path, monkeypatch):
    (tmp_path / "cache").write_text("in the way")
    assert start(path)[1] is not None
    monkeypatch.setattr(sys, "dont_write_bytecode", True)
    start(str(tmp_path / "start"))
    assert [one.name for one in tmp_path.iterdir()] == ["cache"]


def test_a_python_that_makes_patterns_another_way_makes_them_itself(path, monkeypatch):
    one = compiled.Compiled(path)
    one._make = None
    with one.used():
        assert re.compile("a+b").match("aab")
    assert not one.new


def test_it_lies_beside_our_own_compiled_modules():
    assert Path(compiled.place()).parent == Path(inspect.getfile(compiled)).parent / "__pycache__"


ADDITIONS = """
import sys
from jobsheet.gui.start import compiled
compiled.without_additions()
print("msgspec" in sys.modules, "typing_extensions" in sys.modules)
import msgspec, typing_extensions
from typing import Annotated, NotRequired, TypedDict
class Row(TypedDict):
    size: Annotated[float, msgspec.Meta(gt=0)]
    note: NotRequired[str]
print(msgspec.json.decode(b'{"size": 2}', type=Row), typing_extensions.Required is not None)
"""


def test_the_structures_do_without_additions_and_whoever_asks_later_gets_them():
    done = subprocess.run([sys.executable, "-c", ADDITIONS], check=True, capture_output=True, text=True)
    assert done.stdout.splitlines() == ["True False", "{'size': 2.0} True"]


def test_a_pattern_that_is_another_one_in_every_process_is_not_kept(path, monkeypatch):
    source = "import re\ndef make(): return re.compile('a|b' + 'c' * 40)\n"
    for name, kept in (("tokenize", 0), ("anybody", 1)):
        space = {"__name__": name}
        exec(compile(source, "a.py", "exec"), space)  # stands for that module
        re.purge()
        one = compiled.Compiled(path)
        with one.used():
            assert space["make"]().match("b" + "c" * 40)
        assert len([1 for words, _ in one._parts if "cccc" in str(words)]) == kept
