"""From a target and a way to a job: the dose of every stem, and what it adds up to."""

from collections.abc import Callable

import numpy as np

from stemward.checks import Job
from stemward.handbook import Book, Species
from stemward.kinds import Cited, Patch, Product, Stems, Target, Way
from stemward.plan.learned import HIGH, MIDDLE, Learned, cited
from stemward.plan.sums import Ledger, Reference
from stemward.units import convert

RECKONED = "reckoned_row_ml"
"""Name of the sum of what the rows would take if nothing had been learned."""


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
    partner: Product | None = None,
    use: Learned | None = None,
) -> Job:
    """Work out one job; `stems` are the rows of the target. Sums go into `sums` under the job's id.

    use: what past batches teach about how much the method takes here; what each stem is to get stays as reckoned.
    """
    sums.column(job_id, "id", stems.id)
    sums.column(job_id, "x_m", stems.x_m)
    sums.column(job_id, "y_m", stems.y_m)
    sums.column(job_id, "diameter_cm", stems.diameter_cm)
    count = sums.column(job_id, "stems", stems.stems)
    if product is None or way.concentration_frac is None:
        nothing = np.zeros(len(stems))
        return Job(job_id, target, patch, species, way, None, stems, nothing, {})
    each = DOSE[way.how](job_id, way, product, stems, book, sums)
    spread = sums.cite(book.defaults["spread_factor"])
    if use is None:
        row_ml = sums.work(f"{job_id}.row_ml", "times", "ml", each=each, count=count)
    else:
        sums.work(f"{job_id}.{RECKONED}", "times", "ml", each=each, count=count)
        factor = sums.cite(cited(f"learned.use.{way.how}", use.factor(MIDDLE), use))
        row_ml = sums.work(f"{job_id}.row_ml", "times", "ml", each=f"step:{job_id}.{RECKONED}", count=factor)
        spread = sums.cite(cited(f"learned.spread.{way.how}", use.factor(HIGH) / use.factor(MIDDLE), use))
    sums.work(f"{job_id}.need_ml", "total", "ml", each=f"step:{job_id}.row_ml")
    for name, formula in (("low", "spread_low"), ("high", "spread_high")):
        sums.work(f"{job_id}.need_{name}_ml", formula, "ml", middle=f"step:{job_id}.need_ml", factor=spread)
    acid = _acid(job_id, way, product, partner, sums)
    return Job(job_id, target, patch, species, way, product, stems, np.asarray(row_ml), acid, partner)


def _acid(job_id: str, way: Way, product: Product, partner: Product | None, sums: Ledger) -> dict[str, np.ndarray]:
    """Acid equivalent by ingredient, whichever of the two products it comes from."""
    shares = [(product, "concentration_frac", way.concentration_frac or 0.0)]
    if partner is not None:
        shares.append((partner, "partner_frac", way.partner_frac or 0.0))
    found: dict[str, list[Reference]] = {}
    for number, (jug, name, share) in enumerate(shares):
        reference = sums.number(job_id, name, share)
        for content in jug.contents:
            label = content.ingredient if number == 0 else f"{content.ingredient}.partner"
            strength = sums.number(job_id, f"strength_ae_g_l.{label}", content.strength_ae_g_l)
            step = f"{job_id}.mix_ae_g_l.{label}"
            sums.work(step, "mix_ae_g_l", "g_l", concentration_frac=reference, strength_ae_g_l=strength)
            found.setdefault(content.ingredient, []).append(f"step:{step}")
    by_ingredient = {}
    for name, steps in found.items():
        together = steps[0]
        if len(steps) > 1:
            sums.work(f"{job_id}.mix_ae_g_l.{name}.both", "total", "g_l", each="+".join(steps))
            together = f"step:{job_id}.mix_ae_g_l.{name}.both"
        by_ingredient[name] = sums.work(
            f"{job_id}.ae_g.{name}", "ae_g", "g", mix_ml=f"step:{job_id}.row_ml", ae_g_l=together
        )
        sums.work(f"{job_id}.total_ae_g.{name}", "total", "g", each=f"step:{job_id}.ae_g.{name}")
    return by_ingredient


