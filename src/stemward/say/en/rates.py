"""Words of kill rates that are handed on."""

DO = "Take out kill rates to share (CSV)"
HINT = "Counts by plant, way, strength and season; no place, no day, no name and no product stands in it."
NONE = "Nothing was looked at late enough for a verdict, so there are no kill rates to share yet."
NOTES = (
    "Kill rates seen by one owner or crew on one tract, without place, day, name or product.",
    "dead, seen: treated plants found dead, and found dead or resprouting. Plants gone or not found are in neither.",
    "Only looks that are late enough count: {least:g} months at the least, {suckers:g} for plants that sucker; months "
    "is the shortest of a row.",
    "works: days' works behind a row. Plants of one day share mix, weather and hand and go alike, so they count for "
    "fewer than their number.",
    "Where and on which stems a way was used was chosen by people, not by chance. It is a prior, no proof.",
    "percent: product in the mix. season: quarter of the year in which it was treated.",
)
HEAD = ("species", "method", "ingredients", "percent", "season", "works", "dead", "seen", "months")
FILE = "kill-rates.csv"

IN_TITLE = "Kill rates of others"
IN_LEAD = (
    "A neighbor, an agency or another crew can take out their kill rates as a table, as you can on What worked. Bring "
    "it in here, and choose for each row what part of their stems counts beside the books. Until you choose, none does."
)
IN_HOW = (
    "Their stems count like those of the books: fewer the more of them were treated on one day, in all never over the "
    "most that books count for, so that your own soon weigh heavier. A row counts only for the same plant, way, "
    "ingredients and about the same strength. Whose stems they were, and how they were chosen, no table "
    "tells."
)
SHARES = (
    ("0", "not at all"), ("0.1", "a tenth"), ("0.25", "a quarter"), ("0.5", "half"), ("1", "all, like books"),
)  # fmt: skip
WHOSE = "Whose are they?"
WHOSE_HINT = "as you call them, for yourself"
NO_FILE = "Choose the table first, and say whose it is."
COUNTS = "counts for {stems:.1f} stems"
COUNTS_NOT = "does not count"
