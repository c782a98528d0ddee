"""Words of our files that were spelled otherwise once: read for ever, never written again."""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.storage.typed_paper import Paper

#: Fields of a machine card.
FIELDS = {"vises": "vices", "vise": "vice"}
#: Ids of rules, as a job names what was set aside.
RULES = {"vise-checked-for-the-limits": "vice-checked-for-the-limits"}
#: What slipped, in the record of a test cut.
SLIPPED = {"vise": "vice"}


def spelled_now(paper: Paper) -> Paper:
    """A card as typed text with its fields as they are called today; what they say stays as typed."""
    root = paper.root
    parts = tuple(
        replace(part, name=FIELDS[part.name]) if part.name in FIELDS else part for part in root.parts
    )
    return replace(paper, root=replace(root, parts=parts)) if parts != root.parts else paper
