"""Are the yes-or-no questions about the patch answered that could change what the label asks?"""

from collections.abc import Iterator
from dataclasses import replace

from stemward.checks.case import Case, Check, Job, finding
from stemward.kinds import Finding, Product, Weight, Where
from stemward.label import Situation, listed

ID = "site-facts"

ADDS_SITE = {
    "standing_water_today": "wet",
    "seasonally_wet": "wet",
    "right_of_way": "right-of-way",
    "homes": "yard",
}
"""Questions whose yes would add a kind of place that the label must name."""

ALWAYS = ("grazed", "for_sale")
"""Questions whose yes brings in another part of every label: grazing rules, agricultural use."""


def run(case: Case) -> Iterator[Finding]:
    """One finding a patch: the open questions that change an answer, or that all are answered."""
    jobs = list(case.treated)
    for patch in dict.fromkeys(job.patch.id for job, _ in jobs):
        here = [(job, product) for job, product in jobs if job.patch.id == patch]
        asked = list(dict.fromkeys(q for job, product in here for q in _asked(job, product, case)))
        answers = here[0][0].patch
        unanswered = [q for q in asked if answers.answer(q) == "unknown"]
        about = Where(patch)
        if unanswered:
            one = finding(ID, Weight.FIND_OUT, "unanswered", questions=", ".join(unanswered))
        else:
            one = finding(ID, Weight.CHECKED, "answered", questions=", ".join(asked))
        yield replace(one, where=about)


def _asked(job: Job, product: Product, case: Case) -> Iterator[str]:
    named = {
        fact.value
        for place in ("", *job.sites)
        for fact in listed(
            product.facts,
            "site",
            Situation(method=job.way.how, carrier=job.way.carrier, site=place, state=case.tract.state),
        )
    }
    yield from ALWAYS
    for question, site in ADDS_SITE.items():
        if site not in job.patch.places and (site not in named or _forbidden(product, site)):
            yield question


def _forbidden(product: Product, site: str) -> bool:
    return any(f.kind == "site forbidden" and f.value == site for f in product.facts)


CHECK = Check(
    ID,
    "a part of the label that applies without anyone having asked",
    ("plan", "site facts"),
    ("40 CFR 156.10(i)(2)", "40 CFR 170.303, agricultural use"),
    run,
)
