"""The rules as a page to read: `python -m jobsheet.review.help_page` writes resources/help/remarks.md anew."""

from __future__ import annotations

import inspect

from jobsheet.paths import resources
from jobsheet.review.engine import rules
from jobsheet.review.rule import Rule

#: Lines of a docstring that begin so stand apart.
_PARTS = ("Why:", "Wrong:", "Right:", "Source:")
_HEAD = """# Remarks

What the review asks of a plan. Written from the rules themselves; `jobsheet explain RULE` prints one.
A remark is a fault of this plan: a good plan has none. It can be set aside for a job with a reason, which the sheet prints.
All of it is advice. Follow the machine's manual, your workshop's rules and the law where you work.
"""


def explained(rule: Rule) -> str:
    """One rule in words."""
    lines = inspect.cleandoc(rule.explanation).splitlines()
    return "\n".join([f"{rule.title} ({rule.severity}) [{rule.id}]", "", *lines])


def page() -> str:
    """All rules, by how bad it is and then by name."""
    order = ("hazard", "scrap", "rework", "habit")
    parts = [_HEAD]
    for severity in order:
        parts.append(f"\n## {severity}\n")
        for rule in (one for one in rules() if one.severity == severity):
            lines = inspect.cleandoc(rule.explanation).splitlines()
            text = [
                f"**{line.split(':', 1)[0]}:**{line.split(':', 1)[1]}  " if line.startswith(_PARTS) else line
                for line in lines
            ]
            parts.append("\n".join([f"### {rule.id}", "", f"*{rule.title}*", "", *text, ""]))
    return "\n".join(parts).rstrip() + "\n"


if __name__ == "__main__":
    target = resources() / "help" / "remarks.md"
    target.parent.mkdir(exist_ok=True)
    target.write_text(page(), encoding="utf-8")
