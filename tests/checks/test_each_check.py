"""For every check the cases in which it fires and those in which it does not, by id.

The id of a check stands first in each row: a run with that check broken must fail exactly its own rows.
"""

import datetime
from dataclasses import replace

import numpy as np
import pytest

from checks.build import (
    LB_ACRE,
    OWNER,
    PATCH,
    PRODUCT,
    TREE,
    WAY,
    changed,
    fact,
    findings,
    stems_of,
    weights,
    with_facts,
    without,
)
from stemward.checks import ALL, Pour
from stemward.handbook import load
from stemward.kinds import (
    Container,
    Content,
    Entry,
    Question,
    Registration,
    Scope,
    Shape,
    Soil,
    Spared,
    Vessel,
    Weight,
)
from stemward.reckon.densest import Densest

STOP, OPEN, KNOW, CHECKED = Weight.STOP, Weight.FIND_OUT, Weight.KNOW, Weight.CHECKED

IMAZAPYR = replace(PRODUCT, contents=(Content("imazapyr", "isopropylamine salt", 240.0),))
HACK = replace(WAY, how="hack and squirt")


LEAVES = replace(WAY, how="foliar", concentration_frac=0.25, tool="backpack")
BOTH = replace(WAY, partner="i2", partner_frac=0.02)
PARTNER = replace(IMAZAPYR, id="i2")
MAY = datetime.date(2026, 5, 10)


WILLOW = load().species["Salix nigra"]


def permit(step, what="permit for work at water", **more):
    """One step of a permit, written down."""
    body = {"what": what, "step": step, "name": "the permit", **more}
    return (Entry("p", "permission", "2026-09-01", 0, "owner", body),)


def many_stems(count):
    return stems_of(tuple([10.0] * count), tuple(range(count)), tuple([0.0] * count))


def low_stems(height_m):
    return replace(stems_of(), height_m=np.full(2, height_m))


def over(words):
    return replace(PATCH, soil=Soil("loam", 0.03, words))


def oak_at(x_m, **more):
    return replace(TREE, shape=Shape("point", (((x_m, 0.0),),)), **more)


def maple_at(x_m):
    return oak_at(x_m, species="Acer rubrum", id="maple")


def water_at(x_m, kind="water"):
    return Spared(kind, kind, Shape("point", (((x_m, 0.0),),)))


def site_answers(**answers):
    return replace(PATCH, answers=tuple({**dict(PATCH.answers), **answers}.items()))


