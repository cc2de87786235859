"""What checks say, in English: per message id a sentence, and what to do.

Placeholders are named as the finding's values without their unit; figures come in the reader's units.
{patch}, {plant} and {product} are always there. At most three sentences of 22 words.
"""

ASK_MAKER = "ask your extension office or the product's maker, and write down who said what"

MESSAGES: dict[str, tuple[str, str]] = {
    # site
    "site.place_unknown": (
        "Nobody has said what kind of place {patch} is. The label must name the kind of place.",
        "say whether it is woods, non-crop, pasture, yard or wet ground",
    ),
    "site.forbidden": (
        "The label forbids use on this kind of place ({site}). {patch} is such a place.",
        "pick a product whose label names it, or leave the plants",
    ),
    "site.not_named": (
        "The label does not name this kind of place ({site}). {patch} is such a place.",
        "pick a product whose label names it, or leave the plants",
    ),
    "site.advised_against": (
        "The label advises against use on this kind of place ({site}).",
        "read that part of the label again before choosing",
    ),
    "site.named": (
        "The label names this kind of place ({site}). Not looked at: county and town rules.",
        "",
    ),
    # state
    "state.state_unknown": (
        "The state is not written down. Products are registered state by state.",
        "write the state's two letters in the tract",
    ),
    "state.not_looked_up": (
        "Nobody has looked up whether {product} is registered in {state}.",
        "look in the state's list of registered products, by the number on the jug",
    ),
    "state.not_registered": (
        "{product} is not on the list of products registered in {state}.",
        "pick another product",
    ),
    "state.excluded": ("The label leaves {state} out.", "pick another product"),
    "state.not_among_states": ("The label is only for states other than {state}.", "pick another product"),
    "state.look_is_old": (
        "The list for {state} was last looked at on {on}. Registrations run out.",
        "look again",
    ),
    "state.registered": (
        "{product} was on the list for {state}, and the label does not leave it out. Not looked at: county exclusions.",
        "",
    ),
    # method
    "method.forbidden": ("The label forbids this way of treating ({how}).", "choose another way"),
    "method.only_listed": (
        "The label allows only the ways it names, and {how} is not among them.",
        "choose a way that the label names",
    ),
    "method.no_strength_fits": (
        "The label does not name {how}, and no strength read on it fits.",
        "read whether the label has a strength for cut surfaces",
    ),
    "method.not_named": (
        "The label does not name {how} and does not prohibit it. Federal law lets a way be used that the "
        "label does not prohibit.",
        "read the label's list of ways once more",
    ),
    "method.named": ("The label names {how}.", ""),
    # concentration
    "concentration.too_strong": (
        "The label allows at most {limit}; this mix is {mix}.",
        "mix it at {limit} or weaker",
    ),
    "concentration.within": ("The label allows up to {limit}; this mix is {mix}.", ""),
    "concentration.above_recommended": (
        "The label recommends at most {limit}; this mix is {mix}.",
        "find out whether the label means a limit, or mix it at {limit}",
    ),
    "concentration.not_found": (
        "How strong may the mix be? Looked for and not found on the label. Not found is not 'no limit'.",
        ASK_MAKER,
    ),
    "concentration.less_forbidden": (
        "The label forbids less than {least}; this mix is {mix}.",
        "mix it at {least} or stronger",
    ),
    "concentration.weaker": (
        "{mix} is under the label's {least}. Federal law lets less be used unless a label forbids it, and "
        "this one was looked through for that. Fewer stems may die.",
        "mix it at {least}",
    ),
    # most per year
    "yearly-most.over": (
        "{ingredient} on the densest cluster, this plan and this year's records together: {used}. "
        "The label's most is {limit} in a year.",
        "leave some of those {stems} stems for next year, or treat them another way",
    ),
    "yearly-most.within": (
        "{ingredient} on the densest cluster comes to {used}; the label's most is {limit} in a year. "
        "{left_mix} more of this mix may go on any one acre. Not looked at: use nobody wrote down.",
        "",
    ),
    "yearly-most.no_limit": (
        "{ingredient} on the densest cluster comes to {used}; the label says there is no yearly limit here.",
        "",
    ),
    "yearly-most.not_found": (
        "How much {ingredient} may lie on an acre in a year? Looked for and not found. "
        "The plan puts {used} on its densest cluster. Not found is not 'no limit'.",
        ASK_MAKER,
    ),
    # soil route
    "soil-route.ingredient_unknown": (
        "The handbook has nothing on how {ingredient} moves in soil.",
        "ask your extension office before using it near wanted plants",
    ),
    "soil-route.size_unknown": (
        "{ingredient} stays active in soil, and {count} kept trees have no size written down ({spared}).",
        "measure them at breast height",
    ),
    "soil-route.much": (
        "{ingredient} acts through the soil. {kept} stands {distance} from the nearest of {count} stems, "
        "within the ground its roots are known to use.",
        "choose an ingredient that soil holds fast, or leave those stems",
    ),
    "soil-route.some": (
        "{ingredient} can act through the soil. {kept} stands {distance} away and its roots may reach {reach}.",
        "treat the nearest stems by cutting alone, or accept some risk",
    ),
    "soil-route.little": (
        "{ingredient} can act through the soil a little. {kept} stands {distance} away; roots may reach {reach}.",
        "keep drips off the ground near it",
    ),
    "soil-route.no_route_known": (
        "No route through soil is known from {ingredient} to {kept}, {distance} away. Not looked at: spills.",
        "",
    ),
    "soil-route.nothing_near": (
        "Nothing that is kept from harm is listed within reach of {ingredient} through the soil.",
        "",
    ),
    # shared roots
    "shared-roots.kind_unknown": (
        "{count} kept trees have no kind written down ({spared}). Trees of one kind can share roots.",
        "write down what kind they are",
    ),
    "shared-roots.much": (
        "{ingredient} passes through shared roots. {kept}, of the same kind, stands {distance} from the "
        "nearest of {count} stems.",
        "leave those stems, or kill them without herbicide",
    ),
    "shared-roots.some": (
        "{ingredient} sometimes passes between trees that share roots. {kept} stands {distance} away; "
        "the guide value is {graft}.",
        "treat the nearest {count} by cutting alone, or accept some risk",
    ),
    "shared-roots.little": (
        "{kept} is of the same kind, {distance} away. {ingredient} is not known to travel in roots.",
        "watch it next year",
    ),
    "shared-roots.no_route_known": (
        "No shared roots are to be expected between {plant} and {kept}, {distance} away. "
        "Not looked at: roots in the ground.",
        "",
    ),
    "shared-roots.no_kin": ("No kept tree of the same kind is listed.", ""),
    # chemistry
    "chemistry.goes": (
        "{formulation} and {carrier} go together. Not looked at: other things in the tank.",
        "",
    ),
    "chemistry.salt_in_oil": (
        "A water-based product does not mix into oil.",
        "mix it in water, or take a product made for oil",
    ),
    "chemistry.acid_in_oil": (
        "Whether this acid product mixes into oil stands on its label.",
        "read it, and try a little in a jar first",
    ),
    "chemistry.ester_undiluted": (
        "An ester is used undiluted only where its label says so.",
        "read that, or mix it in oil",
    ),
    "chemistry.ester_in_water": (
        "An ester in water gives an emulsion that wets bark and wood poorly.",
        "read whether the label has it for {how}, or mix it in oil",
    ),
    "chemistry.ready_diluted": ("A ready-to-use product is never diluted.", "use it as it is"),
    "chemistry.dry_is_weighed": (
        "A dry product is weighed, not measured by volume.",
        "weigh it by the label's figure",
    ),
    "chemistry.dry_undiluted": ("A dry product cannot be used without a carrier.", "choose another way"),
    "chemistry.vessel": (
        "Glyphosate eats unlined and galvanised steel and gives off gas. Vessel {vessel} is {lining}.",
        "use plastic, glass or stainless steel",
    ),
    # equipment
    "equipment.miscounted": (
        "The label of {product} was read to list {counted} pieces of equipment, and {pieces} are written down.",
        "read that part of the label again",
    ),
    "equipment.nobody": (
        "Nobody is listed who mixes or applies, so what they wear was not looked at.",
        "list the people by role",
    ),
    "equipment.missing": (
        "The label requires {item}, and none are on the list for {person}.",
        "add them, or leave the work to someone who has them",
    ),
    "equipment.complete": (
        "Everyone who mixes or applies has what the label lists: {items}. Not looked at: fit and wear.",
        "",
    ),
    # restricted use
    "restricted-use.not_restricted": (
        "The label does not say restricted use. Not looked at: licence rules of the state.",
        "",
    ),
    "restricted-use.category": (
        "{product} is for restricted use. Someone is certified; in which category is not written down.",
        "ask whether the certificate covers this kind of work",
    ),
    "restricted-use.certified_unknown": (
        "{product} is for restricted use, and nobody is known to be certified.",
        "ask the state's agriculture department",
    ),
    "restricted-use.nobody_certified": (
        "{product} is for restricted use and nobody who applies is certified.",
        "choose another product or hire someone who is",
    ),
    # water
    "water.too_near": (
        "The nearest stem is {distance} from {spared}; the label asks for {limit}.",
        "leave the stems that are nearer",
    ),
    "water.nearer_than_advised": (
        "The nearest stem is {distance} from {spared}; the label speaks of {limit}.",
        "find out whether the label means a limit",
    ),
    "water.far_enough": (
        "The nearest stem is {distance} from {spared}; the label asks for {limit}. Not looked at: the mixing place.",
        "",
    ),
    "water.no_limit": (
        "The nearest stem is {distance} from {spared}; the label lets it be used to the edge. "
        "Not looked at: permits for work at water.",
        "",
    ),
    "water.not_found": (
        "How far from {spared}, {distance} from the nearest stem? Looked for and not found on the label. "
        "Not found is not 'no limit'.",
        ASK_MAKER,
    ),
    # plant
    "plant.named": ("The label names {plant}.", ""),
    "plant.only_listed": (
        "The label is only for the plants it names, and {plant} was looked for and not found.",
        "choose a product whose label names it",
    ),
    "plant.not_named": (
        "The label does not name {plant}. On a place that it names, federal law lets such a plant be "
        "treated unless the label is limited to its list; this one was looked through for that.",
        "expect less certain results",
    ),
    "plant.not_looked_for": (
        "Nobody has looked whether the label names {plant}. It is not limited to the plants it names.",
        "look for it in the label's list",
    ),
    # site facts
    "site-facts.unanswered": (
        "Not answered for {patch}, and each can change what the label asks: {questions}.",
        "answer yes or no",
    ),
    "site-facts.answered": ("Answered for {patch}: {questions}.", ""),
    # kept
    "kept.not_asked": (
        "Nobody has said what must not be harmed in and around {patch}. "
        "Nothing listed is not the same as nothing there.",
        "walk the edge and list it",
    ),
    "kept.asked": (
        "Someone has said what must not be harmed around {patch}; {listed} plants and places are listed.",
        "",
    ),
    # ring
    "ring.falls": (
        "With a ring of {ring}, stumps just over {whole} get less than those just under, which are wetted whole.",
        "widen the ring, or wet the whole face a little further",
    ),
    "ring.grows": ("A larger stump never gets less than a smaller one with a ring of {ring}.", ""),
    # doubts
    "doubts.doubtful": (
        "What was read is possible and seldom so. {question}",
        "look at that line, and mend it or leave it as it is",
    ),
    # edition
    "edition.not_compared": (
        "Nobody has compared the label that was read with the booklet on the jug. The booklet rules.",
        "compare the date or edition at the bottom corner",
    ),
    "edition.differs": (
        "The label that was read is edition {read}; the jug carries {jug}. The booklet on the jug rules.",
        "read the deciding facts again from the booklet",
    ),
    "edition.same": ("The label read and the booklet on the jug are the same edition, {read}.", ""),
    # facts read
    "facts-read.unread": (
        "Nobody has read yet what the label of {product} says about: {facts}.",
        "read it there, and write down the page",
    ),
    "facts-read.read": ("Read by a person: {facts}.", ""),
    # cut first
    "cut-first.suckers": (
        "Cutting {plant} before an ingredient has reached its roots brings up suckers all around.",
        "treat it standing, and fell it a month or more later",
    ),
    "cut-first.unknown": (
        "The handbook does not say whether cutting {plant} brings up root suckers.",
        "ask your extension office",
    ),
    "cut-first.fits": ("Cutting {plant} is not known to bring up a thicket of suckers.", ""),
    # weak
    "weak.weak": (
        "{ingredient} is on record as weak on {plant} by {how}.",
        "choose another ingredient or another way",
    ),
    "weak.no_trial": (
        "No trial is known for {ingredient} on {plant} by {how}.",
        "treat a few stems first and look again in a year",
    ),
    "weak.known": ("{ingredient} is on record for {plant} by {how}; rows in the handbook: {rows}.", ""),
    # stock
    "stock.none": ("No jug of {product} is on the shelf; {need} are needed.", "buy no more than that needs"),
    "stock.unknown": (
        "Nobody has looked how much {product} is left; {need} are needed.",
        "hold the jug up to the light",
    ),
    "stock.short": (
        "{need} of {product} are needed, {left} are on the shelf.",
        "treat fewer stems or buy a jug",
    ),
    "stock.enough": ("{need} of {product} are needed, {left} are on the shelf.", ""),
    # measured at
    "measured-at.not_said": (
        "For {count} stems it is not written where they were measured; the dose goes by the {wanted}.",
        "write down stump or breast",
    ),
    "measured-at.measured_at_breast": (
        "{count} stems were measured at breast height. Their stumps are wider, so more is needed than stated.",
        "measure a few where you will cut",
    ),
    "measured-at.measured_at_stump": (
        "{count} stems were measured at the stump. At breast height they are thinner and get fewer cuts.",
        "measure a few at breast height",
    ),
    "measured-at.as_meant": ("Stems were measured where the dose goes by ({wanted}).", ""),
}

