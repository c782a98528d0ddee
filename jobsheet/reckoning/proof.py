"""What a machine's proof log teaches, once for each machine and state of its log.

Where nothing was tried nothing is imported. Where something was, the statistics need a moment the first time:
the window takes them after its first paint, the command line at once.
"""

from __future__ import annotations

from datetime import datetime

from jobsheet.errors import JobsheetError
from jobsheet.model.proof import Snapshot
from jobsheet.model.setting import Shop
from jobsheet.reckoning.ladder_known import snapshot_of
from jobsheet.storage.shop_file import workshop


def proof_of(machine: str, shop: Shop | None = None, today: str = "") -> Snapshot | None:
    """What that machine's trials teach today; None where there are none.

    A log that cannot be read teaches nothing, and is told where logs are shown: figures do not wait for it.
    """
    day = today or datetime.now().astimezone().date().isoformat()
    try:
        return snapshot_of(machine, None, day, shop or workshop())
    except JobsheetError:
        return None
