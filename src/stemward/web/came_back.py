"""It came back: why. What people see, what most often lies behind it, and what to do; each with who says so.

A table and a function: what is seen picks rows. No row is a verdict; the person decides which fits.
"""

from collections.abc import Sequence
from dataclasses import dataclass

PRACTICE = "common practice, no source"


@dataclass(frozen=True, slots=True)
class Cause:
    """One thing that may lie behind it. seen: the sights it fits."""

    seen: tuple[str, ...]
    why: str
    do: str
    source: str


CAUSES = {
    "stump": "sprouts from the stump or collar",
    "roots": "shoots from the ground around it",
    "side": "only one side died",
    "all": "nearly all of them came back",
    "spring": "it was treated while sap rose, in spring",
    "late": "treatment came long after the cut",
    "rain": "it rained the same day",
    "look": "it looked dead and is green again",
    "seedlings": "many small new plants, not from the stump",
}
"""What can be ticked, by id."""

_TABLE = (
    Cause(("stump", "late", "all"), "With mixes in water the cut dries within minutes and takes up little after that. "
          "One trial of beech lost nothing up to 96 hours and fell to half at 120; nobody knows that of other plants.",
          "Cut fewer at a time, treat within minutes; on old faces cut a fresh one, or use an oil mix on face, bark and collar.",
          "Kochenderfer et al., 2013; minutes: common practice, no source"),
    Cause(("stump", "side"), "The living ring was not wetted all round, or sawdust kept the mix off it.",
          "Brush the face off; wet the outer ring just inside the bark, all round; dye shows gaps.", PRACTICE),
    Cause(("stump", "spring", "all"), "Rising sap pushes the mix out of cuts and stumps.",
          "Treat from late summer to late autumn, or look the plant up: some have a season of their own.", PRACTICE),
    Cause(("roots",), "The plant suckers from its roots; killing the top wakes them. Tree-of-heaven, aspen, black locust "
          "and sumac do.", "Treat it standing (basal bark or hack and squirt) before it is cut; then go on with the shoots for "
          "some years.", "DiTomaso and Kyser, 2007 (tree-of-heaven); the rest: common practice, no source"),
    Cause(("stump", "rain", "all"), "Rain within the label's hours washed it off.",
          "Read the label's hours without rain; wait for a day that has them.", PRACTICE),
    Cause(("all", "stump"), "The ingredient is weak on this plant by this way, or the mix was much thinner than in any trial.",
          "Look the plant up under what works, and compare the strength.", PRACTICE),
    Cause(("side", "stump"), "Cuts were too far apart, or did not hold the liquid.",
          "Space them as the label says; each cut slants down and holds its squirt.", PRACTICE),
    Cause(("look",), "It was judged too early. A stem treated through the bark may take a full year; an injected one may look "
          "dead and leaf out again.", "Judge after a whole growing season, and again after the next.", PRACTICE),
    Cause(("seedlings",), "These are new plants from seed in the ground, not the old one.",
          "Pull them while they are small, when the ground is moist; keep shade or grass on the spot.", PRACTICE),
    Cause(("stump",), "It was missed: a crew reaches about 70 to 90 of 100 stems in one pass.",
          "Dye in the mix; walk the ground once more in the other direction.", PRACTICE),
)  # fmt: skip


def causes_for(seen: Sequence[str]) -> list[Cause]:
    """Causes that fit what was seen, those that fit most first; none where nothing was ticked."""
    fitting = [(len({*cause.seen} & {*seen}), cause) for cause in _TABLE]
    return [cause for fits, cause in sorted(fitting, key=lambda pair: -pair[0]) if fits]