def _ring(job_id: str, way: Way, book: Book, sums: Ledger) -> Reference:
    if way.ring_cm is None:
        return sums.cite(book.defaults["ring_cm"])
    return sums.number(job_id, "ring_cm", way.ring_cm)


def _cut_stump(job_id: str, way: Way, product: Product, stems: Stems, book: Book, sums: Ledger) -> Reference:
    """The face, or the ring; with oil the bark down to the ground as well, at the depth that bark takes."""
    del product
    tool = book.tools[way.tool]
    diameter = f"column:{job_id}/diameter_cm"
    whole = sums.cite(book.defaults["whole_up_to_cm"])
    ring = _ring(job_id, way, book, sums)
    sums.work(f"{job_id}.wet_face_cm2", "wet_face_cm2", "cm2", diameter_cm=diameter, whole_up_to_cm=whole, ring_cm=ring)
    small = sums.cite(book.defaults["small_stem_cm"])
    sums.work(f"{job_id}.small_face_cm2", "face_area_cm2", "cm2", diameter_cm=small)
    face = _wetted(job_id, "face_ml" if way.carrier == "oil" else "each_ml", "wet_face_cm2", "small_face_cm2",
                   sums.cite(tool.depth_ml_cm2), way, book, sums)  # fmt: skip
    if way.carrier != "oil":
        return face
    height = sums.cite(book.defaults["stump_height_cm"])
    sums.work(f"{job_id}.bark_cm2", "bark_cm2", "cm2", diameter_cm=diameter, height_cm=height)
    sums.work(f"{job_id}.small_bark_cm2", "bark_cm2", "cm2", diameter_cm=small, height_cm=height)
    bark = _wetted(job_id, "bark_ml", "bark_cm2", "small_bark_cm2", _bark_depth(job_id, way, book, sums), way, book,
                   sums)  # fmt: skip
    del stems
    sums.work(f"{job_id}.each_ml", "plus", "ml", one=face, other=bark)
    return f"step:{job_id}.each_ml"


def _basal(job_id: str, way: Way, product: Product, stems: Stems, book: Book, sums: Ledger) -> Reference:
    """The band of bark all round, wet and not running."""
    del product, stems
    height = sums.cite(book.defaults["band_height_cm"])
    diameter, small = f"column:{job_id}/diameter_cm", sums.cite(book.defaults["small_stem_cm"])
    sums.work(f"{job_id}.band_cm2", "bark_cm2", "cm2", diameter_cm=diameter, height_cm=height)
    sums.work(f"{job_id}.small_band_cm2", "bark_cm2", "cm2", diameter_cm=small, height_cm=height)
    depth = _bark_depth(job_id, way, book, sums)
    return _wetted(job_id, "each_ml", "band_cm2", "small_band_cm2", depth, way, book, sums)


def _bark_depth(job_id: str, way: Way, book: Book, sums: Ledger) -> Reference:
    depths = book.tools[way.tool].depths
    sums.work(
        f"{job_id}.bark_depth_ml_cm2", "bark_depth_ml_cm2", "ml_cm2",
        diameter_cm=f"column:{job_id}/diameter_cm",
        smooth_ml_cm2=sums.cite(depths["smooth bark"]),
        rough_ml_cm2=sums.cite(depths["rough bark"]),
        rough_from_cm=sums.cite(book.defaults["rough_bark_from_cm"]),
    )  # fmt: skip
    return f"step:{job_id}.bark_depth_ml_cm2"


