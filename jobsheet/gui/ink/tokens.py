"""The palette: one value for light, one for dark. Painters read tokens, never colours of their own.

One sense for each accent: blue, you can act here; purple, look twice; vermilion, do not cut yet;
ink, a fact. A test computes every contrast of these two values.
"""

from __future__ import annotations

from msgspec import Struct


class Tokens(Struct, frozen=True):
    """Colours by what they are for."""

    name: str
    bench: str
    paper: str
    field: str
    chosen: str
    band: str
    ink: str
    pencil: str
    rule: str
    edge: str
    blue: str
    bluemark: str
    purple: str
    purplemark: str
    verm: str
    vermmark: str
    onblue: str


LIGHT = Tokens(
    name="light",
    bench="#E4DED1",
    paper="#FBF8F1",
    field="#FFFFFF",
    chosen="#DCE9F2",
    band="#C9E3F5",
    ink="#1C1A17",
    pencil="#58534A",
    rule="#CFC7B6",
    edge="#857B6A",
    blue="#005F99",
    bluemark="#0072B2",
    purple="#8A3A69",
    purplemark="#B25A8C",
    verm="#A24400",
    vermmark="#CA5800",
    onblue="#FFFFFF",
)

DARK = Tokens(
    name="dark",
    bench="#131517",
    paper="#1D2023",
    field="#272B2F",
    chosen="#21384A",
    band="#24465C",
    ink="#EFEAE0",
    pencil="#B5AFA3",
    rule="#3B4045",
    edge="#8F9499",
    blue="#7CC6F0",
    bluemark="#56B4E9",
    purple="#E3A6CA",
    purplemark="#CC79A7",
    verm="#FF9C5B",
    vermmark="#F07F2E",
    onblue="#10181E",
)

#: Verdict -> (icon, token of its word, token of its mark).
VERDICTS = {
    "cut before": ("verdict-cut-before", "ink", "ink"),
    "expected": ("verdict-expected", "pencil", "pencil"),
    "not tried": ("verdict-not-tried", "pencil", "pencil"),
    "tight": ("verdict-tight", "purple", "purplemark"),
    "beyond": ("verdict-beyond", "verm", "vermmark"),
}

#: Severity -> (icon, token of its word, token of its mark).
SEVERITIES = {
    "hazard": ("severity-hazard", "verm", "vermmark"),
    "scrap": ("severity-scrap", "purple", "purplemark"),
    "rework": ("severity-rework", "blue", "bluemark"),
    "habit": ("severity-habit", "pencil", "pencil"),
}
