"""What a camera writes into a picture beside the picture: where it was taken, when, by
whose telephone. None of it goes along.

How the camera was held stays, so that the picture stands upright. Sources: as `picture_head.py`.
"""

from __future__ import annotations

from jobsheet.storage.photos.picture_head import orientation_of

#: Segments of a JPEG with words: Exif and XMP (APP1), IPTC (APP13), a comment.
_WORDS = frozenset({0xE1, 0xED, 0xFE})
#: Chunks of a PNG with words.
_CHUNKS = frozenset({b"eXIf", b"tEXt", b"zTXt", b"iTXt", b"tIME"})
_SCAN = 0xDA


def without_camera_words(raw: bytes) -> bytes:
    """The same JPEG or PNG picture without them; as it is where it has none, or where its
    segments do not follow one another.
    """
    return _png(raw) if raw.startswith(b"\x89PNG") else _jpeg(raw)


def _jpeg(raw: bytes) -> bytes:
    kept: list[bytes] = []
    at, turned, left_out = 2, 1, False
    while at + 4 <= len(raw) and raw[at] == 0xFF and raw[at + 1] != _SCAN:
        end = at + 2 + int.from_bytes(raw[at + 2 : at + 4])
        if end > len(raw) or end < at + 4:
            return raw
        if raw[at + 1] in _WORDS:
            left_out = True
            turned = max(turned, orientation_of(raw[at + 4 : end]))
        else:
            kept.append(raw[at:end])
        at = end
    if not left_out or raw[at : at + 2] != bytes((0xFF, _SCAN)):
        return raw
    held = _held(turned) if turned > 1 else b""
    # What a reader looks for first stays first.
    first = kept[:1] if kept and kept[0][1] == 0xE0 else []
    return b"".join((raw[:2], *first, held, *kept[len(first) :], raw[at:]))


def _held(orientation: int) -> bytes:
    """A segment that says how the camera was held, and nothing else."""
    entry = b"\x01\x12\x00\x03\x00\x00\x00\x01" + orientation.to_bytes(2) + b"\x00\x00"
    body = b"Exif\0\0MM\x00\x2a\x00\x00\x00\x08\x00\x01" + entry + b"\x00\x00\x00\x00"
    return b"\xff\xe1" + (len(body) + 2).to_bytes(2) + body


def _png(raw: bytes) -> bytes:
    kept, at = [raw[:8]], 8
    while at + 12 <= len(raw):
        end = at + 12 + int.from_bytes(raw[at : at + 4])
        if end > len(raw):
            return raw
        if raw[at + 4 : at + 8] not in _CHUNKS:
            kept.append(raw[at:end])
        at = end
    return b"".join((*kept, raw[at:]))
