"""Sentences of invented labels: for each kind of fact the part it stands in and how it is said there.

{it} is the figure or word as typed; {for} is who or what it is for, with a comma before it, or empty.
"""

PARTS = (
    "front", "first aid", "hazards to people", "protective equipment", "environment", "directions", "entry", "limits",
    "mixing", "places", "ways", "plants", "weather", "water", "animals", "storage",
)  # fmt: skip
"""Parts in the order of an end-use label; 40 CFR 156.10(a)(1) asks for them, not for this order."""

HEADINGS = {
    "front": "",
    "first aid": "FIRST AID",
    "hazards to people": "PRECAUTIONARY STATEMENTS: HAZARDS TO HUMANS AND DOMESTIC ANIMALS",
    "protective equipment": "PERSONAL PROTECTIVE EQUIPMENT",
    "environment": "ENVIRONMENTAL HAZARDS",
    "directions": "DIRECTIONS FOR USE",
    "entry": "ENTRY AFTER THE WORK",
    "limits": "USE RESTRICTIONS",
    "mixing": "MIXING",
    "places": "WHERE IT MAY BE USED",
    "ways": "HOW IT IS USED",
    "plants": "PLANTS CONTROLLED",
    "weather": "WEATHER AND TIME",
    "water": "WATER AND WELLS",
    "animals": "GRAZING AND HAYING",
    "storage": "STORAGE AND DISPOSAL",
}

