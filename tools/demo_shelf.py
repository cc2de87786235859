"""The invented products of the example, from short tables to TOML; pages are those of the invented labels.

Used by tools/make_demo.py. A fact is (kind, says or None, what is more), where standing, scope, force and proposed
come by name.
"""

import datetime
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from stemward.gate import folder
from stemward.handbook import load
from stemward.label import KINDS
from stemward.paper.press import press

AS_OF = datetime.date(2026, 10, 3)
Fact = tuple[str, str | None, dict[str, Any]]


def says(kind: str, *words: str, **more: Any) -> list[Fact]:
    """One fact for each word."""
    return [(kind, word, more) for word in words]


def nothing(*kinds: str) -> list[Fact]:
    """Kinds that were looked for and not found."""
    return [(kind, None, {"standing": "not found"}) for kind in kinds]


def worn(*items: str, mixer: Sequence[str] = ()) -> list[Fact]:
    """Equipment for all, more for who mixes, and how many pieces the label names."""
    own = says("equipment", *items) + says("equipment", *mixer, scope='{ role = ["mixer"] }')
    return [*own, *says("pieces of equipment", str(len(own)))]


LOOKED = nothing(
    "state excluded", "state only", "site forbidden", "method forbidden", "carrier forbidden", "season forbidden",
    "mix partner forbidden", "vessel forbidden", "adjuvant forbidden",
)  # fmt: skip
"""What the owner looked for on every label and did not find."""


def scoped(method: str, strongest: str, weakest: str) -> list[Fact]:
    """The strengths of one way."""
    scope = f'{{ method = ["{method}"] }}'
    return says("strongest mix", strongest, scope=scope) + says("weakest mix", weakest, scope=scope)


