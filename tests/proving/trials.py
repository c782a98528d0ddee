"""Trials for tests: an outcome and what it asked, the rest as little as a trial needs."""

from __future__ import annotations

from jobsheet.model.shop import Shop
from jobsheet.model.trials import Asked, Trial
from jobsheet.proving.learned import snapshot

TODAY = "2026-11-25"
SHOP = Shop()


def trial(outcome, *, torque=None, chatter=None, process="side", cutter_kind="end mill", date=TODAY, **more):
    """Shares of the card's peak torque and of the class value; or None where
    it asked nothing of that limit.
    """
    shares = (("spindle-torque", torque), ("chatter", chatter))
    return Trial(
        machine="m", date=date, process=process, cutter="end mill 12 mm, 4 teeth", cutter_kind=cutter_kind, material="S235",
        outcome=outcome, asked=tuple(Asked(name, share, share) for name, share in shares if share is not None), **more,
    )  # fmt: skip


def taught(*trials, today=TODAY, shop=SHOP):
    return snapshot(trials, "m", today, shop)
