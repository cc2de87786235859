"""The handbook: the trade's tables, each read when first asked for."""

import hashlib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache, cached_property
from importlib.resources import files
from pathlib import Path

from stemward.handbook import evidence as ev
from stemward.handbook import field, plants, rules
from stemward.handbook import ingredients as ing
from stemward.handbook.mixtures import Mixture, load_mixtures
from stemward.handbook.record_rules import RecordRule, load_record_rules
from stemward.handbook.revisits import FirstLook, first_look, load_first_looks
from stemward.handbook.tables import cite, cite_value, read_table
from stemward.handbook.trials import Trial, load_trials
from stemward.handbook.values import (
    Caution,
    CutRule,
    Evidence,
    Gear,
    Ingredient,
    KitItem,
    Near,
    Species,
    StateRule,
    Strength,
    Tool,
    WiltMonths,
    frozen,
)
from stemward.handbook.weather import WeatherRule, load_weather_rules
from stemward.kinds import Cited, MeasureOwned


@dataclass(frozen=True)
class Book:
    """Everything the packaged tables in `folder` say. Raises HandbookError when a table cannot be used."""

    folder: Path

    @cached_property
    def species(self) -> Mapping[str, Species]:
        """Plants by Latin name."""
        return plants.load_species(self.folder)

    @cached_property
    def _names(self) -> Mapping[str, tuple[Species, ...]]:
        return plants.name_index(self.species)

    def find_species(self, text: str) -> Species | Near:
        """The plant of a common name, Latin name or synonym, whatever its case and hyphens.

        A name that is none, or that several plants share, gives Near with what may be meant.
        """
        return plants.find(text, self._names)

    @cached_property
    def ingredients(self) -> Mapping[tuple[str, str], Ingredient]:
        """Active ingredients by (name, form); forms are acid, salt, amine, choline, ester, dry, any."""
        return ing.load_ingredients(self.folder)

    def ingredient(self, name: str, form_text: str) -> Ingredient | None:
        """The ingredient in a form as described, such as "triethylamine salt"; None if not on record."""
        return ing.pick(self.ingredients, name, form_text)

    @cached_property
    def evidence_rows(self) -> tuple[Evidence, ...]:
        """Every row of evidence, trials first; those of makers are not in the handbook."""
        return ev.load_evidence(self.folder)

    @cached_property
    def _evidence(self) -> Mapping[str, tuple[Evidence, ...]]:
        return ev.by_plant(self.evidence_rows, self.folder)

    def evidence(self, latin: str, method: str, ingredient: str, form: str = "") -> tuple[Evidence, ...]:
        """Rows on this plant, way and ingredient alone, trials first; form as in `ingredients` or empty."""
        name = ing.plain_name(ingredient)
        return tuple(r for r in self._evidence.get(latin, ()) if ev.speaks_of(r, method, name, form))

    def rows_of(self, latin: str) -> tuple[Evidence, ...]:
        """All rows on a plant, trials first."""
        return self._evidence.get(latin, ())

    def evidence_without(self, latin: str, method: str) -> tuple[Evidence, ...]:
        """Rows on this plant and way without herbicide, trials first."""
        return tuple(r for r in self._evidence.get(latin, ()) if r.method == method and not r.ingredients)

    def evidence_together(self, latin: str, method: str, ingredients: tuple[str, ...]) -> tuple[Evidence, ...]:
        """Rows on this plant and way with exactly these ingredients in one mix, trials first."""
        names = {ing.plain_name(name) for name in ingredients}
        return tuple(
            r
            for r in self._evidence.get(latin, ())
            if r.method == method and set(r.ingredients) == names and r.joined == "with"
        )

    @cached_property
    def mixtures(self) -> tuple[Mixture, ...]:
        """Mixtures of two ingredients that are on record."""
        return load_mixtures(self.folder)

    def evidence_tier(self, latin: str, method: str, ingredient: str, form: str = "") -> int:
        """What speaks for it: 3 trials, 2 extension or handbook advice, 1 word only, 0 no trial known.

        Rows that found it poor, or of which strength or ingredient is unclear, do not speak for it.
        """
        return ev.tier(self.evidence(latin, method, ingredient, form))

    @cached_property
    def _weak(self) -> tuple[dict[str, str], ...]:
        return ev.load_weak(self.folder)

    def weak(self, latin: str, method: str, ingredient: str, form: str = "") -> Cited | None:
        """Who says the ingredient is weak on the plant this way: a listed pair, or trials that all failed."""
        name = ing.plain_name(ingredient)
        listed = ev.weak_pair(self._weak, latin, method, name, form)
        return listed or ev.failed(self.evidence(latin, method, ingredient, form))

    @cached_property
    def defaults(self) -> Mapping[str, Cited]:
        """Values used where neither label nor the person says otherwise, by name with unit."""
        return frozen(
            {row["id"]: cite_value(row, f"default.{row['id']}") for row in read_table(self.folder, "defaults.csv")}
        )

    @cached_property
    def _ranges(self) -> Mapping[str, tuple[float, float]]:
        rows = read_table(self.folder, "defaults.csv")
        return {r["id"]: (float(r["low"]), float(r["high"])) for r in rows if r["low"] and r["high"]}

    def default_range(self, name: str) -> tuple[float, float]:
        """Least and most of a default, as far as anyone knows; KeyError where no range is on record."""
        return self._ranges[name]

    @cached_property
    def weather_rules(self) -> tuple[WeatherRule, ...]:
        """Rules of the hours: which weather shuts which work."""
        return load_weather_rules(self.folder)

    @cached_property
    def cut_rules(self) -> tuple[CutRule, ...]:
        """Rules of how many cuts a stem takes, narrow ones first."""
        return tuple(rule for _, rule in self._cut_rules)

    @cached_property
    def _cut_rules(self) -> tuple[tuple[rules.Range, CutRule], ...]:
        return rules.load_cut_rules(self.folder)

    def cut_rule(self, ingredient: str, strength_ae_g_l: float, concentration_frac: float) -> CutRule:
        """The first rule whose ingredient, product strength (g ae/L) and concentration fit."""
        return rules.pick_cut_rule(self._cut_rules, ing.plain_name(ingredient), strength_ae_g_l, concentration_frac)

    @cached_property
    def _strengths(self) -> tuple[tuple[rules.Range, str, str, Strength], ...]:
        return rules.load_strengths(self.folder)

    def strength(self, ingredient: str, form_text: str, method: str, strength_ae_g_l: float) -> Strength | None:
        """The strength of mix on record for this form and method, None without one."""
        return rules.pick_strength(
            self._strengths, ing.plain_name(ingredient), ing.form_class(form_text), method, strength_ae_g_l
        )

    @cached_property
    def tools(self) -> Mapping[str, Tool]:
        """Tools by name, the usual one first."""
        return rules.load_tools(self.folder)

    @cached_property
    def measures(self) -> tuple[MeasureOwned, ...]:
        """Measuring tools assumed where a person lists none, smallest first."""
        return tuple(
            MeasureOwned(row["id"], int(row["mark_ul"]), int(row["capacity_ul"]), row["shown"])
            for row in read_table(self.folder, "measures.csv")
        )

    @cached_property
    def cautions(self) -> tuple[Caution, ...]:
        """The usual cautions by stage, as facts."""
        return rules.load_cautions(self.folder)

    @cached_property
    def gear(self) -> Mapping[str, Gear]:
        """Protective equipment by the words labels use."""
        return rules.load_gear(self.folder)

    @cached_property
    def kit(self) -> tuple[KitItem, ...]:
        """What to take along, by method and task."""
        rows = read_table(self.folder, "kit.csv")
        return tuple(KitItem(row["for"], row["item"], cite(row, row["id"], row["item"])) for row in rows)

    @property
    def usual_gear(self) -> tuple[str, ...]:
        """The usual least for a strong mix: common practice, no source."""
        return tuple(item.name for item in self.gear.values() if item.usual)

    def serves_for(self, own: str) -> tuple[str, ...]:
        """Items that someone who wears `own` has as well; what is only remembered does not count."""
        item = self.gear.get(own)
        return item.serves_for if item is not None else ()

    @cached_property
    def gloves(self) -> Mapping[tuple[str, str], Cited]:
        """How long a glove material holds, by (category A to H, material): high, moderate, slight or none."""
        return frozen(
            {
                (row["category"], row["material"]): cite(
                    row, f"gloves.{row['category']}.{row['material']}", row["resistance"]
                )
                for row in read_table(self.folder, "gloves.csv")
            }
        )

    @cached_property
    def wilt(self) -> Mapping[str, WiltMonths]:
        """Oak-wilt months by state; a state that is not here has not been read: ask."""
        return rules.load_wilt(self.folder)

    @cached_property
    def states(self) -> Mapping[str, str]:
        """Names of the states and the District of Columbia by postal code."""
        return frozen({row["code"]: row["name"] for row in read_table(self.folder, "states.csv")})

    @cached_property
    def strict_states(self) -> Mapping[str, Cited]:
        """States known to ask more than the federal rule for uses a label does not name, each dated."""
        return frozen(
            {
                row["state"]: cite(row, f"strict.{row['state']}.{row['as_of']}", row["what"])
                for row in read_table(self.folder, "strict_states.csv")
            }
        )

    def state_rules(self, state: str, topic: str) -> tuple[StateRule, ...]:
        """Dated rules of a state on a topic; none on record means: find out."""
        return tuple(r for r in self._state_rules if (r.state, r.topic) == (state, topic))

    @cached_property
    def _state_rules(self) -> tuple[StateRule, ...]:
        return field.load_state_rules(self.folder)

    @cached_property
    def record_rules(self) -> tuple[RecordRule, ...]:
        """Rule sets for application records: federal ones first, then states."""
        return load_record_rules(self.folder)

    @cached_property
    def _trials(self) -> tuple[Trial, ...]:
        return load_trials(self.folder)

    def trials(self, latin: str, method: str, ingredient: str, form: str = "") -> tuple[Trial, ...]:
        """Trials of a plant, way and ingredient that say how many stems died; form as in `ingredients` or empty."""
        name = ing.plain_name(ingredient) if ingredient else ""
        return tuple(
            t
            for t in self._trials
            if (t.plant, t.method, t.ingredient) == (latin, method, name)
            and t.kill
            and t.low_frac is not None
            and (not t.form or not form or t.form == form or {t.form, form} <= {"salt", "amine"})
        )

    @cached_property
    def paces(self) -> tuple[field.Pace, ...]:
        """Stems an hour by method and size."""
        return field.load_paces(self.folder)

    @cached_property
    def _first_looks(self) -> tuple[FirstLook, ...]:
        return load_first_looks(self.folder)

    def first_look(self, method: str, ingredients: tuple[str, ...] = ()) -> FirstLook | None:
        """How soon a first look tells something of a method; None where nothing is on record."""
        return first_look(self._first_looks, method, ingredients)

    @cached_property
    def _seasons(self) -> tuple[field.Season, ...]:
        return field.load_seasons(self.folder)

    def seasons(self, latin: str, method: str) -> tuple[field.Season, ...]:
        """Best and poor parts of the year for a plant and method; a row that names the plant comes before others."""
        return field.season_of(self._seasons, latin, method)

    @cached_property
    def _hazards(self) -> tuple[field.Hazard, ...]:
        return field.load_hazards(self.folder)

    def hazards(self, latin: str) -> tuple[field.Hazard, ...]:
        """What a plant does to people, stock and ground."""
        return tuple(h for h in self._hazards if latin in h.plants)

    @cached_property
    def soils(self) -> tuple[field.SoilClass, ...]:
        """Averages of texture classes; most are from memory and never a limit."""
        return field.load_soils(self.folder)

    def hash(self) -> str:
        """sha256 over names and bytes of the packaged tables in sorted order, as hexadecimal digits."""
        return self._hash

    @cached_property
    def _hash(self) -> str:
        digest = hashlib.sha256()
        for path in sorted(self.folder.glob("*.csv")):
            content = path.read_bytes()
            digest.update(f"{path.name}\0{len(content)}\0".encode())
            digest.update(content)
        return digest.hexdigest()


@cache
def load() -> Book:
    """The packaged handbook, read once a process."""
    return Book(Path(str(files("stemward.handbook") / "data")))
