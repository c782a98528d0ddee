"""Sentences that stand on every sheet, as the safety notes word them; nowhere else are they written."""

from __future__ import annotations

FOOT = (
    "Planning aid only. Follow the machine’s manual, your workshop’s rules and the law where you work;"
    " where they differ from this sheet, they win."
)
CALCULATED = (
    "Calculated from the values entered; the cut may ask more. Start lighter and watch, listen and feel."
)
TRAINEE = (
    "A trainee may run this set-up only after the person in charge has checked it and put initials here: ____"
)
YOUNG = "Young or new workers need induction and closer supervision; the law may limit what they may run."
COMPETENT = (
    "Repairs, guard changes and wiring belong to a person competent, and where required licensed, to do them."
)
TRAINEE_JOB = "A trainee may run this job only after the person in charge has checked it and signed here."
CHECKED = "Read through by a second person before the first cut, if your workshop asks for it."
SUPERSEDED = "SUPERSEDED BY"
SUPERSEDED_REASON = "This is an old plan, printed to be looked at. Work by the plan that counts."
STAMP = "NOT ACKNOWLEDGED"
STAMP_REASON = (
    "Nobody has read the stop notes below for this print. Do not cut from it until the initials are in."
)
DATA_SHEET = (
    "Read the supplier’s safety data sheet before cutting. If you have not been shown how to handle this"
    " material, stop and ask."
)
TYPED_ORDER = "Right-to-left text prints in the order typed: the letters of a line run from left to right."
