"""Our own compiled modules, read at a start in one go.

A start imports some two hundred modules of ours. For each, Python looks through the folders of the path,
reads its source's size and time and opens a file of its own; that took a tenth of a start. The compiled files
that Python itself keeps are gathered in one here, byte for byte. Each is used as Python uses it: only where
it is of this very Python and its source has the time and size that stand in its head (PEP 3147, PEP 552).
Whatever is not as usual goes the usual way.
"""

from __future__ import annotations

import marshal
import os
import sys
from collections.abc import Sequence
from importlib.machinery import ModuleSpec, SourceFileLoader
from importlib.util import MAGIC_NUMBER, spec_from_file_location
from types import CodeType, ModuleType
from typing import Any

#: The package whose modules are gathered.
OURS = "jobsheet"
#: What stands before the code in a compiled file: magic number, flags, time and size of its source.
HEAD = 16
#: By name: where its source lies, whether it is a package, and the compiled file as Python wrote it.
Kept = dict[str, tuple[str, bool, bytes | memoryview]]
#: The same beside the compiled files one behind the other: how long each is, in their order.
Listed = dict[str, tuple[str, bool, int]]


def put_together(kept: Kept) -> tuple[Listed, list[bytes | memoryview]]:
    """What is known of each module, and their compiled files in the same order."""
    listed = {name: (source, package, len(compiled)) for name, (source, package, compiled) in kept.items()}
    return listed, [compiled for _, _, compiled in kept.values()]


def laid_out(listed: Listed, pieces: memoryview) -> Kept:
    """The same the other way; nothing is copied."""
    kept: Kept = {}
    at = 0
    for name, (source, package, long) in listed.items():
        kept[name] = source, package, pieces[at : at + long]
        at += long
    return kept


class _Loader(SourceFileLoader):
    """Loads a module as ever, but for the reading of its compiled file."""

    def __init__(self, fullname: str, path: str, compiled: bytes | memoryview) -> None:
        super().__init__(fullname, path)
        self._compiled = compiled

    def get_code(self, fullname: str) -> CodeType | None:
        """The code of the module, where this is its compiled file."""
        if fullname != self.name:
            return super().get_code(fullname)
        code: CodeType = marshal.loads(memoryview(self._compiled)[HEAD:])  # noqa: S302  # as Python does
        return code


class OurModules:
    """Finds modules of ours among what was gathered; stands first among the finders while a start lasts."""

    def __init__(self, kept: Kept) -> None:
        self.kept = kept
        self._before = frozenset(sys.modules)

    def missed(self) -> bool:
        """Whether a module of ours was loaded the usual way since this stands among the finders."""
        return any(
            name.startswith(OURS + ".") and not isinstance(getattr(module, "__loader__", None), _Loader)
            for name, module in list(sys.modules.items())
            if name not in self._before
        )

    def find_spec(
        self,
        fullname: str,
        path: Sequence[str] | None = None,
        target: ModuleType | None = None,  # noqa: ARG002  # the protocol's
    ) -> ModuleSpec | None:
        """How to load a module; None where Python shall look for it itself."""
        found = self.kept.get(fullname)
        if found is None or path is None:
            return None
        source, package, compiled = found
        # The folder it would be looked for in: another checkout on the path has other files.
        folder = os.path.dirname(os.path.dirname(source) if package else source)  # noqa: PTH120  # the quick way
        if folder not in path or not _is_of(compiled, source):
            return None
        return spec_from_file_location(
            fullname,
            source,
            loader=_Loader(fullname, source, compiled),
            submodule_search_locations=[os.path.dirname(source)] if package else None,  # noqa: PTH120
        )


def _is_of(compiled: bytes | memoryview, source: str) -> bool:
    """Whether a compiled file is what Python would use for a source: the same Python, time and size."""
    try:
        now = os.stat(source)  # noqa: PTH116
    except OSError:
        return False
    head = (int(now.st_mtime) & 0xFFFFFFFF).to_bytes(4, "little") + (now.st_size & 0xFFFFFFFF).to_bytes(
        4, "little"
    )
    return compiled[:HEAD] == MAGIC_NUMBER + b"\0\0\0\0" + head


def gathered() -> Kept:
    """The compiled files of all modules of ours that are loaded by now, where Python keeps any."""
    kept: Kept = {}
    for name, module in list(sys.modules.items()):
        if not name.startswith(OURS + "."):
            continue
        spec: Any = getattr(module, "__spec__", None)
        if spec is None or not spec.cached or not spec.origin:
            continue
        try:
            with open(spec.cached, "rb") as file:  # noqa: PTH123
                compiled = file.read()
        except OSError:
            continue
        if _is_of(compiled, spec.origin):
            kept[name] = (spec.origin, spec.submodule_search_locations is not None, compiled)
    return kept