CASES = [
    # check, what is changed, expected weights, and why
    ("site", {}, [CHECKED], "woods are named"),
    ("site", {"patch": replace(PATCH, places=("wet",))}, [OPEN], "nobody has looked for wet places"),
    ("site", {"patch": replace(PATCH, places=("wet",)), "product": with_facts(PRODUCT, fact("all sites listed", "yes"))}, [STOP], "the list is whole and wet is not on it"),
    ("site", {"patch": replace(PATCH, places=("wet",)), "product": with_facts(PRODUCT, fact("site", "wet", "not found"))}, [STOP], "looked for wet and not found"),
    ("site", {"product": changed(PRODUCT, fact("site forbidden", "woods"))}, [STOP], "woods are forbidden"),
    ("site", {"product": changed(PRODUCT, fact("site forbidden", "woods", force="avoid"))}, [OPEN], "avoid is to be found out"),
    ("site", {"product": changed(PRODUCT, fact("site forbidden", "woods", force="should"))}, [KNOW], "advised against"),
    ("site", {"product": without(PRODUCT, "site forbidden")}, [OPEN], "nobody has looked for forbidden places"),
    ("site", {"patch": replace(PATCH, places=())}, [OPEN], "what kind of place is not known"),
    ("site", {"patch": site_answers(seasonally_wet="yes")}, [CHECKED, OPEN], "a yes adds a place the label must name"),
    ("state", {}, [CHECKED], "registered, not excluded"),
    ("state", {"state": ""}, [OPEN], "the state is not known"),
    ("state", {"state": "MN"}, [OPEN], "nobody has looked it up there"),
    ("state", {"product": replace(PRODUCT, registrations=(Registration("WI", False, "owner", PRODUCT.registrations[0].looked_on),))}, [STOP], "not registered"),
    ("state", {"product": changed(PRODUCT, fact("state excluded", "WI"))}, [STOP], "the label leaves the state out"),
    ("state", {"product": with_facts(PRODUCT, fact("state only", "MN"))}, [STOP], "only for another state"),
    ("state", {"product": without(PRODUCT, "state only")}, [OPEN], "nobody has looked whether it is for some states only"),
    ("state", {"product": without(PRODUCT, "state excluded")}, [OPEN], "nobody has looked for excluded states"),
    ("state", {"as_of": PRODUCT.registrations[0].looked_on.replace(year=2028)}, [OPEN], "the look is old"),
    ("method", {}, [CHECKED], "cut stump is named"),
    ("method", {"product": changed(PRODUCT, fact("method forbidden", "cut stump"))}, [STOP], "forbidden"),
    ("method", {"product": without(PRODUCT, "method")}, [OPEN], "nobody has read the ways"),
    ("method", {"product": changed(PRODUCT, fact("method", "cut stump", "not found"))}, [KNOW], "FIFRA 2(ee)(3): not prohibited, and a strength fits"),
    ("method", {"product": changed(PRODUCT, fact("method", "cut stump", "not found"), fact("only listed methods", "yes"))}, [STOP], "only its own ways"),
    ("method", {"product": without(changed(PRODUCT, fact("method", "cut stump", "not found")), "only listed methods")}, [OPEN], "nobody has looked for such words"),
    ("method", {"product": without(changed(PRODUCT, fact("method", "cut stump", "not found")), "strongest mix")}, [OPEN], "no strength fits"),
    ("method", {"state": "NY", "product": changed(PRODUCT, fact("method", "cut stump", "not found"))}, [OPEN], "a state known to be stricter"),
    ("concentration", {}, [CHECKED], "50 % where 50 % is allowed"),
    ("concentration", {"way": replace(WAY, concentration_frac=0.66)}, [STOP], "66 % where 50 % is allowed"),
    ("concentration", {"way": replace(WAY, concentration_frac=0.66), "product": changed(PRODUCT, fact("strongest mix", 0.5, force="should"))}, [OPEN], "above what is only recommended"),
    ("concentration", {"product": without(PRODUCT, "strongest mix")}, [OPEN], "not read"),
    ("concentration", {"product": changed(PRODUCT, fact("strongest mix", None, "not found"))}, [OPEN], "not found is not no limit"),
    ("concentration", {"product": changed(PRODUCT, fact("strongest mix", None, "no limit"))}, [CHECKED], "no limit, said in words"),
    ("concentration", {"way": replace(WAY, concentration_frac=0.2)}, [CHECKED, KNOW], "weaker is let be: FIFRA 2(ee)(1)"),
    ("concentration", {"way": replace(WAY, concentration_frac=0.2), "product": changed(PRODUCT, fact("less is forbidden", "yes"))}, [CHECKED, STOP], "less is forbidden"),
    ("concentration", {"way": replace(WAY, concentration_frac=0.2), "product": without(PRODUCT, "less is forbidden")}, [CHECKED, OPEN], "nobody has looked for such words"),
    ("concentration", {"product": without(PRODUCT, "weakest mix")}, [CHECKED, OPEN], "the lower end is not read"),
    ("concentration", {"product": with_facts(without(PRODUCT, "strongest mix"), fact("strongest mix", 0.5, scope=Scope(site=("woods",))), fact("strongest mix", 1.0, scope=Scope(method=("cut stump",))))}, [OPEN], "scopes that do not nest differ"),
    ("yearly-most", {}, [CHECKED], "1 lb where 8 lb are allowed"),
    ("yearly-most", {"used_g_m2": 8.1 * LB_ACRE}, [STOP], "8.1 lb where 8 lb are allowed"),
    ("yearly-most", {"product": without(PRODUCT, "most per year")}, [OPEN], "not read"),
    ("yearly-most", {"product": changed(PRODUCT, fact("most per year", None, "not found"))}, [OPEN], "not found is not no limit"),
    ("yearly-most", {"product": changed(PRODUCT, fact("most per year", None, "no limit"))}, [CHECKED], "no limit, said in words"),
    ("soil-route", {}, [CHECKED], "glyphosate hardly moves in soil"),
    ("soil-route", {"product": IMAZAPYR, "spared": (oak_at(9.0),)}, [STOP], "4 m from an oak of 40 cm: within 18 x DBH = 7.2 m"),
    ("soil-route", {"product": IMAZAPYR, "spared": (oak_at(15.0),)}, [KNOW], "10 m: within 30 x DBH = 12 m"),
    ("soil-route", {"product": IMAZAPYR, "spared": (oak_at(50.0),)}, [CHECKED], "45 m: beyond twice the likely reach"),
    ("soil-route", {"product": IMAZAPYR, "spared": (oak_at(9.0, dbh_cm=None),)}, [OPEN], "the size of the tree is not known"),
    ("soil-route", {"product": IMAZAPYR, "spared": ()}, [CHECKED], "nothing is listed"),
    ("soil-route", {"product": replace(PRODUCT, contents=(Content("unheard of", "salt", 100.0),))}, [OPEN], "nothing is known of the ingredient"),
    ("shared-roots", {}, [CHECKED], "a maple and an oak share no roots"),
    ("shared-roots", {"spared": (maple_at(7.0),)}, [STOP], "2 m from a maple, cut stump: within half of 15 m"),
    ("shared-roots", {"spared": (maple_at(18.0),)}, [KNOW], "13 m from a maple: within 15 m"),
    ("shared-roots", {"spared": (maple_at(60.0),)}, [CHECKED], "55 m from a maple"),
    ("shared-roots", {"spared": (maple_at(11.5),), "way": HACK}, [KNOW], "6.5 m from a maple, standing: beyond a third of 15 m"),
    ("shared-roots", {"spared": (oak_at(7.0, species=""),)}, [OPEN], "the kind of tree is not known"),
    ("shared-roots", {"stems": stems_of(species="Populus tremuloides"), "spared": (oak_at(90.0, species="Populus tremuloides"),)}, [STOP], "one clone is one plant at any distance"),
    ("chemistry", {}, [CHECKED], "a salt in water"),
    ("chemistry", {"way": replace(WAY, carrier="oil")}, [STOP], "a salt in oil"),
    ("chemistry", {"product": replace(PRODUCT, formulation="ester")}, [OPEN], "an ester in water on wood"),
    ("chemistry", {"product": replace(PRODUCT, formulation="ready-to-use oil")}, [STOP], "ready-to-use is not diluted"),
    ("chemistry", {"vessels": (Vessel("can", 1_000_000, "galvanised steel"),)}, [CHECKED, STOP], "glyphosate in galvanised steel"),
    ("equipment", {}, [CHECKED], "all that is listed is there"),
    ("equipment", {"people": (replace(OWNER, gear=("long-sleeved shirt",)),)}, [STOP], "no gloves"),
    ("equipment", {"product": without(PRODUCT, "pieces of equipment")}, [OPEN], "the list may not be whole"),
    ("equipment", {"product": changed(PRODUCT, fact("pieces of equipment", 3.0))}, [OPEN], "a piece that was counted is not written down"),
    ("equipment", {"people": ()}, [OPEN], "nobody is listed"),
    ("equipment", {"people": (OWNER, replace(OWNER, role="crew 1", does=("saw",), gear=()))}, [CHECKED], "who only saws needs no gloves for herbicide"),
    ("restricted-use", {}, [CHECKED], "not restricted"),
    ("restricted-use", {"product": changed(PRODUCT, fact("restricted use", "yes"))}, [STOP], "restricted, nobody certified"),
    ("restricted-use", {"product": changed(PRODUCT, fact("restricted use", "yes")), "people": (replace(OWNER, certified="yes"),)}, [OPEN], "certified, category not known"),
    ("restricted-use", {"product": changed(PRODUCT, fact("restricted use", "yes")), "people": (replace(OWNER, certified="unknown"),)}, [OPEN], "not known whether certified"),
    ("restricted-use", {"product": without(PRODUCT, "restricted use")}, [OPEN], "not read"),
    ("water", {}, [], "no water is listed within 150 m"),
    ("water", {"spared": (water_at(25.0),)}, [CHECKED], "20 m where 25 ft are asked"),
    ("water", {"spared": (water_at(10.0),)}, [STOP], "5 m where 25 ft are asked"),
    ("water", {"spared": (water_at(15.0, "well"),)}, [STOP], "10 m from a well where 50 ft are asked"),
    ("water", {"spared": (water_at(10.0),), "product": without(PRODUCT, "distance to water")}, [OPEN], "not read"),
    ("water", {"spared": (water_at(10.0),), "product": changed(PRODUCT, fact("distance to water", None, "not found"))}, [OPEN], "not found is not no limit"),
    ("water", {"spared": (water_at(10.0),), "product": changed(PRODUCT, fact("distance to water", 762.0, force="should"))}, [KNOW], "advised distance"),
    ("plant", {}, [CHECKED], "red maple is named"),
    ("plant", {"product": changed(PRODUCT, fact("plant", "Acer rubrum", "not found"))}, [KNOW], "FIFRA 2(ee)(2): not named, place named"),
    ("plant", {"product": changed(PRODUCT, fact("plant", "Acer rubrum", "not found"), fact("only listed plants", "yes"))}, [STOP], "only the plants it names"),
    ("plant", {"product": without(changed(PRODUCT, fact("only listed plants", "yes")), "plant")}, [OPEN], "only listed plants, nobody has looked for this one"),
    ("plant", {"product": without(PRODUCT, "plant", "only listed plants")}, [OPEN], "nobody has looked for such words"),
    ("plant", {"state": "NY", "product": without(PRODUCT, "plant")}, [OPEN], "a state known to be stricter"),
    ("site-facts", {}, [CHECKED], "all are answered"),
    ("site-facts", {"patch": site_answers(grazed="unknown")}, [OPEN], "grazing is not answered"),
    ("site-facts", {"patch": site_answers(seasonally_wet="unknown")}, [OPEN], "a yes would add a place"),
    ("kept", {}, [CHECKED], "someone has said what must not be harmed"),
    ("kept", {"kept": ()}, [OPEN], "nobody has"),
    ("measured-at", {}, [CHECKED], "stumps measured at the stump"),
    ("measured-at", {"stems": stems_of(at="breast")}, [KNOW], "measured at breast height for a cut stump"),
    ("measured-at", {"stems": stems_of(at="")}, [OPEN], "not written where"),
    ("measured-at", {"way": HACK}, [KNOW], "measured at the stump for hack and squirt"),
    ("ring", {}, [CHECKED], "a 2 in ring meets at 4 in, and the whole face is wet up to 3 in"),
    ("ring", {"way": replace(WAY, ring_cm=2.54)}, [KNOW], "a 1 in ring meets at 2 in: a 3.1 in stump gets less than a 3 in one"),
    ("ring", {"way": HACK}, [], "hack and squirt has no ring"),
    ("doubts", {}, [], "nothing read was doubtful"),
    ("doubts", {"questions": (Question("ask.odd_size", (("count", 1),), "stems.csv", 3),)}, [OPEN], "an implausible size"),
    ("doubts", {"questions": (Question("ask.not_read", (), "plots.csv"),)}, [], "a file that is not read yet changes no number"),
    ("edition", {}, [CHECKED], "the same edition"),
    ("edition", {"product": replace(PRODUCT, edition_jug="")}, [OPEN], "not compared"),
    ("edition", {"product": replace(PRODUCT, edition_jug="B")}, [STOP], "another edition"),
    ("facts-read", {}, [CHECKED], "all are read"),
    ("facts-read", {"product": without(PRODUCT, "first aid")}, [OPEN], "first aid is not read"),
    ("cut-first", {}, [CHECKED], "red maple does not sucker"),
    ("cut-first", {"stems": stems_of(species="Ailanthus altissima")}, [KNOW], "tree-of-heaven does (DiTomaso & Kyser 2007, p. 56)"),
    ("cut-first", {"stems": stems_of(species="Ailanthus altissima"), "way": HACK}, [], "standing, it is not cut"),
    ("cut-first", {"stems": stems_of(species="Fagus grandifolia")}, [CHECKED], "beech is the exception (Kochenderfer et al. 2006)"),
    ("weak", {"stems": stems_of(species="Robinia pseudoacacia"), "product": IMAZAPYR, "way": HACK}, [KNOW], "woody legumes resist imazapyr (NC State; Clemson)"),
    ("weak", {"stems": stems_of(species="Ailanthus altissima"), "product": IMAZAPYR, "way": HACK}, [CHECKED], "tree-of-heaven does not (DiTomaso & Kyser 2007)"),
    ("weak", {"stems": stems_of(species="Salix nigra")}, [KNOW], "no trial is known"),
    ("label-at-hand", {}, [CHECKED], "read by a person"),
    ("label-at-hand", {"product": replace(PRODUCT, facts=())}, [STOP], "no label at hand (table of checks.md)"),
    ("label-at-hand", {"product": with_facts(PRODUCT, fact("container", "jug", reading="proposed"))}, [OPEN], "only proposed"),
    ("most-per-application", {}, [CHECKED], "1 lb where 6 lb are allowed at once"),
    ("most-per-application", {"planned_g_m2": 6.1 * LB_ACRE}, [STOP], "6.1 lb where 6 lb are allowed at once"),
    ("most-per-application", {"product": without(PRODUCT, "most per application")}, [OPEN], "not read"),
    ("most-per-application", {"planned_g_m2": 6.1 * LB_ACRE, "product": changed(PRODUCT, fact("most per application", 6 * LB_ACRE, force="avoid"))}, [OPEN], "avoid is to be found out"),
    ("most-per-stem", {}, [CHECKED], "the label says there is no limit for a stem"),
    ("most-per-stem", {"way": HACK, "product": changed(PRODUCT, fact("most per stem", 0.5))}, [STOP], "1 mL of product where 0.5 mL are allowed"),
    ("most-per-stem", {"way": HACK, "product": without(PRODUCT, "most per stem")}, [OPEN], "not read, and injection leans on it"),
    ("most-per-stem", {"product": without(PRODUCT, "most per stem")}, [], "stumps do not"),
    ("carrier", {}, [CHECKED], "water is named"),
    ("carrier", {"product": changed(PRODUCT, fact("carrier forbidden", "water"))}, [STOP], "water is forbidden"),
    ("carrier", {"product": without(PRODUCT, "carrier forbidden")}, [OPEN], "nobody has looked for a ban"),
    ("carrier", {"product": without(PRODUCT, "carrier")}, [KNOW], "nobody has looked which are named"),
    ("carrier", {"product": changed(PRODUCT, fact("carrier", "water", "not found"))}, [OPEN], "looked for water and not found"),
    ("carrier", {"product": changed(PRODUCT, fact("carrier forbidden", "water", force="should"))}, [KNOW], "advised against"),
    ("adjuvant", {}, [], "stumps in water ask for nothing"),
    ("adjuvant", {"way": LEAVES}, [CHECKED], "leaves, and the label asks for none"),
    ("adjuvant", {"way": LEAVES, "product": without(PRODUCT, "adjuvant required")}, [OPEN], "leaves, and nobody has read it"),
    ("adjuvant", {"way": LEAVES, "product": changed(PRODUCT, fact("adjuvant required", "non-ionic surfactant"))}, [CHECKED], "asked for, and the mix sheet has it"),
    ("adjuvant", {"product": changed(PRODUCT, fact("adjuvant required", "non-ionic surfactant"))}, [OPEN], "asked for on stumps, and the mix has none"),
    ("adjuvant", {"way": LEAVES, "product": with_facts(changed(PRODUCT, fact("adjuvant required", "oil")), fact("adjuvant forbidden", "oil"))}, [OPEN], "asks for it and forbids it"),
    ("mix-partner", {}, [], "one product alone"),
    ("mix-partner", {"way": BOTH, "partner": PARTNER}, [KNOW, KNOW], "FIFRA 2(ee): not prohibited by either label"),
    ("mix-partner", {"way": BOTH, "partner": PARTNER, "product": changed(PRODUCT, fact("mix partner forbidden", "imazapyr"))}, [STOP, KNOW], "one label forbids the other's ingredient"),
    ("mix-partner", {"way": BOTH, "partner": without(PARTNER, "mix partner forbidden")}, [KNOW, OPEN], "nobody has looked on the other label"),
    ("stem-size", {}, [CHECKED, CHECKED], "2 to 4 in where 0.4 to 12 in are given"),
    ("stem-size", {"product": changed(PRODUCT, fact("greatest stem", 8.0))}, [CHECKED, STOP], "10 cm where 8 cm is the most"),
    ("stem-size", {"product": changed(PRODUCT, fact("least stem", 6.0, force="should"))}, [KNOW, CHECKED], "5 cm where 6 cm is advised"),
    ("stem-size", {"way": HACK, "product": without(PRODUCT, "least stem", "greatest stem")}, [OPEN], "injection leans on the least size"),
    ("stem-size", {"product": without(PRODUCT, "least stem", "greatest stem")}, [], "stumps do not"),
    ("label-season", {}, [CHECKED], "looked for, nothing shut"),
    ("label-season", {"product": changed(PRODUCT, fact("season forbidden", "fall", scope=Scope(dates=((9, 1), (11, 30)))))}, [STOP], "October is shut"),
    ("label-season", {"product": changed(PRODUCT, fact("season forbidden", "spring", scope=Scope(dates=((3, 1), (5, 31)))))}, [CHECKED], "spring is shut, today is October"),
    ("label-season", {"product": without(PRODUCT, "season forbidden")}, [OPEN], "nobody has looked"),
    ("cut-to-treat", {}, [CHECKED], "5 minutes leave room for a lot"),
    ("cut-to-treat", {"product": changed(PRODUCT, fact("longest from cut to treatment", 120.0))}, [STOP], "2 minutes are gone before the all-clear"),
    ("cut-to-treat", {"product": changed(PRODUCT, fact("longest from cut to treatment", 120.0)), "stems": stems_of((1.0, 2.0))}, [CHECKED], "loppers need no all-clear"),
    ("cut-to-treat", {"product": without(PRODUCT, "longest from cut to treatment")}, [OPEN], "not read"),
    ("cut-to-treat", {"product": changed(PRODUCT, fact("longest from cut to treatment", None, "not found"))}, [OPEN], "not found is not no limit"),
    ("cut-to-treat", {"way": HACK}, [], "cuts are filled at once"),
    ("entry", {}, [KNOW], "people keep out for 4 hours"),
    ("entry", {"product": changed(PRODUCT, fact("entry interval", None, "does not apply"))}, [CHECKED], "no farm use"),
    ("entry", {"product": changed(PRODUCT, fact("entry interval", None, "does not apply")), "patch": site_answers(for_sale="yes")}, [OPEN], "something is grown for sale"),
    ("entry", {"product": without(PRODUCT, "entry interval")}, [OPEN], "not read"),
    ("grazing", {}, [], "no animals, no hay"),
    ("grazing", {"patch": site_answers(grazed="yes")}, [CHECKED], "the label says there is no waiting time"),
    ("grazing", {"patch": site_answers(grazed="yes"), "product": changed(PRODUCT, fact("grazing wait", 14 * 86400.0))}, [KNOW], "animals stay off for 14 days"),
    ("grazing", {"patch": site_answers(hayed="yes"), "product": without(PRODUCT, "hay wait")}, [OPEN], "hay, and nobody has read it"),
    ("vessel", {}, [CHECKED], "plastic is not forbidden"),
    ("vessel", {"product": changed(PRODUCT, fact("vessel forbidden", "plastic"))}, [STOP], "plastic is forbidden"),
    ("vessel", {"product": without(PRODUCT, "vessel forbidden")}, [OPEN], "nobody has looked"),
    ("vessel", {"vessels": ()}, [OPEN], "no vessel is listed"),
    ("bulletin", {}, [CHECKED], "the label sends to none"),
    ("bulletin", {"product": changed(PRODUCT, fact("endangered species bulletin", "yes"))}, [OPEN], "the label sends to one"),
    ("bulletin", {"product": without(PRODUCT, "endangered species bulletin")}, [OPEN], "not read"),
    ("storage", {}, [KNOW], "what is usual"),
    ("storage", {"product": with_facts(PRODUCT, fact("least storage heat", 0.0))}, [KNOW], "kept from freezing"),
    ("storage", {"way": replace(WAY, how="cut only", product="", concentration_frac=None)}, [], "no product, nothing to store"),
    ("place-rules", {}, [CHECKED], "all answered no"),
    ("place-rules", {"patch": site_answers(organic="yes")}, [OPEN], "certified organic"),
    ("place-rules", {"patch": site_answers(cost_share="yes", ditch="yes")}, [OPEN, KNOW], "cost share and a ditch"),
    ("place-rules", {"patch": replace(PATCH, answers=())}, [], "nothing answered: the site facts ask"),
    ("water-permit", {}, [CHECKED], "no water and dry ground"),
    ("water-permit", {"spared": (water_at(10.0),)}, [OPEN], "5 m from a spring"),
    ("water-permit", {"patch": site_answers(seasonally_wet="yes")}, [OPEN], "wet for part of the year"),
    ("water-permit", {"spared": (water_at(10.0),), "entries": permit("granted")}, [CHECKED], "a permit is written down"),
    ("water-permit", {"spared": (water_at(10.0),), "entries": permit("refused")}, [STOP], "it was refused"),
    ("water-permit", {"spared": (water_at(10.0),), "entries": permit("asked for")}, [OPEN], "it is only asked for"),
    ("water-permit", {"spared": (water_at(10.0),), "entries": permit("granted", until="2026-09-30")}, [OPEN], "it has ended"),
    ("place-rules", {"patch": site_answers(cost_share="yes"), "entries": permit("granted", "cost share")}, [CHECKED], "cost share granted"),
    ("place-rules", {"patch": site_answers(cost_share="yes"), "entries": permit("asked for", "cost share")}, [OPEN], "cost share only asked for"),
    ("records", {}, [CHECKED], "own land, not for restricted use"),
    ("records", {"who": "hire"}, [KNOW], "work for hire in Wisconsin"),
    ("records", {"product": changed(PRODUCT, fact("restricted use", "yes"))}, [KNOW], "own land, restricted use"),
    ("records", {"product": without(PRODUCT, "restricted use")}, [OPEN], "nobody has read whether for restricted use"),
    ("lasts", {}, [CHECKED], "glyphosate is not taken up by roots"),
    ("lasts", {"product": IMAZAPYR}, [KNOW], "imazapyr lasts (Douglass et al. 2016: 82 to 268 d)"),
    ("lasts", {"product": replace(PRODUCT, contents=(*PRODUCT.contents, Content("imazapyr", "isopropylamine salt", 20.0)))}, [CHECKED, OPEN], "a second ingredient that lasts"),
    ("lasts", {"product": replace(PRODUCT, contents=(Content("unheard of", "salt", 100.0),))}, [OPEN], "not on record"),
    ("garden-strength", {}, [CHECKED], "4 lb ae/gal is a concentrate"),
    ("garden-strength", {"product": replace(PRODUCT, contents=(Content("glyphosate", "isopropylamine salt", 60.0),))}, [OPEN], "60 g/L is garden strength"),
    ("garden-strength", {"product": replace(PRODUCT, formulation="ready-to-use water")}, [KNOW], "ready to use"),
    ("oak-wilt", {}, [], "no oak is cut, none kept near"),
    ("oak-wilt", {"stems": stems_of(species="Quercus rubra"), "as_of": MAY}, [KNOW], "an oak is cut in May (Wisconsin DNR: April through July)"),
    ("oak-wilt", {"stems": stems_of(species="Quercus rubra"), "as_of": MAY, "spared": (oak_at(20.0),)}, [STOP], "and an oak is kept 15 m away"),
    ("oak-wilt", {"stems": stems_of(species="Quercus rubra")}, [CHECKED], "October is outside those months"),
    ("oak-wilt", {"stems": stems_of(species="Quercus rubra"), "state": "IA"}, [OPEN], "the months of the state are not on record"),
    ("oak-wilt", {"stems": stems_of(species="Quercus rubra"), "state": "TX", "as_of": MAY}, [OPEN], "the months of Texas are from memory and decide nothing"),
    ("oak-wilt", {"as_of": MAY, "spared": (oak_at(20.0),)}, [KNOW], "cutting maples among kept oaks in May"),
    ("already-cut", {}, [], "they stand"),
    ("already-cut", {"target_state": "cut"}, [STOP], "water on an old face"),
    ("already-cut", {"target_state": "cut", "way": replace(WAY, first="fresh face")}, [KNOW], "a fresh face"),
    ("already-cut", {"target_state": "cut", "way": replace(WAY, carrier="oil")}, [KNOW], "oil on face, bark and collar"),
    ("already-cut", {"target_state": "cut", "way": replace(LEAVES, first="sprouts")}, [KNOW], "the sprouts"),
    ("method-size", {}, [CHECKED], "2 in and 4 in stumps"),
    ("method-size", {"stems": stems_of((1.0, 5.0))}, [KNOW], "under 1/2 in (Alabama Extension)"),
    ("method-size", {"way": replace(WAY, how="basal bark"), "stems": stems_of((5.0, 16.0))}, [KNOW], "over 6 in by basal bark (Great Lakes Collaborative)"),
    ("method-size", {"way": LEAVES}, [KNOW], "5 m tall: over 6 ft (Texas A&M AgriLife)"),
    ("method-size", {"way": LEAVES, "stems": low_stems(np.nan)}, [OPEN], "no height is written down"),
    ("method-size", {"way": LEAVES, "stems": low_stems(1.5)}, [CHECKED], "1.5 m is within reach"),
    ("method-size", {"way": LEAVES, "stems": replace(low_stems(0.2), form=np.array(["sprout", "sprout"]))}, [KNOW], "sprouts too small"),
    ("falling", {}, [], "stumps leave nothing standing"),
    ("falling", {"way": HACK}, [CHECKED], "nothing lies within reach"),
    ("falling", {"way": HACK, "spared": (water_at(8.0, "wire"),)}, [STOP], "a wire 3 m from a tree 5 m tall"),
    ("falling", {"way": HACK, "spared": (water_at(8.0, "lane"),)}, [KNOW], "a lane within falling reach"),
    ("falling", {"way": HACK, "spared": (water_at(8.0, "lane"),), "stems": low_stems(np.nan)}, [OPEN], "no height is written down"),
    ("lone-saw", {}, [CHECKED], "no stem over 6 in"),
    ("lone-saw", {"stems": stems_of((5.0, 20.0))}, [CHECKED], "two people"),
    ("lone-saw", {"stems": stems_of((5.0, 20.0)), "people": (OWNER,)}, [KNOW], "one person and an 8 in stem"),
    ("lone-saw", {"way": HACK, "stems": stems_of((5.0, 20.0)), "people": (OWNER,)}, [], "nothing is felled"),
    ("alone", {}, [CHECKED], "two people"),
    ("alone", {"people": (OWNER,)}, [KNOW], "one person"),
    ("boundary", {}, [CHECKED], "80 m inside"),
    ("boundary", {"spared": (TREE,)}, [KNOW], "no boundary is drawn"),
    ("boundary", {"spared": (water_at(7.0, "boundary"),)}, [OPEN], "2 m from the boundary"),
    ("boundary", {"spared": (water_at(15.0, "boundary"),), "stems": stems_of(species="Ailanthus altissima")}, [KNOW], "a clone 10 m from the boundary"),
    ("drift", {}, [CHECKED], "no leaves are sprayed"),
    ("drift", {"way": LEAVES}, [CHECKED], "nothing kept within 50 ft"),
    ("drift", {"way": LEAVES, "spared": (oak_at(17.0),)}, [KNOW], "12 m from an oak"),
    ("drift", {"way": LEAVES, "spared": (oak_at(6.0),)}, [STOP], "1 m from an oak"),
    ("drift", {"product": replace(PRODUCT, contents=(Content("triclopyr", "butoxyethyl ester", 479.3),))}, [CHECKED, KNOW], "an ester rises as vapor in heat (SRS-131)"),
    ("splash", {}, [CHECKED], "nothing kept within half a metre"),
    ("splash", {"spared": (oak_at(5.4),)}, [KNOW], "0.4 m from an oak"),
    ("splash", {"spared": (oak_at(5.2),), "way": replace(WAY, how="basal bark", carrier="oil")}, [STOP], "basal oil 0.2 m from an oak"),
    ("mixing-place", {}, [CHECKED], "no well near"),
    ("mixing-place", {"mixing_place": None}, [OPEN], "not written down"),
    ("mixing-place", {"spared": (water_at(70.0, "well"),), "product": changed(PRODUCT, fact("mixing distance to wells", 10000.0))}, [STOP, CHECKED], "61 m where the label asks 100 m"),
    ("mixing-place", {"spared": (water_at(70.0, "well"),), "product": without(PRODUCT, "mixing distance to wells")}, [OPEN, CHECKED], "a well, and nobody has read what the label asks"),
    ("mixing-place", {"mixing_place": (5.0, 0.0), "spared": (water_at(15.0),)}, [KNOW], "10 m from water where 100 ft are usual"),
    ("bloom", {}, [], "no leaves are sprayed"),
    ("bloom", {"way": LEAVES}, [CHECKED], "nothing in bloom"),
    ("bloom", {"way": LEAVES, "patch": site_answers(in_bloom="yes")}, [KNOW], "in bloom"),
    ("bloom", {"way": LEAVES, "patch": site_answers(in_bloom="unknown")}, [OPEN], "nobody has looked"),
    ("ground", {}, [CHECKED], "deep clay"),
    ("ground", {"product": IMAZAPYR, "patch": over("fractured rock")}, [KNOW], "imazapyr leaches (GUS from Douglass et al. 2016)"),
    ("ground", {"patch": over("fractured rock")}, [CHECKED], "glyphosate is held fast"),
    ("ground", {"patch": over("")}, [KNOW], "not written down"),
    ("ground", {"product": IMAZAPYR, "spared": (water_at(30.0, "sinkhole"),)}, [KNOW], "a sinkhole 25 m away"),
    ("licence", {}, [CHECKED], "own land"),
    ("licence", {"who": "hire"}, [OPEN], "work for pay"),
    ("licence", {"who": "unknown"}, [OPEN], "not said who"),
    ("season", {}, [CHECKED], "October, stumps in water (Ballard & Nowak 2006)"),
    ("season", {"as_of": MAY}, [KNOW], "May: sap rises (Penn State Extension)"),
    ("season", {"as_of": datetime.date(2026, 6, 20)}, [KNOW], "June: neither poor nor best"),
    ("season", {"as_of": MAY, "way": replace(WAY, how="pull", product="", concentration_frac=None)}, [KNOW], "pulling: no months on record"),
    ("season", {"as_of": datetime.date(2026, 1, 10), "way": LEAVES}, [KNOW], "January has no leaves"),
    ("season", {"way": replace(LEAVES, first="cut")}, [KNOW], "sprouts of a cut in October have no leaves in January"),
    ("season", {"as_of": datetime.date(2026, 6, 10), "way": replace(LEAVES, first="cut")}, [CHECKED], "cut in June, sprayed in September (Univ. of Minnesota advice: cut June, spray fall)"),
    ("hazards", {"stems": stems_of(species="Salix babylonica"), "species": WILLOW}, [CHECKED], "nothing is on record for it"),
    ("hazards", {}, [KNOW], "red maple: wilted leaves poison horses"),
    ("hazards", {"patch": site_answers(grazed="yes")}, [STOP], "and animals graze there"),
    ("hazards", {"way": HACK}, [CHECKED], "standing, no leaves wilt on the ground"),
    ("hazards", {"stems": stems_of(species="Elaeagnus umbellata"), "way": HACK}, [KNOW], "thorns, whatever the way"),
    ("densest-acre", {}, [], "not worked out for a way that is only weighed"),
    ("densest-acre", {"densest": Densest(100.0, 100.0, True, 0.0, 0.0)}, [CHECKED], "100 g where 8 lb are allowed"),
    ("densest-acre", {"densest": Densest(4000.0, 4000.0, True, 0.0, 0.0)}, [KNOW], "4 kg on an acre where 8 lb (3.6 kg) are allowed"),
    ("densest-acre", {"densest": Densest(3000.0, 4000.0, False, 0.0, 0.0)}, [KNOW], "between 3 and 4 kg"),
    ("day", {}, [CHECKED], "two stumps"),
    ("day", {"stems": many_stems(500)}, [KNOW], "500 stumps over 3 in at 50 an hour take 10 hours"),
    ("day", {"product": replace(PRODUCT, formulation="dry")}, [KNOW], "dry products are used the same day"),
    ("pouring", {}, [CHECKED], "whole marks and dye"),
    ("pouring", {"pours": (Pour("t1", "no_marks", "syringe", False),)}, [OPEN], "cannot be measured"),
    ("pouring", {"pours": (Pour("t1", "", "", False),)}, [KNOW], "too little for dye"),
    ("stock", {}, [CHECKED], "2 mL needed, 2 L there"),
    ("stock", {"dose_ml": 5000.0}, [KNOW], "5 L needed, 2 L there"),
    ("stock", {"product": replace(PRODUCT, containers=())}, [KNOW], "no jug"),
    ("stock", {"product": replace(PRODUCT, containers=(Container("jug", 9_463_000, None),))}, [OPEN], "nobody has looked"),
]  # fmt: skip


