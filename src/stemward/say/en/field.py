"""Words that the phone takes along."""

LIMIT_FROM = {"label": "label, page {page}", "practice": "common practice"}
END_OF_DAY = (
    "Count the bottles. Write down what is left in each, and where it goes.",
    "Rinse the bottle into the mix or onto plants of this plan, never onto the ground.",
    "Protective equipment off: wash the gloves before you take them off.",
    "Wipe the phone and its bag. Wash your hands.",
    "Send the marks. On the computer write the day down: After.",
)
"""Common practice, no source."""
