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
