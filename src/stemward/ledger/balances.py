"""What is left in each jug, by what was opened, drawn, returned, spilled, thrown away and looked at."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from stemward.kinds import UL_PER_ML, Container, Entry, Product
from stemward.ledger.in_force import in_force

OUT = ("drawn", "spilled", "discarded")
IN = ("returned",)


@dataclass(frozen=True, slots=True)
class Matter:
    """Something a person is told of a balance. what: "overdrawn", "no such jug", "found less", "found more"."""

    what: str
    product: str
    jug: str
    ul: int
    entry: str


@dataclass(frozen=True, slots=True)
class Jug:
    """A jug as it stands. Integer microlitres; left_ul None where nobody has looked, negative where more was drawn
    than was known to be there.

    drawn_ul: all that mixes and people took, less what came back. lost_ul: spilled and thrown away.
    """

    product: str
    jug: str
    capacity_ul: int | None
    left_ul: int | None
    drawn_ul: int = 0
    lost_ul: int = 0
    rinsed: bool = False
    opened: str = ""


Key = tuple[str, str]


def jugs(entries: Iterable[Entry], shelf: Iterable[Product]) -> tuple[dict[Key, Jug], tuple[Matter, ...]]:
    """Every jug by (product, jug), and what is to be told of them.

    A jug starts with what the shelf says was left when it was written down; entries go on from there. A draw beyond
    the balance is counted, leaves it below nothing, and is told.
    """
    found = {(p.id, c.id): Jug(p.id, c.id, c.capacity_ul, c.left_ul) for p in shelf for c in p.containers}
    matters: list[Matter] = []
    for entry in in_force(entries):
        for key, what, ul in _moves(entry):
            have = found.get(key)
            if have is None:
                have = Jug(*key, None, None)
                if what != "opened":
                    matters.append(Matter("no such jug", *key, ul or 0, entry.id))
            found[key] = _moved(have, what, ul, entry, matters)
    return found, tuple(matters)


def _moves(entry: Entry) -> list[tuple[Key, str, int | None]]:
    """What an entry does to jugs: key, what, microlitres (None where it says none)."""
    body = entry.body
    if entry.kind == "jug":
        ml = body.get("ml")
        key = (str(body["product"]), str(body["jug"]))
        return [(key, str(body["what"]), None if ml is None else round(ml * UL_PER_ML))]
    if entry.kind == "batch mixed":
        return [((d["product"], d["jug"]), "drawn", round(d["ml"] * UL_PER_ML)) for d in body["drawn"]]
    return []


def _moved(jug: Jug, what: str, ul: int | None, entry: Entry, matters: list[Matter]) -> Jug:
    if what == "opened":
        left = jug.capacity_ul if ul is None else ul
        return replace(jug, left_ul=left, capacity_ul=jug.capacity_ul or left, opened=entry.at[:10], rinsed=False)
    if what == "looked at" and ul is not None:
        if jug.left_ul is not None and jug.left_ul != ul:
            told = "found less" if ul < jug.left_ul else "found more"
            matters.append(Matter(told, jug.product, jug.jug, abs(jug.left_ul - ul), entry.id))
        return replace(jug, left_ul=ul)
    if what == "emptied and rinsed":
        return replace(jug, left_ul=0, rinsed=True)
    amount = ul or 0
    if what in IN:
        left = None if jug.left_ul is None else jug.left_ul + amount
        return replace(jug, left_ul=left, drawn_ul=jug.drawn_ul - amount)
    left = None if jug.left_ul is None else jug.left_ul - amount
    if left is not None and left < 0:
        matters.append(Matter("overdrawn", jug.product, jug.jug, -left, entry.id))
    if what == "drawn":
        return replace(jug, left_ul=left, drawn_ul=jug.drawn_ul + amount)
    return replace(jug, left_ul=left, lost_ul=jug.lost_ul + amount)


def with_balances(shelf: Iterable[Product], entries: Iterable[Entry]) -> tuple[Product, ...]:
    """The shelf with what is left in each jug now; what was overdrawn counts as empty. Jugs that only entries name
    are added to their product."""
    shelf = tuple(shelf)
    now, _ = jugs(entries, shelf)
    made = []
    for product in shelf:
        own = {c.id: c for c in product.containers}
        containers = []
        for (of, name), jug in now.items():
            if of != product.id or (name not in own and not jug.capacity_ul):
                continue
            left = None if jug.left_ul is None else max(jug.left_ul, 0)
            base = own.get(name)
            containers.append(replace(base, left_ul=left) if base else Container(name, jug.capacity_ul or 0, left))
        made.append(replace(product, containers=tuple(containers)))
    return tuple(made)
