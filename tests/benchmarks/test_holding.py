"""The drawing of how the work is held, made from nothing, the best of five
rounds for each kind of holding.
"""

import time

import pytest

from jobsheet.holdings.all_holdings import holdings
from jobsheet.model.lying import lying, stock_box
from jobsheet.report.holding_view import holding_picture
from jobsheet.storage.card_files import find_card
from tests.holdings.test_all_holdings import full, with_holding


@pytest.mark.parametrize("name", holdings())
def test_a_holding_is_drawn(name, capsys):
    job = with_holding(full(name))
    set_up, card = job.set_ups[0], find_card(job.machine)
    lie, best = lying(set_up, stock_box(job)), 1.0
    for _ in range(5):
        begin = time.perf_counter()
        holding_picture(set_up, lie, job.datums, 150, 90, card)
        best = min(best, time.perf_counter() - begin)
    with capsys.disabled():
        print(f"\ndrawing of a {name}: {best * 1e3:.2f} ms (limit 5 ms)")
    assert best < 0.005
