"""Keeps what every start would compile anew: the toolkit's own Python helpers,
regular expressions, and our own tables.

Python keeps the compiled code of modules that lie in files. PySide6 carries its helpers as source in an
archive inside a library, so that each start compiles them again (some 20 ms), and no regular expression is
kept at all (some 15 ms), nor what was read of the tables that are shipped (some 4 ms). All are kept here,
with our own compiled modules in one piece (`our_modules`, a tenth of a start), beside our own compiled
modules and under the same rules as those (PEP 552):
used only for the very same source and the very same Python, not written where Python is
told not to, and never needed. Whoever can write there can write our modules themselves, so
that nothing more has to be trusted.
"""

from __future__ import annotations

import builtins
import contextlib
import marshal
import os
import re
import sys
from collections.abc import Iterator
from importlib.util import MAGIC_NUMBER, cache_from_source, source_hash
from types import CodeType
from typing import Any

from jobsheet.catalog.reading import data
from jobsheet.gui.start.our_modules import Kept, OurModules, gathered, laid_out, put_together

#: Whose modules are kept; every other compilation goes its usual way.
OWNER = "shibokensupport"
#: Modules that spell a pattern out of a set, so that it is another one in every process and would be kept for
#: nobody, each time with all the rest.
NEVER_THE_SAME = frozenset({"tokenize", "reportlab.lib.rl_safe_eval"})
#: What a caller hands down to what it compiles: the bits of `from __future__`.
_FUTURE = 0x1FF0000
#: Far more than a start compiles; what is beyond is not kept.
MOST = 1000
_PYTHON = f"{MAGIC_NUMBER!r} {sys.version}"

#: The parts of a pattern as `_sre.compile` takes them, behind the pattern itself.
_Parts = tuple[int, list[int], int, dict[str, int], tuple[str | None, ...]]


def place(verb: str = "") -> str:
    """Where it is kept: where Python keeps the compiled code of this module; what a verb of
    the command line asks for lies apart.
    """
    return f"{cache_from_source(__file__).removesuffix('.pyc')}.{f'verb-{verb}' if verb else 'start'}"


def _asker() -> str:
    """The module that asks for the pattern that is being made: the nearest that does not belong to `re`."""
    frame = sys._getframe(2)  # noqa: SLF001  # no other way says it
    while frame.f_back is not None and frame.f_globals.get("__name__") in ("re", "re._compiler"):
        frame = frame.f_back
    return str(frame.f_globals.get("__name__"))


class _Listener:
    """Stands for `_sre` while a pattern is made, and hears of what it is made."""

    def __init__(self, plain: Any) -> None:
        self._plain = plain
        self.heard: list[_Parts] = []

    def __getattr__(self, name: str) -> Any:
        return getattr(self._plain, name)

    def compile(self, pattern: Any, flags: int, *parts: Any) -> Any:
        """Hear, and make it."""
        if len(parts) == 4:
            words, groups, numbers, names = parts
            self.heard.append(
                (int(flags), [int(word) for word in words], groups, dict(numbers), tuple(names))
            )
        return self._plain.compile(pattern, flags, *parts)


