"""Cases for checks, built from plain values: a full label on which every check says checked, and changes to it."""

import datetime
from dataclasses import replace

import numpy as np

from stemward.checks import ALL, Case, Job, Load, Pour, run
from stemward.handbook import load
from stemward.kinds import (
    SITE_QUESTIONS,
    Container,
    Content,
    LabelFact,
    MeasureOwned,
    Patch,
    Person,
    Product,
    Registration,
    Scope,
    Shape,
    Soil,
    Spared,
    Stems,
    Target,
    Tract,
    Vessel,
    Way,
    Weight,
)

AS_OF = datetime.date(2026, 10, 10)
READ = datetime.date(2026, 10, 3)
LB_ACRE = 0.11208511561944561  # g/m2 in one lb/acre, NIST SP 811, 2008: 453.59237 g / 4046.8564224 m2


def fact(kind, value=None, standing="says", scope=None, force="must", reading="read", page="7"):
    """A label fact that a person has read."""
    return LabelFact(kind, standing, value, reading, scope or Scope(), force, str(value or ""), page, "", "owner", READ)


FULL_LABEL = (
    fact("state excluded", standing="not found"),
    fact("state only", standing="not found"),
    fact("site", "non-crop"),
    fact("site", "woods"),
    fact("site forbidden", standing="not found"),
    fact("method", "cut stump"),
    fact("method", "hack and squirt"),
    fact("method forbidden", standing="not found"),
    fact("strongest mix", 0.5),
    fact("weakest mix", 0.25),
    fact("less is forbidden", "no"),
    fact("most per year", 8 * LB_ACRE),
    fact("plant", "Acer rubrum"),
    fact("only listed plants", "no"),
    fact("only listed methods", "no"),
    fact("restricted use", "no"),
    fact("distance to water", 762.0),
    fact("distance to wells", 1524.0),
    fact("equipment", "long-sleeved shirt"),
    fact("equipment", "waterproof gloves"),
    fact("pieces of equipment", 2.0),
    fact("registration number", "QH-0001"),
    fact("signal word", "caution"),
    fact("first aid", "Rinse."),
    fact("entry interval", 14400.0),
    fact("hours without rain", 21600.0),
    fact("longest from cut to treatment", 300.0),
    fact("most per application", 6 * LB_ACRE),
    fact("most per stem", None, "no limit"),
    fact("carrier", "water"),
    fact("carrier", "oil"),
    fact("carrier forbidden", standing="not found"),
    fact("adjuvant required", standing="not found"),
    fact("mix partner forbidden", standing="not found"),
    fact("least stem", 1.0),
    fact("greatest stem", 30.0),
    fact("season forbidden", standing="not found"),
    fact("vessel forbidden", standing="not found"),
    fact("endangered species bulletin", "no"),
    fact("mixing distance to wells", 1524.0),
    fact("grazing wait", None, "no limit"),
    fact("hay wait", None, "no limit"),
)
"""An invented label, read in full, that lets the plain case be done."""

HELPER = Person("helper", ("saw",), ("long-sleeved shirt",), "no")
OWNER = Person("owner", ("mix", "apply"), ("long-sleeved shirt", "chemical-resistant gloves"), "no")


def stems_of(diameters_cm=(5.0, 10.0), x=(0.0, 5.0), y=(0.0, 0.0), species="Acer rubrum", patch="slope", at="stump"):
    """Stems as columns."""
    n = len(diameters_cm)
    words = lambda text: np.full(n, text)  # noqa: E731
    return Stems(
        np.array([f"s{i}" for i in range(n)]), words(patch), words(species), np.array(x, float), np.array(y, float),
        np.array(diameters_cm, float), np.full(n, np.nan), np.zeros(n), words(at), np.ones(n, np.int64),
        np.full(n, 5.0), words("tree"), words(""), words(""),
    )  # fmt: skip


