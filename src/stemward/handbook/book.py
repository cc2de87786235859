"""What the trade knows: typed tables, each row with its source."""

import difflib
from dataclasses import dataclass
from functools import cached_property

from stemward.handbook import tables
from stemward.handbook.tables import CutRule, Evidence, Ingredient, Measure, Near, Species, Strength, Tool
from stemward.kinds import Cited

TRIALS = ("trial", "trial cited")


@dataclass(frozen=True)
class Book:
    """All tables of the handbook, read when first asked for."""

    @cached_property
    def species(self) -> dict[str, Species]:
        """Species by Latin name."""
        return tables.species()

    @cached_property
    def defaults(self) -> dict[str, Cited]:
        """Default numbers by name."""
        return tables.defaults()

    @cached_property
    def tools(self) -> dict[str, Tool]:
        """What puts herbicide on the plant, by name."""
        return tables.tools()

    @cached_property
    def measures(self) -> tuple[Measure, ...]:
        """Measuring tools assumed where none is listed."""
        return tables.measures()

    @cached_property
    def _names(self) -> dict[str, list[str]]:
        names: dict[str, list[str]] = {}
        for latin, one in self.species.items():
            both = [part.strip() for part in one.common.split(" / ")]
            for name in {_key(n) for n in (latin, one.common, *both, *one.synonyms)}:
                names.setdefault(name, []).append(latin)
        return names

    def find_species(self, text: str) -> Species | Near:
        """The species of a name, blind to case and hyphens; or near matches, never a guess."""
        wanted = _key(text)
        found = sorted(set(self._names.get(wanted, ())))
        if len(found) == 1:
            return self.species[found[0]]
        near = found or self._near(wanted)
        return Near(text, tuple((self.species[latin].common, latin) for latin in near[:4]))

    def _near(self, wanted: str) -> list[str]:
        """Names that hold the word, then names spelled alike, then names with a word spelled alike."""
        words: dict[str, list[str]] = {}
        for name in self._names:
            for word in name.split():
                words.setdefault(word, []).append(name)
        names = [name for word in wanted.split() for name in words.get(word, ())] if wanted else []
        names += difflib.get_close_matches(wanted, self._names, n=4, cutoff=0.75)
        for word in wanted.split():
            for alike in difflib.get_close_matches(word, words, n=2, cutoff=0.75):
                names += words[alike]
        return list(dict.fromkeys(latin for name in names for latin in self._names[name]))

    @cached_property
    def _ingredients(self) -> tuple[Ingredient, ...]:
        return tables.ingredients()

    def ingredient(self, name: str, form: str) -> Ingredient | None:
        """The row of an ingredient in a form, its movement by the acid to which all forms turn. None: unknown."""
        rows = [row for row in self._ingredients if row.name == name]
        if not rows:
            return None
        ester = "ester" in form
        return next((row for row in rows if ("ester" in row.form) == ester), rows[0])

    @cached_property
    def _evidence(self) -> dict[tuple[str, str], tuple[Evidence, ...]]:
        return tables.evidence()

    def evidence(self, latin: str, method: str, ingredient: str) -> tuple[Evidence, ...]:
        """Rows on this plant, way and ingredient alone, trials first."""
        rows = [row for row in self._evidence.get((latin, method), ()) if row.ingredients == (ingredient,)]
        return tuple(sorted(rows, key=lambda row: row.kind not in TRIALS))

    def evidence_tier(self, latin: str, method: str, ingredient: str, share: float | None = None) -> int:
        """How good the evidence is that this works: 3 a trial that rates it fair or better; 2 advice that does,
        or a trial's word; 1 a word only; 0 nothing, or only rows that call it poor.

        share: product by volume. Rows that name a share over twice or under half of it do not count.
        """
        rows = [row for row in self.evidence(latin, method, ingredient) if row.rating != "poor" and row.near(share)]
        rated = [row for row in rows if row.rating != "word only"]
        if any(row.kind in TRIALS for row in rated):
            return 3
        if rated or any(row.kind in TRIALS for row in rows):
            return 2
        return 1 if rows else 0

    @cached_property
    def _strengths(self) -> tuple[Strength, ...]:
        return tables.strengths()

    def strength(self, ingredient: str, form: str, method: str, strength_ae_g_l: float) -> Strength | None:
        """The strength of mix on record for an ingredient, form, way and product strength; None if there is none."""
        for row in self._strengths:
            fits = row.ingredient == ingredient and row.method == method
            if fits and row.form in form and row.least_ae_g_l <= strength_ae_g_l <= row.most_ae_g_l:
                return row
        return None

    @cached_property
    def cut_rules(self) -> tuple[CutRule, ...]:
        """Spacing of cuts, the particular rules first, the general one last."""
        return tables.cut_rules()

    def cut_rule(self, ingredient: str, strength_ae_g_l: float, concentration_frac: float) -> CutRule:
        """The spacing rule for an ingredient at a product strength and share; its kind is kept as published."""
        for rule in self.cut_rules:
            if rule.ingredient not in (ingredient, "*"):
                continue
            strong = rule.least_ae_g_l <= strength_ae_g_l <= rule.most_ae_g_l
            if strong and rule.least_frac - 1e-9 <= concentration_frac <= rule.most_frac + 1e-9:
                return rule
        return self.cut_rules[-1]

    @cached_property
    def _weak(self) -> tuple[tuple[str, str, str, float | None, Cited], ...]:
        return tables.weak()

    def weak(self, latin: str, method: str, ingredient: str, share: float | None = None) -> Cited | None:
        """A source that says an ingredient is weak on a plant this way, at this share of product if named."""
        for plant, how, active, up_to, cited in self._weak:
            named = plant == latin or plant == latin.split()[0]
            at_share = up_to is None or (share is not None and share <= up_to)
            if named and at_share and (how, active) == (method, ingredient):
                return cited
        return None

    @cached_property
    def _gear(self) -> dict[str, tuple[str, ...]]:
        return tables.gear()

    def serves_for(self, item: str) -> tuple[str, ...]:
        """What else a piece of equipment may serve as."""
        return self._gear.get(item, ())

    @cached_property
    def states(self) -> dict[str, str]:
        """State names by postal code."""
        return {code: name for code, (name, _) in tables.states().items()}

    @cached_property
    def strict_states(self) -> frozenset[str]:
        """States known to want their own approval of uses that a label does not name."""
        return frozenset(code for code, (_, strict) in tables.states().items() if strict)

    def hash(self) -> str:
        """SHA-256 over all packaged tables."""
        return tables.data_hash()


def _key(name: str) -> str:
    return " ".join(name.lower().replace("-", " ").replace("’", "'").split())
