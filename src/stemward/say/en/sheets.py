"""Words of the sheets that go into the woods and into the file."""

from typing import Any

TAKE = {
    "heading": "What to take",
    "saw_gloves": "Saw gloves are not herbicide gloves. A mesh visor does not stop splash.",
    "nobody": "Nobody is listed who mixes or applies. List the people by role; what they wear was not worked out.",
    "gloves": "Gloves of a material that every label here allows: {materials}.",
    "gloves_none": "No glove material is allowed by every label here. Ask which; barrier laminate holds longest.",
    "gloves_unread": "Nobody has read which glove materials the labels name. Read it before buying gloves.",
    "kit": "Everything else",
    "heat": "Gloves and coveralls keep sweat in. Start early, drink before you are thirsty, rest in the shade.",
}

SIGNAL_ORDER = ("none", "caution", "warning", "danger")

LABEL = {
    "heading": "Bottle labels",
    "note": "Cut out and tape on, waterproof, before the bottle is filled.",
    "too_small": "Never print these smaller: the signal word is 18 points high.",
    "code": "Plan {code}, batch {batch}",
    "number": "{name}, number {number}",
    "diluted": "Diluted: {share} of product by volume; {ae}",
    "undiluted": "Undiluted product; {ae}",
    "ae": "{ingredient} {strength}",
    "recipe": "Holds {recipe}.",
    "for": "For {patches} only.",
    "entry": "Keep others out for {hours} hours after use.",
    "entry_unread": "How long others keep out: not read yet.",
    "aid_unread": "First aid words: not read yet.",
    "no_signal": "Signal word: not read yet",
    "follow": "Follow the label that came with the jug. Poison Help 1-800-222-1222.",
    "children": "KEEP OUT OF REACH OF CHILDREN",
    "food": "Not for food or drink.",
    "blanks": "Mixed on ____________ at _________ by ________________________ phone ____________________",
}

SIGN = {
    "heading": "Herbicide in use",
    "out": "Keep out until {hours} hours after the work has ended, and until all is dry.",
    "where": "{patches}, {tract}",
    "product": "{name}, number {number}",
    "blanks": "Begun ______________  Ended ______________  Open again ______________  Call ______________________",
    "note": "Take this sign down when the time is over.",
}

RECORD: dict[str, Any] = {
    "heading": "Record to fill by hand",
    "note": "One a product, place and day, filled in the same day. Keep it for the time your state asks.",
    "same_day": "Who asks for which field, and for how long it is kept, differs by state: ask yours.",
    "fields": {
        "date": "Date",
        "product": "Product and number",
        "ingredients": "Active ingredients",
        "place": "Place",
        "plants": "Plants treated, stems really treated",
        "method": "How, with which tool",
        "strength": "Strength and carrier",
        "planned": "Mix planned; mix really used",
        "total": "Product used in all",
        "area": "Area treated",
        "hours": "Begun and ended",
        "weather": "Wind and from where, air temperature, sky, how measured",
        "applied": "Who mixed and applied; certificate number",
        "for_whom": "For whom, with address",
        "entry": "When others may go in again",
        "left": "Left over, and what became of it",
        "odd": "Anything that went otherwise: spills, rain, stems missed",
        "signed": "Signed",
    },
}

AFTER: dict[str, Any] = {
    "heading": "Afterward",
    "left": "{product}: about {left} is left over by intent, and more if less was used.",
    "label_says": "The label of {name} says: {says}",
    "steps": (
        "Use up the rest on plants and places named in this plan, never above a limit, or keep it in its labelled "
        "bottle, locked. Never into a drain, onto the ground, or into the fire.",
        "Rinse an empty jug three times into the next mix: a quarter full, cap on, shake 30 seconds, drain 30 seconds. "
        "Oil mixes are rinsed with the same oil.",
        "Rinse bottles and sprayers where the label allows the mix, 100 ft or more from wells and water.",
        "Wash gloves before they come off, then hands and face, then clothes apart from the rest.",
        "Store jugs locked, dry and from freezing, never with food or feed.",
        "Wipe phone, clipboard and bag.",
        "Fill in the record today.",
    ),
    "look_heading": "When to look again",
    "date": "Date",
    "what": "What for",
    "look_first": "First look. Early looks mislead both ways; count, and judge later:",
    "look_verdict": "Verdict, {months} months or more after. Count dead, resprouting, missed and new:",
    "lines": "These lines can be copied into a calendar.",
}

