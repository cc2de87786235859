"""Pictures that people send: made small, without what a camera writes beside them, kept in the notebook."""

import datetime
import io

from stemward.field.receive import MOST_PHOTO_BYTES, put_photo
from stemward.notebook.changes import Refused

MOST_SIDE = 1280
MOST_SENT = 25 * 1024 * 1024
MOST_PIXELS = 100_000_000
"""Sides of a picture kept, bytes and pixels of one sent: engineering guesses; a camera of 48 megapixels passes."""
NO_PICTURE = "The photo cannot be read. Send a JPEG, PNG or WebP of at most 25 MB. Nothing was changed."


def keep_photo(tract_id: str, raw: bytes, now: datetime.datetime) -> str:
    """Keep a picture made small; its digest. Raises Refused for what is no picture."""
    return put_photo(tract_id, small_jpeg(raw), now)


def small_jpeg(raw: bytes) -> bytes:
    """A JPEG of at most 1,280 px a side and 300 kB, turned as the camera held it, with no place or name of a camera in
    it. Raises Refused."""
    from PIL import Image, ImageOps, UnidentifiedImageError

    if len(raw) > MOST_SENT:
        raise Refused(NO_PICTURE)
    try:
        with Image.open(io.BytesIO(raw), formats=("JPEG", "PNG", "WEBP")) as image:
            if image.width * image.height > MOST_PIXELS:
                raise Refused(NO_PICTURE)
            image.draft("RGB", (MOST_SIDE, MOST_SIDE))
            turned = ImageOps.exif_transpose(image).convert("RGB")
    except (UnidentifiedImageError, OSError, ValueError, SyntaxError, Image.DecompressionBombError):
        raise Refused(NO_PICTURE) from None
    for side, quality in ((MOST_SIDE, 82), (MOST_SIDE, 65), (960, 60), (640, 55), (320, 50)):
        turned.thumbnail((side, side))
        out = io.BytesIO()
        turned.save(out, "JPEG", quality=quality)
        if out.tell() <= MOST_PHOTO_BYTES:
            return out.getvalue()
    raise Refused(NO_PICTURE)
