"""Words of forms: labels that differ from the piece's own, and options as they are shown."""

LABELS: dict[str, str] = {}

OPTIONS = {
    "own": "Mine or my family's; we do it",
    "hire": "Someone else's, for pay",
    "public": "Public or an organization's",
    "adviser": "I advise the owner",
    "unknown": "Not sure",
    "woods": "Woods",
    "non-crop": "Along a fence, rim or building (non-crop)",
    "right-of-way": "Right-of-way of a road, rail or line",
    "pasture": "Pasture or range",
    "crop": "Crop, orchard or nursery",
    "yard": "Yard or landscape",
    "wet": "Wet ground or shore",
    "yes": "Yes",
    "no": "No",
    "mix": "mixes",
    "apply": "applies herbicide",
    "saw": "saws",
    "salt in water": "a salt in water (most glyphosate, amine, imazapyr)",
    "acid in water": "an acid in water",
    "ester": "an ester (oily smell, mixes with oil)",
    "ready-to-use oil": "ready to use, in oil",
    "ready-to-use water": "ready to use, in water",
    "dry": "dry (granules or powder)",
    "tree": "a tree",
    "small plants": "flowers, grass or small plants",
    "water": "water: stream, pond, ditch",
    "well": "a well or spring",
    "sinkhole": "a sinkhole",
    "garden": "a garden",
    "building": "a building",
    "lane": "a lane or road",
    "path": "a path",
    "fence": "a fence",
    "wire": "a wire",
    "boundary": "the boundary",
}

ON_LABELS = {**OPTIONS, "water": "water"}
"""The same for what a label says: its water is what a mix is made with, and no stream."""
