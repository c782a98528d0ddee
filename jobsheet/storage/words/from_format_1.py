"""Brings a job of format 1 up to format 2: what its words say of holding and bench steps becomes facts.

Nothing is lost: words that are more than the facts made of them stay in the note, and a holding that no kind
of ours says stays in words. This is the one place that reads words for what they mean; rules ask the facts.
"""

from __future__ import annotations

import re

from jobsheet.catalog.reading.strict_yaml import Node
from jobsheet.model.job import SetUp
from jobsheet.model.lying import Lying, beside, lying
from jobsheet.model.stock import FACES
from jobsheet.operations import manners
from jobsheet.storage.words import cut_words
from jobsheet.storage.words.bench_words import deeds, holding_changed, instrument

_FIELDS = ("device", "packing", "above jaws", "tighten", "clamps", "bolt", "stop", "note")
_SIZE = r"(\d+(?:[.,]\d+)?\s*(?:mm|in|\")?)"
_SIDES = r"toe clamps?|side clamps?|edge clamps?"
_STEP = r"low clamps?|below the (?:face|top|surface)|on the (?:step|flange|ledge|lug)s?|in the (?:slot|step)s?|through (?:the |its )?(?:own )?holes?"
_ONE_END = r"\b(?:at|in|to) (?:the |one )?(left|right|one|near|far)?\s*(?:end|half|side) of the (?:jaws?|vise|vice)\b"
_UNSAID_BOX = ((0.0, 1.0), (0.0, 1.0), (0.0, 1.0))

#: By which words a kind is known, the first that fits. `vice` stands before
#: straps: "vice, straps over it" is a vice.
_KINDS = (
    ("hand vice", r"hand[- ](?:vice|vise)"),
    ("other words", r"by hand|in the hand|hand[- ]held|magnet\w*|tape|glue\w*"),
    ("sine plate", r"sine"),
    ("centres", r"between cent(?:re|er)s"),
    ("chuck", r"dividing head|rotary table|chuck|collet block"),
    ("vee block", r"(?:vee|v)[- ]?blocks?"),
    ("angle plate", r"angle plate"),
    ("vice", r"vises?|vices?|jaws?"),
    ("fixture plate", r"fixture plate|screwed (?:to|on)"),
    ("straps", r"straps?|clamps?|clamped"),
)


def brought_up(root: Node) -> Node:
    """The nodes of a file of format 1 as format 2 has them; what is no job's is
    left to the reader, which says so.
    """
    for set_up in _list(_field(root, "set-ups")):
        if set_up.fields is None:
            continue
        _possible(set_up)
        holding = _field(set_up, "holding")
        around = " ".join(
            _text(node, name)
            for node, name in ((set_up, "title"), (set_up, "note"), *((holding, name) for name in _FIELDS))
            if node is not None
        )
        if holding is not None and holding.fields is not None and "kind" not in holding.fields:
            holding.fields = _holding(holding, set_up, _datums(root))
        zero = _field(set_up, "zero")
        if zero is not None and (on := cut_words.stands_on(_text(zero, "named"), _text(zero, "found"))):
            _say(zero, {"stands on": on})
        for step in _list(_field(set_up, "operations")):
            _step(step, around)
    _header(root)
    return root


def _header(root: Node) -> None:
    """What the words of the header say of the part and of the fluid."""
    part = _field(root, "part")
    note = _text(root, "note")
    if part is not None:
        limits = cut_words.general_limits(note, _text(part, "drawing"))
        _say(part, {"allowance": cut_words.allowance(_text(part, "later")), "general limits": limits})
    if cut_words.says("mineral oil", f"{note} {_text(root, 'also fetch')}"):
        _say(root, {"fluid is": "mineral oil"})


def _step(step: Node, around: str) -> None:
    """What the words of a step say: what a bench step does, how a cut is done;
    `around` are those of its set-up.
    """
    kind = _text(step, "kind")
    words = " ".join(text for name in ("what", "note", "with what", "edges") if (text := _text(step, name)))
    if not cut_words.asked(kind, "does"):
        found = list(cut_words.how(kind, words))
        if cut_words.how(kind, around).count(manners.BUSH) and manners.BUSH not in found:
            found.append(manners.BUSH)
        _say(step, {"how": ", ".join(found)})
        return
    if "does" in (step.fields or {}):
        return
    done = deeds(words, _text(step, "cutter"))
    _say(step, {"does": ", ".join(done) or "other"})
    if "measure" in done:
        _say(step, {"instrument": instrument(words)})
    if "change holding" in done:
        _say(step, holding_changed(_text(step, "what")))


