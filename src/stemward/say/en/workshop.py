"""Words of a workshop: every step of a tract's round, why it is done, and what to talk about."""

TITLE = "Workshop"
LEAD = (
    "The whole round on one piece of land, with its own figures: what is done at each step and why. Print it, or open "
    "each step on the screen. Where the land is invented, so are its products, places and numbers."
)
OPEN = "Open this step"
TALK = "To talk about"
STEPS: tuple[tuple[str, str, str, str], ...] = (
    (
        "look",
        "Look at what stands there",
        "Every stem that is left comes back, and everything beside it that is wanted can be harmed. So both are "
        "counted first: what has to go, by plant and size, and what stays, with how far it stands away.",
        "Which of these plants would you have missed? What stands near them that nobody wrote down?",
    ),
    (
        "ask",
        "Find out what is not known",
        "What nobody knows is not taken for harmless. A stop ends the plan until something is changed; what is to be "
        "found out is found out on the label, from the owner or from the state, and written down with who said so.",
        "Who could answer each of these? Which would you look up on the label, and on which page?",
    ),
    (
        "choose",
        "Choose a way for each plant",
        "For every plant there are several ways, and leaving it is one. They are set side by side by what they reach "
        "besides the plant, by how many of ten stems die, by hours and money. The program suggests; a person chooses.",
        "Would you have chosen the same? What would you need to know to choose another?",
    ),
    (
        "reckon",
        "Work out one stem",
        "The amount is the smallest that does the job: what wets the living ring, and no more. Each number stands with "
        "where it is from. Many are engineering guesses; counting your own squirts soon replaces them.",
        "Work the same stem by hand. Which of these numbers would you measure yourself first?",
    ),
    (
        "mix",
        "Mix no more than is needed",
        "What is mixed and not used has to be kept, marked and used up on a place the label names. Measures that are "
        "at hand decide how fine one can pour; the strength then never goes above what the label allows.",
        "What happens to what is left in the bottle? Who marks it, and how?",
    ),
    (
        "work",
        "Do the work in its order",
        "On a stump the time from cut to herbicide counts, since living wood seals itself. Everything is therefore at "
        "hand before the first cut, and nobody walks through what is freshly treated.",
        "Where would you stand the jug? What do you do if it begins to rain now?",
    ),
    (
        "back",
        "Go back and count",
        "A year later, or two for plants that sucker, dead stems are counted against those that came back. Few stems "
        "tell little, and stems of one day go alike; the range says how much is known.",
        "How many stems would you have to count to be sure that one way is better than the other?",
    ),
)
KEPT = "{count} things are to be kept from harm"
NOTHING_SEEN = "Nobody has gone back yet."
