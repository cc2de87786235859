"""What to take: for each person what every label asks for together, gloves that all labels allow, and the kit."""

from collections.abc import Iterable
from typing import Any

from stemward.checks import Case, Job
from stemward.checks.equipment import needed_by_role
from stemward.handbook import Book
from stemward.kinds import Product
from stemward.label import listed

GOOD = ("high", "moderate")
"""Resistance of a glove material that is worn for a job: an hour or more (40 CFR 170 and label tables)."""
SAWN = ("cut only", "cut stump", "girdle")


def gear_of(case: Case) -> dict[str, Any]:
    """Equipment by role with label page, glove materials all labels allow (and whether any label says), kit items."""
    methods = list(dict.fromkeys(job.way.how for job in case.jobs if job.way.how != "leave it"))
    treats = any(True for _ in case.treated)
    roles = {does for person in case.tract.people for does in person.does}
    wanted = {"all"} if treats else set()
    wanted |= {"mix"} if treats else set()
    wanted |= set(methods)
    if "saw" in roles and any(how in SAWN for how in methods):
        wanted.add("saw")
    materials, said = glove_materials(case)
    return {
        "by_role": {
            role: [{"item": item, "page": fact.page} for item, fact in sorted(items.items())]
            for role, items in needed_by_role(case).items()
        },
        "gloves": list(materials),
        "gloves_said": said,
        "kit": [{"for": item.where, "item": item.item} for item in case.book.kit if item.where in wanted],
    }


def glove_materials(case: Case) -> tuple[tuple[str, ...], bool]:
    """Glove materials that every label in the plan allows, and whether any label names some.

    A category stands for the materials that hold an hour or more against it. Nothing in common is an empty list.
    """
    found = [_allowed(case.book, job, product) for job, product in case.treated]
    named = [set(materials) for materials in found if materials is not None]
    if not named:
        return (), False
    common = set.intersection(*named)
    return tuple(sorted(common)), True


def _allowed(book: Book, job: Job, product: Product) -> Iterable[str] | None:
    """Materials one label allows; None where it was not read to say."""
    by_name = [str(f.value) for f in listed(product.facts, "glove material", None)]
    categories = [str(f.value) for f in listed(product.facts, "glove category", None)]
    if not by_name and not categories:
        return None
    del job
    by_category = [
        {material for (category, material), cited in book.gloves.items() if category == one and cited.value in GOOD}
        for one in categories
    ]
    sets = [*by_category, *([set(by_name)] if by_name else [])]
    return set.intersection(*sets) if sets else set()
