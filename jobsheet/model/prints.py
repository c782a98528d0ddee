"""Which pages are printed: everything, a list to hand over, cards for one
place, a form to fill in by hand.
"""

from __future__ import annotations

from msgspec import Struct

#: Each of them by the word that options and files say, and as a person reads it.
PRINTS: dict[str, str] = {
    "whole": "The whole sheet",
    "route": "Route list",
    "positions": "Positions cards",
    "step": "Step cards, half a page each",
    "blank": "Blank form of this machine",
}


class Prints(Struct, frozen=True, kw_only=True):
    """Words of `PRINTS`, in the order in which they are printed; the steps by number
    that get a card, none named for all.
    """

    pages: tuple[str, ...] = ("whole",)
    steps: tuple[int, ...] = ()


#: Everything that a bench needs.
WHOLE = Prints()


def prints(names: tuple[str, ...] | list[str], steps: tuple[int, ...] = ()) -> Prints:
    """The pages of these names, each once, in the order of `PRINTS` whatever the order they were named in."""
    return Prints(pages=tuple(name for name in PRINTS if name in names), steps=steps)
