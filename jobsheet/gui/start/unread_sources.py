"""Keeps the toolkit from reading the source of every module that is imported after it.

PySide6 looks into each for its own name, to know whose calls may use its optional spellings
(`snake_case`, `true_property`), and Python keeps the lines of what was read: half a tenth of a start,
and 14 MB in a window with its solids. Nothing here asks for those spellings; of our modules it is told
by their names who uses the toolkit.
"""

from __future__ import annotations

import sys
from types import ModuleType
from typing import Any

#: What asks a module's source, where the toolkit is as we know it (6.7 to 6.11).
_ASKS = "_mod_uses_pyside"


def leave_unread() -> None:
    """Wake the toolkit, and let it go by names from here on; where it is made
    otherwise than we know, it reads as ever.
    """
    import PySide6.QtCore  # noqa: F401

    features: Any = sys.modules.get("PySide6.support.feature")
    if features is not None and hasattr(features, _ASKS):
        setattr(features, _ASKS, uses_the_toolkit)


def uses_the_toolkit(module: ModuleType) -> bool:
    """Whether it is one of ours that may import the toolkit; the import rules hold it."""
    return str(getattr(module, "__name__", "")).startswith("jobsheet.gui")
