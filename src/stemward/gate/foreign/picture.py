"""Pictures to lay under the drawing of the land: a photo or scan whose corners are given, or a GeoTIFF that names them.

Decoded, bounded and written anew, so that nothing of a file reaches a page but its pixels.
"""

import io
import warnings
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from typing import Any

from stemward.gate.foreign.layer import MOST_BYTES, refuse
from stemward.gate.text import clean

MOST_PIXELS = 100_000_000
LONGEST = 4096
PHOTO_SIDE = 1280
"""Pixels that are read, those along the longer side that are kept, and of a photo: engineering guesses."""
KINDS = ("PNG", "JPEG", "WEBP", "TIFF")
# Tags and keys of OGC 19-008r4, GeoTIFF Standard 1.1 (2019).
PIXEL_SCALE, TIEPOINT, MATRIX, GEO_KEYS = 33550, 33922, 34264, 34735
RASTER_TYPE, GEOGRAPHIC, PROJECTED = 1025, 2048, 3072
PIXEL_IS_POINT = 2
OF_OUR_OWN = 32767
Spot = tuple[float, float]


@dataclass(frozen=True, eq=False)
class Picture:
    """A picture as it is kept. corners: longitude and latitude of its upper left, upper right, lower right and lower
    left, where the file says them."""

    content: bytes
    media: str
    width: int
    height: int
    corners: tuple[Spot, ...] = ()


def look_at_picture(raw: bytes, name: str) -> Picture:
    """A picture of a file. Raises Unreadable with a sentence for anything else, and for what is too large."""
    shown = clean(name)
    with _opened(raw, shown, KINDS) as image:
        width, height = image.size
        corners = _corners(image, shown) if image.format == "TIFF" else ()
        content, media = _anew(image)
    return Picture(content, media, width, height, corners)


def small_photo(raw: bytes, name: str, most_bytes: int) -> bytes:
    """A JPEG of a photo, turned as the camera held it, at most PHOTO_SIDE a side and so many bytes, with no place and
    no name of a camera in it. Raises Unreadable with a sentence for what is no picture, or too large."""
    from PIL import ImageOps

    shown = clean(name)
    with _opened(raw, shown, KINDS[:3]) as image:
        image.draft("RGB", (PHOTO_SIDE, PHOTO_SIDE))
        turned = ImageOps.exif_transpose(image).convert("RGB")
    for side, quality in ((PHOTO_SIDE, 82), (PHOTO_SIDE, 65), (960, 60), (640, 55), (320, 50)):
        turned.thumbnail((side, side))
        out = io.BytesIO()
        turned.save(out, "JPEG", quality=quality)
        if out.tell() <= most_bytes:
            return out.getvalue()
    raise refuse("picture.too_large", shown, most=MOST_PIXELS / 1e6)


@contextmanager
def _opened(raw: bytes, shown: str, kinds: tuple[str, ...]) -> Iterator[Any]:
    """The picture of a file, not larger than is read; Unreadable for whatever happens while it is decoded."""
    from PIL import Image, UnidentifiedImageError

    if len(raw) > MOST_BYTES:
        raise refuse("foreign.too_large", shown, most_mb=MOST_BYTES / 1_000_000)
    if not raw:
        raise refuse("file.empty", shown)
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # what is odd about a file is no news to anyone
            with Image.open(io.BytesIO(raw), formats=kinds) as image:
                if image.width * image.height > MOST_PIXELS:
                    raise refuse("picture.too_large", shown, most=MOST_PIXELS / 1e6)
                yield image
    except Image.DecompressionBombError:
        raise refuse("picture.too_large", shown, most=MOST_PIXELS / 1e6) from None
    except UnidentifiedImageError:
        raise refuse("picture.unknown", shown) from None
    except (OSError, ValueError, SyntaxError, TypeError, KeyError, IndexError, EOFError):
        raise refuse("foreign.damaged", shown) from None


def _anew(image: Any) -> tuple[bytes, str]:
    """The pixels alone, in a form every browser shows; larger ones are made smaller."""
    clear = "A" in image.getbands() or "transparency" in image.info
    plain = image.convert("RGBA" if clear else "RGB")
    plain.thumbnail((LONGEST, LONGEST))
    out = io.BytesIO()
    if clear:
        plain.save(out, "PNG")
        return out.getvalue(), "image/png"
    plain.save(out, "JPEG", quality=85)
    return out.getvalue(), "image/jpeg"


def _corners(image: Any, name: str) -> tuple[Spot, ...]:
    """Degrees of the four corners of a GeoTIFF; nothing where it says no place."""
    tags = image.tag_v2
    step = _steps(tags)
    if step is None:
        return ()
    keys = _keys(tags.get(GEO_KEYS, ()))
    code = keys.get(PROJECTED) or keys.get(GEOGRAPHIC)
    if not code or code == OF_OUR_OWN:
        raise refuse("picture.no_system", name)
    half = 0.5 if keys.get(RASTER_TYPE) == PIXEL_IS_POINT else 0.0
    width, height = image.size
    spots = [step(column - half, row - half) for column, row in ((0, 0), (width, 0), (width, height), (0, height))]
    return _degrees(spots, int(code), name)


def _steps(tags: Any) -> Any:
    """A function from column and row to places, of the three ways a GeoTIFF can say it."""
    if MATRIX in tags:
        a, b, _, d, e, f, _, h = (float(value) for value in tags[MATRIX][:8])
        return lambda column, row: (a * column + b * row + d, e * column + f * row + h)
    if PIXEL_SCALE in tags and TIEPOINT in tags:
        across, down = (float(value) for value in tags[PIXEL_SCALE][:2])
        column0, row0, _, x0, y0, _ = (float(value) for value in tags[TIEPOINT][:6])
        return lambda column, row: (x0 + across * (column - column0), y0 - down * (row - row0))
    return None


def _keys(directory: Any) -> dict[int, int]:
    """Keys whose value stands in the directory itself: header of four, then four numbers a key."""
    rows = [directory[start : start + 4] for start in range(4, len(directory) - 3, 4)]
    return {int(key): int(value) for key, place, _, value in rows if place == 0}


def _degrees(spots: list[Spot], code: int, name: str) -> tuple[Spot, ...]:
    import math

    from pyproj import Transformer
    from pyproj.exceptions import CRSError

    try:
        turn = Transformer.from_crs(f"EPSG:{code}", "EPSG:4326", always_xy=True)
        found = tuple((float(lon), float(lat)) for lon, lat in (turn.transform(x, y) for x, y in spots))
    except CRSError:
        raise refuse("picture.no_system", name) from None
    if not all(math.isfinite(lon) and math.isfinite(lat) and abs(lat) <= 90 for lon, lat in found):
        raise refuse("picture.no_system", name)
    return found
