"""Plans with several mistakes at once, and what the review says of each: kept as
the pictures of the pages are.

A reading that is kept proves nothing of right or wrong, that is for the cases of the rules: it says that
something reads otherwise now. After a change that is meant, look through what changed in `readings.yaml`,
then `python -m tests.review.kept_readings` writes it anew, and with it what single rules say
(`kept_rule_readings.py`). The plans were drawn by chance, from the edits of the cases, two to four together,
and on the plans of `unseen`; of some thousand those are kept that go a way through the rules which none
before them went.
"""

from __future__ import annotations

import json
from pathlib import Path

import yaml

from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.engine import reviewed
from tests.later import on_day
from tests.review.test_rules import edited, start_of

FILE = Path(__file__).parent / "readings.yaml"


def plans() -> list[dict]:
    """Each plan: the job that it begins with, its edits, and what was said of it."""
    return yaml.load(FILE.read_text(encoding="utf-8"), yaml.CBaseLoader)


def reading(plan: dict) -> list[str]:
    """What is said of a plan, a line for each remark in its order: how bad, rule, steps, words, fixes."""
    job = edited(start_of(plan["job"]), [tuple(one) for one in plan["edits"]])
    with on_day("2026-12-01"):
        return [
            f"{one.severity} {one.rule} [{' '.join(one.operations) or one.set_up}] {one.message}"
            + "".join(f" / {fix.label}" for fix in one.fixes)
            for one in reviewed(job, Reckoner().reckon(job)).open
        ]


def write(kept: list[dict]) -> None:
    """Write every plan with what is said of it now."""
    lines = []
    for plan in kept:
        lines += [
            f"- job: {plan['job']}",
            f"  edits: {json.dumps(plan['edits'], ensure_ascii=False)}",
            "  says:",
        ]
        lines += [f"    - {json.dumps(line, ensure_ascii=False)}" for line in reading(plan)]
    FILE.write_text("\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    from tests.review import kept_rule_readings

    write(plans())
    kept_rule_readings.write(kept_rule_readings.questions())
