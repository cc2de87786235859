"""Do formulation, carrier, step and vessel go together? Chemistry comes before any label."""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, Job, finding
from stemward.kinds import Finding, Product, Weight

ID = "chemistry"

PAIRS: dict[tuple[str, str], tuple[Weight, str]] = {
    ("salt in water", "water"): (Weight.CHECKED, "goes"),
    ("salt in water", "undiluted"): (Weight.CHECKED, "goes"),
    ("salt in water", "oil"): (Weight.STOP, "salt_in_oil"),
    ("acid in water", "water"): (Weight.CHECKED, "goes"),
    ("acid in water", "undiluted"): (Weight.CHECKED, "goes"),
    ("acid in water", "oil"): (Weight.FIND_OUT, "acid_in_oil"),
    ("ester", "oil"): (Weight.CHECKED, "goes"),
    ("ester", "undiluted"): (Weight.FIND_OUT, "ester_undiluted"),
    ("ester", "water"): (Weight.FIND_OUT, "ester_in_water"),
    ("ready-to-use oil", "undiluted"): (Weight.CHECKED, "goes"),
    ("ready-to-use oil", "oil"): (Weight.STOP, "ready_diluted"),
    ("ready-to-use oil", "water"): (Weight.STOP, "ready_diluted"),
    ("ready-to-use water", "undiluted"): (Weight.CHECKED, "goes"),
    ("ready-to-use water", "oil"): (Weight.STOP, "ready_diluted"),
    ("ready-to-use water", "water"): (Weight.STOP, "ready_diluted"),
    ("dry", "water"): (Weight.FIND_OUT, "dry_is_weighed"),
    ("dry", "oil"): (Weight.STOP, "salt_in_oil"),
    ("dry", "undiluted"): (Weight.STOP, "dry_undiluted"),
}
"""Formulation and carrier: common practice, no source."""

EATS_METAL = ("glyphosate",)
BAD_LININGS = ("unlined steel", "galvanised steel")


def run(case: Case) -> Iterator[Finding]:
    """One finding a job; a second one for a vessel that the mix attacks."""
    for job, product in case.treated:
        weight, message = PAIRS[(product.formulation, job.way.carrier)]
        yield finding(
            ID,
            weight,
            message,
            job,
            formulation=product.formulation,
            carrier=job.way.carrier,
            how=job.way.how,
        )
        yield from _vessels(case, job, product)


def _vessels(case: Case, job: Job, product: Product) -> Iterator[Finding]:
    if not any(content.ingredient in EATS_METAL for content in product.contents):
        return
    for vessel in case.tract.vessels:
        if vessel.lining in BAD_LININGS:
            yield finding(ID, Weight.STOP, "vessel", job, vessel=vessel.id, lining=vessel.lining)


CHECK = Check(
    ID,
    "mixes that curdle, settle or give off gas, and work that fails for it",
    ("plan",),
    (
        "Common practice, no source: salts do not dissolve in oil, ready-to-use products are not diluted",
        "Common practice, no source: glyphosate is not kept in unlined or galvanised steel",
    ),
    run,
)
