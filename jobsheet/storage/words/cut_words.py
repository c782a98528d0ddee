"""What the words of an old step say of how it is done, and those of an old header of
the part, as the facts of format 2.
"""

from __future__ import annotations

import re

from jobsheet.errors import JobsheetError
from jobsheet.operations import manners
from jobsheet.operations.registry import kind as kind_of

#: Each manner and the words by which it is known.
_KNOWN = (
    (manners.MEASURED, r"measur\w*|gauges?|gages?|micrometers?|mikes?|calliper\w*|caliper\w*|verniers?|check the size|creep up|between (?:the |two )?lines"),
    (manners.TO_SIZE, r"(?:to (?:the )?)measured size|to measure|creep up|measure\w* (?:it )?in|between (?:the |two )?lines"),
    (manners.HIGH_SIDE, r"from the high side|from above the (?:line|size)|coming (?:back|down) (?:on)?to|back to the line"),
    (manners.TAKEN_UP, r"back(?:ing)? off (?:half|a|one|more|past|\d)|backed off|come (?:up|back) again|past (?:the )?(?:line|slack|backlash)|take\w* up the (?:slack|backlash)"),
    (manners.TILTED, r"(?:tilt(?:ed)?|swivel(?:led)?|lean(?:ed)?|inclined?)\b[^.;]*\bhead|head\b[^.;]*\b(?:tilted|swivelled|inclined|over)"),
    (manners.BROKEN, r"break (?:all |the )?(?:\w+ )?edges?|edges broken|deburr\w*|file the burrs?"),
    (manners.SPRING, r"spring (?:pass|cut)|same dial|second pass"),
    (manners.SLOWLY, r"slow entry|enter slowly|slowly"),
    (manners.RAMP, r"ramps?|ramped"),
    (manners.TO_CENTRE, r"(?:centre|center)[- ]cutting|to (?:its )?centre"),
    (manners.TABS, r"tabs?"),
    (manners.SKIN_LEFT, r"skin (?:is )?left|leave a skin|stop short"),
    (manners.BUSH, r"jigs?|bush(?:es|ing|ings)?|guided|drill plate"),
    (manners.PLUGGED, r"plug|plugged"),
    (manners.ON_PURPOSE, r"drill\w* out|chain|break\w* into|overlap\w*|entry"),
    (manners.TO_THE_TIP, r"(?:to|over) the (?:point|tip)"),
    (manners.FROM_A_HOLE, r"(?:counted |measured |from |off )+(?:the )?(?:first |last )?hole(?: (?:\d+|one|two|three))?"),
    (manners.BY_HAND, r"by hand"),
    (manners.FLOATING, r"floating"),
    (manners.NO_CHAMFER, r"no chamfer|without (?:a )?chamfer"),
    (manners.OILED, r"oil|oiled|fluid|paste|lard|wax|spirit|compound"),
    (manners.DRY, r"dry"),
    (manners.INDICATOR, r"indicator|pin"),
    (manners.PAPER, r"paper"),
    (manners.STOP, r"stop"),
    (manners.BORE, r"bores?|holes?|plug"),
)  # fmt: skip
_LATER = r"harden\w*|ground|grind\w*|plat(?:e|ed|ing)|nitrid\w*|anodi[sz]\w*|carburis\w*|lap(?:ped)?|honed"

_SCALE, _FIGURE = r"(?:HR[A-C]?|HBW?|HV)", r"\d[\d.,]*(?:\s*(?:-|–|to|±)\s*\d[\d.,]*)?"
#: `58 HRC` is no size.
_HARDNESS = rf"{_FIGURE}\s*{_SCALE}\b|\b{_SCALE}\s*{_FIGURE}"


def says(words: str, text: str) -> bool:
    """Whether these words stand in the text."""
    return bool(text) and re.search(rf"\b(?:{words})\b", text, re.IGNORECASE) is not None


def asked(kind: str, name: str) -> tuple[str, ...]:
    """The choices of a field of that kind of step; nothing where it has no such
    field, or nobody knows the kind.
    """
    try:
        return next((entry.choices for entry in kind_of(kind).entries if entry.name == name), ())
    except JobsheetError:
        return ()


def how(kind: str, words: str) -> tuple[str, ...]:
    """How a step of that kind is done, as far as its words say; a measured size says which
    one is meant at the point of a drill.
    """
    choices = asked(kind, "how")
    found = [one for one, known in _KNOWN if one in choices and says(known, words)]
    if manners.TO_THE_TIP in found and says("full diameter", words):
        found.remove(manners.TO_THE_TIP)
    return tuple(found)


def allowance(later: str) -> str:
    """What is left on for later processes, where the words say so or where they ask for
    nothing; empty where they leave it open.
    """
    if not later.strip():
        return ""
    sizes = re.sub(_HARDNESS, "", later, flags=re.IGNORECASE)
    if match := re.search(r"\d+(?:[.,]\d+)?\s*(?:mm|in\b|\")?", sizes):
        return match[0].strip()
    if says("no allowance|nothing left|none", later) or not says(_LATER, later):
        return "0"
    return ""


def general_limits(*texts: str) -> str:
    """Limits of all sizes that have none of their own, as the sentence in which they stand."""
    for text in texts:
        for piece in re.split(r"[.;](?:\s|$)", text):
            if says("general limits?|unless stated|2768", piece):
                return piece.strip()
    return ""


def stands_on(*texts: str) -> str:
    """What a zero is found on, where that is no two edges."""
    for text in texts:
        if says("bores?", text):
            return "a bore"
        if says("holes?", text):
            return "another hole"
        if says("centre|center|middle", text):
            return "the middle"
    return ""
