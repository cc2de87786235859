"""Does cutting make this plant come back thicker from its roots?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, finding
from stemward.kinds import Evidence, Finding, Weight

ID = "cut-first"
CUTS = ("cut only", "cut stump")


def run(case: Case) -> Iterator[Finding]:
    """Something to know for root-suckering clones that are cut; jobs without cutting are not spoken of."""
    for job in case.jobs:
        if job.way.how not in CUTS:
            continue
        cited = job.species.cited_cut_first
        source = [Evidence(cited.id, cited.place, cited.source)]
        if job.species.cut_first == "worse":
            yield finding(ID, Weight.KNOW, "suckers", job, source, plant=job.target.species, how=job.way.how)
        elif job.species.cut_first == "unknown" and job.species.root_suckers != "no":
            yield finding(ID, Weight.FIND_OUT, "unknown", job, source, plant=job.target.species)
        else:
            yield finding(ID, Weight.CHECKED, "fits", job, source, plant=job.target.species, how=job.way.how)


CHECK = Check(
    ID,
    "cuts that turn one stem into a thicket",
    ("plan", "handbook"),
    (
        "DiTomaso & Kyser 2007, Arboric. & Urban For. 33(1):56 (tree-of-heaven)",
        "Kochenderfer et al. 2006 (beech, the exception)",
    ),
    run,
)
