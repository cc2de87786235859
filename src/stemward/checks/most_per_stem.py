"""Does no stem get more of the product than the label allows for one?"""

from collections.abc import Iterator

import numpy as np

from stemward.checks.case import Case, Check
from stemward.checks.limit import held
from stemward.kinds import Finding
from stemward.label import resolve

ID = "most-per-stem"
SAME = 1e-9
HOW = ("hack and squirt",)
"""Injection labels give a dose per cut or stem; other ways are limited by strength and ground."""


def run(case: Case) -> Iterator[Finding]:
    """One finding a job of injection, or any job whose label was read to have such a limit."""
    for job, product in case.treated:
        share = job.way.concentration_frac or 0.0
        each_ml = float(np.max(job.mix_ml / np.maximum(job.stems.stems, 1), initial=0.0)) * share
        for situation in job.situations(case.tract)[:1]:
            resolved = resolve(product.facts, "most per stem", situation)
            if job.way.how in HOW or resolved.outcome not in ("unread", "proposed"):
                yield held(
                    ID, job, resolved, "most per stem", lambda most, each=each_ml: each > most * (1 + SAME),  # type: ignore[misc]
                    {"each_ml": each_ml}, "limit_ml",
                )  # fmt: skip


CHECK = Check(
    ID,
    "a stem that is given more product than the label allows for one",
    ("plan", "label facts"),
    ("40 CFR 156.10(i)(2), dosage for each pest",),
    run,
)