class Compiled:
    """What is known by source and manner of compiling; reads what was kept, learns what is new."""

    def __init__(self, path: str) -> None:
        self.path = path
        self.new = False
        self._code: dict[tuple[str, bytes, int], CodeType] = {}
        self._parts: dict[tuple[str | bytes, int], _Parts] = {}
        #: What was read of a table by its whole text, marshalled: whoever asks gets one of his own.
        self._tables: dict[bytes, bytes] = {}
        self._modules: Kept = {}
        self._compile: Any = builtins.compile
        self._parse = data.parsed
        #: The part of Python that makes patterns, where it is as we know it.
        self._maker: Any = getattr(re, "_compiler", None)
        self._make: Any = getattr(self._maker, "compile", None)
        self._sre: Any = getattr(self._maker, "_sre", None)
        self._read()

    def _read(self) -> None:
        """Take what was kept; nothing where the file is missing, damaged or of another Python."""
        try:
            with open(self.path, "rb") as file:  # noqa: PTH123  # the quick way
                kept = file.read()
        except OSError:
            return
        # Looked at where it lies: the modules alone are millions of bytes, and many a verb needs half of them.
        body = memoryview(kept)[8:]
        if kept[:8] != source_hash(body):
            return
        begins = 8 + int.from_bytes(body[:8], "little")
        try:
            python, code, parts, tables, modules = marshal.loads(body[8:begins])  # noqa: S302  # as Python does with our modules
        except (EOFError, ValueError, TypeError):
            return
        if python == _PYTHON:
            self._code, self._parts, self._tables = code, parts, tables
            self._modules = laid_out(modules, body[begins:])

    @contextlib.contextmanager
    def used(self) -> Iterator[None]:
        """Compile by what is kept while this lasts."""
        module, pattern = self._compile, self._make
        builtins.compile = self._module
        data.parsed = self._table
        finder = OurModules(self._modules)
        sys.meta_path.insert(0, finder)
        known = pattern is not None and self._sre is not None
        if known:
            self._maker.compile = self._pattern
        try:
            yield
            if finder.missed() and not sys.dont_write_bytecode:
                # Another job asks for other kinds: what the last one asked for is not forgotten for it.
                self._modules, self.new = {**self._modules, **gathered()}, True
        finally:
            sys.meta_path.remove(finder)
            builtins.compile = module
            data.parsed = self._parse
            if known:
                self._maker.compile = pattern

    def _module(self, source: Any, filename: Any, mode: str, *rest: Any, **named: Any) -> Any:
        """Stand for `compile`."""
        if rest or named or not isinstance(source, bytes) or not str(filename).startswith(OWNER):
            return self._compile(source, filename, mode, *rest, **named)
        future = sys._getframe(1).f_code.co_flags & _FUTURE  # noqa: SLF001  # as `compile` itself does
        key = (f"{filename} {mode}", source_hash(source), future)
        code = self._code.get(key)
        if code is None:
            code = self._code[key] = self._compile(source, filename, mode, future, True)
            self.new = True
        return code

    def _table(self, text: str) -> Any:
        """Stand for what reads a shipped table."""
        key = source_hash(text.encode())
        kept = self._tables.get(key)
        if kept is not None:
            return marshal.loads(kept)  # noqa: S302  # as above
        made = self._parse(text)
        self._tables[key] = marshal.dumps(made)
        self.new = True
        return made

    def _pattern(self, pattern: Any, flags: int = 0) -> Any:
        """Stand for what makes a regular expression."""
        if type(pattern) not in (str, bytes) or flags & re.DEBUG:
            return self._make(pattern, flags)
        key = (pattern, int(flags))
        parts = self._parts.get(key)
        if parts is not None:
            return self._sre.compile(pattern, *parts)
        self._maker._sre = listener = _Listener(self._sre)  # noqa: SLF001
        try:
            made = self._make(pattern, flags)
        finally:
            self._maker._sre = self._sre  # noqa: SLF001
        if len(listener.heard) == 1 and len(self._parts) < MOST and _asker() not in NEVER_THE_SAME:
            self._parts[key] = listener.heard[0]
            self.new = True
        return made

    def keep(self) -> None:
        """Write what is new; where that cannot be done the next start compiles again."""
        if not self.new or sys.dont_write_bytecode:
            return
        self.new = False
        modules, pieces = put_together(self._modules)
        head = marshal.dumps((_PYTHON, self._code, self._parts, self._tables, modules))
        body = b"".join((len(head).to_bytes(8, "little"), head, *pieces))
        beside = f"{self.path}.{os.getpid()}"
        try:
            os.makedirs(os.path.dirname(self.path), exist_ok=True)  # noqa: PTH103, PTH120
            with open(beside, "wb") as file:  # noqa: PTH123
                file.write(source_hash(body) + body)
            os.replace(beside, self.path)  # noqa: PTH105
        except OSError:
            with contextlib.suppress(OSError):
                os.unlink(beside)  # noqa: PTH108


#: What adds to `typing` for older Pythons; where it is there the structures take it instead of `typing`.
_ADDITIONS = "typing_extensions"


def without_additions() -> None:
    """Import the structures without what adds to `typing`: 11 ms, a quarter of importing them.

    They ask it for three names first, which `typing` has had since Python 3.11, the oldest that we run on; and where
    it is not installed they do without themselves. Whoever asks for it later gets it.
    """
    if _ADDITIONS in sys.modules or "msgspec" in sys.modules:
        return
    sys.modules[_ADDITIONS] = None  # type: ignore[assignment]  # so says Python that there is no such module
    try:
        import msgspec  # noqa: F401
    finally:
        del sys.modules[_ADDITIONS]


@contextlib.contextmanager
def used(verb: str = "") -> Iterator[None]:
    """Start with what is kept, and keep at once what had to be compiled, as Python does;
    of a verb what it takes to its end.
    """
    without_additions()
    compiled = Compiled(place(verb))
    with compiled.used():
        yield
    compiled.keep()
