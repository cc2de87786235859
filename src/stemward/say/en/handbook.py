"""Words of the handbook's pages."""

WORDS = {
    "plant": "{common} ({latin})",
    "grows": "Sprouts from the stump: {stump}. Root suckers: {suckers}.",
    "cautions": "Cautions: {cautions}.",
    "best": "best months: {months}",
    "poor": "poor: {months}",
    "no_months": "not on record",
    "no_trial": "No trial and no advice is known for this plant. Treat a few stems first and look again in a year.",
    "fails": "What fails or is weak:",
    "cut_first": "cutting before a systemic treatment has worked brings up root suckers",
    "no_rule": "{state}, {topic}: not on record here. Ask the state.",
    "closing": "The label decides, and so do local rules and licensed practice. From memory is never a limit.",
}
