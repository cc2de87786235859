"""The season's report, the cost-share report and the bid packet in words."""

TITLES = {
    "season": "Season report {year}: {tract}",
    "share": "Cost share {year}: {tract}",
    "bid": "Work to be bid on: {tract}",
}
FOOTER = (
    "{tract}, {day}. Stemward advises and keeps records. The label, your state's rules and licensed practice decide."
)
INVENTED = "This tract and all its figures are invented, as an example."
SENTENCE = "In {year}, {stems} plants were treated on {days}, and {seen} treated before were looked at again."
SENTENCE_DONE = "In {year}, {stems} plants were treated on {days}."
SENTENCE_SEEN = "In {year} nothing was treated, and {seen} plants treated before were looked at again."
SENTENCE_DEAD = "Of {judged} that were looked at late enough {dead} are dead."
SENTENCE_NONE = "Nothing was treated or looked at in {year}."
ONE_DAY, DAYS = "one day", "{count} days"
DIED = "What died"
DIED_TEN = "{plant}, {way}: {low} to {high} of 10 die, from {seen} of your own plants {books}."
DIED_BOOKS, DIED_ALONE = "and the books", "alone: the books know no trial of it"
TEN_ALT = "Ten stems: {low} die, {may} more may die, {live} come back."
DONE, DONE_HEAD = "What was done", ("Day", "Patch", "Plants", "How", "Product used", "By")
COST, COST_HEAD = "What it cost", ("What", "Amount", "Money")
HOURS = "Hours of all people"
NO_WAGE = "no wage written down"
NO_PRICE = "no price written down"
TOTAL = "All that is known"
SEEN, SEEN_HEAD = "What was seen", ("Treated", "Patch and plants", "Seen")
NEXT = "What is next"
NEXT_LINE = "{on}: {look} at {what}, {patch}"
NEXT_NONE = "Nothing is due."
OPEN_LINE = "{plants} on {patch}: {stems} still to treat."
SHARE_HEAD = ("Day", "Patch", "Area", "Plants treated", "How", "Products", "Photos")
SHARE_WHAT = (
    "Practice code: {code}    Agreement or contract: {number}",
    "Work begun before the agency approves is commonly not paid for. Ask which rule holds; the practice's own standard "
    "says what must be shown.",
)
SHARE_PERMITS = "Approvals written down"
SHARE_PERMIT = "{name}, {what}: {step} {on}{number}"
SHARE_NONE = "No approval is written down. Write it under permits and notices before anything is sent."
SHARE_RECEIPTS, RECEIPT_HEAD = "Receipts", ("Day", "From whom", "What for", "Amount")
SIGN = "I have checked this against my records.   Name: ______________________   Day: ____________"
AREA_PATCH = "{area}, the whole patch"
BLANK = "______________"
BID_STOPPED = (
    "DRAFT, DO NOT SEND OUT. The plan has {count} things that stop it; the way or the product has to change first."
)
SCOPE, SCOPE_HEAD = "What is to be done", ("Patch", "Plants", "Stems", "Sizes", "How")
SCOPE_NOTE = (
    "Counts are from the owner's survey of {day}; bidders look for themselves before they name a price.",
    "Another way may be offered where it kills as well and reaches no more of what is kept; the bid says so.",
)
KEEP = "What must come to no harm"
KEEP_NONE = "Nothing is written down yet. Find out before anyone bids."
ASKED = "What a bid shows"
ASKS = (
    "Licence of the business and of each person who applies, with category and number, for hire in this state. "
    "Find out from the state's lead agency for pesticides which are asked for.",
    "Insurance: general liability that names herbicide work, and workers' compensation; the insurer's certificate.",
    "Product, ingredient, strength, registration number and label of everything that will be used.",
    "Equipment, people on the site, days that are proposed, price for each patch and for one return visit.",
    "Names of three owners with like work two or more years ago, so that someone can look what came back.",
)
INSPECT = "What is looked at while the work is done"
INSPECTS = (
    "Labels and permits are at hand; each bottle carries its label; protective equipment of the label is worn.",
    "Dye in the mix. Every stump or band shows it all round; nothing kept is marked.",
    "Stumps are low and treated within the label's time after the cut.",
    "Weather of the hour is written down; work stops when the label says so.",
    "At day's end: application record, what was used, what is left and where.",
)
KILL = "When it counts as done"
KILLS = (
    "The owner counts {months} months after the work, in leaf, in the bidder's presence if wished: at least {share} of "
    "100 treated plants dead, counted on at least {count} plants in each patch, and at least {find} of 100 "
    "found and treated.",
    "Plants that sucker from their roots are counted after 18 to 24 months.",
    "Below that the bidder treats what lives once more without charge in the next fit season.",
    "The share asked for is the owner's choice; what the books and own plants let one expect stands beside it:",
)
EXPECT = "{plant}, {way}: {low} to {high} of 10"
NO_EXPECT = "{plant}, {way}: no trial known, so nobody can promise"
PHOTOS = "Photos"
PHOTO = "Photo {number}: {patch}, {day}{note}"
