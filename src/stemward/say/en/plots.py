"""Words of sample plots: the sheet to carry, and the page."""

WORDS = {
    "title": "Sample plots on {patch}",
    "any_plant": "the plants to treat",
    "intro": "{plots} round plots, each {radius} from its middle. Walk to each, tally {plant} by size.",
    "rule_cord": "Cut a cord of {radius}. Put a stake in the middle; walk round with the cord held level and tight.",
    "rule_in": "A stem is in if the middle of its base is within the cord. Every second one on the very edge counts.",
    "rule_edge": "A plot that reaches beyond the patch: keep its place, and write down how much of it lies inside.",
    "rule_none": "A plot without any stem counts as well: write 0. Leaving it out makes the rest look like more.",
    "alt": "Plan of {patch} with the middles of {plots} sample plots; the list beneath gives the same places.",
    "list_head": "From one plot to the next",
    "plot": "Plot",
    "bearing": "Bearing from north",
    "how_far": "How far",
    "paces": "Paces of 2.5 ft",
    "tally_head": "Tally",
    "tally_words": "One stroke a stem of {plant}, by its size across where it would be cut; 0 where there is none.",
    "footer": "{tract}, {patch}, sample plots, {as_of}",
}
ONE_OR_TWO = "One or two plots say little: nobody knows this well. Take the range of the two as it stands."
