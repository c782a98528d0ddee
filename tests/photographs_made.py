"""Pictures for tests, made as a camera makes them; and files that only say that they are pictures."""

from __future__ import annotations

import struct
import zlib
from io import BytesIO

from PIL import Image, ImageDraw


def photograph(
    width: int = 640, height: int = 480, kind: str = "JPEG", orientation: int = 1, tone: int = 60
) -> bytes:
    """A picture with a light disc left and above, so that it can be told which way it lies."""
    image = Image.new("RGB", (width, height), (tone, tone, tone + 20))
    draw = ImageDraw.Draw(image)
    draw.ellipse((width // 10, height // 10, width // 3, height // 2), fill=(230, 220, 200))
    draw.rectangle((width // 2, height // 2, width - width // 20, height - height // 20), fill=(200, 40, 40))
    out = BytesIO()
    options = {}
    if kind == "JPEG" and orientation != 1:
        exif = Image.Exif()
        exif[0x0112] = orientation
        options["exif"] = exif
    image.save(out, kind, **options)
    return out.getvalue()


def png_that_says(width: int, height: int) -> bytes:
    """A PNG of a few bytes whose head promises so many points."""
    head = b"IHDR" + struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    body = b"".join(
        struct.pack(">I", len(part) - 4) + part + struct.pack(">I", zlib.crc32(part))
        for part in (head, b"IDAT" + zlib.compress(b"\0" * 10), b"IEND")
    )
    return b"\x89PNG\r\n\x1a\n" + body


def jpeg_that_says(width: int, height: int) -> bytes:
    """A JPEG that ends behind a frame header which promises so many points."""
    return b"\xff\xd8\xff\xe0\x00\x10JFIF\0\x01\x01\0\0\x01\0\x01\0\0" + b"\xff\xc0\x00\x11\x08" + struct.pack(">HH", height, width) + b"\x03" + b"\0" * 20  # fmt: skip
