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
    "concentration.no_limit": ("The label says it may be used undiluted; this mix is {mix}.", ""),
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
    # label at hand
    "label-at-hand.none": (
        "No label of {product} is at hand. Nothing may be done without it.",
        "get the booklet that came with the jug, and read the deciding facts",
    ),
    "label-at-hand.only_proposed": (
        "Only proposed and not read by a person, on the label of {product}: {facts}.",
        "read them on the page",
    ),
    "label-at-hand.read": ("The label of {product} is at hand; {count} facts were read by a person.", ""),
    # most per application
    "most-per-application.over": (
        "{ingredient} on the densest cluster in this one go: {used}. The label's most at once is {limit}.",
        "leave some of those {stems} stems for another time the label allows, or treat them another way",
    ),
    "most-per-application.within": (
        "{ingredient} on the densest cluster in this one go comes to {used}; the label's most at once is {limit}.",
        "",
    ),
    "most-per-application.no_limit": (
        "{ingredient} on the densest cluster comes to {used}; the label says there is no limit for one application.",
        "",
    ),
    "most-per-application.not_found": (
        "How much {ingredient} may lie on an acre at once? Looked for and not found. Not found is not 'no limit'.",
        ASK_MAKER,
    ),
    "most-per-application.advised": (
        "{ingredient} comes to {used} in one go; the label speaks of {limit}.",
        "find out whether the label means a limit",
    ),
    # most per stem
    "most-per-stem.over": (
        "The thickest stem gets {each} of product; the label's most for one stem is {limit}.",
        "weaken the mix or give fewer cuts",
    ),
    "most-per-stem.within": ("The thickest stem gets {each} of product; the label's most is {limit}.", ""),
    "most-per-stem.no_limit": ("The label says there is no limit for one stem.", ""),
    "most-per-stem.not_found": (
        "How much product may one stem get? Looked for and not found. Not found is not 'no limit'.",
        ASK_MAKER,
    ),
    "most-per-stem.advised": (
        "The thickest stem gets {each} of product; the label speaks of {limit}.",
        "find out whether the label means a limit",
    ),
    # carrier
    "carrier.forbidden": ("The label forbids mixing it {carrier}.", "mix it as the label says"),
    "carrier.not_named": (
        "The label does not name this carrier ({carrier}), and it was looked for.",
        ASK_MAKER,
    ),
    "carrier.not_looked_for": (
        "Nobody has looked which carriers the label names; it does not forbid this one ({carrier}).",
        "read what it is to be mixed into",
    ),
    "carrier.advised_against": ("The label advises against this carrier ({carrier}).", "mix it as the label says"),
    "carrier.named": ("The label names this carrier ({carrier}).", ""),
    # adjuvant
    "adjuvant.both": (
        "The label asks for an additive ({adjuvant}) and forbids one.",
        "read both places and find out which is meant",
    ),
    "adjuvant.wanted": (
        "The label asks for an additive ({adjuvant}) and this mix has none.",
        "read how much, and whether it is meant for this way",
    ),
    "adjuvant.added": ("The label asks for an additive ({adjuvant}); the mix sheet has it.", ""),
    "adjuvant.none_asked": ("The label was read to ask for no additive.", ""),
    # mix partner
    "mix-partner.forbidden": (
        "The label of {product} forbids mixing it with {partner}.",
        "use one of the two alone",
    ),
    "mix-partner.not_forbidden": (
        "The label of {product} was looked through and does not forbid {partner} in the same mix. "
        "The stricter of both labels holds for everything.",
        "try a little in a jar first",
    ),
    # stem size
    "stem-size.over": (
        "A stem is {size}; the label gives {limit} as the end of the range.",
        "treat those stems another way",
    ),
    "stem-size.within": ("Stems are within the label's range: {size} against {limit}.", ""),
    "stem-size.no_limit": ("The label says there is no such limit of size.", ""),
    "stem-size.not_found": (
        "For which sizes is this way given? Looked for and not found on the label.",
        ASK_MAKER,
    ),
    "stem-size.advised": (
        "A stem is {size}; the label speaks of {limit}.",
        "expect more to come back, or treat those another way",
    ),
    # label season
    "label-season.shut": ("The label shuts this time of year: {season}.", "wait until the label opens it"),
    "label-season.not_shut": ("The label was read and does not shut this day. Not looked at: weather.", ""),
    # cut to treat
    "cut-to-treat.too_short": (
        "The label gives {limit} from cut to treatment. Saw off, all clear and two tree lengths take longer.",
        "cut with loppers, use an oil mix that may wait, or treat standing stems",
    ),
    "cut-to-treat.lot": (
        "{limit} from cut to treatment: cut {lot}, saw off, all clear, treat {lot}. Paces are guesses; time your own.",
        "",
    ),
    "cut-to-treat.not_found": (
        "How long may a stump wait? Looked for and not found. At {limit}, common practice, that is {lot} stumps a lot.",
        ASK_MAKER,
    ),
    "cut-to-treat.hurried": (
        "The label speaks of {limit} from cut to treatment; with the saw that is {lot} stumps a lot.",
        "cut fewer at a time",
    ),
    # entry
    "entry.keep_out": ("The label keeps people out for {wait} after the work.", "tell everyone, and put up a sign"),
    "entry.farm_use": (
        "The label says its entry interval does not apply here, and {patch} may grow something for sale.",
        "answer whether anything is grown for sale; then farm workers' rules hold",
    ),
    "entry.not_found": ("When may people go back in? Looked for and not found on the label.", ASK_MAKER),
    "entry.none": (
        "The label's entry interval does not apply to this use. Not looked at: wet leaves.",
        "",
    ),
    # grazing and hay
    "grazing.animals_wait": ("The label keeps animals off for {wait}.", "move them first and write down the day"),
    "grazing.animals_no_limit": ("The label says there is no waiting time for animals.", ""),
    "grazing.animals_not_found": ("When may animals come back? Looked for and not found on the label.", ASK_MAKER),
    "grazing.hay_wait": ("The label keeps hay uncut for {wait}.", "plan the cut around it"),
    "grazing.hay_no_limit": ("The label says there is no waiting time for hay.", ""),
    "grazing.hay_not_found": ("When may hay be cut? Looked for and not found on the label.", ASK_MAKER),
    # vessel
    "vessel.forbidden": (
        "The label forbids {lining}, and {vessel} is made of it.",
        "use a vessel of another material",
    ),
    "vessel.no_vessel": ("No bottle or tank is listed.", "list what the mix is carried in, and of what it is made"),
    "vessel.not_forbidden": ("The label was read and does not forbid {lining}.", ""),
    # bulletin
    "bulletin.fetch": (
        "The label sends you to the bulletin on endangered species for this place and month ({month}).",
        "fetch it, at most six months before the work, and keep it with the plan",
    ),
    "bulletin.none": ("The label sends to no bulletin on endangered species. Not looked at: state lists.", ""),
    # storage
    "storage.keep_above": ("The label wants the jug kept above {least}.", "keep it there, locked, in its own jug"),
    "storage.usual": (
        "Common practice keeps jugs locked, dry, from freezing, and in their own containers.",
        "keep it so",
    ),
    # place rules
    "place-rules.organic": (
        "{patch} is certified organic. Most herbicides end that for three years.",
        "ask the certifier before anything is sprayed or dabbed",
    ),
    "place-rules.cost_share": (
        "{patch} is under cost share. Work begun before it is granted is commonly not paid.",
        "ask the office, and wait for its word in writing",
    ),
    "place-rules.cost_share_granted": ("Written down: {name} was granted on {on}.", ""),
    "place-rules.cost_share_waiting": (
        "{name} is not granted, or has ended. Work begun before it is granted is commonly not paid.",
        "wait for its word in writing, and write it down",
    ),
    "place-rules.right_of_way": (
        "{patch} is a right-of-way or easement. Someone else has a say there.",
        "ask its holder; near wires it is the utility's work",
    ),
    "place-rules.for_sale": (
        "Something is grown for sale on {patch}: rules for farm workers and the crop's own limits hold.",
        "ask your extension office which parts of the label that brings in",
    ),
    "place-rules.protected": (
        "Protected plants, animals or sites are known on {patch}.",
        "ask the state's agency which months and distances hold",
    ),
    "place-rules.ditch": ("A ditch on {patch} carries what reaches it to other water.", "keep mix and wash water out"),
    "place-rules.homes": ("People live by {patch}. Some towns and states ask for notice or signs.", "tell them first"),
    "place-rules.public": (
        "{patch} is public. Work there often needs a licence and leave.",
        "ask who manages it, and the state's agriculture department",
    ),
    "place-rules.none": ("Answered no for {patch}: {questions}. Not looked at: town rules.", ""),
    # water permit
    "water-permit.dry": ("No open water is listed near and the ground is not wet. Not looked at: ditches.", ""),
    "water-permit.rule": (
        "Work in or beside water here can need a permit or notice. {rule}",
        "ask that office before the work, and write down who said what",
    ),
    "water-permit.ask": (
        "Work in or beside water can need a permit or notice; {state}'s rule is not on record here.",
        "ask the state's natural resources department",
    ),
    "water-permit.granted": ("Written down: {name} ({number}) was granted on {on}. Its own words decide.", ""),
    "water-permit.refused": (
        "Written down: {name} was refused.",
        "do not work there; ask that office what it would allow",
    ),
    "water-permit.waiting": (
        "{name} is asked for and not granted, or it has ended.",
        "wait for its word in writing, and write it down",
    ),
    # records
    "records.none": (
        "No rule set on record here asks for a record of {product}. The usual list is kept all the same. "
        "Not looked at: county and tribal rules.",
        "",
    ),
    "records.wanted": (
        "A record of {product} is asked for, within {days} days, kept {years} years. {rules}.",
        "write it down the same evening",
    ),
    "records.perhaps": (
        "Whether a record of {product} must be kept is not known. {rules}.",
        "say whose land it is and who works, and read whether the label says restricted use",
    ),
    # lasts
    "lasts.unknown": ("How long {ingredient} lasts in soil is not on record here.", "ask before planting there"),
    "lasts.fades": (
        "{ingredient}: about {left} is left after half a year at the longest half-life on record, or roots take "
        "none of it up.",
        "",
    ),
    "lasts.second": (
        "This jug also holds {ingredient}, of which {left} can be left after half a year and act through roots.",
        "find out whether you want that there",
    ),
    "lasts.stays": (
        "{ingredient} can act through roots, and {left} can be left after half a year.",
        "plant nothing there for a year, or choose another ingredient",
    ),
    # garden strength
    "garden-strength.ready": ("A ready-to-use product is used as it is and is weaker or dearer.", "do not dilute it"),
    "garden-strength.weak_jug": (
        "The jug holds only {strength}. That is garden strength; nothing on record treats stumps with it.",
        "read the percent on the front again, or get a concentrate",
    ),
    "garden-strength.not_on_record": (
        "No strength of mix for this jug ({strength}) and way is on record here.",
        "go by the label's own figure",
    ),
    "garden-strength.concentrate": ("The jug is a concentrate of {strength}.", ""),
    # oak wilt
    "oak-wilt.months_unknown": (
        "In which months oaks must not be wounded in {state} is not on record here.",
        "ask the state's forest service before cutting or girdling oaks",
    ),
    "oak-wilt.wound": (
        "From {months} beetles carry oak wilt to fresh wounds, in as little as 15 minutes.",
        "wait until those months are over",
    ),
    "oak-wilt.beside": (
        "Kept oaks stand near, and from {months} a nick in their bark can bring oak wilt.",
        "keep saw and hatchet off them, and paint a wound at once",
    ),
    "oak-wilt.outside": ("Today is outside the oak-wilt months ({months}). Not looked at: outbreaks nearby.", ""),
    # already cut
    "already-cut.fresh_face": (
        "These were cut before. A face that has dried takes nothing up.",
        "cut each again first",
    ),
    "already-cut.oil": (
        "These were cut before. Oil goes through bark: wet face, bark and root collar to the ground.",
        "clear leaves and soil off the collar first",
    ),
    "already-cut.sprouts": ("These were cut before. Their sprouts are sprayed once they are in full leaf.", "wait"),
    "already-cut.old_face": (
        "These were cut before, and {how} on an old face does nothing.",
        "cut a fresh face, use oil on bark and collar, or wait for the sprouts",
    ),
    # method size
    "method-size.too_thin": (
        "{count} stems are thinner than {limit}, under which {how} is not dependable.",
        "treat those another way",
    ),
    "method-size.too_thick": (
        "{count} stems are thicker than {limit}, over which {how} often fails.",
        "treat those another way",
    ),
    "method-size.height_unknown": (
        "For {count} plants no height is written down; the spray is worked out for a guessed one.",
        "write down knee, chest, over the head or tree height",
    ),
    "method-size.too_tall": (
        "{count} plants are taller than {limit}. Spray aimed up falls back on you and drifts.",
        "cut them first and spray the sprouts",
    ),
    "method-size.sprouts_small": (
        "{count} sprouts are under {limit} and have too little leaf to carry enough to the roots.",
        "wait until they are larger",
    ),
    "method-size.fits": ("The stems are of a size for {how}.", ""),
    # falling
    "falling.hard": (
        "Dead trees would stand within falling reach of {spared} ({kind}), {distance} away.",
        "cut those and treat the stumps; near wires call the utility",
    ),
    "falling.under": (
        "{count} dead trees would stand within falling reach of {spared} ({kind}).",
        "fell them once they are dead, or cut and treat the stumps",
    ),
    "falling.height_unknown": (
        "Trees left standing dead may reach {spared}; their height is not written down.",
        "write down how tall they are",
    ),
    "falling.clear": ("Nothing listed lies within falling reach. Not looked at: people passing.", ""),
    # lone saw
    "lone-saw.small": ("No stem is thicker than {limit}.", ""),
    "lone-saw.alone": (
        "{count} stems are thicker than {limit}, and one person is listed.",
        "have a second person there, or kill them standing and hire the felling",
    ),
    "lone-saw.not_alone": ("{people} people are listed for the felling.", ""),
    # alone
    "alone.one": (
        "{person} works alone. Someone should know where, until when, and whom to call.",
        "agree on an hour to check in",
    ),
    "alone.several": ("{people} people are listed.", ""),
    # boundary
    "boundary.not_drawn": ("No boundary is drawn, so nobody has looked whose trees these are.", "draw it"),
    "boundary.whose": (
        "{count} stems stand within {distance} of the boundary. They may be a neighbor's.",
        "ask the neighbor before anything is cut, and write down the answer",
    ),
    "boundary.kin_across": (
        "The boundary is {distance} away, and roots of this kind run across such a distance.",
        "ask what stands on the other side",
    ),
    "boundary.inside": ("The nearest stem is {distance} inside the boundary.", ""),
    # drift
    "drift.not_sprayed": ("No leaves are sprayed ({how}).", ""),
    "drift.no_route_known": ("Nothing kept is listed within {distance} of the spray. Not looked at: wind.", ""),
    "drift.little": (
        "{kept} stands {distance} from the spray. In a steady light wind away from it little gets there.",
        "watch the wind",
    ),
    "drift.some": ("{kept} stands {distance} from the spray, and drift can reach it.", "shield it, or cut and dab"),
    "drift.much": ("{kept} stands {distance} from the spray and would be wetted.", "cut and dab there instead"),
    "drift.vapor": (
        "{ingredient} in this form rises as vapor above {heat}, on the day and the next, and harms leaves nearby.",
        "choose a cooler day",
    ),
    # splash
    "splash.no_route_known": ("Nothing kept is listed within {limit} of a stem. Not looked at: spills.", ""),
    "splash.some": (
        "{kept} stands {distance} from a stem that is treated: what splashes or drips is on it.",
        "shield it, or dab with a brush",
    ),
    "splash.much": (
        "{kept} stands {distance} from a stem whose bark gets oil. That is treatment of what you keep.",
        "cut and dab there, in water",
    ),
    # mixing place
    "mixing-place.not_said": (
        "Where mixing and rinsing are done is not written down. Common practice asks {limit} from a well.",
        "choose a place and write it down",
    ),
    "mixing-place.over": (
        "The mixing place is {distance} from a well; the label asks for {limit}.",
        "mix farther away",
    ),
    "mixing-place.within": ("The mixing place is {distance} from the nearest well; the label asks {limit}.", ""),
    "mixing-place.no_limit": ("The label says there is no distance for mixing near a well.", ""),
    "mixing-place.not_found": (
        "How far from a well may it be mixed? Looked for and not found on the label.",
        ASK_MAKER,
    ),
    "mixing-place.advised": (
        "The mixing place is {distance} from a well; the label speaks of {limit}.",
        "mix farther away",
    ),
    "mixing-place.near": (
        "The mixing place is {distance} from {spared}. Common practice asks {limit}.",
        "mix and rinse farther away",
    ),
    "mixing-place.far": ("No well, water or sinkhole is listed within {limit} of the mixing place.", ""),
    # bloom
    "bloom.bees": ("Something is in bloom on {patch}.", "spray before or after, or in the evening, never on blooms"),
    "bloom.none": ("Nothing is in bloom on {patch}, someone said.", ""),
    "bloom.unknown": ("Nobody has said whether anything is in bloom on {patch}.", "look for blooms with bees"),
    # ground
    "ground.not_said": ("What lies under the soil of {patch} is not written down.", "ask what the well driller found"),
    "ground.no_short_way": ("Under the soil of {patch}: {over}. No short way down is known.", ""),
    "ground.unknown": ("{patch} lies over {over}, and how {ingredient} moves in soil is not on record.", "ask first"),
    "ground.moves": (
        "{patch} lies over {over}, a short way down. {ingredient} can leach (score {score}; it gives no distance).",
        "use the least that does the job, and keep it off bare soil and rock",
    ),
    "ground.held_fast": ("{patch} lies over {over}. {ingredient} is held fast by soil (score {score}).", ""),
    # licence
    "licence.own_land": (
        "Owners who treat their own land with general-use products commonly need no licence. Not looked at: towns.",
        "",
    ),
    "licence.who_unknown": (
        "Whose land it is and who does the work is not written down. Some work needs a licence.",
        "write down own, hire, public or adviser",
    ),
    "licence.rule": ("{work} needs a licence in many states. For {state}: {rule}", "ask that office"),
    "licence.ask": (
        "{work} often needs a licence, even with products anyone can buy. {state}'s rule is not on record here.",
        "ask the state's agriculture department",
    ),
    # pouring
    "pouring.no_marks": ("This amount cannot be measured with the marks at hand.", "get {measure}"),
    "pouring.no_measures": ("No measure is listed.", "get {measure}; nothing from the kitchen"),
    "pouring.vessel_too_small": ("The bottle is too small for what is to be mixed.", "get a larger bottle"),
    "pouring.no_dye": ("The batch is too small for a measure of dye.", "add a drop, so that treated stems show"),
    "pouring.oil_dye": ("An oil mix needs a dye made for oil.", "read on the dye's jug what it mixes with"),
    "pouring.measured": ("Every batch comes out in whole marks, with dye.", ""),
    # season
    "season.poor_now": (
        "Until {until} is a poor time for {how} on {plant}: {why}. Treated stems then often resprout.",
        "wait, or expect more to come back",
    ),
    "season.sprouts_not_by_then": (
        "Cut today, the sprouts would be sprayed about {day}: {why}.",
        "cut in early summer and spray before the leaves turn, or treat another way now",
    ),
    "season.sprouts_by_then": ("Cut today, the sprouts would be sprayed about {day}, in leaf.", ""),
    "season.not_on_record": (
        "The best months for {how} on {plant} are not on record here.",
        "ask your extension office",
    ),
    "season.not_best": ("The best months on record for {how} are {span}.", "wait if you can"),
    "season.good": ("Today falls in the best months on record for {how}, {span}. Not looked at: this year's leaf.", ""),
    # hazards
    "hazards.irritant_sap": ("Of {plant}: {what}.", "cover skin and eyes, and wash"),
    "hazards.thorns": ("Of {plant}: {what}.", "thick gloves and eye protection; work takes about three times as long"),
    "hazards.wilted_foliage": ("Of {plant}: {what}.", "take the brush away before stock can reach it"),
    "hazards.stock_there": (
        "Of {plant}: {what}, and animals graze {patch}.",
        "move the animals and take the brush away first",
    ),
    "hazards.roots_from_cuttings": ("Of {plant}: {what}.", "pile the brush where it dries, off wet ground"),
    "hazards.ripe_fruit": ("Of {plant}: {what}.", "cut before fruit ripens, or leave the brush where it stood"),
    "hazards.smoke": ("Of {plant}: {what}.", "never burn it"),
    "hazards.nothing_on_record": ("Nothing is on record that {plant} does to people, stock or ground.", ""),
    # densest acre
    "densest-acre.over": (
        "{ingredient} on the densest acre comes to {used}; the label's most is {limit} in a year.",
        "spread the work over years, or leave some stems there",
    ),
    "densest-acre.may_be_over": (
        "{ingredient} on the densest acre may come to {used}; the label's most is {limit} in a year.",
        "count that acre by itself before mixing",
    ),
    "densest-acre.within": ("{ingredient} on the densest acre comes to {used} at most; the label has {limit}.", ""),
    # day
    "day.too_much": (
        "At the faster pace on record this takes {least}, and a day has {day}. Mix stands overnight.",
        "mix for one day at a time",
    ),
    "day.dry_same_day": ("A dry product once mixed is used the same day.", "mix no more than that"),
    "day.fits": ("At the faster pace on record this takes {least}.", ""),
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
    "decided": (
        "The label of {product} says to avoid this ({fact}){about}.",
        "find out whether it means a rule; until then take it for one",
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