PRODUCTS: tuple[dict[str, Any], ...] = (
    {
        "id": "glyphosate-4lb-wet", "name": "Example glyphosate 4 lb for wet places", "number": "QH-0001",
        "formulation": "salt in water", "edition_label": "A 2024", "edition_jug": "A 2024",
        "ingredient": ("glyphosate", "isopropylamine salt", "4 lb ae/gal"), "jug": ("2.5 gal", "70 fl oz", "95"),
        "registered": True,
        "facts": [
            *says("registration number", "QH-0001"), *says("signal word", "caution"), *says("restricted use", "no"),
            *LOOKED[:-1], *says("first aid", "If in eyes: rinse slowly with water for 15 to 20 minutes."),
            *says("entry interval", "4 h"), *says("site", "woods", "non-crop", "right-of-way", "wet", "yard"),
            *says("all sites listed", "yes"), *says("method", "cut stump", "hack and squirt", "foliar"),
            *scoped("cut stump", "100 %", "50 %"), *scoped("hack and squirt", "100 %", "25 %"),
            *scoped("foliar", "5 %", "0.75 %"), *says("less is forbidden", "no"), *says("most per year", "8 lb/acre"),
            *says("most per application", "8 lb/acre"), *says("year means", "calendar year"),
            ("most per stem", None, {"standing": "no limit"}), *says("least stem", "1/2 in"),
            *says("carrier", "water", "undiluted"), *says("adjuvant required", "non-ionic surfactant",
                                                          scope='{ method = ["foliar"] }'),
            *says("only listed plants", "no"),
            *says("plant", "Elaeagnus umbellata", "Frangula alnus", "Rosa multiflora", "Acer rubrum"),
            ("distance to water", None, {"standing": "no limit", "scope": '{ site = ["wet"] }'}),
            *says("distance to water", "25 ft", scope='{ site = ["non-crop", "woods", "yard"] }'),
            *says("distance to wells", "50 ft"), *says("mixing distance to wells", "50 ft"),
            *says("hours without rain", "6 h"), *says("longest from cut to treatment", "5 min"),
            *worn("long-sleeved shirt", "long pants", "shoes and socks", "waterproof gloves",
                  mixer=["protective eyewear"]),
            *says("glove material", "nitrile rubber", "butyl rubber", "polyvinyl chloride"),
            *says("endangered species bulletin", "no"), *says("least storage heat", "5 F"),
            *says("container", "Rinse the jug three times and recycle it; never use it again."),
            *says("disposal", "Use up the rest on a place named on this label."),
        ],
    },
    {
        "id": "triclopyr-amine-3lb", "name": "Example triclopyr amine 3 lb", "number": "QH-0002",
        "formulation": "salt in water", "edition_label": "B 2023", "edition_jug": "B 2023",
        "ingredient": ("triclopyr", "triethylamine salt", "3 lb ae/gal"), "jug": ("1 gal", "38 fl oz", "110"),
        "registered": True,
        "facts": [
            *says("registration number", "QH-0002"), *says("signal word", "danger"), *says("restricted use", "no"),
            *LOOKED, *says("first aid", "If in eyes: hold open and rinse with water for 15 to 20 minutes.",
                           "If swallowed: call Poison Help at once."),
            *says("entry interval", "48 h"), *says("site", "woods", "non-crop", "right-of-way"),
            *says("all sites listed", "yes"), *says("method", "cut stump", "hack and squirt", "foliar"),
            *says("strongest mix", "100 %", scope='{ method = ["cut stump", "hack and squirt"] }'),
            *says("weakest mix", "50 %", scope='{ method = ["cut stump", "hack and squirt"] }'),
            *scoped("foliar", "4 %", "0.5 %"), *says("less is forbidden", "no"),
            *says("most per year", "6 lb/acre", scope='{ site = ["woods"] }'),
            *says("most per year", "9 lb/acre", scope='{ site = ["non-crop", "right-of-way"] }'),
            *says("most per application", "6 lb/acre"), ("most per stem", None, {"standing": "no limit"}),
            *says("least stem", "1/2 in"), *says("carrier", "water", "undiluted"),
            *nothing("adjuvant required"), *says("only listed plants", "no"), *says("distance to water", "50 ft"),
            *says("distance to wells", "50 ft"), *says("mixing distance to wells", "50 ft"),
            *says("hours without rain", "4 h", proposed=True), *says("longest from cut to treatment", "5 min"),
            *worn("long-sleeved shirt", "long pants", "shoes and socks", "chemical-resistant gloves",
                  "protective eyewear"),
            *says("glove material", "nitrile rubber", "neoprene rubber"), *says("endangered species bulletin", "no"),
        ],
    },
    {
        "id": "triclopyr-ester-4lb", "name": "Example triclopyr ester 4 lb", "number": "QH-0004",
        "formulation": "ester", "edition_label": "D 2025", "edition_jug": "D 2025",
        "ingredient": ("triclopyr", "butoxyethyl ester", "4 lb ae/gal"), "jug": ("1 gal", "1 gal", "130"),
        "registered": True,
        "facts": [
            *says("registration number", "QH-0004"), *says("signal word", "caution"), *says("restricted use", "no"),
            *LOOKED, *says("first aid", "If on skin: take off wet clothes and rinse with plenty of water."),
            *says("entry interval", "12 h"), *says("site", "woods", "non-crop", "right-of-way", "yard"),
            *says("all sites listed", "yes"), *says("method", "cut stump", "basal bark"),
            *says("strongest mix", "30 %", scope='{ method = ["basal bark", "cut stump"], carrier = ["oil"] }'),
            *says("weakest mix", "15 %", scope='{ method = ["basal bark", "cut stump"], carrier = ["oil"] }'),
            *says("less is forbidden", "no"), *says("most per year", "8 lb/acre"),
            *says("most per application", "8 lb/acre"), ("most per stem", None, {"standing": "no limit"}),
            *says("greatest stem", "6 in", scope='{ method = ["basal bark"] }'), *says("carrier", "oil"),
            *nothing("adjuvant required"), *says("only listed plants", "no"),
            *says("plant", "Pyrus calleryana", "Ailanthus altissima", "Lonicera spp."),
            *says("distance to water", "100 ft"), *says("distance to wells", "100 ft"),
            *says("mixing distance to wells", "100 ft"), *says("hours without rain", "4 h"),
            *says("greatest heat", "85 F", force="should"),
            *worn("long-sleeved shirt", "long pants", "shoes and socks", "chemical-resistant gloves"),
            *says("glove category", "E"), *says("endangered species bulletin", "no"),
        ],
    },
    {
        "id": "imazapyr-2lb", "name": "Example imazapyr 2 lb", "number": "QH-0003",
        "formulation": "salt in water", "edition_label": "C 2022", "edition_jug": "",
        "ingredient": ("imazapyr", "isopropylamine salt", "2 lb ae/gal"), "jug": ("1 qt", "3 fl oz", ""),
        "registered": False,
        "facts": [
            *says("registration number", "QH-0003"), *says("signal word", "caution"), *says("restricted use", "no"),
            *LOOKED, *says("first aid", "If on skin: rinse with plenty of water."), *says("entry interval", "12 h"),
            *says("site", "non-crop", "right-of-way"), *says("all sites listed", "yes"),
            *says("method", "hack and squirt", "cut stump", "foliar"),
            *says("strongest mix", "100 %", scope='{ method = ["hack and squirt"] }'),
            *says("weakest mix", "6 %", scope='{ method = ["hack and squirt"] }'), *scoped("cut stump", "12 %", "2 %"),
            *scoped("foliar", "2 %", "0.5 %"), *says("less is forbidden", "no"), *says("most per year", "1.5 lb/acre"),
            *says("most per application", "1.5 lb/acre"), *says("most per stem", "8 mL"), *says("least stem", "1 in"),
            *says("carrier", "water", "undiluted"), *nothing("adjuvant required"), *says("only listed plants", "no"),
            *says("plant", "Ailanthus altissima"), *says("distance to water", "25 ft"),
            *says("distance to wells", "50 ft"), *says("mixing distance to wells", "50 ft"),
            *says("hours without rain", "1 h"), *says("longest from cut to treatment", "5 min"),
            *worn("long-sleeved shirt", "long pants", "shoes and socks", "chemical-resistant gloves"),
            *says("glove material", "nitrile rubber", "butyl rubber"), *says("endangered species bulletin", "no"),
        ],
    },
)  # fmt: skip