SAYS: dict[str, tuple[str, str]] = {
    "registration number": ("front", "Registration number of this invented product: {it}."),
    "establishment number": ("front", "Establishment number (invented): {it}."),
    "label edition": ("front", "Edition of this label: {it}."),
    "signal word": ("front", "{it}"),
    "restricted use": ("front", "Restricted use: {it}{for}."),
    "ingredient percent": ("front", "Active ingredient by weight: {it}."),
    "acid per volume": ("front", "Acid equivalent: {it}."),
    "active per volume": ("front", "Active ingredient by volume: {it}."),
    "state only": ("places", "For use in {it} and in no other state{for}."),
    "state excluded": ("places", "Not for use in {it}{for}."),
    "site": ("places", "May be used on this kind of place{for}: {it}."),
    "site forbidden": ("places", "{force} be used on this kind of place{for}: {it}."),
    "all sites listed": ("places", "Are all kinds of place named here? {it}{for}."),
    "method": ("ways", "This product is for {it}{for}."),
    "method forbidden": ("ways", "{force} be used for {it}{for}."),
    "only listed methods": ("ways", "Use only the ways named on this label: {it}{for}."),
    "plant": ("plants", "Controls {it}{for}."),
    "only listed plants": ("plants", "Use only on the plants named on this label: {it}{for}."),
    "less is forbidden": ("limits", "Using less than stated is forbidden: {it}{for}."),
    "least stem": ("ways", "Stems are to be at least {it} through{for}."),
    "greatest stem": ("ways", "Stems are to be no more than {it} through{for}."),
    "carrier": ("mixing", "May be mixed in or used as: {it}{for}."),
    "carrier forbidden": ("mixing", "{force} be mixed in {it}{for}."),
    "strongest mix": ("mixing", "The mix holds no more than {it} of this product by volume{for}."),
    "weakest mix": ("mixing", "The mix holds at least {it} of this product by volume{for}."),
    "most per stem": ("limits", "No stem gets more than {it} of this product{for}."),
    "most per application": ("limits", "In one application no more than {it}, as acid equivalent{for}."),
    "most per year": ("limits", "In any one year no more than {it}, as acid equivalent, over all uses{for}."),
    "year means": ("limits", "A year on this label means: {it}{for}."),
    "most applications": ("limits", "No more than {it} applications in a year{for}."),
    "shortest interval": ("limits", "Between two applications at least {it} pass{for}."),
    "cut widths apart": ("ways", "Cuts are no more than {it} apart{for}."),
    "adjuvant required": ("mixing", "Add this to the mix{for}: {it}."),
    "adjuvant forbidden": ("mixing", "{force} be mixed with this additive{for}: {it}."),
    "mix partner": ("mixing", "May be mixed with {it}{for}."),
    "mix partner forbidden": ("mixing", "{force} be mixed with {it}{for}."),
    "vessel forbidden": ("mixing", "{force} be mixed or kept in {it}{for}."),
    "longest from cut to treatment": ("ways", "Treat within {it} of the cut{for}."),
    "hours without rain": ("weather", "No rain is to fall for {it} after treatment{for}."),
    "strongest wind": ("weather", "Stop when wind is stronger than {it}{for}."),
    "weakest wind": ("weather", "Wait when wind is weaker than {it}{for}."),
    "greatest heat": ("weather", "Stop above {it}{for}."),
    "least heat": ("weather", "Wait below {it}{for}."),
    "no inversion": ("weather", "Not during a temperature inversion: {it}{for}."),
    "season forbidden": ("weather", "{force} be used in {it}{for}."),
    "distance to water": ("water", "Keep {it} from water{for}."),
    "distance to wells": ("water", "Keep {it} from wells{for}."),
    "mixing distance to wells": ("water", "Mix and rinse at least {it} from wells{for}."),
    "no shared roots": ("environment", "Keep off trees that share roots with wanted trees: {it}{for}."),
    "distance to wanted roots": ("environment", "Keep {it} from roots of wanted plants{for}."),
    "equipment": ("protective equipment", "Everyone who handles it wears{for}: {it}."),
    "pieces of equipment": ("protective equipment", "Pieces of equipment named above: {it}."),
    "glove material": ("protective equipment", "Gloves of {it} hold against this product{for}."),
    "glove category": ("protective equipment", "Gloves of category {it}{for}."),
    "entry interval": ("entry", "Others keep out for {it}{for}."),
    "keep out until dry": ("entry", "Others keep out until spray has dried: {it}{for}."),
    "grazing wait": ("animals", "Animals stay off for {it}{for}."),
    "hay wait": ("animals", "Hay is not cut for {it}{for}."),
    "least storage heat": ("storage", "Keep above {it}."),
    "mix keeps": ("storage", "A mix is used within {it}{for}."),
    "container": ("storage", "{it}"),
    "disposal": ("storage", "{it}"),
    "first aid": ("first aid", "{it}"),
    "environmental hazard": ("environment", "{it}"),
    "endangered species bulletin": ("environment", "A bulletin on endangered species is to be followed: {it}."),
}

NO_LIMIT = "There is no such limit{for}: {kind}."
DOES_NOT_APPLY = "This does not apply{for}: {kind}."

FORCE = {"must": "Must not", "should": "Should not", "avoid": "Avoid. It is not to"}
INVENTED = "INVENTED EXAMPLE. No such product exists. Never use this page as a label."
CHILDREN = "KEEP OUT OF REACH OF CHILDREN"
MISUSE = "Federal law forbids using this product in any way that its labeling does not allow."
USE = "A made-up herbicide for unwanted woody plants"
OTHER = "Other ingredients"
EQUIVALENT = "{ingredient} ({form}): {strength} acid equivalent in each liter ({typed})"
FILLER = (
    "Read all of this label before opening the jug. The figures in it are made up for teaching and testing.",
    "Wash hands before eating, drinking or smoking. Take off wet clothes at once and wash them apart from the rest.",
    "Drift and run-off may harm what grows nearby. Do not put it into water with what is washed out of bottles.",
)
TABLE_HEAD = ("Active ingredient", "Acid equivalent")
SCOPE = {
    "method": "for {}", "carrier": "in {}", "site": "on {}", "state": "in {}", "part": "on the {}", "plants": "on {}",
    "role": "for the {}",
}  # fmt: skip
STEMS = "for stems of {low} to {high} cm"
