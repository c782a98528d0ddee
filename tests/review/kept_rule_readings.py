"""What one rule says of a plan, with what its fixes change in it; kept by rule beside the readings of whole plans.

Such a reading proves nothing of right or wrong: it says that something reads otherwise now. The plans lie on either
side of a threshold, one typed step apart, or were drawn by chance (`shop`: in a workshop with
another number); of many thousands those are kept that showed a
change of the program which neither the cases of the rules nor the readings of whole plans showed. Beside the rules,
`notes` and `reminders` are asked, and `fix-tried`: what becomes of each remark's fix. After a change that is meant,
look through what changed in `rule_readings.yaml`, then `python -m tests.review.kept_readings` writes it anew.
"""

from __future__ import annotations

import json
from collections.abc import Callable
from functools import cache
from pathlib import Path

import yaml
from msgspec.structs import replace

from jobsheet.model.job import Job
from jobsheet.model.remark import Fix, Remark
from jobsheet.model.shop import Shop
from jobsheet.reckoning.reckoner import Reckoned, Reckoner
from jobsheet.review.engine import reviewed, rules
from jobsheet.review.mending.fix_tried import fix_tried
from jobsheet.review.mending.fixes import NotMended
from jobsheet.review.notes.notes import notes_for
from jobsheet.review.notes.reminders import reminders_for
from jobsheet.review.plan.solid_facts import facts_of
from jobsheet.review.rule import Needs, View
from tests.later import on_day
from tests.review.test_rules import edited, start_of
from tests.review.what_changed import what_changed

FILE = Path(__file__).parent / "rule_readings.yaml"


@cache
def questions() -> dict[str, list[dict]]:
    """By who is asked: each plan, as the job that it begins with, its edits, and what was said of it."""
    return yaml.load(FILE.read_text(encoding="utf-8"), yaml.CBaseLoader)


def said(asked: str, plan: dict) -> list[str]:
    """What a rule says of a plan, a line for each remark in its order; or notes, reminders, fixes that were tried."""
    job = edited(start_of(plan["job"]), [tuple(one) for one in plan["edits"]])
    shop = replace(Shop(), **{name: float(number) for name, number in plan.get("shop", ())})
    with on_day("2026-12-01"):
        reckoned = Reckoner(shop).reckon(job)
        return _OTHERS[asked](job, reckoned) if asked in _OTHERS else _of_rule(asked, job, reckoned)


def _of_rule(rule_id: str, job: Job, reckoned: Reckoned) -> list[str]:
    rule = next(one for one in rules() if one.id == rule_id)
    facts = facts_of(reckoned.job, reckoned) if rule.needs is Needs.STAGES else ()
    found = list(rule.check(View(reckoned.job, reckoned, tuple(facts))))
    return [_line(one, job) for one in found]


def _line(one: Remark, job: Job) -> str:
    """Where, what, by hand, and every fix with the fields that it changes."""
    where = " ".join(one.operations) or one.set_up or (f"line {one.line}" if one.line is not None else "")
    hand = one.by_hand if isinstance(one.by_hand, str) else one.by_hand()
    fixes = "".join(f" / {fix.label}: {_mended(fix, job)}" for fix in one.fixes)
    return f"[{where}] {one.message}" + (f" ({hand})" if hand else "") + fixes


def _mended(fix: Fix, job: Job) -> str:
    try:
        return "; ".join(what_changed(job, fix.mend(job)))
    except NotMended as why:
        return f"not mended: {why}"


def _notes(job: Job, reckoned: Reckoned) -> list[str]:
    found = notes_for(job, reckoned)
    by_place = [("sheet", found.sheet), ("stops", found.stops), *found.set_ups.items(), *found.steps.items()]
    return [f"{where}: {' '.join(one.id for one in some)}" for where, some in by_place if some]


def _reminders(job: Job, reckoned: Reckoned) -> list[str]:
    found = reminders_for(job, reckoned)
    by_place = [("sheet", found.sheet), *found.set_ups.items(), *found.ticks.items(), *found.steps.items()]
    return [f"{where}: {' '.join(one.id for one in some)}" for where, some in by_place if some]


def _tried(job: Job, reckoned: Reckoned) -> list[str]:
    lines = []
    for one in reviewed(job, reckoned).open:
        tried = fix_tried(one, job, reckoned, None)
        if tried is not None:
            rest = [f"ends {each.rule}" for each in tried.ends] + [
                f"leaves {each.rule}" for each in tried.leaves
            ]
            changed = [tried.why_not] if tried.why_not else what_changed(job, tried.job)
            lines.append(f"{one.rule} / {tried.fix.label}: {'; '.join([*changed, *rest])}")
    return lines


#: Who is asked beside the rules.
_OTHERS: dict[str, Callable[[Job, Reckoned], list[str]]] = {
    "notes": _notes,
    "reminders": _reminders,
    "fix-tried": _tried,
}


def write(kept: dict[str, list[dict]]) -> None:
    """Write every plan with what is said of it now."""
    lines = []
    for asked, plans in sorted(kept.items()):
        lines.append(f"{asked}:")
        for plan in plans:
            lines += [
                f"- job: {plan['job']}",
                f"  edits: {json.dumps(plan['edits'], ensure_ascii=False)}",
                *([f"  shop: {json.dumps(plan['shop'])}"] if "shop" in plan else ()),
                "  says:",
            ]
            lines += [f"    - {json.dumps(line, ensure_ascii=False)}" for line in said(asked, plan)]
    FILE.write_text("\n".join(lines) + "\n", encoding="utf-8")
