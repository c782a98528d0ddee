"""The push on the quill lever: easy, strong for seconds, and more than a hand gives.

Goes by a factor: up to an easy push `expected`, up to a strong one `tight`, above it `beyond`
(cutting-data section 1.13: published levels for one hand on a lever).
"""

from __future__ import annotations

from typing import Any

from jobsheet.model.figure import Figures, Limit
from jobsheet.model.setting import Setting

#: What of its setting it reads.
READS = frozenset({"shop"})


def limit(figures: Figures, setting: Setting, _fields: Any = None) -> Limit | None:
    """None where nothing is fed by the lever."""
    push = figures.value("lever_push")
    if push is None:
        return None
    easy, strong = setting.shop.easy_push, setting.shop.strong_push
    verdict, sentence = "expected", ""
    if push > strong:
        verdict = "beyond"
        sentence = "more than a strong push: drill a pilot hole first, or feed less a turn"
    elif push > easy:
        verdict, sentence = "tight", "a strong push, for seconds only: a pilot hole makes it easy"
    return Limit(
        name="quill-push", title="Quill push", demand=push, capacity=strong, unit="N", share=push / strong,
        verdict=verdict, low=easy, high=strong, shown=f"{push:.0f} of {strong:.0f} N", sentence=sentence,
    )  # fmt: skip
