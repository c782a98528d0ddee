"""Remarks by what they are about: each row asks for its own, and a long plan has hundreds of both."""

from __future__ import annotations

from jobsheet.model.remark import SEVERITIES, Remark


def by_key(remarks: tuple[Remark, ...]) -> dict[str, tuple[Remark, ...]]:
    """The remarks about each operation and each set-up, worst first."""
    found: dict[str, list[Remark]] = {}
    for remark in sorted(remarks, key=lambda remark: SEVERITIES.index(remark.severity)):
        for key in {*remark.operations, remark.set_up}:
            found.setdefault(key, []).append(remark)
    return {key: tuple(about) for key, about in found.items()}
