"""Where the trade disagrees: both opinions, the cautious default and why; `resources/opinions.yaml`.

A workshop chooses in its `workshop.yaml`; what is chosen stands in `model.setting.Shop`. No
remark calls the other opinion wrong.
"""

from __future__ import annotations

from functools import cache

from msgspec import Struct

from jobsheet.catalog.reading.data import shipped


class Opinion(Struct, frozen=True, kw_only=True):
    """One question with two answers, each with its source, and the words a
    workshop may choose, the default first.
    """

    id: str
    question: str
    one: str
    one_source: str
    other: str
    other_source: str
    choices: tuple[str, ...]
    why: str

    @property
    def default(self) -> str:
        """What counts until a workshop chooses."""
        return self.choices[0]

    @property
    def field(self) -> str:
        """The name of its choice in `Shop`, and in workshop.yaml with spaces."""
        return self.id.replace("-", "_")


@cache
def opinions() -> tuple[Opinion, ...]:
    """All of them, in the order of the file."""
    return tuple(
        Opinion(
            id=name, question=row["question"], one=row["one"], one_source=row["one source"], other=row["other"],
            other_source=row["other source"], choices=tuple(row["choices"]), why=row["why"],
        )
        for name, row in shipped("opinions.yaml").items()
    )  # fmt: skip


def opinion(name: str) -> Opinion:
    """The one of that id; KeyError where there is none."""
    return {opinion.id: opinion for opinion in opinions()}[name]
