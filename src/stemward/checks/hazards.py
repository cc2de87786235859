"""Does the plant itself hurt people or stock, or spread where it is dragged?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, finding
from stemward.kinds import Evidence, Finding, Weight

ID = "hazards"
CUTS = ("cut only", "cut stump", "girdle", "pull")
ONLY_WHEN_CUT = ("wilted foliage", "roots from cuttings", "ripe fruit", "smoke")


def run(case: Case) -> Iterator[Finding]:
    """Something to know for each hazard that bears on the way; a plant with none on record is said to have none."""
    for job in case.jobs:
        if job.way.how == "leave it":
            continue
        cut = job.way.how in CUTS or bool(job.way.first)
        found = [h for h in case.book.hazards(job.target.species) if cut or h.hazard not in ONLY_WHEN_CUT]
        for hazard in found:
            source = [Evidence(hazard.cited.id, hazard.cited.place, hazard.cited.source)]
            said = "_".join(hazard.hazard.split())
            if hazard.hazard == "wilted foliage" and job.patch.answer("grazed") == "yes":
                yield finding(ID, Weight.STOP, "stock_there", job, source, what=hazard.what)
            else:
                yield finding(ID, Weight.KNOW, said, job, source, what=hazard.what)
        if not found:
            yield finding(ID, Weight.CHECKED, "nothing_on_record", job)


CHECK = Check(
    ID,
    "skin, eyes and lungs, stock that eats wilted leaves, and ground that brush is dragged over",
    ("plan", "handbook", "site facts"),
    ("Handbook rows, each with its source",),
    run,
)