@pytest.mark.parametrize(("check", "given", "expected", "why"), CASES, ids=[f"{c[0]}: {c[3]}" for c in CASES])
def test_check(check, given, expected, why):
    """The check says what it should in this case, no more and no less."""
    assert weights(check, **given) == expected, why


@pytest.mark.parametrize("check", [c.id for c in ALL])
def test_has_a_case_that_fires_and_one_that_does_not(check):
    """No check is without a case in which it speaks up and one in which it has nothing against the plan."""
    expected = [set(weights_) for id_, _, weights_, _ in CASES if id_ == check]
    assert any(w & {STOP, OPEN, KNOW} for w in expected)
    assert any(not w & {STOP, OPEN, KNOW} for w in expected)


@pytest.mark.parametrize("check", ALL, ids=[c.id for c in ALL])
def test_is_registered_with_what_a_reader_needs(check):
    """Every check has an id, something it protects, what it needs, and sources."""
    assert check.protects and check.needs and check.sources
    assert len({c.id for c in ALL}) == len(ALL)


@pytest.mark.parametrize("check", ["soil-route"])
def test_finding_names_the_tree_and_the_numbers_behind_it(check):
    """A finding about roots carries the distance, the reach and who is concerned."""
    (found,) = findings(check, product=IMAZAPYR, spared=(oak_at(9.0),))
    values = dict(found.values)
    assert values["spared"] == "oak"
    assert values["distance_m"] == pytest.approx(4.0)
    # 30 x DBH: NC State Extension, tree protection, fig. 3
    assert values["reach_m"] == pytest.approx(12.0)
    assert found.where.stems == ("s1",)
