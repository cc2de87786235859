"""Words of the evening entry, application records, jugs and batches."""

ODD = {
    "not_understood": "Not understood: {typed}. Write for example 14-32 treated.",
    "not_on_sheet": "{typed} is not on this sheet, which has 1 to {last}.",
    "count_of_one": "A count is for one row; write for example 3: 20 treated.",
    "twice": "{row} stands there twice as {what}.",
    "too_many": "Row {row} has {there}, not {many}.",
    "too_long": "More was typed than a sheet can hold. Use ranges, for example 14-32 treated.",
    "ended_before": "It ended at {ended}, before it began at {begun}.",
    "nothing_ticked": "Nothing is ticked: no stem was treated, cut, missed or not found.",
    "how_much_mixed": "How much was mixed with {mix}? Write it, or choose the batch that was used on.",
    "more_left": "More is left of the mix with {mix} than there was: {left} of {there}.",
    "overdrawn": "{product}, {jug}: {drawn} were drawn, and {left} were there. Was it so?",
    "no_such_jug": "{product} has no {jug} on the shelf. Was it drawn from there?",
}

FIELDS = {
    "product": "Product",
    "number": "Registration number",
    "ingredients": "Active ingredients",
    "total": "Product used in all",
    "mix": "Mix used in all",
    "strength": "Strength",
    "carrier": "Mixed in",
    "rate": "Amount per area or plant",
    "date": "Date",
    "start": "Begun",
    "end": "Ended",
    "location": "Where",
    "land_description": "Description of the land",
    "address": "Address with zip code",
    "area": "Area or plants treated",
    "acres": "Area really treated",
    "site": "Kind of place or crop",
    "plants": "Plants treated",
    "method": "How, with what",
    "applied": "Who applied it, full names",
    "certified": "Certified person in charge, and number",
    "for_whom": "For whom, with address",
    "wind": "Wind and where from",
    "temperature": "Air temperature",
    "humidity": "Humidity",
    "entry": "When others may go in",
    "mixing_place": "Where it was mixed and loaded",
    "supplier": "Where the product was bought",
    "sheet_kept": "Where the safety data sheet is kept",
    "leftover": "What became of the rest",
}
HINTS = {
    "land_description": "section, township, range",
    "applied": "first and last name of each person",
    "certified": "name and certificate number",
    "for_whom": "name and address",
    "wind": "3 mph from the west, measured at 9:40",
    "temperature": "62 F",
    "humidity": "55 %",
    "mixing_place": "truck at the lane gate",
    "area": "0.3 acre, or 62 stems",
    "acres": "0.3 acre",
    "start": "9:40",
    "end": "12:15",
}
STATES = {
    "signed": "signed by {name}",
    "signed_since": "signed by {name}; corrected since",
    "whole": "nothing is missing; not signed",
    "open": "{missing} to fill in; {left}",
}
LEFT = {"days": "{days} days left", "day": "1 day left", "today": "due today", "late": "{days} days late",
        "none": "no date for it is known"}  # fmt: skip
ASKS = "{rule} asks for it."
MAY_ASK = "{rule} asks for it if that rule binds you; that is not known."
WIND_FROM = "{wind} from {of}"
CALM = "calm"
WEATHER_FROM = {"measured": "measured", "forecast": "from a forecast"}
FORECAST_AGE = "from a forecast {age} old"
ENTRY_AFTER = "{hours} after the end"
STEMS = "{count} stems"
STEM = "1 stem"
PER_AREA = "{product} of product on {area}"
PER_STEMS = "{product} of product on {count} stems"
ROLES = "{roles} by role; write full names"
ANYWAY = "Done anyway: {why}."

