"""What to know of a jug before anything is planned with it: old number, garden strength, two ingredients, soil."""

import re
from dataclasses import dataclass

from stemward.handbook import Book
from stemward.kinds import HERBICIDE_METHODS, Product

NUMBER = re.compile(r"[0-9A-Z]{1,7}-[0-9A-Z]{1,7}(-[0-9A-Z]{1,7})?")
"""Company, product, and for resold products a distributor's number (40 CFR 156.10(e))."""
LASTING_D = 60.0
"""Half-life from which an ingredient that acts through soil is said to last: engineering guess, two months."""


@dataclass(frozen=True, slots=True)
class Noted:
    """One thing to know of a jug: message id of room `say` and its values."""

    message: str
    values: tuple[tuple[str, str | float], ...] = ()


def shelf_check(product: Product, book: Book) -> tuple[Noted, ...]:
    """Everything that is noticed of a product on the shelf, without a tract."""
    found = []
    if not product.number:
        found.append(Noted("number_missing"))
    elif not NUMBER.fullmatch(product.number):
        found.append(Noted("number_odd", (("number", product.number),)))
    if product.edition_jug and product.edition_label and product.edition_jug != product.edition_label:
        found.append(Noted("edition", (("jug", product.edition_jug), ("label", product.edition_label))))
    if len(product.contents) > 1:
        found.append(Noted("two_ingredients", (("names", ", ".join(c.ingredient for c in product.contents)),)))
    for content in product.contents:
        known = book.ingredient(content.ingredient, content.form)
        if known is None:
            found.append(Noted("unknown", (("name", content.ingredient),)))
            continue
        strengths = [
            book.strength(content.ingredient, content.form, how, content.strength_ae_g_l) for how in HERBICIDE_METHODS
        ]
        if not product.formulation.startswith("ready") and not any(s and s.usual_frac < 1 for s in strengths):
            values = (("name", content.ingredient), ("strength_g_l", content.strength_ae_g_l))
            found.append(Noted("weak", values))
        lasts = known.dt50_high_d
        if known.soil_active != "no":
            days = float(lasts.value) if lasts is not None else 0.0
            found.append(
                Noted("lasts" if days > LASTING_D else "soil_active", (("name", content.ingredient), ("days", days)))
            )
    if not product.containers:
        found.append(Noted("no_jug"))
    elif any(c.left_ul is None for c in product.containers):
        found.append(Noted("left_unknown"))
    return tuple(found)
