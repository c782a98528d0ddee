"""What holds the work, asked of its kind: nothing where nothing holds it; and what lies on the table."""

from __future__ import annotations

import pytest

from jobsheet.catalog.metals.densities import density
from jobsheet.catalog.metals.materials import find
from jobsheet.holdings.placed import own_vice
from jobsheet.model.held_work import NOTHING
from jobsheet.model.shop import Shop
from jobsheet.reckoning.grip import grip_of, load_of, top_of
from jobsheet.storage.card_files import find_card
from jobsheet.storage.job_file import blank_job

B1, STEEL = find_card("bench-mill-b-1"), find("S235")
STOCK = blank_job("bench-mill-b-1").stock


def test_nothing_holds_nothing_and_lifts_it_nowhere():
    assert grip_of(NOTHING, B1, STEEL, Shop()) is None
    assert top_of(NOTHING, B1, 0.02) is None


def test_the_own_vice_grips_by_its_screw():
    grip = grip_of(own_vice(B1), B1, STEEL, Shop())
    assert grip.kind == "vice"
    assert grip.low < grip.force < grip.high


def test_on_the_table_lie_the_stock_and_what_holds_it():
    """Length × width × height × 7850 kg/m³ of steel, and the vice of the card."""
    volume = STOCK.length.value * STOCK.width.value * STOCK.height.value
    bare = load_of(STOCK, NOTHING, B1, STEEL)
    assert bare == pytest.approx(volume * density("steel"))
    assert load_of(STOCK, own_vice(B1), B1, STEEL) == pytest.approx(bare + B1.vices[0].mass)