def _say(node: Node, facts: dict[str, str]) -> None:
    """Facts beside what a node has; what it says already stands, and what is empty is not said."""
    if node.fields is not None:
        for name, text in facts.items():
            if text and _field(node, name) is None:
                node.fields[name] = Node(node.line, text=text)


def _possible(set_up: Node) -> None:
    """Faces that cannot be where they are said to be: they were read as what `laid`
    makes of them, and stay in the note.
    """
    said = {name: _field(set_up, name) for name in ("up", "operator", "fixed jaw")}
    up = said["up"].text if said["up"] is not None else "top"
    if up not in FACES:
        return
    words = []
    for name in ("operator", "fixed jaw"):
        node = said[name]
        if node is not None and node.text in FACES and node.text not in beside(up):
            words.append(f"{'face to you' if name == 'operator' else name}: {node.text}")
            set_up.fields = {key: other for key, other in (set_up.fields or {}).items() if other is not node}
    if words:
        note = _field(set_up, "note")
        text = "; ".join(part for part in ((note.text or "") if note is not None else "", *words) if part)
        set_up.fields = {key: node for key, node in (set_up.fields or {}).items() if node is not note}
        set_up.fields["note"] = Node(set_up.line, text=text)


def _holding(holding: Node, set_up: Node, datums: dict[str, str]) -> dict[str, Node]:
    said = {name: text for name in _FIELDS if (text := _text(holding, name))}
    fields = dict(holding.fields or {})
    device, packing, note = (said.get(name, "") for name in ("device", "packing", "note"))
    kind = _kind(device, packing, said)
    if not kind:
        return fields
    found: dict[str, str] = {"kind": kind}
    kept: list[str] = []
    lie = _lie(set_up)
    takes: tuple[str, ...] = ()
    if kind == "vice":
        found |= _vice(device, packing, note, kept)
        found |= _over(note, lie)
        if side := _stop(said.get("stop", ""), lie, datums):
            found["stop"] = side
        takes = ("above jaws", "tighten")
    elif kind == "straps":
        found |= _straps(packing, said.get("stop", ""), kept)
        told = f"{device} {packing} {note}"
        found |= _supported(told)
        if _says(_SIDES, told):
            found["press on"] = "sides"
        elif _says(_STEP, told):
            found["press on"] = "a step"
        if device.casefold() not in ("strap clamps", "straps", "clamps", "strap clamp"):
            kept.insert(0, device)
        takes = ("tighten", "clamps", "bolt")
    elif kind == "other words":
        found |= {"device": device or packing}
        if device and packing:
            found["packing"] = packing
        takes = ()
    else:
        kept += [device, packing]
        takes = ("tighten", "bolt", "clamps") if kind in ("angle plate", "vee block", "sine plate") else ()
    for name in _FIELDS[2:7]:
        text = said.get(name, "")
        if name in takes or not text:
            continue
        if name == "stop":
            if kind != "vice" or text.casefold() not in (
                found.get("stop", ""),
                f"{found.get('stop', '')} end to the stop",
            ):
                kept.append(text if "stop" in text.casefold() else f"stop: {text}")
        else:
            kept.append(f"{name} {text}")
    words = [one for one in dict.fromkeys(part.strip() for part in kept) if one]
    if note:
        words.append(note)
    if words:
        found["note"] = "; ".join(words)
    made = {name: Node(_line(holding, name), text=text) for name, text in found.items()}
    for name in takes:
        if name in fields:
            made[name] = fields[name]
    made |= {name: node for name, node in fields.items() if _plain(name) not in _FIELDS}
    return made


