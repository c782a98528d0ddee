"""What a fix changed in a plan, as lines: `step field: text`, `-` for a field or step that is gone; a
number says where a step stands now.
"""

from __future__ import annotations

from typing import Any

import yaml

from jobsheet.storage.job_writing import write_job


def what_changed(before: Any, after: Any) -> list[str]:
    """Every field that reads otherwise in the file of the job, step by step."""
    old, new = _fields(before), _fields(after)
    gone = [f"{where}: -" for where in old if where not in new]
    return gone + [f"{where}: {text}" for where, text in new.items() if old.get(where) != text]


def _fields(job: Any) -> dict[str, str]:
    plan = yaml.load(write_job(job), yaml.CBaseLoader)
    found: dict[str, str] = {}
    for set_up in plan.pop("set-ups"):
        for step in set_up.pop("operations", ()):
            found |= _flat(step.pop("key"), {"in": set_up["key"], **step})
        found |= _flat(set_up.pop("key"), set_up)
    return found | _flat("job", plan)


def _flat(where: str, value: Any) -> dict[str, str]:
    """Fields of a mapping, those inside it too; a list in one line."""
    if isinstance(value, dict):
        return {
            key: text for name, one in value.items() for key, text in _flat(f"{where} {name}", one).items()
        }
    return {where: _line(value)}


def _line(value: Any) -> str:
    if not isinstance(value, list):
        return str(value)
    return "; ".join(", ".join(map(str, one)) if isinstance(one, list) else str(one) for one in value)
