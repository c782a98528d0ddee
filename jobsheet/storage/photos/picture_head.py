"""What a picture says of itself in its first bytes: its kind, and how many points
it has; nothing is decoded for that.

Sources: ITU-T T.81 (JPEG), annex B, markers and frame header; ISO/IEC 15948
(PNG), IHDR. Both from memory of these.
"""

from __future__ import annotations

from typing import Literal

from msgspec import Struct

_PNG, _JPEG = b"\x89PNG\r\n\x1a\n", b"\xff\xd8\xff"
#: Markers of JPEG with a frame header behind them: SOF0 to SOF15, but for DHT,
#: JPG and DAC, which have other things.
_FRAMES = frozenset(range(0xC0, 0xD0)) - {0xC4, 0xC8, 0xCC}
#: Markers that stand alone: TEM, RST0 to RST7, SOI.
_ALONE = frozenset({0x01, *range(0xD0, 0xD9)})
#: The segment with what the camera says of itself, the tag that says how it was held,
#: and as many tags as are looked at.
_APP1, _ORIENTATION, MOST_TAGS = 0xE1, 0x0112, 200
#: The picture itself begins or everything ends: no frame header comes behind.
_OVER = frozenset({0xDA, 0xD9})


class Head(Struct, frozen=True):
    """Kind as the ending of a file's name, width and height in points of the picture."""

    kind: str
    width: int
    height: int


def head_of(raw: bytes) -> Head | None:
    """The head of a JPEG or PNG picture; None where it is neither, or says no size."""
    if raw.startswith(_PNG):
        return _png(raw)
    return _jpeg(raw) if raw.startswith(_JPEG) else None


def _png(raw: bytes) -> Head | None:
    if len(raw) < 24 or raw[12:16] != b"IHDR":
        return None
    return _sized("png", int.from_bytes(raw[16:20]), int.from_bytes(raw[20:24]))


def _jpeg(raw: bytes) -> Head | None:
    at, turned = 2, False
    while at + 4 <= len(raw):
        if raw[at] != 0xFF:
            return None
        marker = raw[at + 1]
        if marker == 0xFF:  # filling
            at += 1
        elif marker in _ALONE:
            at += 2
        elif marker in _OVER:
            return None
        elif marker in _FRAMES:
            if at + 9 > len(raw):
                return None
            width, height = int.from_bytes(raw[at + 7 : at + 9]), int.from_bytes(raw[at + 5 : at + 7])
            return _sized("jpg", *((height, width) if turned else (width, height)))
        else:
            if marker == _APP1:
                turned = turned or (
                    # On its side: width and height change places when the picture is seen.
                    orientation_of(raw[at + 4 : at + 2 + int.from_bytes(raw[at + 2 : at + 4])])
                    in (5, 6, 7, 8)
                )
            at += 2 + max(2, int.from_bytes(raw[at + 2 : at + 4]))
    return None


def orientation_of(exif: bytes) -> int:
    """How the camera was held, as a segment of a JPEG says it (Exif 2.3, orientation);
    1, upright, where it says nothing.
    """
    if not exif.startswith(b"Exif\0\0") or exif[6:8] not in (b"II", b"MM"):
        return 1
    order: Literal["little", "big"] = "little" if exif[6:8] == b"II" else "big"
    body = exif[6:]
    start = int.from_bytes(body[4:8], order)
    for index in range(min(int.from_bytes(body[start : start + 2], order), MOST_TAGS)):
        entry = body[start + 2 + 12 * index :][:12]
        if int.from_bytes(entry[:2], order) == _ORIENTATION:
            found = int.from_bytes(entry[8:10], order)
            return found if found in range(1, 9) else 1
    return 1


def _sized(kind: str, width: int, height: int) -> Head | None:
    return Head(kind, width, height) if width and height else None