OPEN: dict[str, tuple[str, str]] = {
    "unread": (
        "Nobody has read yet what the label of {product} says about: {fact}{about}.",
        "read it, and write down the page",
    ),
    "proposed": (
        "What the label of {product} says about {fact}{about} is proposed, not read by a person.",
        "read it on the page",
    ),
    "differ": (
        "The label of {product} says different things about {fact}{about}, and neither part covers the other.",
        "read both places and find out which is meant",
    ),
    "strict_state": (
        "{state} wants its own approval for uses that a label does not name or for less than it says.",
        "ask the state's pesticide office",
    ),
}
"""Messages that several checks share: the matter is open."""

WEIGHTS = {"stop": "Stop", "find out": "Find out", "know": "Know", "checked": "Checked"}

QUESTIONS = {
    "grazed": "do animals graze it",
    "hayed": "is hay cut",
    "standing_water_today": "does water stand there today",
    "seasonally_wet": "is it wet for part of the year",
    "ditch": "is there a ditch",
    "right_of_way": "is it a right-of-way or easement",
    "homes": "are there homes",
    "for_sale": "is anything grown there for sale",
    "organic": "is it certified organic",
    "cost_share": "is it under cost share",
    "public": "is it public",
    "in_bloom": "is anything there in bloom",
    "protected": "are protected plants, animals or sites known there",
}

PLACES = {
    "woods": "woods",
    "non-crop": "non-crop",
    "right-of-way": "right-of-way",
    "pasture": "pasture or range",
    "crop": "crop",
    "yard": "yard or landscape",
    "wet": "wet ground or shore",
}
