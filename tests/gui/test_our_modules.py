"""Modules of ours out of one piece: the same as out of their files, and never older than their source."""

from __future__ import annotations

import importlib
import inspect
import os
import py_compile
import sys

import pytest

from jobsheet.gui.start import our_modules
from jobsheet.gui.start.our_modules import OurModules, gathered

ONE = "def answer():\n    return 1\n"


@pytest.fixture
def package(tmp_path, monkeypatch):
    """A package of its own that stands for ours, its modules loaded once the usual way and gathered."""
    monkeypatch.setattr(our_modules, "OURS", "workpiece")
    monkeypatch.setattr(sys, "dont_write_bytecode", False)
    folder = tmp_path / "workpiece"
    (folder / "inner").mkdir(parents=True)
    for name, text in (("__init__", ""), ("one", ONE), ("inner/__init__", "WHAT = 3\n"), ("inner/two", ONE)):
        (folder / f"{name}.py").write_text(text, encoding="utf-8")
        py_compile.compile(str(folder / f"{name}.py"), doraise=True)
    monkeypatch.syspath_prepend(str(tmp_path))
    load()
    yield folder
    forget()


def load():
    forget()
    return importlib.import_module("workpiece.one"), importlib.import_module("workpiece.inner.two")


def forget():
    for name in [name for name in sys.modules if name.split(".")[0] == "workpiece"]:
        del sys.modules[name]
    importlib.invalidate_caches()


@pytest.fixture
def finder(package, monkeypatch):
    kept = gathered()
    forget()
    found = OurModules(kept)
    monkeypatch.setattr(sys, "meta_path", [found, *sys.meta_path])
    return found


def out_of_the_piece(module):
    return isinstance(module.__loader__, our_modules._Loader)


def test_a_module_out_of_the_piece_is_the_module(finder, package):
    one, two = load()
    assert out_of_the_piece(one)
    assert out_of_the_piece(two)
    assert (one.answer(), two.answer(), sys.modules["workpiece.inner"].WHAT) == (1, 1, 3)
    assert one.__file__ == str(package / "one.py")
    assert inspect.getsource(one.answer) == ONE  # so that a fault still shows its line
    assert one.answer.__code__.co_filename == str(package / "one.py")
    assert not finder.missed()


def test_a_changed_source_is_read(finder, package):
    (package / "one.py").write_text("def answer():\n    return 12\n", encoding="utf-8")
    one, two = load()
    assert not out_of_the_piece(one)
    assert one.answer() == 12
    assert out_of_the_piece(two)
    assert finder.missed()


def test_a_source_of_the_same_size_and_another_time_is_read(finder, package):
    source = package / "one.py"
    source.write_text(ONE.replace("1", "7"), encoding="utf-8")
    os.utime(source, (1, 1))
    one, _ = load()
    assert one.answer() == 7


def test_a_source_that_is_gone_is_gone(finder, package):
    (package / "one.py").unlink()
    with pytest.raises(ModuleNotFoundError):
        load()


def test_another_checkout_on_the_path_is_not_mistaken_for_this_one(finder, package, tmp_path, monkeypatch):
    other = tmp_path / "other" / "workpiece"
    (other / "inner").mkdir(parents=True)
    for name in ("__init__", "inner/__init__"):
        (other / f"{name}.py").write_text("", encoding="utf-8")
    for name in ("one", "inner/two"):
        (other / f"{name}.py").write_text(ONE.replace("1", "5"), encoding="utf-8")
    monkeypatch.syspath_prepend(str(other.parent))
    one, two = load()
    assert (one.answer(), two.answer()) == (5, 5)


@pytest.mark.parametrize(
    "spoil", [lambda raw: b"\0" * 4 + raw[4:], lambda raw: raw[:4] + b"\1\0\0\0" + raw[8:]]
)
def test_of_another_python_or_checked_another_way_it_is_not_used(finder, spoil):
    source, package, raw = finder.kept["workpiece.one"]
    finder.kept["workpiece.one"] = (source, package, spoil(raw))
    one, _ = load()
    assert not out_of_the_piece(one)
    assert one.answer() == 1


def test_what_was_put_together_is_laid_out_again(package):
    kept = gathered()
    assert {"workpiece.one", "workpiece.inner", "workpiece.inner.two"} <= set(kept)
    listed, pieces = our_modules.put_together(kept)
    again = our_modules.laid_out(listed, memoryview(b"".join(pieces)))
    assert {name: (*about, bytes(raw)) for name, (*about, raw) in again.items()} == kept
    assert list(again) == list(kept)
