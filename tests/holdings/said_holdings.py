"""A holding as its facts are typed, for the tests of kinds."""

from __future__ import annotations

from jobsheet.holdings.all_holdings import holding_kind


def said(name, **facts):
    kind = holding_kind(name)
    return kind.fields(
        **{entry.name: entry.read(facts[entry.name], "mm") for entry in kind.entries if entry.name in facts}
    )
