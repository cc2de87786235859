"""Do the answers about the patch bring in rules that stand on no label?"""

from collections.abc import Iterator
from dataclasses import replace

from stemward.checks.case import Case, Check, finding
from stemward.kinds import Finding, Weight, Where
from stemward.ledger.permits import granted

ID = "place-rules"

RULES: tuple[tuple[str, Weight, str], ...] = (
    ("organic", Weight.FIND_OUT, "organic"),
    ("cost_share", Weight.FIND_OUT, "cost_share"),
    ("right_of_way", Weight.FIND_OUT, "right_of_way"),
    ("for_sale", Weight.FIND_OUT, "for_sale"),
    ("protected", Weight.FIND_OUT, "protected"),
    ("ditch", Weight.KNOW, "ditch"),
    ("homes", Weight.KNOW, "homes"),
    ("public", Weight.FIND_OUT, "public"),
)
"""Answer that is yes, how much it weighs, message."""


def run(case: Case) -> Iterator[Finding]:
    """One finding a patch and answer that is yes; otherwise what was answered no."""
    for patch in dict.fromkeys(job.patch for job, _ in case.treated):
        yes = [rule for rule in RULES if patch.answer(rule[0]) == "yes"]
        for question, weight, message in yes:
            if question == "cost_share" and (permit := granted(case.tract.entries, "cost share", patch.id, case.as_of)):
                held = permit.holds(case.as_of)
                weight = Weight.CHECKED if held else Weight.FIND_OUT
                message = "cost_share_granted" if held else "cost_share_waiting"
                said = {"name": permit.name, "on": str(permit.granted_on or "")}
                yield replace(finding(ID, weight, message, values=said), where=Where(patch.id))
                continue
            yield replace(finding(ID, weight, message, question=question), where=Where(patch.id))
        no = [rule[0] for rule in RULES if patch.answer(rule[0]) == "no"]
        if no and not yes:
            yield replace(finding(ID, Weight.CHECKED, "none", questions=", ".join(no)), where=Where(patch.id))


CHECK = Check(
    ID,
    "rules of place that no label holds: organic land, cost share, easements, crops, neighbors",
    ("plan", "site facts", "records"),
    (
        "Common practice, no source: cost share is not paid for work begun before it is granted",
        "40 CFR 170, worker protection where something is grown for sale",
    ),
    run,
)