def _kind(device: str, packing: str, said: dict[str, str]) -> str:
    for kind, words in _KINDS:
        if _says(words, device):
            return kind
    if device:
        return "other words"
    if said.get("clamps") or said.get("bolt"):
        return "straps"
    if _says(r"vises?|vices?|jaws?|parallels?", packing) or said.get("above jaws"):
        return "vice"
    if packing or said.get("stop"):
        return (
            "other words"
            if _says(
                r"clamp\w*|strap\w*|screw\w*|bolt\w*|held|hold\w*|pin\w*", f"{packing} {said.get('note', '')}"
            )
            else ""
        )
    return ""


def _vice(device: str, packing: str, note: str, kept: list[str]) -> dict[str, str]:
    found: dict[str, str] = {}
    parts = [part.strip() for part in re.split(r"[,;]", device) if part.strip()]
    found["vice"] = re.sub(r"\bvise\b", "vice", parts[0]) if parts else ""
    for part in parts[1:]:
        if _says(r"soft jaws?", part):
            found["jaws"] = "soft"
            found["reckon as"] = "plain jaws"  # as it was reckoned then: old figures stay
        elif _says(r"(?:vee|v)[- ]jaws?", part):
            found["jaws"] = "vee"
        else:
            kept.append(part)
    whole = f"{device} {packing} {note}"
    if _says(r"(?:vee|v)[- ]?(?:jaws?|blocks?)", whole):
        found["jaws"] = "vee"
    if _says(r"swivel\w*", whole):
        found["base"] = "swivel"
    for part in (piece.strip() for piece in re.split(r"[,;]", packing)):
        if not part:
            continue
        if match := re.fullmatch(
            rf"(?:two |flat |on |flat on )?(?:{_SIZE}\s+)?parallels(?:,? at the jaws)?", part, re.IGNORECASE
        ):
            found["rests on"] = "parallels"
            if match[1]:
                found["parallel width"] = match[1]
        elif match := re.fullmatch(
            r"parallels\s+(\d+(?:[.,]\d+)?)\s*x\s*(\d+(?:[.,]\d+)?)(?:\s*x\s*\d+(?:[.,]\d+)?)?\s*(mm|in)?",
            part,
            re.IGNORECASE,
        ):
            unit = f" {match[3]}" if match[3] else ""
            found |= {
                "rests on": "parallels",
                "parallel width": f"{match[1]}{unit}",
                "parallels": f"{match[2]}{unit}",
            }
            kept.append(part)  # their length, and the name by which the cabinet has them
        elif re.fullmatch(r"at the jaws", part, re.IGNORECASE):
            pass
        elif re.fullmatch(r"(?:a )?round bar at the moving jaw", part, re.IGNORECASE):
            found["bar"] = "yes"
        elif re.fullmatch(r"packed (?:up|below)|packing|packed", part, re.IGNORECASE):
            found["rests on"] = "packing"
        elif re.fullmatch(r"(?:flat )?on the (?:vise |vice )?bed", part, re.IGNORECASE):
            found["rests on"] = "bed"
        else:
            _loosely(part, found)
            kept.append(part)
    if _says(r"spacers?|same[- ]size|other end|jack screw", f"{packing} {note}") and "spacer" not in found:
        found["spacer"] = "yes"
    if match := re.search(_ONE_END, whole, re.IGNORECASE):
        found["sits"] = f"{'right' if match[1] and match[1].lower() in ('right', 'far') else 'left'} end"
    found |= _supported(f"{packing} {note}")
    if _says(
        "(?:steel|wood|wooden|scrap|sacrificial) backing|backing|backed|sacrificial|scrap|wood|plywood|chipboard",
        packing,
    ):
        found["rests on"] = "backing"
    return {name: text for name, text in found.items() if text}


def _loosely(part: str, found: dict[str, str]) -> None:
    """What a longer phrase says, beside which it stays in words."""
    if _says(r"parallels?", part) and not _says(r"no parallels|without parallels", part):
        found.setdefault("rests on", "parallels")
        if match := re.search(rf"{_SIZE}\s+parallels?\b", part, re.IGNORECASE):
            found.setdefault("parallel width", match[1])
    elif _says(r"bed|no parallels|without parallels", part):
        found.setdefault("rests on", "bed")
    elif _says(r"pack\w*|backing|scrap|wood|blocks?", part):
        found.setdefault("rests on", "packing")
    if _says(r"round bar|roller|soft packing|copper packing|aluminium packing|lead packing", part) or (
        _says(r"card|paper|wood|ball", part) and _says("moving jaw", part)
    ):
        found["bar"] = "yes"
    if _says(r"spacers?", part):
        found["spacer"] = "yes"