def _wetted(
    job_id: str, name: str, area: str, small: str, depth: Reference, way: Way, book: Book, sums: Ledger
) -> Reference:
    """Mix that wets an area with a tool."""
    tool = book.tools[way.tool]
    sums.work(
        f"{job_id}.{name}", "wetted_ml", "ml",
        area_cm2=f"step:{job_id}.{area}",
        small_area_cm2=f"step:{job_id}.{small}",
        depth_ml_cm2=depth,
        waste_frac=sums.cite(tool.waste_frac),
        use_rate=sums.cite(book.defaults["use_rate"]),
        smallest_ml=sums.cite(tool.smallest_ml),
    )  # fmt: skip
    return f"step:{job_id}.{name}"


def _foliar(job_id: str, way: Way, product: Product, stems: Stems, book: Book, sums: Ledger) -> Reference:
    """The crown as it stands, or the sprouts that come up after a cut."""
    del product
    unknown = book.defaults["height_unknown_m"].number
    if way.first:
        height = sums.cite(book.defaults["sprout_height_m"])
        heights = sums.column(job_id, "sprout", np.ones(len(stems)))
        sums.work(f"{job_id}.height_m", "times", "m", each=heights, count=height)
        height = f"step:{job_id}.height_m"
    else:
        if np.any(~(stems.height_m > 0)):
            sums.cite(book.defaults["height_unknown_m"])
        height = sums.column(job_id, "height_m", np.where(stems.height_m > 0, stems.height_m, unknown))
    share = sums.cite(book.defaults["crown_width_share"])
    sums.work(f"{job_id}.crown_m2", "crown_m2", "m2", height_m=height, width_share=share)
    sums.work(
        f"{job_id}.each_ml", "sprays_ml", "ml",
        crown_m2=f"step:{job_id}.crown_m2",
        volume_ml_m2=sums.cite(book.defaults["spray_volume_ml_m2"]),
        coverage_frac=sums.cite(book.defaults["spray_coverage_frac"]),
        use_rate=sums.cite(book.defaults["use_rate"]),
    )  # fmt: skip
    return f"step:{job_id}.each_ml"


def _hack(job_id: str, way: Way, product: Product, stems: Stems, book: Book, sums: Ledger) -> Reference:
    main = max(product.contents, key=lambda content: content.strength_ae_g_l)
    rule = book.cut_rule(main.ingredient, main.strength_ae_g_l, way.concentration_frac or 0.0)
    # A rule in inches is applied to inches where they were typed: 2 in written as 5.1 cm would gain a cut.
    inch = convert(1.0, "in", "cm")
    typed = ~np.isnan(stems.diameter_in)
    inches = np.where(typed, stems.diameter_in, stems.diameter_cm / inch)
    half = np.where(typed, 0.0, stems.half_digit_cm / inch)

    def cited(name: str, value: float, unit: str) -> Reference:
        return sums.cite(Cited(f"{rule.id}.{name}", value, unit, rule.source, rule.place, rule.grade))

    spacing = cited("in", rule.spacing_cm / inch, "in")
    diameter = sums.column(job_id, "diameter_for_cuts_in", inches)
    least = cited("least", rule.least, "")
    if rule.rule == "per diameter":
        per = sums.column(job_id, "half_digit_in", half)
        sums.work(
            f"{job_id}.cuts", "cuts_by_diameter", "", diameter=diameter, per_cut=spacing, least=least, half_digit=per
        )
    else:
        sums.work(f"{job_id}.cuts", "cuts_by_centres", "", diameter=diameter, centres=spacing)
    each = cited("ml", rule.ml_per_cut, "ml")
    sums.work(f"{job_id}.each_ml", "cut_dose_ml", "ml", cuts=f"step:{job_id}.cuts", ml_per_cut=each)
    return f"step:{job_id}.each_ml"


_Dose = Callable[[str, Way, Product, Stems, Book, Ledger], Reference]
DOSE: dict[str, _Dose] = {"cut stump": _cut_stump, "basal bark": _basal, "hack and squirt": _hack, "foliar": _foliar}
