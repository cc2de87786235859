"""From a target and a way to a job: the dose of every stem, and what it adds up to."""

import numpy as np

from stemward.checks import Job
from stemward.handbook import Book, Species
from stemward.kinds import Cited, Patch, Product, Stems, Target, Way
from stemward.plan.sums import Ledger, Reference
from stemward.units import convert

INCHES = "diameter_in"


def work_job(
    job_id: str,
    target: Target,
    patch: Patch,
    species: Species,
    way: Way,
    product: Product | None,
    stems: Stems,
    book: Book,
    sums: Ledger,
) -> Job:
    """Work out one job; `stems` are the rows of the target. Sums go into `sums` under the job's id."""
    sums.column(job_id, "id", stems.id)
    sums.column(job_id, "x_m", stems.x_m)
    sums.column(job_id, "y_m", stems.y_m)
    sums.column(job_id, "diameter_cm", stems.diameter_cm)
    count = sums.column(job_id, "stems", stems.stems)
    if product is None or way.concentration_frac is None:
        nothing = np.zeros(len(stems))
        return Job(job_id, target, patch, species, way, None, stems, nothing, {})
    each = _DOSE[way.how](job_id, way, product, stems, book, sums)
    row_ml = sums.work(f"{job_id}.row_ml", "times", "ml", each=each, count=count)
    sums.work(f"{job_id}.need_ml", "total", "ml", each=f"step:{job_id}.row_ml")
    for name, factor in (("low", "spread_low"), ("high", "spread_high")):
        spread = sums.cite(book.defaults["spread_factor"])
        sums.work(f"{job_id}.need_{name}_ml", factor, "ml", middle=f"step:{job_id}.need_ml", factor=spread)
    return Job(
        job_id,
        target,
        patch,
        species,
        way,
        product,
        stems,
        np.asarray(row_ml),
        _acid(job_id, way, product, sums),
    )


def _acid(job_id: str, way: Way, product: Product, sums: Ledger) -> dict[str, np.ndarray]:
    share = sums.number(job_id, "concentration_frac", way.concentration_frac or 0.0)
    by_ingredient = {}
    for content in product.contents:
        name = content.ingredient
        strength = sums.number(job_id, f"strength_ae_g_l.{name}", content.strength_ae_g_l)
        sums.work(
            f"{job_id}.mix_ae_g_l.{name}",
            "mix_ae_g_l",
            "g_l",
            concentration_frac=share,
            strength_ae_g_l=strength,
        )
        by_ingredient[name] = sums.work(
            f"{job_id}.ae_g.{name}",
            "ae_g",
            "g",
            mix_ml=f"step:{job_id}.row_ml",
            ae_g_l=f"step:{job_id}.mix_ae_g_l.{name}",
        )
        sums.work(f"{job_id}.total_ae_g.{name}", "total", "g", each=f"step:{job_id}.ae_g.{name}")
    return by_ingredient


def _cut_stump(job_id: str, way: Way, product: Product, stems: Stems, book: Book, sums: Ledger) -> Reference:
    del product, stems
    tool = book.tools[way.tool]
    if way.ring_cm is None:
        ring = sums.cite(book.defaults["ring_cm"])
    else:
        ring = sums.number(job_id, "ring_cm", way.ring_cm)
    sums.work(
        f"{job_id}.wet_face_cm2",
        "wet_face_cm2",
        "cm2",
        diameter_cm=f"column:{job_id}/diameter_cm",
        whole_up_to_cm=sums.cite(book.defaults["whole_up_to_cm"]),
        ring_cm=ring,
    )
    small = sums.cite(book.defaults["small_stem_cm"])
    sums.work(f"{job_id}.small_face_cm2", "face_area_cm2", "cm2", diameter_cm=small)
    sums.work(
        f"{job_id}.each_ml",
        "wetted_ml",
        "ml",
        area_cm2=f"step:{job_id}.wet_face_cm2",
        small_area_cm2=f"step:{job_id}.small_face_cm2",
        depth_ml_cm2=sums.cite(tool.depth_ml_cm2),
        waste_frac=sums.cite(tool.waste_frac),
        use_rate=sums.cite(book.defaults["use_rate"]),
        smallest_ml=sums.cite(tool.smallest_ml),
    )
    return f"step:{job_id}.each_ml"


def _hack(job_id: str, way: Way, product: Product, stems: Stems, book: Book, sums: Ledger) -> Reference:
    main = max(product.contents, key=lambda content: content.strength_ae_g_l)
    rule = book.cut_rule(main.ingredient, main.strength_ae_g_l, way.concentration_frac or 0.0)
    # A rule in inches is applied to inches where they were typed: 2 in written as 5.1 cm would gain a cut.
    typed = ~np.isnan(stems.diameter_in)
    inches = np.where(typed, stems.diameter_in, stems.diameter_cm / convert(1.0, "in", "cm"))
    half = np.where(typed, 0.0, stems.half_digit_cm / convert(1.0, "in", "cm"))
    spacing = sums.cite(
        Cited(
            f"{rule.id}.in",
            rule.spacing_cm / convert(1.0, "in", "cm"),
            "in",
            rule.source,
            rule.place,
            rule.grade,
        )
    )
    diameter = sums.column(job_id, "diameter_for_cuts_in", inches)
    least = sums.cite(Cited(f"{rule.id}.least", rule.least, "", rule.source, rule.place, rule.grade))
    if rule.rule == "per diameter":
        sums.work(
            f"{job_id}.cuts",
            "cuts_by_diameter",
            "",
            diameter=diameter,
            per_cut=spacing,
            least=least,
            half_digit=sums.column(job_id, "half_digit_in", half),
        )
    else:
        sums.work(f"{job_id}.cuts", "cuts_by_centres", "", diameter=diameter, centres=spacing)
    sums.work(
        f"{job_id}.each_ml",
        "cut_dose_ml",
        "ml",
        cuts=f"step:{job_id}.cuts",
        ml_per_cut=sums.cite(Cited(f"{rule.id}.ml", rule.ml_per_cut, "ml", rule.source, rule.place, rule.grade)),
    )
    return f"step:{job_id}.each_ml"


_DOSE = {"cut stump": _cut_stump, "hack and squirt": _hack}
