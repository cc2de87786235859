"""What is said of a jug on the shelf, and of reading its label by hand."""

NOTED = {
    "number_missing": "The number after EPA Reg. No. is not written down. It tells which label is yours.",
    "number_odd": "{number} does not look like a registration number, which has digits, a hyphen and digits. "
    "Old or resold jugs may differ; read it again.",
    "edition": "The label that was read is of {label}, the jug's own of {jug}. Read the label that came with your jug.",
    "two_ingredients": "It holds two ingredients ({names}). Both reach whatever the mix reaches, and both count toward "
    "their yearly limits.",
    "unknown": "Nothing is on record here for {name}. Plans with it will say find out.",
    "weak": "{name} at {strength} is too thin for the cut-surface mixes on record: garden strength, most likely.",
    "lasts": "{name} can last in soil: half of it may still be there after {days:.0f} days. Roots reach it there.",
    "soil_active": "{name} acts through the soil as well. Roots of what you keep can take it up.",
    "no_jug": "No jug is written down, so nothing says how much is left.",
    "left_unknown": "Nobody has looked how much is left.",
}

ASK = {
    "registration number": "Number after EPA Reg. No.",
    "signal word": "The signal word on the front",
    "restricted use": "Does the front say restricted use pesticide?",
    "site": "Kinds of place the label names",
    "site forbidden": "Kinds of place the label forbids",
    "all sites listed": "Did you look through every place the label names?",
    "method": "Ways of treating the label names",
    "method forbidden": "Ways the label forbids",
    "only listed methods": "Does it say that only the ways it names may be used?",
    "strongest mix": "Strongest mix it allows (highest percent)",
    "weakest mix": "Weakest mix it allows",
    "most per stem": "Most on one stem",
    "most per application": "Most on an acre at one time",
    "most per year": "Most on an acre in a year",
    "state only": "States it may be used in, if it names some",
    "state excluded": "States it leaves out",
    "distance to water": "Distance to keep from water",
    "distance to wells": "Distance to keep from wells",
    "mixing distance to wells": "Distance to mix from wells",
    "hours without rain": "Hours without rain after treatment",
    "longest from cut to treatment": "Longest time from cut to treatment",
    "equipment": "Protective equipment it asks for",
    "pieces of equipment": "How many pieces of equipment it lists (count them)",
    "glove material": "Glove materials it names",
    "entry interval": "How long others must stay out",
    "keep out until dry": "Does it say: keep out until dry?",
    "label edition": "Edition or date at the bottom corner",
    "carrier": "What it may be mixed with",
    "less is forbidden": "Does it say that less than its rate may not be used?",
    "no shared roots": "Does it warn of passing between trees by shared roots?",
    "first aid": "First aid, in its words",
    "container": "What to do with the empty jug",
    "disposal": "What to do with leftovers",
}
"""What to look for on a label, by kind of fact; others are asked by their own name."""

DECIDING = (
    "registration number", "site", "all sites listed", "method", "strongest mix", "less is forbidden", "most per year",
    "state only", "state excluded", "distance to water", "distance to wells", "hours without rain",
    "longest from cut to treatment", "signal word", "restricted use", "equipment", "pieces of equipment",
    "entry interval", "carrier", "no shared roots",
)  # fmt: skip
"""Facts in the order of what a mistake would cost."""

STANDINGS = {
    "says": "The label says this",
    "not found": "Looked for, not there",
    "no limit": "It says there is no limit",
    "does not apply": "It says it does not apply",
}
