"""Has everyone who mixes or applies what every label in the plan asks them to wear?"""

from collections import defaultdict
from collections.abc import Iterator

from stemward.checks.case import Case, Check, Job, finding, open_question, place
from stemward.kinds import Finding, LabelFact, Person, Product, Weight
from stemward.label import Situation, listed, resolve

ID = "equipment"
ROLES = (("apply", "applicator"), ("mix", "mixer"))


def run(case: Case) -> Iterator[Finding]:
    """Missing equipment is a stop for each person; a label not read for it is to be found out."""
    for job, product in _once_a_product(case):
        yield from _for_product(case, job, product)


def _once_a_product(case: Case) -> Iterator[tuple[Job, Product]]:
    seen: set[tuple[str, str, str]] = set()
    for job, product in case.treated:
        key = (product.id, job.way.how, job.way.carrier)
        if key not in seen:
            seen.add(key)
            yield job, product


def _for_product(case: Case, job: Job, product: Product) -> Iterator[Finding]:
    counted = resolve(product.facts, "pieces of equipment", Situation(method=job.way.how))
    pieces = len(listed(product.facts, "equipment", None))
    whole = counted.fact is not None and counted.fact.value == pieces
    if counted.fact is None:
        yield open_question(ID, counted, job, "equipment")
    elif not whole:
        yield finding(
            ID, Weight.FIND_OUT, "miscounted", job, place(counted.fact), pieces=pieces, counted=str(counted.fact.value)
        )
    if not any(does in person.does for person in case.tract.people for does, _ in ROLES):
        yield finding(ID, Weight.FIND_OUT, "nobody", job)
        return
    complete = True
    for person in case.tract.people:
        asked = _asked(job, product, person, case)
        for item, fact in asked.items():
            if not _has(case, person, item):
                complete = False
                yield finding(ID, Weight.STOP, "missing", job, place(fact), item=item, person=person.role)
    if whole and complete:
        items = sorted({i for p in case.tract.people for i in _asked(job, product, p, case)})
        yield finding(ID, Weight.CHECKED, "complete", job, place(*counted.facts), items=", ".join(items) or "nothing")


def _asked(job: Job, product: Product, person: Person, case: Case) -> dict[str, LabelFact]:
    asked: dict[str, LabelFact] = {}
    for does, role in ROLES:
        if does not in person.does:
            continue
        for situation in job.situations(case.tract, role=role):
            resolved = resolve(product.facts, "equipment", situation)
            for fact in resolved.facts:
                if fact.reading == "read" and fact.standing == "says" and fact.force != "should":
                    asked.setdefault(str(fact.value), fact)
    return asked


def _has(case: Case, person: Person, item: str) -> bool:
    """True if the person has the item or something that serves for it."""
    return any(own == item or item in case.book.serves_for(own) for own in person.gear)


def needed_by_role(case: Case) -> dict[str, dict[str, LabelFact]]:
    """Per person the equipment that all labels in the plan ask for together, for the list of what to take."""
    needed: dict[str, dict[str, LabelFact]] = defaultdict(dict)
    for job, product in case.treated:
        for person in case.tract.people:
            for item, fact in _asked(job, product, person, case).items():
                needed[person.role].setdefault(item, fact)
    return dict(needed)


CHECK = Check(
    ID,
    "the people who handle the product",
    ("plan", "label facts", "people"),
    ("40 CFR 156.212, personal protective equipment statements", "EPA Label Review Manual ch. 10, 2016"),
    run,
)
