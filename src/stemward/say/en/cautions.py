"""The usual cautions beside a step. They are not findings and are always there."""

CAUTIONS: dict[str, tuple[str, ...]] = {
    "before": (
        "Read the whole label of each product first. It decides, and so do local rules and licensed practice.",
        "Tell someone where you work and when you will be back.",
    ),
    "mix": (
        "Gloves, eye protection and long sleeves on before the cap comes off.",
        "Mix {from_well} or more from a well, spring or ditch, over a tray.",
        "Carrier first, then herbicide, then dye, unless the label says otherwise.",
        "Nothing from the kitchen. Label the bottle before it is filled.",
        "Swallowed or in the eyes: Poison Help 1-800-222-1222.",
    ),
    "cut stump": (
        "Saw first, herbicide after: saw off and all clear before anyone comes within two tree lengths.",
        "Saw gloves are not herbicide gloves. A mesh visor does not stop splash.",
    ),
    "hack and squirt": (
        "Feet clear of the hatchet, nobody within reach of the swing.",
        "Eye protection: liquid splashes back from a cut.",
    ),
    "basal bark": (
        "Oil-proof gloves and boots: legs and boots get wet. Look for leaks at the back.",
        "No smoking and no hot engine near oil mixes. Not in heat: vapor harms leaves nearby.",
    ),
    "foliar": (
        "Eye protection, and nobody downwind. Spray below your chest, walking away from what is wet.",
        "Not over water, not on blooms with bees, not in wind or in dead calm.",
    ),
    "girdle": (
        "A girdled tree falls by itself. Keep away from paths, wires and buildings.",
        "Chaps, helmet, ear and eye protection at the saw.",
    ),
    "pull": ("Gloves against thorns and sap. Lift with the legs, not the back.",),
    "cut only": ("Chaps, helmet, ear and eye protection at the saw. Not alone if you can help it.",),
    "leave it": (),
    "after": (
        "Use up the mix on the plants named here, or keep it in a labelled bottle, locked.",
        "Wash gloves before taking them off, then hands, then clothes apart from the rest.",
    ),
}

EMERGENCY = (
    "Life in danger: call 911.",
    "Poison Help, day and night: 1-800-222-1222. Have the label in hand.",
    "In the eyes: rinse with clean water for 15 to 20 minutes, lenses out after five. Call Poison Help.",
    "On skin or clothes: clothes off, rinse with plenty of water for 15 to 20 minutes.",
    "Swallowed: do not bring up vomit unless told to. Call Poison Help at once.",
    "Spill: stop it, keep people off, dam it with soil or cat litter, collect it, say so.",
)
"""Common first aid restated; the label's own words, once read, stand above these."""
