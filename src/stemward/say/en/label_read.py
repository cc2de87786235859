"""Words of the page on which a label is read."""

NO_FILE = "Choose the PDF first."
PROPOSED = "{count} places proposed on {pages} pages of the label"
ANSWERS = ("says", "else", "not there", "no limit")
NO_ANSWER = "Choose one of the answers: what the label says, something else, or that it is not there."
LOOKED_WHERE = "Which pages were looked at? For example 1-12."
WHICH_PAGE = "On which page does it stand?"
NO_SUCH = "A label cannot say that of this."
NOTHING_PROPOSED = "Nothing was found here to agree with. Type what the label says."
TYPE_IT = "Type what you read there."
NOT_UNDERSTOOD = "“{typed}” is not understood. An example: {example}"
DIFFERS = (
    "You typed {typed}. The program made out {reader} on page {page}. One of the two is wrong: look at the place "
    "again, then type what you read once more."
)
NUMBER_FIRST = "Type the number that stands after EPA Reg. No. on the jug."
OTHER_LABEL = (
    "Stop: the jug says {jug}, this file says {file}. It is another product's label. Read the label that came with "
    "your jug."
)
FOUND = "{count} places; {at} of {count}"
NOT_FOUND = "“{words}” was not found. Scans and odd letters hide words: look for it with your eyes as well."
AGAIN = "{count} facts to be read again in the newer label"
DECIDE = "These decide your plan"
OTHERS = "More, when you like"
SURE = {
    "likely": "Only advised, or said in other words: read the whole sentence.",
    "unsure": "The reader was unsure: a condition, a second figure or another place is named there. Read all of it.",
}
SCOPES = {"method": "How", "carrier": "Mixed in", "site": "Kind of place", "state": "State", "role": "Who"}
PARTS = {
    "front": "Front",
    "first aid": "First aid",
    "hazards to people": "Hazards to people",
    "equipment": "Protective equipment",
    "advice to users": "Advice to users",
    "environment": "Environmental hazards",
    "physical": "Physical hazards",
    "farm workers": "Agricultural use",
    "others": "Other use",
    "storage": "Storage and disposal",
    "restrictions": "Restrictions",
    "drift": "Spray drift",
    "mixing": "Mixing",
    "plants": "Plants",
    "grazing": "Grazing and haying",
    "warranty": "Warranty",
    "sites": "Sites",
    "directions": "Directions for use",
    "cut stump": "Cut stump",
    "basal bark": "Basal bark",
    "hack and squirt": "Hack and squirt, injection",
    "foliar": "Foliar",
    "letter": "Letter of acceptance",
    "other": "Under another heading",
}
"""Standard parts of a label, as its contents list them."""
