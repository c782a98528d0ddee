"""A photograph as it is printed: upright, grey, no finer than a printer shows, with its tones
drawn out so that a copy keeps them.
"""

from __future__ import annotations

from io import BytesIO

from jobsheet.remembered import forgotten_with_the_plan

#: Points of the picture to an inch on paper; a copier shows no more of greys (common practice).
FINENESS = 300
#: How far the pressing of the picture may go (JPEG quality of the library, common practice).
QUALITY = 85
#: Made before, by content and box: the same photograph is printed again and again
#: while somebody looks at the pages.
_MADE: dict[tuple[str, float, float], tuple[bytes, float, float] | str] = {}
ROOM = 24
forgotten_with_the_plan(_MADE.clear)


def fitted_grey(content: str, raw: bytes, width: float, height: float) -> tuple[bytes, float, float] | str:
    """A JPEG in grey with its width and height inside a box [points], or why there is none, in words."""
    if not raw:
        return "photograph not found"
    key = (content, round(width, 1), round(height, 1))
    if key not in _MADE:
        while len(_MADE) >= ROOM:
            del _MADE[next(iter(_MADE))]
        _MADE[key] = _made(raw, width, height)
    return _MADE[key]


def _made(raw: bytes, width: float, height: float) -> tuple[bytes, float, float] | str:
    import warnings

    from PIL import Image, ImageOps

    most = (max(1, round(width / 72 * FINENESS)), max(1, round(height / 72 * FINENESS)))
    try:
        with (
            warnings.catch_warnings(),
            Image.open(BytesIO(raw), formats=("JPEG", "PNG")) as opened,
        ):
            warnings.simplefilter("ignore")  # its size is judged before: storage/photos
            opened.draft("L", (2 * max(most), 2 * max(most)))
            upright = ImageOps.exif_transpose(opened)
            # What can be seen through is white as the paper under it.
            if "A" in upright.getbands() or "transparency" in upright.info:
                seen = upright.convert("LA")
                white = Image.new("L", seen.size, 255)
                white.paste(seen.getchannel("L"), mask=seen.getchannel("A"))
                upright = white
            grey = ImageOps.autocontrast(upright.convert("L"), cutoff=0.5)
            grey.thumbnail(most)
            out = BytesIO()
            grey.save(out, "JPEG", quality=QUALITY)
    except Exception as error:  # noqa: BLE001  a damaged picture may fail the library in any way
        return f"photograph cannot be drawn: {type(error).__name__}"
    scale = min(width / grey.width, height / grey.height)
    return out.getvalue(), grey.width * scale, grey.height * scale
