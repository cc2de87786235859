"""The stages of a treatment, and the ways in words."""

STAGES = {
    "leave.look_again": "Leave them. Look again next summer and count.",
    "cut_only.cut": "Cut low in early summer, when the roots have spent most.",
    "cut_only.again": "Cut the sprouts again each time they reach knee height, for some years.",
    "cut_stump.cut": "Cut low and level, where the soil will not touch the face.",
    "cut_stump.clear": "Brush sawdust off the face.",
    "cut_stump.wet": "Wet the living ring just inside the bark within {minutes} of the cut ({from}).",
    "cut_stump.refresh": "Cut each old stump again, about 1 in lower, so that the face is fresh.",
    "cut_stump.oil": "Wet the face, then bark and root collar down to the ground, all round. Wet, not running.",
    "sprouts.cut": "Cut low in early summer and clear the brush away.",
    "sprouts.wait": "Wait about {wait_days} days, until the sprouts are in full leaf and knee to chest high.",
    "sprouts.wait_only": "Wait about {wait_days} days after the cut, until the sprouts are in full leaf.",
    "girdle.rings": "Cut two rings through bark and cambium all round, a hand apart. Leave no bridge of bark.",
    "girdle.leave": "Leave the tree standing. Break off sprouts below the rings all summer.",
    "pull.pull": "Pull when the ground is moist, with the root crown. Tamp the soil down again.",
    "pull.lay": "Lay them where the roots dry out. Species that root from pieces are taken away.",
    "basal.clear": "Clear leaves and grass off the collar. Work only on dry bark clear of ice, snow and water.",
    "basal.wet": "Wet the bark from the ground up {band}, all round every stem. Wet, not running.",
    "basal.leave_standing": "Leave them standing for {wait_days} days or more. Shrubs may take a full year to die.",
    "foliar.wet": "Wet the leaves from all sides, to wet and not to run-off. Keep the spray low and coarse.",
    "foliar.keep_off": "Shield what is kept. Stop when wind rises, when it falls dead calm, or when blooms have bees.",
    "vine.cut": "Cut out a piece of each vine between knee and head height. Do not pull the top down.",
    "vine.dab": "Dab the lower cut end within {minutes} of the cut ({from}). Never wet the stem that it climbs.",
    "vine.leave_top": "Leave the top to die and fall by itself.",
    "hack.cut": "Chop downward through the bark, so that each cut holds liquid. Space the cuts evenly round.",
    "hack.fill": "Fill each cut with its measured squirt within {minutes} ({from}). Nothing runs out.",
    "hack.leave_standing": "Leave the tree standing for at least {wait_days} days, then fell it if it must come down.",
    "mark": "The dye shows what is done. Look round once more for missed stems.",
    "go_back": "Go back next growing season and count dead, resprouting and missed. Judge after 12 months.",
}

FROM = {"label": "label, page {page}", "practice": "common practice; the label decides"}

HOW = {
    "leave it": "Leave it",
    "cut only": "Cut only",
    "girdle": "Girdle",
    "pull": "Pull or dig",
    "basal bark": "Basal bark",
    "foliar": "Foliar",
    "cut stump": "Cut stump",
    "hack and squirt": "Hack and squirt",
}

CARRIER = {"water": "in water", "oil": "in oil", "undiluted": "undiluted"}

FIRST = {
    "": "{how}",
    "cut": "Cut, then {how} on the sprouts",
    "fresh face": "{how} on a fresh face",
    "sprouts": "Wait, then {how} on the sprouts",
}
"""A way with what comes first."""

CARRIER_NAME = {"water": "water", "oil": "basal oil"}

WHAT_THEN = {
    "leave it": "They grow on, and there are more each year.",
    "cut only": "Most hardwoods sprout again the same year; cutting alone killed 0 to 21 of 100 in three trials.",
    "girdle": "The top dies over a year or two; roots sprout unless that plant does not sucker.",
    "pull": "What comes out with its roots is gone; pieces left behind may sprout.",
}

RULE = (
    "The rule, in which the first difference decides: nothing that stops; in season; of a size for it; "
    "fewest things to find out; best evidence for this plant, way and ingredient; least that can reach what is kept; "
    "enough on the shelf; least work; least herbicide."
)
CHOSEN = {"person": "Chosen by you.", "rule": RULE}
NOTHING_FITS = "Every treatment weighed is stopped, so the plants are left until something is found out or changed."
NO_PRODUCT = (
    "No product on the shelf has a strength on record for these ways, so none was weighed. "
    "Write what is in a jug into shelf/NAME.toml; stemward demo writes examples."
)
NO_SPROUT = "This plant does not sprout from the stump, so cutting is enough."

TIERS = {
    3: "trials with this plant, way and ingredient",
    2: "extension or handbook advice for this plant, way and ingredient",
    1: "the trade's word only",
    0: "no trial known for this plant, way and ingredient",
}
GROUPS = {
    "go_ahead": "Can go ahead as the label has been read",
    "find_out": "After you find something out",
    "not_now": "Not at this time of year",
    "stopped": "Stopped",
}
KINDS = {3: "trials", 2: "advice", 1: "the trade's word only", 0: "no trial at this strength"}
OF_TEN = "{low} to {high} of 10 die ({tier})"
OF_TEN_ALL = "{low} of 10 die ({tier})"
WITH_OWN = "{said} and your own: {dead} of {seen} dead"
OWN = "{said}; your own: {dead} of {seen} dead"
NO_TRIAL = "no trial known for this plant, way and strength"
NOBODY_KNOWS = "Nobody knows this well."
BEHIND = "Behind it: {what}."
OTHERS = "Stems that others saw count for {stems:.0f} in it."
HOURS = "{low} to {high} h"
HOURS_ONE = "{high} h"
OWN_DAY, OWN_DAYS = "(by 1 day of yours)", "(by {days} days of yours)"
HOURS_UP_TO = "up to {high} h"
WHEN = {
    "best": "now is among the best months",
    "open": "not the best months now",
    "poor": "a poor time now",
    "": "best months not on record",
}
MONEY = "${low} to ${high}"
STOPPED = "stopped: {check}"


def check_words(check: str) -> str:
    """A check's id as words."""
    return check.replace("-", " ")


SURVEY = {
    "estimate": "{plants} on {patch}, too many to map: about {mean_stems} stems by {plots} plots, {low_stems} to "
    "{high_stems} (90 of 100 such samples hold the number). Cut and treated as stumps in water they would take about "
    "{mean_mix} of mix, {low_mix} to {high_mix}, before the guess of what one stump takes.",
    "more_plots": " For a fifth either way, {count} plots in all.",
    "no_area": "{plants} on {patch}: the patch has no area, so plots say nothing of the whole. Write it down.",
    "one_plot": "{plants} on {patch}: one plot says nothing of how much plots differ. Lay out more.",
    "plots_differ": "{plants} on {patch}: plots are of different sizes, which this version does not weigh together.",
}
LEVELS = ("no route known", "little", "some", "much")


def once(count: int) -> str:
    """The condition of a suggestion, in the same breath as the suggestion."""
    if not count:
        return "Suggested. "
    return "Suggested once 1 thing is found out. " if count == 1 else f"Suggested once {count} things are found out. "
