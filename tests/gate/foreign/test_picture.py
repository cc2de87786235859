"""Pictures to lay under the drawing: what they are, where they lie, and what is refused."""

import io
import struct
import zlib

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image
from PIL.TiffImagePlugin import ImageFileDirectory_v2
from pyproj import Transformer

from stemward.gate.foreign import look_at_picture
from stemward.gate.foreign.picture import (
    GEO_KEYS,
    GEOGRAPHIC,
    LONGEST,
    MATRIX,
    PIXEL_IS_POINT,
    PIXEL_SCALE,
    PROJECTED,
    RASTER_TYPE,
    TIEPOINT,
    small_photo,
)
from stemward.gate.problems import Unreadable

UTM = 32616
"""WGS 84 / UTM zone 16N, EPSG."""


def saved(sort: str, size=(40, 30), mode="RGB", **more) -> bytes:
    """A picture of one colour."""
    out = io.BytesIO()
    Image.new(mode, size, 0 if mode != "RGB" else (10, 200, 30)).save(out, sort, **more)
    return out.getvalue()


def geotiff(keys: dict[int, int], size=(40, 30), **tags) -> bytes:
    """A GeoTIFF with these keys, and tags by number."""
    ifd = ImageFileDirectory_v2()
    for tag, values in tags["tags"].items():
        ifd[tag] = values
        ifd.tagtype[tag] = 12
    ifd[GEO_KEYS] = (1, 1, 0, len(keys), *(part for key, value in keys.items() for part in (key, 0, 1, value)))
    ifd.tagtype[GEO_KEYS] = 3
    return saved("TIFF", size, tiffinfo=ifd)


SCALED = {PIXEL_SCALE: (0.5, 0.5, 0.0), TIEPOINT: (0.0, 0.0, 0.0, 300_000.0, 4_780_000.0, 0.0)}


@pytest.mark.parametrize("sort", ["PNG", "JPEG", "WEBP", "TIFF"])
def test_a_picture_is_known_by_its_bytes_and_written_anew(sort):
    """Whatever it was, what is kept is a plain picture of the same size, without a place."""
    found = look_at_picture(saved(sort), "x.txt")
    assert (found.width, found.height, found.corners) == (40, 30, ())
    assert Image.open(io.BytesIO(found.content)).size == (40, 30)
    assert found.media == "image/jpeg"


def test_what_is_written_in_a_picture_is_not_kept():
    """Where and by what a photo was taken stays out of the notebook."""
    exif = Image.Exif()
    exif[0x010F] = "A maker"
    assert b"A maker" in (raw := saved("JPEG", exif=exif))
    assert b"A maker" not in look_at_picture(raw, "x").content


def test_clear_parts_stay_clear_and_large_ones_become_smaller():
    """A drawing with a clear ground is kept as PNG; the longer side is bounded."""
    assert look_at_picture(saved("PNG", mode="RGBA"), "x").media == "image/png"
    large = look_at_picture(saved("PNG", size=(2 * LONGEST, 10)), "x")
    assert Image.open(io.BytesIO(large.content)).size[0] == LONGEST


def test_a_geotiff_says_its_corners():
    """Scale and tie point give the corners on the grid, and those are turned into degrees (oracle: PROJ)."""
    found = look_at_picture(geotiff({PROJECTED: UTM}, tags=SCALED), "x")
    turn = Transformer.from_crs(f"EPSG:{UTM}", "EPSG:4326", always_xy=True)
    spots = [(300_000, 4_780_000), (300_020, 4_780_000), (300_020, 4_779_985), (300_000, 4_779_985)]
    for (lon, lat), spot in zip(found.corners, spots, strict=True):
        assert (lon, lat) == pytest.approx(turn.transform(*spot), abs=1e-9)


def test_a_place_of_a_pixels_middle_is_half_a_pixel_off():
    """Where places name the middles of pixels, the corner lies half a pixel beyond (OGC 19-008r4, GTRasterType)."""
    area = look_at_picture(geotiff({GEOGRAPHIC: 4326}, tags={
        PIXEL_SCALE: (0.001, 0.001, 0.0), TIEPOINT: (0.0, 0.0, 0.0, -90.0, 43.0, 0.0)}), "x")  # fmt: skip
    point = look_at_picture(geotiff({RASTER_TYPE: PIXEL_IS_POINT, GEOGRAPHIC: 4326}, tags={
        PIXEL_SCALE: (0.001, 0.001, 0.0), TIEPOINT: (0.0, 0.0, 0.0, -90.0, 43.0, 0.0)}), "x")  # fmt: skip
    assert area.corners[0] == pytest.approx((-90.0, 43.0))
    assert point.corners[0] == pytest.approx((-90.0005, 43.0005))


