"""Which heading of a foreign table is probably meant for which of our columns."""

import difflib
import re
from collections.abc import Mapping, Sequence

from stemward.kinds import STEMS

TRADE_WORDS: dict[str, tuple[str, ...]] = {
    "id": ("tag", "tree", "tree no", "tree id", "stem", "stem id", "number", "no", "name", "label", "fid", "objectid"),
    "patch": ("patch", "unit", "stand", "area", "block", "site"),
    "species": ("species", "sp", "spp", "plant", "common name", "latin", "scientific name", "type", "kind"),
    "x_m": ("x", "x m", "east", "easting", "east m", "lon", "long", "longitude", "lng"),
    "y_m": ("y", "y m", "north", "northing", "north m", "lat", "latitude"),
    "diameter_cm": ("diameter cm", "dbh cm", "dia cm", "d cm", "cm"),
    "diameter_in": ("diameter in", "dbh in", "dia in", "d in", "inches", "in", "diameter inches"),
    "measured_at": ("measured at", "at"),
    "stems": ("stems", "count", "how many", "n stems"),
    "height_m": ("height m", "height", "ht m", "ht"),
    "form": ("form", "habit"),
    "state": ("state", "status"),
    "note": ("note", "notes", "remark", "remarks", "comment", "comments", "cmt", "desc", "description"),
}
"""Headings people write, by column; trade words, from memory."""
SIZE_WORDS = ("diameter", "dbh", "dia", "d", "size", "diam", "caliper", "dsh")
"""Headings of a size without its unit; the person then says the unit."""
SIZE = "size"
LONGITUDE, LATITUDE = ("lon", "long", "longitude", "lng"), ("lat", "latitude")
"""Headings that say that a place is in degrees."""
NEAR_ENOUGH = 0.82


def bare(heading: str) -> str:
    """A heading without letter case, signs and double blanks."""
    return re.sub(r"[^a-z0-9]+", " ", heading.casefold()).strip()


def guess(headings: Sequence[str], remembered: Mapping[str, str]) -> dict[str, str]:
    """Heading by column, and by "size" for a diameter without a unit. No heading is used twice.

    remembered: column by bare heading as matched before, which goes first; then known words; near spellings last.
    """
    found: dict[str, str] = {}
    left = list(dict.fromkeys(headings))

    def take(column: str, heading: str) -> None:
        if column not in found and heading in left:
            found[column] = heading
            left.remove(heading)

    for heading in headings:
        if remembered.get(bare(heading)) in (*TRADE_WORDS, SIZE):
            take(remembered[bare(heading)], heading)
    words = {
        column.name: (bare(column.name), *map(bare, column.words), *TRADE_WORDS.get(column.name, ()))
        for column in STEMS.columns
    }
    for column, known in words.items():
        for word in known:
            for heading in [one for one in left if bare(one) == word]:
                take(column, heading)
    if "diameter_cm" not in found and "diameter_in" not in found:
        for word in SIZE_WORDS:
            for heading in [one for one in left if bare(one) == word]:
                take(SIZE, heading)
    for heading in list(left):
        near = [
            (difflib.SequenceMatcher(None, bare(heading), word).ratio(), column)
            for column, known in words.items()
            if column not in found
            for word in known
            if len(word) > 3
        ]
        best = max(near, default=(0.0, ""))
        if best[0] >= NEAR_ENOUGH:
            take(best[1], heading)
    return found