PRODUCT = Product(
    "g4", "Example glyphosate", True, "QH-0001", "salt in water",
    (Content("glyphosate", "isopropylamine salt", 479.3),), FULL_LABEL,
    (Registration("WI", True, "owner", READ),), (Container("jug", 9_463_000, 2_000_000),), "A", "A",
)  # fmt: skip
PATCH = Patch(
    "slope", "Oak slope", ("woods",),
    tuple((q, "no") for q in SITE_QUESTIONS), Soil("loam", 0.03, "deep clay"),
)  # fmt: skip
EDGE = Spared("edge", "boundary", Shape("line", (((-80.0, -80.0), (-80.0, 80.0)),)))
TREE = Spared("oak", "tree", Shape("point", (((40.0, 0.0),),)), "Quercus alba", 40.0, None)
WAY = Way("cut stump", "g4", 0.5, "water", "squirt bottle")


def case(
    product=PRODUCT, patch=PATCH, way=WAY, stems=None, spared=(TREE, EDGE), people=(OWNER, HELPER), state="WI",
    kept=("slope",), used_g_m2=1 * LB_ACRE, planned_g_m2=1 * LB_ACRE, who="own", mixing_place=(60.0, 60.0),
    target_state="standing", partner=None, pours=(Pour("t1", "", "", True),), vessels=(Vessel("bottle", 709_765),),
    as_of=AS_OF,
    species=None, dose_ml=2.0, questions=(), densest=None, entries=(),
):  # fmt: skip
    """One job on one patch with everything in order, but for what is given."""
    book = load()
    stems = stems_of() if stems is None else stems
    latin = str(stems.species[0])
    mix_ml = np.full(len(stems), dose_ml)
    jugs = [(product, way.concentration_frac)] if product else []
    jugs += [(partner, way.partner_frac)] if partner else []
    held = [(c, share or 0) for jug, share in jugs for c in jug.contents]
    ae_g = {c.ingredient: mix_ml * share * c.strength_ae_g_l / 1000 for c, share in held}
    tract = Tract(
        "Slope", "invented", state, "UTC", who, True, (patch,), stems, tuple(spared), tuple(kept),
        tuple(jug for jug, _ in jugs), tuple(people), tuple(vessels), (MeasureOwned("cup", 14787, 236588),),
        questions=tuple(questions), mixing_place=mixing_place,
        entries=tuple(entries),
    )  # fmt: skip
    job = Job(
        "t1", Target(patch.id, latin, tuple(range(len(stems))), target_state), patch,
        species or book.species[latin], way,
        product if way.product else None, stems, mix_ml, ae_g if way.product else {}, partner,
    )  # fmt: skip
    loads = tuple(
        Load(name, used_g_m2, used_g_m2, 404.7, len(stems), 0.0, (product.id,), planned_g_m2, densest)
        for name in job.ae_g
    )
    return Case(tract, as_of, book, (job,), loads, tuple(pours))


def without(product, *kinds):
    """The product with all facts of some kinds gone."""
    return replace(product, facts=tuple(f for f in product.facts if f.kind not in kinds))


def with_facts(product, *facts):
    """The product with more facts."""
    return replace(product, facts=(*product.facts, *facts))


def changed(product, *facts):
    """The product with the facts of those kinds replaced."""
    return with_facts(without(product, *{f.kind for f in facts}), *facts)


def weights(check_id, **given):
    """The weights one check finds in a case."""
    return [f.weight for f in findings(check_id, **given)]


def findings(check_id, **given):
    """What one check finds in a case."""
    check = next(c for c in ALL if c.id == check_id)
    return list(check.run(case(**given)))


def messages(check_id, **given):
    """The messages of one check in a case."""
    return [f.message.partition(".")[2] for f in findings(check_id, **given)]


def worst(findings_):
    """The heaviest weight of some findings."""
    return max((f.weight for f in findings_), default=Weight.CHECKED)


__all__ = [
    "AS_OF", "EDGE", "FULL_LABEL", "HELPER", "LB_ACRE", "OWNER", "PATCH", "PRODUCT", "READ", "TREE", "WAY", "case",
    "changed", "fact", "findings", "messages", "run", "stems_of", "weights", "with_facts", "without", "worst",
]  # fmt: skip
