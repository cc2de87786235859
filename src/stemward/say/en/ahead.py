"""The years ahead in words."""

STRATEGIES = {
    "leave it": "Leave it",
    "cut yearly": "Cut every year",
    "treat once": "Treat once, then leave it",
    "treat, then cut": "Treat once, then cut every year",
    "treat every second year": "Treat as planned, go back every second year",
    "treat yearly": "Treat as planned, go back every year until it is under 1 %",
}
INPUTS = {
    "kill": "How many of those treated die",
    "find_frac": "How many of 100 plants a visit finds",
    "sprouts": "Sprouts of a plant that comes back",
    "seedlings": "Seedlings in the first year for each plant there was",
    "decline_frac": "How much of one year's seedlings come in the next",
}
HEAD = ("What is done", "Stems after {years} years", "Hours in all", "Mix in all", "Acid equivalent", "Money in all",
        "Under 1 % after", "Cheaper than cutting from")  # fmt: skip
BAND = "{middle} ({low} to {high})"
NOT_PRICED = "no wage or price written down"
GONE = "{years:.0f} years, in {share:.0f} of 100 cases"
NOT_GONE = "not in most cases ({share:.0f} of 100)"
EVEN = "year {year}"
NEVER = "never in these years"
ITSELF = "this is cutting alone"
BANDS = (
    "Each figure is the middle of many paths drawn by chance; nine of ten lie within the brackets. "
    "Hours are those at the plants: the way there and the looking for them come on top, each visit anew."
)
WEAK = (
    "Sprouts, seedlings and how fast they grow less are weakly known; nobody has published them for most plants. "
    "Move them and see what changes. Looks back move them for you: the more plants you count, the less they can lie."
)
GUESSED = (
    "For {names} no trial of the way on the plan is known and none of yours was looked at in time: here it is taken "
    "that 70 to 95 of 100 die, which is a guess for the years ahead and no kill rate."
)
MEAN = (
    "What a way kills is not known but believed, within a range. A few paths with a poor kill hold most of what is "
    "left after some visits, so the middle kill would promise too much."
)
MOST = "What the hours depend on most"
SHARE = "{name}: {share:.0f} of 100 parts of the uncertainty; at its low end {low} h, at its high end {high} h."
OWN = "moved by {count} of your own plants"
SET = "set by hand"
HANDBOOK = "from the handbook, a guess"
BUDGET = "With {hours} hours a year"
BUDGET_HEAD = ("Year", "Where the hours go, first to last", "One more hour would kill", "Left of {start}")
BUDGET_NOTE = (
    "In each year the hours go where one hour kills most plants. New seedlings and a finished walk are not counted: "
    "a patch left half done seeds the rest, so finish what lies together."
)
WHERE = "{name}: {spent:.1f} h, {share:.0f} of 100 plants visited ({gain:.1f} dead for one hour)"
ALL_DONE = "all was visited"
NEXT = "{gain:.1f} plants"
NOTHING = "no hours"
NO_TARGETS = "Nothing is left to treat on this tract, so there is nothing to look ahead to."
CAUTION = "These are paths of a simple model, not a promise. Look back, and let them learn."
