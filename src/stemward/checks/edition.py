"""Are the facts from the label that came with the jug?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, finding
from stemward.kinds import Finding, Weight

ID = "edition"


def run(case: Case) -> Iterator[Finding]:
    """One finding a job; the booklet on the jug rules, so a different edition means reading again."""
    for job, product in case.treated:
        read, jug = product.edition_label, product.edition_jug
        if not read or not jug:
            yield finding(ID, Weight.FIND_OUT, "not_compared", job)
        elif read != jug:
            yield finding(ID, Weight.STOP, "differs", job, read=read, jug=jug)
        else:
            yield finding(ID, Weight.CHECKED, "same", job, read=read)


CHECK = Check(
    ID,
    "rules read from another edition than the one that binds",
    ("shelf",),
    (
        "40 CFR 152.130(c), stock under an earlier label",
        "From memory: the labeling that came with the product binds",
    ),
    run,
)
