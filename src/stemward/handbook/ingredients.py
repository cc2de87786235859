"""Active ingredients by form: what they do in soil and at roots."""

from collections.abc import Mapping
from pathlib import Path

from stemward.handbook.tables import cite_value, read_table
from stemward.handbook.values import Ingredient, frozen
from stemward.kinds import Cited

Key = tuple[str, str]

DEGRADES_TO_ACID = ("triclopyr",)
OTHER_NAMES = {
    "2 4 d": "2,4-D",
    "fosamine ammonium": "fosamine",
    "metsulfuron": "metsulfuron-methyl",
    "metsulfuron methyl": "metsulfuron-methyl",
}
FORM_WORDS = (
    ("choline", "choline"),
    ("ester", "ester"),
    ("bee", "ester"),
    ("amine", "amine"),
    ("tea", "amine"),
    ("salt", "salt"),
    ("acid", "acid"),
    ("dry", "dry"),
)
"""Words that tell the form; the first match counts, so that a choline salt is not taken for any salt."""


def load_ingredients(folder: Path) -> Mapping[Key, Ingredient]:
    """All ingredients by (name, form)."""
    values: dict[Key, dict[str, Cited]] = {}
    for row in read_table(folder, "ingredients.csv"):
        values.setdefault((row["ingredient"], row["form"]), {})[row["quantity"]] = cite_value(row)
    return frozen({key: _ingredient(key, values) for key in values})


def _ingredient(key: Key, values: Mapping[Key, Mapping[str, Cited]]) -> Ingredient:
    name, form = key
    own = values[key]
    moves = values[(name, "acid")] if name in DEGRADES_TO_ACID else own
    return Ingredient(
        name=name,
        form=form,
        group=f"{own['group'].value:g}" if isinstance(own["group"].value, float) else str(own["group"].value),
        soil_active=str(own["soil_active"].value),  # type: ignore[arg-type]
        soil_cited=own["soil_active"],
        exuded=own["exuded"].value == "yes",
        exuded_cited=own["exuded"],
        translocated=own["translocated"].value == "yes",
        translocated_cited=own["translocated"],
        dt50_low_d=moves.get("dt50_low"),
        dt50_typical_d=moves.get("dt50_typical"),
        dt50_high_d=moves.get("dt50_high"),
        koc_low_ml_g=moves.get("koc_low"),
        koc_typical_ml_g=moves.get("koc_typical"),
        koc_high_ml_g=moves.get("koc_high"),
    )


def plain_name(text: str) -> str:
    """The handbook's name for an ingredient as written."""
    words = " ".join(text.casefold().replace("-", " ").replace(",", " ").split())
    return OTHER_NAMES.get(words, text.strip().casefold())


def form_class(text: str) -> str:
    """The form a description speaks of: choline, ester, amine, salt, acid, dry, or empty."""
    lower = text.casefold()
    return next((form for word, form in FORM_WORDS if word in lower), "")


def pick(ingredients: Mapping[Key, Ingredient], name: str, form_text: str) -> Ingredient | None:
    """The row for a name and a description of its form; None for an ingredient that is not on record.

    Where the description fits no row of the ingredient, the one most active in soil is taken.
    """
    plain, form = plain_name(name), form_class(form_text)
    known = [row for (row_name, _), row in ingredients.items() if row_name == plain]
    fits = [row for row in known if row.form == form]
    if form == "amine" and not fits:
        fits = [row for row in known if row.form == "salt"]
    order = ("no", "weak", "yes")
    return max(fits or known, key=lambda row: order.index(row.soil_active), default=None)