FATES = {
    "all of it was used": "Nothing is left",
    "kept in a labelled bottle": "Kept in a labelled bottle",
    "discarded": "Disposed of as the label says",
    "spilled": "Spilled, and cleaned up",
    "not known yet": "Not known yet",
}
JUG_MATTERS = {
    "overdrawn": "{jug}: {amount} more was drawn than was known to be there. Look how much is left and write it down.",
    "no such jug": "{jug} is not on the shelf, and {amount} were drawn from it. Write it down as opened.",
    "found less": "{jug}: {amount} less was found than was reckoned.",
    "found more": "{jug}: {amount} more was found than was reckoned.",
}
BEGUN_EARLY = (
    "{name}: work on {patch} began on {day}, before it was granted. Such work is commonly not paid; ask its office."
)
BATCH_OPEN = "{left} of the mix of {day} is not accounted for."
BATCH_OVER = "{left} more of the mix of {day} was put on than was made."
BATCH_KEPT = "{left} of the mix of {day} is kept in {bottle}."
COMPETING = "Several lines correct the same one; the last counts. Take back the others."
KINDS = {
    "treated": "Treated", "batch mixed": "Mixed", "mix left": "Rest of a mix", "jug": "Jug", "marked": "Marked",
    "noted": "Noted",
    "weather": "Weather", "work": "Hours", "filled in": "Filled in", "signed": "Signed",
    "permission": "Permit or notice", "seen again": "Seen again",
    "taken back": "Taken back", "plan issued": "Plan printed", "set aside": "Set aside",
}  # fmt: skip

SAID = {
    "patch": "patch", "ae_g": "acid equivalent", "method": "how", "species": "plant", "state": "was",
    "product": "product", "product_ml": "product used",
    "stems": "plants", "rows": "stems", "mix_ml": "mix used", "reckoned_ml": "reckoned",
    "concentration_frac": "strength", "carrier": "mixed in", "tool": "with", "batch": "batch", "until": "ended",
    "people": "by", "area_m2": "area treated", "plan": "plan", "anyway": "done anyway", "mixed_ml": "mixed",
    "drawn": "drawn", "bottle": "bottle", "place": "mixed at", "dye_ml": "dye", "what": "what", "ml": "amount",
    "note": "note", "jug": "jug", "wind_m_s": "wind", "wind_from": "from", "temp_c": "air", "humidity_frac": "humidity",
    "sky": "sky", "source": "known from", "forecast_age_h": "forecast's age", "person_h": "hours of all people",
    "reckoned_h": "hours reckoned", "day": "day", "values": "filled in", "name": "name", "records": "records",
    "missing": "missing", "step": "step", "patches": "patches", "number": "number", "from_whom": "from whom",
    "why": "why", "code": "plan", "as_of": "for", "treatment": "treatment", "waited_s": "waited from the cut",
    "limit_s": "of at most", "lot": "lot", "flag": "flag", "text": "words", "photo": "photo",
    "latitude_deg": "latitude", "longitude_deg": "longitude", "accuracy_m": "within",
    "of": "of", "dead": "dead", "resprouting": "resprouting",
    "gone": "stump gone", "not_found": "not found", "untreated": "missed, never treated",
    "sprouts": "sprouts on one that lives", "tallest_m": "tallest", "seedlings": "seedlings", "new_stems": "new stems",
    "dead_rows": "dead", "alive_rows": "resprouting",
}  # fmt: skip
"""What each part of an entry's body is called on the page."""
ROWS_HINT = "Ids with commas between; of counted plants how many, as m3: 20."

PAPER = {
    "title": "Application records of {tract}",
    "footer": "{tract}, printed {today}",
    "invented": "an invented example",
    "field": "Field",
    "content": "What is written down",
    "star": "* asked for by a rule set named below. The state's own current text decides; ask it.",
    "asked": "Who asks for it",
    "signed": "Signed",
    "none": "Nothing has been treated, so there is no record yet.",
    "heading": "{product}, {patch}, {day}",
    "keep": "To be kept until {until} by the longest of these.",
    "by": "{name}, {at}",
    "line": "Name and date: ______________________________________",
}
