"""Something in this plan is wrong or missing, with its reason; or text printed beside a step."""

from __future__ import annotations

from collections.abc import Callable

from msgspec import Struct

from jobsheet.model.job import Job

#: Worst first.
SEVERITIES = ("hazard", "scrap", "rework", "habit")


class Fix(Struct, frozen=True):
    """What would mend it: a label for its button and the job after it.

    `reshapes` are the steps whose shape the remark is about: only there may the finished part come out
    otherwise. Where steps are moved or added, those that the remark names may too.
    """

    label: str
    mend: Callable[[Job], Job]
    reshapes: tuple[str, ...] = ()


class Remark(Struct, frozen=True, kw_only=True):
    """A fault in this plan. `operations` are keys; `rule` is the id, in words."""

    rule: str
    severity: str
    message: str
    why: str
    operations: tuple[str, ...] = ()
    set_up: str = ""
    #: The line of the finished part that it is about: 0 the sizes, features from
    #: 1; None where it is about none.
    line: int | None = None
    fix: Fix | None = None
    #: Other fixes, tried in turn where the first one is not offered.
    others: tuple[Fix, ...] = ()
    #: What a person can do where nothing is offered; without it the example of the rule's own page is named.
    by_hand: str | Callable[[], str] = ""

    @property
    def fixes(self) -> tuple[Fix, ...]:
        """All of them, the one that is preferred first."""
        return (self.fix, *self.others) if self.fix is not None else self.others


class Note(Struct, frozen=True, kw_only=True):
    """A safety note: `stop`, `warn` or `note`, where it stands and whose words it rests on."""

    id: str
    level: str
    text: str
    source: str
    initials: str = ""
    scope: str = "sheet"
    operation: str = ""
    set_up: str = ""
    back: bool = False
