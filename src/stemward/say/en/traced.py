"""Words of the sums behind a plan, one stem at a time."""

TITLE = "The sums behind it"
LEAD = (
    "Every figure of the plan, worked out for one of your stems: what goes in, where each number is from, and what "
    "comes out. Change the stem and see what changes."
)
STEM = "{stem}: {size} across"
OF_ALL = "for all {stems} stems"
KINDS = {"read": "your stems", "chosen": "the way you chose", "sum": "worked out above", "fixed": "fixed"}
MANY = "those of all stems together"
NONE = "No way with herbicide is taken or suggested for these plants, so there is no sum to show."
FORMULAE = {
    "wet_face_cm2": (
        "The wood that is wetted",
        "Only the living ring under the bark takes herbicide down. Small stumps are wetted all over, large "
        "ones in a ring inside the bark.",
    ),
    "face_area_cm2": (
        "The face of a small stump",
        "Up to this size liquid runs over the edge; what is lost so is reckoned from this area.",
    ),
    "wetted_ml": (
        "Mix for one stem",
        "A film of so many milliliters on each square centimeter, and what the tool wastes; never less than "
        "one squirt of it.",
    ),
    "cuts_by_diameter": (
        "Cuts round the stem",
        "Cuts go round the stem so that the herbicide meets most of the ring; the thicker the stem, the more cuts.",
    ),
    "cuts_by_centres": (
        "Cuts round the stem",
        "Cuts go round the stem with so much between their middles.",
    ),
    "cut_dose_ml": (
        "Mix for one stem",
        "The same small dose goes into each cut.",
    ),
    "bark_cm2": (
        "The bark that is wetted",
        "The bark of the lowest part is wetted all round, down to the ground.",
    ),
    "bark_depth_ml_cm2": (
        "How much the bark holds",
        "Rough, thick bark takes more liquid than smooth young bark.",
    ),
    "crown_m2": (
        "The leaves that are sprayed",
        "The ground under a crown stands for its leaves, from how tall the plant is.",
    ),
    "sprays_ml": (
        "Mix for one plant",
        "So many milliliters on each square meter of crown, of the part that has to be wet.",
    ),
    "plus": (
        "Both together",
        "The two amounts are added.",
    ),
    "mix_ae_g_l": (
        "Acid in the mix",
        "Labels set their limits in acid. The jug's strength times the product's part in the mix is what a "
        "liter of mix holds.",
    ),
    "product_ml": (
        "Product in the mix",
        "The part of the mix that comes from the jug.",
    ),
    "ae_g": (
        "Acid on one stem",
        "Mix on this stem times the acid in a liter of it.",
    ),
    "times": (
        "All stems of this row",
        "Where one row stands for several stems, they are counted here.",
    ),
    "times_learned": (
        "With what your own bottles taught",
        "What earlier days took, against what was reckoned for them, is carried over to this one.",
    ),
    "total": (
        "All stems together",
        "The amounts of all stems are added.",
    ),
    "spread_low": (
        "The least it may take",
        "Hands and bottles differ by so much either way; this is the low end.",
    ),
    "spread_high": (
        "The most it may take",
        "This is the high end; mix for the middle and keep this in mind.",
    ),
    "greatest": (
        "Acid on the ground",
        "Stems that stand near one another are taken together. Most acid for its ground falls here; it is "
        "held against what the label allows on an acre.",
    ),
}
INPUTS = {
    "diameter_cm": "across the stem", "diameter": "inches across the stem", "ring_cm": "width of the ring",
    "whole_up_to_cm": "wetted all over up to", "area_cm2": "area", "small_area_cm2": "area of a small stump",
    "depth_ml_cm2": "film in mL on a cm²", "waste_frac": "wasted", "use_rate": "your own use against what is usual",
    "smallest_ml": "least the tool gives", "per_cut": "one cut for each so many inches",
    "least": "never fewer cuts than",
    "half_digit": "rounding of the diameter taken off", "centres": "between the middles of cuts", "cuts": "cuts",
    "ml_per_cut": "mL in each cut", "height_cm": "height of the band", "smooth_ml_cm2": "smooth bark, mL on a cm²",
    "rough_ml_cm2": "rough bark, mL on a cm²", "rough_from_cm": "bark is rough from", "height_m": "how tall",
    "width_share": "width of a crown against its height", "crown_m2": "crown", "volume_ml_m2": "mL on a m² of crown",
    "coverage_frac": "part that has to be wet", "one": "one", "other": "the other",
    "concentration_frac": "product in the mix", "strength_ae_g_l": "acid in a liter of product", "mix_ml": "mix",
    "ae_g_l": "acid in a liter of mix", "each": "each", "count": "stems that the row stands for", "middle": "middle",
    "factor": "times or divided by",
}  # fmt: skip
LEARNED = {**INPUTS, "count": "taken against reckoned", "each": "reckoned"}
"""Names where a sum is multiplied by what was learned."""
UNITS = {
    "cm2": "_cm2", "ml": "_ml", "g": "_g", "g_l": "_g_l", "g_m2": "_g_m2", "m2": "_m2", "ml_cm2": "_ml_cm2",
}  # fmt: skip
KILL = "How many of ten die"
KILL_WHAT = (
    "Trials and ratings count as so many stems, never over a most, and your own stems beside them; the range holds "
    "nine times of ten and is rounded outward."
)
KILL_BOOKS = "What is known elsewhere counts for {stems:.0f} stems."
KILL_NO_BOOKS = "Nothing is known elsewhere of this plant, way and strength."
KILL_OWN = "Of your own, {dead} of {seen} that were looked at late enough are dead."
KILL_ROW = "{kind}: {typed} ({source})"
PACES = "How long it takes"
PACE = "At the usual paces {low:.0f} to {high:.0f} stems of this size are treated in an hour."
THORNS = "It has thorns, so a third of that pace is reckoned with."
