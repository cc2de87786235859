"""Going back and what was learned, in words."""

TITLE = "Go back to {patch}: {plants} treated {day:%b} {day.day}, {day.year}"
LOOKS = {
    "first": "First look, with the first sprouts: too early to call anything dead.",
    "verdict": "The look that counts: dead, resprouting, not found.",
    "second year": "Second year: what came back late, seedlings, what was missed.",
}
LOOK_NAMES = {"first": "first look", "verdict": "verdict", "second year": "second year"}
EARLY = "early: {months:.0f} months after, no verdict before {least:.0f}"
LATE = "{months:.0f} months after"
COUNTS = "{dead} dead, {resprouting} resprouting of {judged} seen"
NONE = "Nothing was treated yet that names a plant and a method, so there is nothing to go back to."
OVERDUE = "due since {on}"
TO_COME = "due {on}"
DONE = "all looks made"
GONE = "{} where the stump is gone"
NOT_FOUND = "{} not found"
UNTREATED = "{} missed and never treated"
SHEET_TITLE = "Going back: {tract}"
SHEET_FOOTER = "{tract}, printed {day}. Stemward advises and keeps records."
SHEET_HOW = (
    "Day: ____________   Who: ______________________________   Hours of all together: ______",
    "Look at each treated plant from all sides, the root collar too. Scrape the bark with a knife: green below lives. "
    "Count plants, not sprouts. Dead: nothing green. Back: sprouts, or green below the bark. Missed: no dye, no cut, "
    "no dead leaves: it was never treated. What nobody can find is not dead; write it under not found.",
    "Dead trees drop limbs: look up, and stay away from them in wind. Entry intervals and protective equipment of the "
    "label hold for those who go back as well.",
)
SHEET_HEAD = ("What was treated", "Dead", "Back", "Sprouts on one; tallest", "Not found", "Missed", "Seedlings")

STEM_HEAD = ("Stem", "Size", "Dead", "Back", "Sprouts; tallest", "Not found", "Missed")

