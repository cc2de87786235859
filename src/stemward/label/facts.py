"""The closed list of things a label can say, each with its type, unit and what its negatives mean.

A fact that is not in this list cannot be entered; a new kind is added here and nowhere else.
The parts of a label follow 40 CFR 156.10 and EPA's Label Review Manual (chapter titles as of 2021).
"""

from dataclasses import dataclass
from typing import Literal

from stemward.kinds import CARRIERS, METHODS, PLACES

Value = Literal["number", "choice", "text", "yes-no"]
Sense = Literal["greatest", "least", "named", "forbidden", "required", "switch", "text"]

LABEL_METHODS = METHODS[2:]
"""Ways a label can name: all but leaving a plant, and cutting it and no more."""

EQUIPMENT = (
    "long-sleeved shirt",
    "long pants",
    "shoes and socks",
    "boots",
    "coveralls",
    "waterproof gloves",
    "chemical-resistant gloves",
    "protective eyewear",
    "goggles",
    "face shield",
    "chemical-resistant apron",
    "chemical-resistant headgear",
    "chemical-resistant footwear",
    "respirator",
)
GLOVE_MATERIALS = (
    "barrier laminate",
    "butyl rubber",
    "nitrile rubber",
    "neoprene rubber",
    "natural rubber",
    "polyethylene",
    "polyvinyl chloride",
    "fluoroelastomer",
)
GLOVE_CATEGORIES = tuple("ABCDEFGH")
VESSELS = ("unlined steel", "galvanised steel", "aluminium", "plastic", "glass", "stainless steel")
STAGES = ("applicator", "mixer", "early entry", "saw")


@dataclass(frozen=True, slots=True)
class FactKind:
    """One kind of label fact.

    value, dimension, unit, choices: what is stored; numbers are metric, in `unit`.
    sense: how a value limits (greatest, least), names, forbids, requires or switches.
    many: all facts that cover the treatment count together (lists); otherwise the narrowest one does.
    typed: the figure is typed by a person before a proposed one is shown, because a wrong one can hurt.
    not_found, no_limit, not_apply: what each of the three negatives means, "" where it cannot be entered.
    """

    name: str
    sense: Sense
    value: Value
    dimension: str = ""
    unit: str = ""
    choices: tuple[str, ...] = ()
    many: bool = False
    typed: bool = False
    not_found: str = "looked for, not on the label"
    no_limit: str = ""
    not_apply: str = ""


def _number(name: str, sense: Sense, dimension: str, unit: str, typed: bool = False, **more: str) -> FactKind:
    return FactKind(name, sense, "number", dimension, unit, typed=typed, **more)  # type: ignore[arg-type]


def _list(name: str, sense: Sense, choices: tuple[str, ...], **more: str) -> FactKind:
    return FactKind(name, sense, "choice" if choices else "text", choices=choices, many=True, **more)  # type: ignore[arg-type]


def _switch(name: str) -> FactKind:
    return FactKind(name, "switch", "yes-no")


_UNLIMITED = "the label says in words that there is no such limit"

