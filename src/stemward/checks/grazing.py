"""How long must animals stay off, and hay stay uncut?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, finding, open_question, place
from stemward.kinds import Finding, Weight
from stemward.label import resolve

ID = "grazing"
ASKED = (("grazed", "grazing wait", "animals"), ("hayed", "hay wait", "hay"))


def run(case: Case) -> Iterator[Finding]:
    """One finding for each answer that is yes; where it is no or unknown nothing is said here."""
    for job, product in case.treated:
        for question, kind, what in ASKED:
            if job.patch.answer(question) != "yes":
                continue
            for situation in job.situations(case.tract)[:1]:
                resolved = resolve(product.facts, kind, situation)
                fact = resolved.fact
                if fact is None:
                    yield open_question(ID, resolved, job, kind, what=what)
                elif fact.standing == "says" and isinstance(fact.value, float):
                    days = fact.value / 86400
                    yield finding(ID, Weight.KNOW, f"{what}_wait", job, place(fact), wait_days=days)
                elif fact.standing == "no limit":
                    yield finding(ID, Weight.CHECKED, f"{what}_no_limit", job, place(fact))
                else:
                    yield finding(ID, Weight.FIND_OUT, f"{what}_not_found", job, place(fact))


CHECK = Check(
    ID,
    "animals and hay that take up herbicide",
    ("plan", "label facts", "site facts"),
    ("40 CFR 156.10(i)(2), grazing and harvest intervals",),
    run,
)
