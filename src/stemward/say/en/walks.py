"""Words of who walks where."""

TITLE = "Who walks where"
SHEET_TITLE = "Walks · {tract}"
INTRO = (
    "The order is a proposal. Go around what you meet, keep two tree lengths from anyone with a saw until the "
    "all-clear, and stop when the label's time or weather says so. The label, local rules and licensed practice decide."
)
WORK = "{mix}: {plants}"
BY_PLOTS = "{plants}, as sample plots tell of them"
NO_MIX = "{how}: {plants}"
PLANTS = "{common}, {patch}"
PERSON = "Person {n}"
PAIR = " and "
LINE = "{plants}, {hours}, {length} on foot{refills}{mix}."
PLANT, PLANTS_COUNT = "1 plant", "{count} plants"
HOURS = "about {low} to {high} h"
HOURS_ONE = "about {low} h"
HOURS_LESS = "up to {high} h"
REFILLS = ("", ", one refill", ", {count} refills")
MIX = ", {ml} in the bottle over the walk"
NOTHING = "Nothing to do on this walk."
LOT = "{n}: cut {count}"
LOTS = (
    "Cut in lots, {least} to {most} stumps in each, so that the last one is reached within the time of the label or of "
    "common practice. {how}"
)
LOTS_SAME = (
    "Cut in lots of {least}, so that the last stump is reached within the time of the label or of common practice. "
    "{how}"
)
LOTS_ALONE = "Cut the lot, saw off, treat the lot in the same order, then cut the next."
LOTS_PAIR = (
    "One cuts the lot while the other keeps two tree lengths off; saw off, all-clear, and the other treats the lot in "
    "the same order."
)
NEXT = "{far} {direction}"
NEXT_HERE = "beside it"
BACK = "back: {far} {direction}"
REFILL = "Refill: {far} {direction}"
DIRECTIONS = {
    "north": "N", "north-east": "NE", "east": "E", "south-east": "SE", "south": "S", "south-west": "SW", "west": "W",
    "north-west": "NW", "here": "",
}  # fmt: skip
LEFT = "Not reached in {hours}, left for another day: {count}. {stems}."
CUT_OFF = (
    "No way there on foot without crossing {kinds}: {stems}. Go around, or list a lane or path where one gets through."
)
TOO_MUCH = "Each takes more than the bottle holds: {stems}. Take a larger vessel, or treat them by the tank."
START_UNKNOWN = (
    "Nobody has said where the mix is made, so the walks begin in the middle of the plants. Find it out and mark it on "
    "the land."
)
START = "From and to the place where the mix is made; {start}."
KINDS = {"water": "water", "fence": "fences", "building": "buildings"}
STOPPED = "One check stops this work. The walk is shown so that it can be planned, not so that it is done."
STOPPED_MORE = "{count} checks stop this work. The walk is shown so that it can be planned, not so that it is done."
CARRY = "Takes along"
CARRY_BOTTLE = "{vessel} with the mix, labeled; {ml} over the walk{refills}"
CARRY_CUT = "Saw or loppers for {count} stumps"
CARRY_HACK = "Hatchet for {count} stems"
CARRY_OTHERS = (
    "Flagging in two colors, two pencils, this sheet",
    "Herbicide gloves, two pairs; eye wash; water to drink",
)
CARRY_SAW_ALONE = "Nobody else is on this walk: tell someone where you are and when you are back"
LANES = "Lanes · {plants}"
LANES_WORDS = (
    "These plants are counted, not mapped: walk side by side, {width} apart, along {count} lanes of {length} in all. "
    "{order}"
)
LANES_NEARER = (
    "Each next lane lies nearer to where the mix is made, so that nobody walks through what is freshly treated; the "
    "last one ends there."
)
LANES_UPHILL = (
    "Lanes run across the slope, each next one uphill of the last, so that nobody walks through or below what is "
    "freshly treated."
)
LANE = "Lane {n}: {length} {direction}{refills}"
LANE_REFILLS = ("", ", the bottle runs out once", ", the bottle runs out {count} times")
UNLAID = "{plants}: counted, and the patch has no outline, so no lanes can be laid. Draw the patch."
TOO_MANY = "{count} mapped stems are too many to be put in order one by one: walk the patch in lanes."
HOW_RECKONED = (
    "Walking at {pace} among brush (engineering guess), the way {rough} times the straight line (engineering guess), "
    "five minutes a refill (engineering guess); work at the usual paces of the handbook or, once there are some, of "
    "your own days. Hours are a band of fast and slow. The order is found by the computer, and the same plan gives "
    "the same walk; nobody knows the ground as you do."
)
WORTH_TITLE = "What is worth doing in {hours} with {people}"
HOUR, MORE_HOURS = "1 hour", "{hours} hours"
WORTH = "{patch}: {plants}"
WORTH_REACHED = "{count} of {of}, {hours}"
WORTH_DEAD = "{low} to {high} expected dead"
WORTH_UNKNOWN = "how many die is not known: no trial and too few own looks"
WORTH_STOPPED = "stopped by a check"
ONE_PERSON, PEOPLE = "one person", "{count} people"
RAIN_TITLE = "If rain comes in {hours} hours"
RAIN_FIRST = "{n}. {work}: {dry}, done {by}."
RAIN_DRY, RAIN_NO_DRY = "needs {hours} dry behind it", "needs no dry hours"
RAIN_BY, RAIN_ANY = "in {hours} from now at the latest", "whenever"
RAIN_NOT = "Do not begin: {work}; it needs {hours} dry behind it."
SHEET_HEAD = ("Lot", "Done", "No.", "Stem", "Size", "{dose}", "To the next")
REFILL_ROW = "Refill"
ALT = "Plan with the walk of {person}: {line}"
ALT_ALL = "Plan with the walks of {people}."
FOOTER = "{tract} · plan {code} · {as_of}"
EVENING = "In the evening write down what was done under these numbers."
ENTER = {
    "people": "How many people treat? Write a whole number from 1 to {most}.",
    "hours": "How many hours? Write a number such as 3 or 5.5, up to 14, or leave it empty for as long as it takes.",
    "rain": "In how many hours does rain come? Write a number such as 4, or leave it empty.",
}
KEPT = "These walks are on the printed sheets and go onto phones."
CHANGED = (
    "The plan has changed since these walks were taken: on phones they hold for the stems that are left. Take them "
    "again for what is new."
)
WORKING = (
    "The order of the plants is sought, for all people at once. It takes some seconds; the page shows itself when it "
    "is done."
)
DOSE = "Dose"