DAY: dict[str, Any] = {
    "title": "Sheets of the day, {tract}",
    "notice_heading": "Notice: herbicide will be used near you",
    "notice_what": "On {patches}, {tract}: {how}, by hand, plant by plant.",
    "notice_when": "Day ______________________  from ______________ to ______________",
    "notice_product": "{name}, number {number}",
    "notice_out": "Please keep people and animals out until {hours} after the work has ended, and until all is dry.",
    "notice_out_unread": "How long to keep out is not read on the label yet. Ask before you go in.",
    "notice_ask": "Who answers for it: ______________________________  phone ______________________",
    "notice_rule": "Some states and towns ask for notice by a certain day and to certain people. Ask yours.",
    "notice_none": "No herbicide is planned, so nobody need be told.",
    "squirts": "What one squirt gives",
    "squirt_steps": (
        "Gloves and eye cover on; water in the bottle, no herbicide.",
        "Squirt 20 times into the syringe or measure, as you would at a stem.",
        "Read it: ________ mL. Divide by 20: ________ mL a squirt.",
        "Write it down under Land, Calibration. Count again with each new bottle.",
    ),
    "squirt_under": "In 20 squirts, and so in one.",
    "stems": "What 20 stems take",
    "stem_steps": (
        "Fill the bottle to a mark. Treat 20 stems as they come, as the sheet says.",
        "Measure what fills it up to the mark again, and write it here.",
        "This evening write it down as any other work; the next plan takes it into account.",
    ),
    "stem_head": ("Plants", "20 stems, reckoned", "Really used", "By whom"),
}

TICKS: dict[str, Any] = {
    "heading": "To tick: {plants}, {patch}",
    "code": "Numbers of plan {code}",
    "stopped": "The plan stops this. Do not do it before the stop is gone.",
    "squirts": "Squirts",
    "dose": "Mix",
    "number": "No.",
    "stem": "Stem",
    "size": "Across",
    "cut": "Cut",
    "treated": "Treated",
    "lots": "Lots",
    "lot_head": ("Lot", "Row", "Cut at", "Treated at", "How many", "Bottle level"),
    "row_of": "Row {n}: {size} across, {count} plants, {dose} of mix each",
    "many": "{count} plants: too many to list. Work by lots and count what is treated.",
    "missed": "Missed, or not on the list",
    "blanks": (
        "Day ____________  Begun ________  Ended ________  By ____________________________",
        "Mixed ____________  Bottle level before ____________  after ____________",
    ),
    "weather": "Wind ________ from ________  Air ________  Sky ____________________  Measured at ________",
    "evening": "This evening: type the numbers under After, Write down a day. For example 14-32 treated; 33 missed.",
}

NEAR = {
    "soil": "It stands {distance_m} away; its roots may reach {likely_m} (common advice: {advice_m}). "
    "After half a year {left_frac} can be left.",
    "shared roots": "It stands {distance_m} away. Trees of one kind share roots over some distance; oaks farthest.",
    "drift or vapor": "It stands {distance_m} away; spray is thought about up to {far_m}, and wind decides.",
    "splash or spill": "It stands {distance_m} away; what splashes reaches about {splash_m}.",
    "closing": "Words, from least to most: no route known, little, some, much. None of this gives a distance at which "
    "nothing happens. The label decides.",
}