def test_a_turned_geotiff_is_turned():
    """A matrix of four by four turns the picture: here a quarter turn."""
    matrix = (0.0, 0.001, 0.0, -90.0, 0.001, 0.0, 0.0, 43.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 1.0)
    found = look_at_picture(geotiff({GEOGRAPHIC: 4326}, tags={MATRIX: matrix}), "x")
    assert found.corners[1] == pytest.approx((-90.0, 43.04))
    assert found.corners[3] == pytest.approx((-89.97, 43.0))


@pytest.mark.parametrize("keys", [{}, {PROJECTED: 32767}, {PROJECTED: 1}])
def test_a_system_that_is_not_known_is_said(keys):
    """A place in a system of the file's own, or of none, is refused with the way out."""
    with pytest.raises(Unreadable) as refused:
        look_at_picture(geotiff(keys, tags=SCALED), "x")
    assert refused.value.problems[0].message == "picture.no_system"


def a_png_that_says(width: int, height: int) -> bytes:
    """A few bytes that claim to be a huge picture."""

    def chunk(kind: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))

    head = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    return (
        b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", zlib.compress(b"\0" * 100)) + chunk(b"IEND", b"")
    )


@pytest.mark.parametrize(
    ("raw", "message"),
    [
        (b"", "file.empty"),
        (b"<svg xmlns='http://www.w3.org/2000/svg'><script>1</script></svg>", "picture.unknown"),
        (b"GIF89a" + b"\0" * 40, "picture.unknown"),
        (a_png_that_says(60_000, 60_000), "picture.too_large"),
        (a_png_that_says(300, 300), "foreign.damaged"),
        (saved("PNG")[:60], "foreign.damaged"),
        (b"II*\x00" + b"\xff" * 40, "picture.unknown"),
    ],
)
def test_hostile_pictures_get_a_sentence(raw, message):
    """Drawings with scripts, other kinds, bombs and cut files are refused."""
    with pytest.raises(Unreadable) as refused:
        look_at_picture(raw, "x.png")
    assert refused.value.problems[0].message == message


@given(
    st.binary(max_size=300), st.sampled_from([b"", b"\x89PNG\r\n\x1a\n", b"II*\x00\x08\x00\x00\x00", b"\xff\xd8\xff"])
)
def test_any_bytes_are_a_picture_or_refused(tail, head):
    """Nothing but a sentence comes of nonsense."""
    try:
        look_at_picture(head + tail, "x")
    except Unreadable as refused:
        assert refused.problems


@given(st.integers(0, 2000), st.binary(min_size=1, max_size=4))
def test_a_geotiff_with_broken_bytes_is_read_or_refused(at, bytes_):
    """Bytes changed anywhere in a GeoTIFF give a picture or a sentence."""
    raw = bytearray(geotiff({PROJECTED: UTM}, tags=SCALED))
    at %= len(raw)
    raw[at : at + len(bytes_)] = bytes_
    try:
        look_at_picture(bytes(raw), "x")
    except Unreadable as refused:
        assert refused.problems


def photo(width=3000, height=2000, form="JPEG", **more):
    out = io.BytesIO()
    Image.effect_noise((width, height), 60).convert("RGB").save(out, form, **more)
    return out.getvalue()


def test_a_photo_is_made_small_and_tells_no_place():
    exif = Image.Exif()
    exif[0x8825] = {1: "N"}  # where it was taken
    exif[0x0110] = "a camera"
    small = small_photo(photo(exif=exif), "a.jpg", 300_000)
    with Image.open(io.BytesIO(small)) as image:
        assert max(image.size) <= 1280 and not image.getexif() and len(small) <= 300_000
    for bad in (b"", b"no picture", photo()[:400], b"GIF89a" + bytes(40)):
        with pytest.raises(Unreadable):
            small_photo(bad, "a.jpg", 300_000)
