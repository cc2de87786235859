"""What happened: one append-only kind of row, and the closed list of what its body may hold."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Any, Literal


@dataclass(frozen=True, slots=True)
class Entry:
    """One thing that happened. `at` is ISO 8601 local time, `offset` its distance from UTC in minutes.

    body: as `ENTRY_KINDS` says for its kind. `corrects` names the entry this one replaces, empty if none.
    """

    id: str
    kind: str
    at: str
    offset: int
    by: str
    body: dict[str, Any]
    received: str = ""
    device: str = ""
    corrects: str = ""
    schema: int = 1


Sort = Literal["text", "number", "texts", "amounts", "counts", "clock", "choice", "draws", "words", "figure"]


@dataclass(frozen=True, slots=True)
class Said:
    """One thing an entry's body may say.

    sort: text; number (not negative); figure (of either sign); texts (a list); amounts (number by name); counts
    (whole number by stem id); clock ("09:40"); choice (one of `options`); draws (list of
    product, jug, ml); words (text by name).
    """

    name: str
    sort: Sort
    needed: bool = False
    options: tuple[str, ...] = ()


JUG_EVENTS = ("opened", "drawn", "returned", "spilled", "discarded", "emptied and rinsed", "looked at")
MIX_EVENTS = ("kept in a labelled bottle", "spilled", "discarded", "looked at", "rinsed into")
MARKS = ("cut", "treated", "missed", "not found")
NOTES = ("note", "missed one", "photo")
"""What is noted in the woods: words, a plant that stands on no list, a picture by its digest."""
PERMIT_STEPS = ("asked for", "granted", "refused", "begun", "ended")
PERMIT_KINDS = ("permit for work at water", "cost share", "notice to neighbors", "other")
WEATHER_FROM = ("measured", "forecast")

ENTRY_KINDS: Mapping[str, tuple[Said, ...]] = MappingProxyType(
    {
        "treated": (
            Said("patch", "text", True),
            Said("ae_g", "amounts", True),
            Said("method", "text"),
            Said("species", "text"),
            Said("state", "text"),
            Said("product", "text"),
            Said("product_ml", "amounts"),
            Said("stems", "number"),
            Said("rows", "counts"),
            Said("mix_ml", "number"),
            Said("reckoned_ml", "number"),
            Said("concentration_frac", "number"),
            Said("carrier", "text"),
            Said("tool", "text"),
            Said("batch", "text"),
            Said("until", "clock"),
            Said("people", "texts"),
            Said("area_m2", "number"),
            Said("plan", "text"),
            Said("anyway", "text"),
        ),
        "batch mixed": (
            Said("batch", "text", True),
            Said("mixed_ml", "number", True),
            Said("drawn", "draws", True),
            Said("concentration_frac", "number"),
            Said("carrier", "text"),
            Said("bottle", "text"),
            Said("place", "text"),
            Said("plan", "text"),
            Said("dye_ml", "number"),
        ),
        "mix left": (Said("what", "choice", True, MIX_EVENTS), Said("batch", "text", True), Said("ml", "number"),
                     Said("bottle", "text"), Said("note", "text")),
        "jug": (Said("what", "choice", True, JUG_EVENTS), Said("product", "text", True), Said("jug", "text", True),
                Said("ml", "number"), Said("note", "text")),
        "marked": (Said("what", "choice", True, MARKS), Said("rows", "counts", True), Said("patch", "text"),
                   Said("species", "text"), Said("state", "text"), Said("treatment", "text"), Said("plan", "text"),
                   Said("waited_s", "number"), Said("limit_s", "number"), Said("lot", "text"), Said("flag", "text"),
                   Said("anyway", "text"), Said("people", "texts")),
        "noted": (Said("what", "choice", True, NOTES), Said("text", "text"), Said("rows", "counts"),
                  Said("patch", "text"), Said("photo", "text"), Said("latitude_deg", "figure"),
                  Said("longitude_deg", "figure"), Said("accuracy_m", "number")),
        "weather": (Said("wind_m_s", "number"), Said("wind_from", "text"), Said("temp_c", "figure"),
                    Said("humidity_frac", "number"), Said("sky", "text"), Said("source", "choice", False, WEATHER_FROM),
                    Said("forecast_age_h", "number"), Said("patch", "text")),
        "work": (Said("patch", "text", True), Said("method", "text", True), Said("stems", "number", True),
                 Said("person_h", "number", True), Said("reckoned_h", "number"), Said("people", "texts")),
        "seen again": (
            Said("of", "texts", True),
            Said("patch", "text", True),
            Said("dead", "number", True),
            Said("resprouting", "number", True),
            Said("gone", "number"),
            Said("not_found", "number"),
            Said("untreated", "number"),
            Said("sprouts", "number"),
            Said("tallest_m", "number"),
            Said("seedlings", "number"),
            Said("new_stems", "number"),
            Said("dead_rows", "counts"),
            Said("alive_rows", "counts"),
            Said("people", "texts"),
            Said("person_h", "number"),
            Said("photo", "text"),
            Said("note", "text"),
        ),
        "filled in": (Said("day", "text", True), Said("values", "words", True), Said("patch", "text"),
                      Said("product", "text")),
        "signed": (Said("day", "text", True), Said("name", "text", True), Said("records", "words", True),
                   Said("missing", "texts")),
        "permission": (Said("what", "choice", True, PERMIT_KINDS), Said("step", "choice", True, PERMIT_STEPS),
                       Said("name", "text", True), Said("patches", "texts"), Said("number", "text"),
                       Said("until", "text"), Said("from_whom", "text")),
        "taken back": (Said("why", "text", True),),
        "plan issued": (Said("code", "text"), Said("as_of", "text")),
        "set aside": (Said("patch", "text"), Said("until", "text"), Said("why", "text")),
    }
)  # fmt: skip
"""Every kind of entry with what its body may hold. "taken back" corrects an entry and puts nothing in its place."""
