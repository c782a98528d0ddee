"""The shipped pages of help are those that rules and data write."""

import pytest

from jobsheet.paths import resources
from jobsheet.review.pages.help_page import PAGES, page


@pytest.mark.parametrize("name", PAGES)
def test_the_help_pages_are_the_rules_and_the_data(name):
    """`python -m jobsheet.review.pages.help_page` writes them anew."""
    assert (resources() / "help" / name).read_text(encoding="utf-8") == page(name)