def toml_of(product: dict[str, Any], pages: dict[int, str], last: int) -> str:
    """A product as TOML; pages: of each fact on its label. What was not found was looked for on all pages."""
    ingredient, form, strength = product["ingredient"]
    holds, left, price = product["jug"]
    lines = ["# Invented example: no such product, label or number exists."]
    lines += [f'{key} = "{product[key]}"' for key in ("id", "name")] + ["invented = true"]
    lines += [f'{key} = "{product[key]}"' for key in ("number", "formulation", "edition_label", "edition_jug")]
    lines += ["", "[[ingredients]]", f'ingredient = "{ingredient}"', f'form = "{form}"', f'strength = "{strength}"']
    lines += ["", "[[containers]]", 'id = "jug 1"', f'holds = "{holds}"', f'left = "{left}"']
    lines += [f'price = "{price}"'] if price else []
    if product["registered"]:
        lines += ["", "[[registered]]", 'state = "WI"', "registered = true", 'looked_by = "owner"']
        lines += ["looked_on = 2026-10-03"]
    for number, (kind, word, more) in enumerate(product["facts"]):
        lines += ["", "[[facts]]", f'kind = "{kind}"']
        lines += [f'standing = "{more["standing"]}"'] if "standing" in more else [f'says = "{word}"']
        lines += [f"scope = {more['scope']}"] if "scope" in more else []
        lines += [f'force = "{more["force"]}"'] if "force" in more else []
        lines += [f'page = "{pages.get(number, f"1-{last}")}"']
        lines += ["proposed = true"] if more.get("proposed") else ['read_by = "owner"', "read_on = 2026-10-03"]
    return "\n".join(lines) + "\n"


def write_shelf(place: Path) -> None:
    """Write the products, print their labels, and write them again with the pages on which each fact stands."""
    shelf = place / "shelf"
    for old in shelf.glob("*.toml"):
        old.unlink()
    for product in PRODUCTS:
        (shelf / f"{product['id']}.toml").write_text(toml_of(product, {}, 1), encoding="utf-8")
    read = {p.id: p for p in folder.read(place, load().find_species, KINDS).tract.shelf}
    for product in PRODUCTS:
        made = press(read[product["id"]], AS_OF)
        pages = {one.fact: str(one.page) for one in made.printed}
        (shelf / f"{product['id']}.toml").write_text(toml_of(product, pages, made.pages), encoding="utf-8")
