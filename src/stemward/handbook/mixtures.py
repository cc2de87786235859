"""Mixtures of two products that are on record."""

from dataclasses import dataclass
from pathlib import Path

from stemward.handbook.ingredients import form_class, plain_name
from stemward.handbook.tables import cite, read_table
from stemward.kinds import Cited


@dataclass(frozen=True, slots=True)
class Mixture:
    """Two ingredients in one mix for one method. Strengths in g acid equivalent per litre of finished mix."""

    id: str
    ingredient: str
    form: str
    partner: str
    partner_form: str
    method: str
    carrier: str
    ae_g_l: float
    partner_ae_g_l: float
    cited: Cited

    def fits(self, ingredient: str, form_text: str, partner: str, partner_form_text: str) -> bool:
        """True if two products hold these ingredients in these forms. Amines count as salts where a row says salt."""
        return _is(self.ingredient, self.form, ingredient, form_text) and _is(
            self.partner, self.partner_form, partner, partner_form_text
        )


def _is(name: str, form: str, ingredient: str, form_text: str) -> bool:
    kind = form_class(form_text)
    return plain_name(ingredient) == name and (kind == form or (form == "salt" and kind == "amine"))


def load_mixtures(folder: Path) -> tuple[Mixture, ...]:
    """All mixtures, in the table's order."""
    return tuple(
        Mixture(
            row["id"], row["ingredient"], row["form"], row["partner"], row["partner_form"], row["method"],
            row["carrier"], float(row["ae_g_l"]), float(row["partner_ae_g_l"]),
            cite(row, row["id"], float(row["ae_g_l"]), "g_l"),
        )
        for row in read_table(folder, "mixtures.csv")
    )  # fmt: skip
