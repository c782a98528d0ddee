"""What can be asked why as pages to read:
`python -m jobsheet.review.pages.help_page` writes resources/help anew.
"""

from __future__ import annotations

from jobsheet.paths import resources
from jobsheet.review.pages.explained import KINDS, Topic, topics

_ADVICE = (
    "All of it is advice. Follow the machine's manual, your workshop's rules and the law where you work.\n"
)
_REMARKS = f"""# Remarks

What the review asks of a plan. Written from the rules themselves; `jobsheet why "spot before drilling"` prints one.
A remark is a fault of this plan: a good plan has none. It can be set aside for a job with a reason, which the sheet prints.
{_ADVICE}"""
_REMINDERS = f"""# Reminders

What is true of a step or a set-up and stands beside it. Written from the data itself; `jobsheet why` with words of its title prints one.
A reminder is never counted and asks for no answer; each is said once in a set-up, where it first applies.
{_ADVICE}"""
_NOTES = f"""# Safety notes

What stands in the safety boxes, and when. Written from the data itself; `jobsheet why` with words of its title prints one.
Notes remind trained people. They do not replace the machine's manual, the workshop's own risk assessment or the law of the place.
A figure of law or advice is shown only where `workshop.yaml` chooses its country, and always with place and date.
{_ADVICE}"""
_CHOICES = f"""# Choices of the trade

Where people who know the work disagree. Written from the data itself; `jobsheet why` with words of its title prints one.
The cautious opinion counts until a workshop chooses another in `workshop.yaml`; no remark calls the other one wrong.
{_ADVICE}"""


def page(name: str = "remarks.md") -> str:
    """One of the pages: remarks by how bad they are, reminders by where they stand, notes by level."""
    head, kind, order = PAGES[name]
    found = [topic for topic in topics() if topic.kind == kind]
    parts = [head]
    for word in order or ("",):
        if word:
            parts.append(f"\n## {word}\n")
        parts += [_entry(topic) for topic in found if not word or topic.word == word]
    return "\n".join(parts).rstrip() + "\n"


#: File -> its head, the kind it shows, and the words that part it, in this order.
PAGES: dict[str, tuple[str, str, tuple[str, ...]]] = {
    "remarks.md": (_REMARKS, KINDS[0], ("hazard", "scrap", "rework", "habit")),
    "reminders.md": (_REMINDERS, KINDS[1], ("sheet", "set-up", "tick", "step", "trainee")),
    "notes.md": (_NOTES, KINDS[2], ("stop", "warn", "note", "law")),
    "choices.md": (_CHOICES, KINDS[3], ()),
}


def _entry(topic: Topic) -> str:
    """One of them, with what its lines begin with made bold."""
    return "\n".join([f"### {topic.title}", "", *map(_line, topic.lines), ""])


def _line(line: str) -> str:
    name, colon, said = line.partition(":")
    return f"**{name}:**{said}  " if colon and name in _BOLD else line


#: Lines that begin so stand apart.
_BOLD = (
    "Because", "Not so", "So", "From", "Why", "Source", "Stands", "When", "Initials of", "Law or adviser", "Read", "One opinion",
    "The other", "Until you choose", "To choose, in workshop.yaml",
)  # fmt: skip


if __name__ == "__main__":
    folder = resources() / "help"
    folder.mkdir(exist_ok=True)
    for name in PAGES:
        (folder / name).write_text(page(name), encoding="utf-8")
