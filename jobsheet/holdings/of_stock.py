"""What a holding need not be told because the stock says it: the diameter of the bar that it holds."""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.holdings.all_holdings import kind_of, roles_of
from jobsheet.model.held_work import Holding
from jobsheet.model.job import SetUp
from jobsheet.model.quantity import Quantity
from jobsheet.model.stock import Stock

#: Two diameters that differ by no more than this are the same, typed in another unit.
SAME = 0.005


def held_size(stock: Stock) -> Quantity | None:
    """The size that jaws or a vee grip of a bar: the diameter, or over the flats; None of any other stock."""
    return stock.diameter if stock.is_round else stock.across_flats if stock.shape == "hexagon" else None


def with_stock(holding: Holding, stock: Stock) -> Holding:
    """The holding with the diameter of the stock where it asks one and none is said."""
    size = held_size(stock)
    if size is None or not _asks(holding) or getattr(holding, "diameter", None) is not None:
        return holding
    return replace(holding, diameter=size)


def at_odds(set_up: SetUp, stock: Stock) -> str:
    """One sentence where a holding's diameter is not that of the stock; nothing
    where they agree, or one is not said.
    """
    size, said = held_size(stock), getattr(set_up.holding, "diameter", None)
    if size is None or said is None or not _asks(set_up.holding):
        return ""
    if abs(said.value - size.value) <= SAME * size.value:
        return ""
    kind = kind_of(set_up.holding)
    what = kind.name if kind is not None else "holding"
    across = "⌀" if stock.is_round else ""
    return (
        f"the {what} is said to hold {said.text}, and the stock is {across}{size.text}{'' if across else ' over its flats'}:"
        " leave the diameter of the work empty, or write that of the stock"
    )


def _asks(holding: Holding) -> bool:
    """Whether it holds round work by a diameter of its own field."""
    return hasattr(holding, "diameter") and roles_of(holding).round
