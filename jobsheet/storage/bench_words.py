"""What the words of an old bench step do, as the deeds that format 2 names."""

from __future__ import annotations

import re

#: Each deed and the words by which it is known, in the order they are listed.
_DEEDS = (
    ("clamp", r"clamp(?:s|ed)?|tighten\w*|strap(?:s|ped)? (?:it|on|down|clamps)|strap clamps on|bolt (?:it )?down"),
    ("find zero", r"(?=.*\b(?:zero|dials?)\b)(?=.*\b(?:find|set|pick up|indicate)\b).*"),
    ("measure", r"measure\w*|micrometer|calliper\w*|caliper\w*|gauge\w*|check (?:the )?(?:size|with)"),
    ("change holding", r"(?:mov|chang|swap)\w* (?:the )?(?:\w+ )?(?:straps?|clamps?|screws?|bolts?)|(?:take|takes|taking) (?:the )?(?:straps?|clamps?) off|one at a time"),
    ("take out", r"take (?:it|the (?:work|part|block|casting)) out|(?<!before )unclamp\w*|turn (?:it|the (?:work|part)) over|remove (?:it|the (?:work|part))"),
    ("put back", r"put (?:it )?back"),
    ("square up", r"indicat\w* (?:the )?(?:work|part|edge|it)|true (?:it )?up|square (?:it )?up"),
    ("check head", r"tram(?:med|ming)?|head square"),
    ("check vice", r"(?:indicat\w*|clock\w*|check\w*|square\w*|true\w*) (?:the )?(?:fixed )?(?:jaw|vice|vise)|(?:vice|vise|fixed jaw) (?:is )?(?:indicated|checked|square|true)"),
    ("move head", r"(?:mov|rais|lower|tilt|swing|swivel|unlock)\w* (?:the )?(?:mill )?(?:head|quill head|knee|column)"),
    ("saw", r"saw(?:s|ing)?(?! (?:marks?|cut|end))"),
    ("deburr", r"deburr\w*|file|burrs?|break (?:all |the )?(?:\w+ )?edges?"),
    ("mark", r"mark|stamp\w*|scribe\w*|engrav\w*"),
    ("hold loose piece", r"(?=.*\b(?:slug|middle|loose piece|piece inside|waste)\b)(?=.*\b(?:screw\w*|hold\w*|held|clamp\w*|strap\w*|bolt\w*|tape\w*|glue\w*|pin\w*)\b).*"),
    ("clean", r"clean\w*|wipe\w*|brush\w*"),
    ("cool", r"cool\w*"),
)  # fmt: skip


def deeds(words: str, cutter: str = "") -> tuple[str, ...]:
    """What a bench step of these words does, with that in the spindle; nothing where no word is known."""
    found = [
        deed for deed, known in _DEEDS if re.search(rf"\b(?:{known})\b", words, re.IGNORECASE | re.DOTALL)
    ]
    if "edge finder" in cutter.casefold() and "find zero" not in found:
        found.insert(0, "find zero")
    return tuple(found)
