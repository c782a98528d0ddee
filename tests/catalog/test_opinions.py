"""Where the trade disagrees: the data, the workshop's file and its numbers speak of the same choices."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

import jobsheet
from jobsheet.catalog.trade.opinions import opinion, opinions
from jobsheet.errors import DocumentError
from jobsheet.model.shop import Shop
from jobsheet.paths import own_folder
from jobsheet.storage.shop_file import OPINIONS, workshop


def test_data_file_and_shop_have_the_same_choices_and_defaults():
    """The rows of the section on settings in the sequencing rules; where a tap drill comes
    from is no choice: height decides.
    """
    assert len(opinions()) == 6
    assert {one.field: one.choices for one in opinions()} == {entry.name: entry.choices for entry in OPINIONS}
    for one in opinions():
        assert getattr(Shop(), one.field) == one.default
        for text in (one.question, one.one, one.one_source, one.other, one.other_source, one.why):
            assert text


def test_a_workshop_chooses_in_its_file():
    own_folder().mkdir(parents=True, exist_ok=True)
    (own_folder() / "workshop.yaml").write_text(
        "format: 1\nspot angle: any spot\nclimb milling: light finish\n", encoding="utf-8"
    )
    shop = workshop()
    assert (shop.spot_angle, shop.climb_milling, shop.counterbore_order) == (
        "any spot",
        "light finish",
        opinion("counterbore-order").default,
    )


def test_a_choice_that_does_not_exist_names_those_that_do():
    own_folder().mkdir(parents=True, exist_ok=True)
    (own_folder() / "workshop.yaml").write_text("format: 1\nspot angle: wide\n", encoding="utf-8")
    with pytest.raises(DocumentError) as told:
        workshop()
    assert "never under the drill" in str(told.value.problems[0])


def test_a_choice_that_nothing_asks_any_more_is_read_without_a_word():
    own_folder().mkdir(parents=True, exist_ok=True)
    (own_folder() / "workshop.yaml").write_text(
        "format: 1\ntap drill from: tables\nchatter feed: more\n", encoding="utf-8"
    )
    assert workshop() == Shop()


def test_every_choice_is_read_by_something_that_answers():
    """Beside the file that reads it and the value that keeps it; what it changes
    is shown where that is tested.
    """
    read = {
        node.attr
        for path in Path(jobsheet.__file__).parent.rglob("*.py")
        if path.name not in ("shop_file.py", "shop.py")
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.Attribute) and isinstance(node.ctx, ast.Load)
    }
    assert {one.field for one in opinions()} <= read
