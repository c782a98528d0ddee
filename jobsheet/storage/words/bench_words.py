"""What the words of an old bench step do, as the deeds that format 2 names."""

from __future__ import annotations

import re

#: Each deed and the words by which it is known, in the order they are listed.
_DEEDS = (
    ("clamp", r"clamp(?:s|ed)?|tighten\w*|strap(?:s|ped)? (?:it|on|down|clamps)|strap clamps on|bolt (?:it )?down"),
    ("find zero", r"(?=.*\b(?:zero|dials?)\b)(?=.*\b(?:find|set|pick up|indicate)\b).*"),
    ("measure", r"measure\w*|micrometer|calliper\w*|caliper\w*|gauge\w*|check (?:the )?(?:size|with)"),
    ("change holding", r"screw(?:s|ed)? (?:it )?(?:down|through)|(?:mov|chang|swap)\w* (?:the )?(?:\w+ )?(?:straps?|clamps?|screws?|bolts?)|(?:take|takes|taking) (?:the )?(?:straps?|clamps?) off|one at a time"),
    ("take out", r"(?:harden|anneal|stress[- ]reliev|weld)\w*|plating|plated|turn it end for end|take (?:it|the (?:work|part|block|casting)) out|(?<!before )unclamp\w*|turn (?:it|the (?:work|part)) over|remove (?:it|the (?:work|part))"),
    ("put back", r"put (?:it )?back"),
    ("square up", r"indicat\w* (?:the )?(?:work|part|edge|it)|true (?:it )?up|square (?:it )?up"),
    ("check head", r"tram(?:med|ming)?|head square"),
    ("check vice", r"check the vice\b.*|shim\w*|(?:indicat\w*|clock\w*|check\w*|square\w*|true\w*) (?:the )?(?:fixed )?(?:jaw|vice|vise)|(?:vice|vise|fixed jaw) (?:is )?(?:indicated|checked|square|true)"),
    ("move head", r"(?:mov|rais|lower|slid|shift|wind|bring|tak)\w* (?:the )?(?:mill )?(?:head|quill head|knee|column)|head (?:is |must be )?(?:raised|lowered|moved|up|down)"),
    ("tilt head", r"(?:tilt|swivel|lean|incline?)\w*\b[^.;]*\bhead|head\b[^.;]*\b(?:tilted|swivelled|inclined|over)"),
    ("knock", r"knock\w* (?:it|the (?:work|part|block|vice|vise|head))|(?:work|vice|vise|head) (?:was |is )?(?:knocked|bumped)"),
    ("saw", r"saw(?:s|ing|n)?(?! (?:marks?|cut|ends?))|drill(?:ed)? out"),
    ("deburr", r"deburr\w*|file|burrs?|break (?:all |the )?(?:\w+ )?edges?"),
    ("mark", r"mark(?:ing)?(?! out)|stamp\w*|engrav\w*|etch\w*"),
    ("mark out", r"mark(?:ing)? out|scrib\w*"),
    ("hold loose piece", r"(?=.*\b(?:slug|middle|loose piece|piece inside|waste)\b)(?=.*\b(?:screw\w*|hold\w*|held|clamp\w*|strap\w*|bolt\w*|tape\w*|glue\w*|pin\w*)\b).*"),
    ("clean", r"clean\w*|wipe\w*|brush\w*"),
    ("cool", r"cool\w*|(?:let (?:it|the \w+) )?rest (?:over|until|for|a)\w*|let it rest"),
)  # fmt: skip


#: What takes the old hold off, and what puts the new one on.
_OFF = re.compile(
    r"\b(?:(?:take|remove|loosen|undo)\w*\b[^.;]*?\b(?:straps?|clamps?)(?:\s+off)?|(?:straps?|clamps?)\s+(?:come\s+)?off)\b",
    re.IGNORECASE,
)
_ON = re.compile(r"\bscrew\b(?!s|\w* (?:out|off))|\bbolt (?:it |down|through)", re.IGNORECASE)
_MOVED = re.compile(r"\b(?:mov|chang|swap)\w* (?:the )?(?:\w+ )?(?:straps?|clamps?)\b", re.IGNORECASE)
#: Instruments by the words of people, the first that fits.
_INSTRUMENTS = (
    ("plug gauge", r"plug(?: gauge)?s?|go and no-go"),
    ("gap gauge", r"(?:gap|slot|snap) gauges?|gauge \d+"),
    ("depth gauge", r"depth gauges?"),
    ("micrometer", r"micrometers?|mikes?"),
    ("calliper", r"callipers?|calipers?|verniers?"),
    ("indicator", r"indicators?|dial gauges?|clock"),
    ("square", r"squares?"),
)


def instrument(words: str) -> str:
    """What is measured with; nothing where no word is known."""
    return next(
        (name for name, known in _INSTRUMENTS if re.search(rf"\b(?:{known})\b", words, re.IGNORECASE)), ""
    )


def holding_changed(words: str) -> dict[str, str]:
    """What comes off, what holds instead, and whether one after the other, as
    the words of an old step say it.
    """
    off, on = _OFF.search(words), _ON.search(words)
    found: dict[str, str] = {}
    if off is not None:
        found["removes"] = "straps"
    if on is not None:
        found["stays"] = "screws"
    if not found and _MOVED.search(words):
        found = {"removes": "straps", "stays": "straps"}
    if re.search(r"\bone at a time\b", words, re.IGNORECASE):
        found["one at a time"] = "yes"
    elif off is not None and on is not None and off.start() < on.start():
        found["one at a time"] = "no"
    return found


def deeds(words: str, cutter: str = "") -> tuple[str, ...]:
    """What a bench step of these words does, with that in the spindle; nothing where no word is known."""
    found = [
        deed for deed, known in _DEEDS if re.search(rf"\b(?:{known})\b", words, re.IGNORECASE | re.DOTALL)
    ]
    if "edge finder" in cutter.casefold() and "find zero" not in found:
        found.insert(0, "find zero")
    return tuple(found)
