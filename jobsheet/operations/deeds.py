"""What a step at the bench does, as facts: rules ask these, whatever the step's own words are."""

from __future__ import annotations

#: Each deed with how a sheet says it where a person has no words of their own.
SAID = {
    "clamp": "Clamp the work",
    "find zero": "Find the zero, set the dials to 0",
    "measure": "Measure",
    "change holding": "Change what holds the work",
    "take out": "Take the work out",
    "put back": "Put the work back",
    "square up": "Square the work up with the indicator",
    "check head": "Check that the head is square",
    "check vice": "Check the fixed jaw with the indicator",
    "move head": "Move the head",
    "tilt head": "Tilt the head",
    "knock": "Knock the work or the vice to its place",
    "saw": "Saw off what is too long",
    "deburr": "Break the edges",
    "mark": "Mark the part",
    "mark out": "Mark it out",
    "hold loose piece": "Hold the piece that comes loose",
    "clean": "Clean chips off",
    "cool": "Wait until it is cool",
    "other": "",
}
DEEDS = tuple(SAID)
#: What can come off or go on holding where the holding is changed.
HELD_BY = ("straps", "screws", "jaws", "parallels", "bar", "backing")
FACES = ("left", "right", "front", "rear", "top", "bottom")


def said(deeds: tuple[str, ...]) -> str:
    """What is done, one after the other: `Measure; break the edges`."""
    words = [SAID[deed] for deed in deeds if SAID.get(deed)]
    return "; ".join([*words[:1], *(word[:1].lower() + word[1:] for word in words[1:])])