WORKED = "What worked:"
BEFORE_OWN = {
    "books": "The books alone, counted for {stems:.0f} stems: {low} to {high} of 10 die.",
    "both": "The books and others, counted for {stems:.0f} stems: {low} to {high} of 10 die. Of these, {others:.0f} "
    "are stems that others saw and you chose to count.",
    "others": "Others alone, counted for {stems:.0f} stems: {low} to {high} of 10 die. All are stems that others saw "
    "and you chose to count; the books give no rate.",
}
BEFORE_OWN_HEADS = {"books": "Books", "both": "Books and others", "others": "Others"}
WITH_OWN_HEADS = {
    "books": "You, with the books",
    "both": "You, with the books and others",
    "others": "You, with others",
    "": "You",
}
BOOKS_NONE = "No trial or rating is known for this plant, way and strength; only your own stems speak."
SEEN = (
    "You saw {dead} of {seen} dead in {works}: {share:.0f} %, from {low:.0f} to {high:.0f} % by Wilson's interval "
    "of 95 %."
)
EARLY_SEEN = "Seen early: {dead} of {seen} dead. That is no verdict yet."
SEEN_NONE = "None of it was looked at late enough for a verdict."
TOGETHER = "All together: {low} to {high} of 10 die. Of the next ten, treated as one lot, {least} to {most}."
ALIKE = "Stems of one day went alike, so your {seen} count for about {worth:.0f}."
EARLY_WORKS = "{count} more not looked at yet, or too early."
ONE_WORK, WORKS = "one day's work", "{count} days' works"
VERDICTS = {
    "more": "{one} killed more of {plants} than {two}: {a} of {n} against {b} of {m} dead.",
    "less": "{one} killed fewer of {plants} than {two}: {a} of {n} against {b} of {m} dead.",
    "not told apart": "{one} and {two} on {plants} cannot be told apart yet: {a} of {n} against {b} of {m} dead.",
}
NUMBERS = (
    "Difference {apart:+.0f} in 100, from {low:+.0f} to {high:+.0f} (Newcombe's interval, 95 %, widened {effect:.1f} "
    "times for stems that went alike); Fisher's exact test of the plain counts: p = {p:.3f}."
)
ELSE = {
    "season": "They were done in different seasons, so it may be the season.",
    "person": "Different people did them, so it may be the hand.",
    "size": "The stems of one were a good deal thicker, so it may be their size.",
    "strength": "The mixes were not equally strong, so it may be the strength.",
    "unknown": "Stems differ in size and place as well; only arms marked out beforehand tell for sure.",
}
APART_BY = {
    "season": "By season", "person": "By person", "strength": "By strength",
    "minutes": "By minutes from cut to treatment",
}  # fmt: skip
SEASONS = ("December to February", "March to May", "June to August", "September to November")
MINUTES = ("up to {low} minutes", "{low} to {high} minutes", "over {high} minutes")
APART_PART = "{value}: {dead} of {seen} dead, {low:.0f} to {high:.0f} % (Wilson, 95 %)"
APART_SAID = {
    "more": "{one} killed more than {two}; chance alone hardly does that.",
    "less": "{two} killed more than {one}; chance alone hardly does that.",
    "not told apart": "{one} and {two} cannot be told apart yet.",
}
FOUND = "A visit found {share:.0f} of 100 plants ({count} plants behind it)."
SPROUTS = "One that came back had {each:.1f} sprouts ({count} plants behind it)."
SEEDLINGS = "For each plant treated {each:.2f} seedlings stood there ({count} plants behind it)."
WHY_TITLE = "Why did it come back?"
WHY_SEEN = "{back} of {judged} treated on {day} came back."
WHY_GROUPS = {
    "for": "The record shows",
    "find out": "Find out",
    "against": "The record speaks against",
}
WHY = {
    "strength": {
        "for": "Too weak: {used} in the mix; {low} to {high} is on record for this ingredient, form and method.",
        "against": "Too weak a mix: {used} was used, {low} to {high} is on record.",
        "find out": "How strong the mix was against what is on record for this ingredient, form and method.",
    },
    "minutes": {
        "for": "Treated too late: {count} were reached after the time from the cut, the latest after {longest} "
        "(limit {limit}).",
        "against": "Reached too late: the slowest of {count} that were timed took {longest} (limit {limit}).",
        "find out": "How long stumps waited: nobody kept the time from the cut. A phone keeps it by itself.",
    },
    "rain": {
        "find out": "Whether rain fell within the label's rain-free time{until}: look up that day's hours at the "
        "nearest station.",
    },
    "month": {
        "for": "A poor time of year for this way: {why}.",
        "against": "The time of year: it was one of the best for this way.",
        "find out": "Whether the time of year is to blame: nothing is on record for this plant and way at that date.",
    },
    "ring": {
        "for": "Rings or bark that stayed dry: {used} of what was reckoned went on.",
        "against": "Too little on each: {used} of what was reckoned went on. A ring can still have been missed here "
        "and there: look where on the stump the sprouts stand.",
        "find out": "Whether the whole ring was wetted: what went on was not measured. Look where on the stump the "
        "sprouts stand.",
    },
    "suckers": {
        "for": "Suckers from roots: this plant sends them up far from the stem, and the treated stem alone does not "
        "say how much of the roots was reached.",
        "against": "Suckers from roots: this plant is not known to make them.",
        "find out": "Whether sprouts stand on the stump or come up from roots.",
    },
    "missed": {
        "for": "Missed stems: {count} alive were never treated; look whether some were counted as back.",
        "against": "Missed stems: none was counted.",
        "find out": "How many were missed: nobody counted stems without dye or cut.",
    },
    "ingredient": {
        "for": "An ingredient that is weak on this plant: {ingredient}.",
        "against": "The ingredient: {ingredient} is advised or tried on this plant this way.",
        "find out": "Whether {ingredient} does anything on this plant this way: no trial or advice is on record.",
    },
}
WHY["disputed"] = {"find out": "Whether {ingredient} does anything on this plant this way: sources disagree."}
WHY_SOURCE = "{text} ({source})"
WHY_NOTE = (
    "Several can hold at once, and what stands under the first head is not proved by standing there. Change one thing "
    "at a time, on a part of the plants, and look again."
)