def _straps(packing: str, stop: str, kept: list[str]) -> dict[str, str]:
    straps: dict[str, str] = {}
    if packing:
        if match := re.search(rf"{_SIZE}\s+(?:\w+ )?backing plate", packing, re.IGNORECASE):
            straps |= {"rests on": "backing plate", "under": match[1]}
        elif _says(r"backing|backed", packing):
            straps["rests on"] = "backing plate"
        elif _says(r"parallels?", packing):
            straps["rests on"] = "parallels"
        elif _says(r"pack\w*|blocks?|spacers?|jacks?", packing):
            straps["rests on"] = "packing"
        elif _says(r"table", packing):
            straps["rests on"] = "table"
        if _says(
            r"each clamp|each strap|under (?:each|every|the) (?:clamps?|straps?|noses?)|full|all over|backing|backed",
            packing,
        ):
            straps["supported"] = "yes"
        kept.append(packing)
    if stop and (sides := [side for side in ("left", "right", "front", "rear") if _says(side, stop)]):
        straps["stops"] = ", ".join(sides)
    elif _says(r"long side", stop):
        straps["stops"] = "rear, left"
    return straps


def _supported(words: str) -> dict[str, str]:
    for by, known in (
        ("angle plate", "angle plate"),
        ("filler", "wax|fillers?|filled"),
        ("jack", "jacks?|steady|supports?|supported"),
    ):
        if _says(known, words):
            return {"supported by": by}
    return {}


def _over(note: str, lie: Lying | None) -> dict[str, str]:
    """`left end 6 mm over the jaws`: an end is a face of the stock, what stands
    out is to one's left or right.
    """
    found: dict[str, str] = {}
    for face, size in re.findall(
        rf"\b(left|right|front|rear|top|bottom) end {_SIZE} over the jaws", note, re.IGNORECASE
    ):
        side = lie.side(face.lower()) if lie is not None else face.lower()
        if side in ("left", "right"):
            found[f"over {side}"] = size
    return found


def _stop(text: str, lie: Lying | None, datums: dict[str, str]) -> str:
    """At which end of the work, to one's left or right, a stop stands; nothing where the words do not say."""
    match = re.search(r"\b(left|right|front|rear)\b", text, re.IGNORECASE)
    face = (
        match[1].lower()
        if match
        else next((of for letter, of in datums.items() if re.search(rf"\b{re.escape(letter)}\b", text)), "")
    )
    side = lie.side(face) if face and lie is not None else face
    return side if side in ("left", "right") else ""


def _lie(set_up: Node) -> Lying | None:
    texts = {name: _text(set_up, name) or usual for name, usual in (("up", "top"), ("operator", "front"))}
    if any(text not in FACES for text in texts.values()):
        return None
    try:
        return lying(SetUp(key="-", number=1, up=texts["up"], operator=texts["operator"]), _UNSAID_BOX)
    except (KeyError, StopIteration):
        return None


def _datums(root: Node) -> dict[str, str]:
    """The face of each datum; one that lies on none is told by the reader of the job."""
    node = _field(root, "datums")
    named = (node.fields or {}) if node is not None else {}
    return {name: node.text for name, node in named.items() if node.text in FACES}


# --- nodes ---


def _plain(name: str) -> str:
    return name.strip().replace("_", " ").replace("-", " ").lower()


def _field(node: Node, name: str) -> Node | None:
    return next((other for key, other in (node.fields or {}).items() if _plain(key) == _plain(name)), None)


def _text(node: Node, name: str) -> str:
    found = _field(node, name)
    return (found.text or "").strip() if found is not None else ""


def _list(node: Node | None) -> list[Node]:
    return (node.items or []) if node is not None else []


def _line(node: Node, name: str) -> int:
    found = _field(node, name)
    return found.line if found is not None else node.line


def _says(words: str, text: str) -> bool:
    return bool(text) and re.search(rf"\b(?:{words})\b", text, re.IGNORECASE) is not None
