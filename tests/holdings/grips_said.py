"""What a holding carries, by its facts as they are typed."""

from __future__ import annotations

from jobsheet.catalog.metals.materials import find
from jobsheet.holdings.all_holdings import holding_kind
from jobsheet.limits.each import holding
from jobsheet.model.figure import Figure, Figures
from jobsheet.model.setting import Setting
from jobsheet.model.shop import Shop
from jobsheet.storage.card_files import find_card

from .said_holdings import said

B1 = "bench-mill-b-1"


def grip(name, material="S235", **facts):
    return holding_kind(name).grip(said(name, **facts), find_card(B1), find(material), Shop())


def turned_by(grip, pull):
    """The limit on the holding of a milling cut that pulls so hard [N] and lifts nothing."""
    setting = Setting(machine=find_card(B1), material=find("S235"), extent=(0.1, 0.03, 0.03), grip=grip)
    figures = Figures(items=(Figure(name="in_plane_peak", value=pull, unit="N", shown=""),))
    return holding.limit(figures, setting, None)