_KINDS = (
    # identity and class
    FactKind("registration number", "text", "text"),
    FactKind("establishment number", "text", "text"),
    FactKind("label edition", "text", "text"),
    FactKind("signal word", "text", "choice", choices=("none", "caution", "warning", "danger")),
    _switch("restricted use"),
    _list("ingredient percent", "text", ()),
    FactKind("acid per volume", "text", "number", "strength", "g_l", many=True),
    FactKind("active per volume", "text", "number", "strength", "g_l", many=True),
    # states and places
    _list("state only", "named", ()),
    _list("state excluded", "forbidden", ()),
    _list("site", "named", PLACES),
    _list("site forbidden", "forbidden", PLACES),
    _switch("all sites listed"),
    # ways and plants
    _list("method", "named", LABEL_METHODS),
    _list("method forbidden", "forbidden", LABEL_METHODS),
    _switch("only listed methods"),
    _list("plant", "named", ()),
    _switch("only listed plants"),
    _switch("less is forbidden"),
    _number("least stem", "least", "length", "cm", no_limit=_UNLIMITED),
    _number("greatest stem", "greatest", "length", "cm", no_limit=_UNLIMITED),
    # strength, dose, maxima
    _list("carrier", "named", CARRIERS),
    _list("carrier forbidden", "forbidden", CARRIERS),
    _number("strongest mix", "greatest", "fraction", "frac", True, no_limit="may be used undiluted"),
    _number("weakest mix", "least", "fraction", "frac", no_limit=_UNLIMITED),
    _number("most per stem", "greatest", "volume", "ml", True, no_limit=_UNLIMITED),
    _number("most per application", "greatest", "rate", "g_m2", True, no_limit=_UNLIMITED),
    _number("most per year", "greatest", "rate", "g_m2", True, no_limit=_UNLIMITED),
    FactKind("year means", "text", "choice", choices=("calendar year", "12 months", "season")),
    _number("most applications", "greatest", "count", "", no_limit=_UNLIMITED),
    _number("shortest interval", "least", "time", "s", no_limit=_UNLIMITED),
    _number("cut widths apart", "greatest", "length", "cm"),
    # partners and vessels
    _list("adjuvant required", "required", ()),
    _list("adjuvant forbidden", "forbidden", ()),
    _list("mix partner", "named", ()),
    _list("mix partner forbidden", "forbidden", ()),
    _list("vessel forbidden", "forbidden", VESSELS),
    # time and weather
    _number("longest from cut to treatment", "greatest", "time", "s", no_limit=_UNLIMITED),
    _number("hours without rain", "least", "time", "s", no_limit=_UNLIMITED),
    _number("strongest wind", "greatest", "speed", "m_s", no_limit=_UNLIMITED),
    _number("weakest wind", "least", "speed", "m_s", no_limit=_UNLIMITED),
    _number("greatest heat", "greatest", "temperature", "c", no_limit=_UNLIMITED),
    _number("least heat", "least", "temperature", "c", no_limit=_UNLIMITED),
    _switch("no inversion"),
    _list("season forbidden", "forbidden", ()),
    # water and neighbours
    _number("distance to water", "least", "length", "cm", True, no_limit="may be used to the water's edge"),
    _number("distance to wells", "least", "length", "cm", True, no_limit=_UNLIMITED),
    _number("mixing distance to wells", "least", "length", "cm", True, no_limit=_UNLIMITED),
    _switch("no shared roots"),
    _number("distance to wanted roots", "least", "length", "cm", no_limit=_UNLIMITED),
    # people
    _list("equipment", "required", EQUIPMENT),
    # How many pieces the label lists, counted on the page: a piece that is not entered is then missed.
    _number("pieces of equipment", "text", "count", ""),
    _list("glove material", "named", GLOVE_MATERIALS),
    _list("glove category", "named", GLOVE_CATEGORIES),
    _number("entry interval", "least", "time", "s", not_apply="not an agricultural use"),
    _switch("keep out until dry"),
    # animals
    _number("grazing wait", "least", "time", "s", no_limit=_UNLIMITED, not_apply="no animals here"),
    _number("hay wait", "least", "time", "s", no_limit=_UNLIMITED, not_apply="no hay here"),
    # storage, aid, surroundings
    _number("least storage heat", "least", "temperature", "c"),
    _number("mix keeps", "greatest", "time", "s"),
    FactKind("container", "text", "text", many=True),
    FactKind("disposal", "text", "text", many=True),
    FactKind("first aid", "text", "text", many=True),
    FactKind("environmental hazard", "text", "text", many=True),
    _switch("endangered species bulletin"),
)

KINDS: dict[str, FactKind] = {kind.name: kind for kind in _KINDS}
