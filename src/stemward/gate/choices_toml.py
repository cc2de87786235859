"""choices.toml: what someone chose for the plants of one species in one patch."""

from collections.abc import Collection, Sequence
from dataclasses import dataclass

from stemward.gate.fields import Fields
from stemward.gate.names import FindSpecies, look_up
from stemward.gate.text import clean, near
from stemward.kinds import CARRIERS, FIRSTS, HERBICIDE_METHODS, METHODS, STANDING_AS, Choice

SAME = 1e-9


@dataclass(frozen=True)
class Land:
    """What choices are compared with; targets: the (patch, species) that have stems. None: not known."""

    find_species: FindSpecies
    patches: Collection[str] | None
    products: Collection[str] | None
    tools: Collection[str]
    targets: Collection[tuple[str, str]] | None


def read_choices(top: Fields, land: Land) -> tuple[Choice, ...]:
    """Read choices.toml."""
    tables = top.tables("treat")
    choices = tuple(_choice(table, land) for table in tables)
    top.done()
    _once(tables, choices)
    return choices


def _choice(table: Fields, land: Land) -> Choice:
    patch = _known(table, "patch", land.patches, "tract.unknown_patch", "rim")
    how = table.choice("how", METHODS, required=True)
    product = _known(table, "product", land.products, "choice.unknown_product", "") if table.has("product") else ""
    concentration, _ = table.quantity("concentration", "fraction", "frac", low=1e-6, high=1.0)
    partner_frac, _ = table.quantity("partner_concentration", "fraction", "frac", low=1e-6, high=1.0)
    ring_cm, _ = table.quantity("ring", "length", "cm", low=0.1, high=100.0)
    choice = Choice(
        patch=patch,
        species=_species(table, land.find_species),
        how=how,
        product=product,
        concentration_frac=concentration,
        carrier=table.choice("carrier", CARRIERS),
        tool=table.choice("tool", land.tools) if land.tools else table.text("tool"),
        ring_cm=ring_cm,
        state=table.choice("state", STANDING_AS, default="standing"),
        first=table.choice("first", FIRSTS[1:]),
        partner=_known(table, "partner", land.products, "choice.unknown_partner", "") if table.has("partner") else "",
        partner_frac=partner_frac,
    )
    _fits(table, choice)
    both = choice.patch and choice.species
    if both and land.targets is not None and (choice.patch, choice.species) not in land.targets:
        table.ask("ask.choice_unused", "", patch=choice.patch, species=choice.species)
    table.done()
    return choice


def _known(table: Fields, key: str, known: Collection[str] | None, message: str, example: str) -> str:
    typed = table.text(key, required=True, example=example)
    if typed and known is not None and typed not in known:
        table.add(message, key, ", ".join(known), **{key: clean(typed), "near": near(typed, known)})
        return ""
    return typed


def _species(table: Fields, find_species: FindSpecies) -> str:
    typed = table.text("species", required=True, example="tree-of-heaven")
    if not typed:
        return ""
    named = look_up(typed, find_species)
    if not named.latin:
        table.add("choice.unknown_species", "species", species=clean(typed), near=named.near)
    return named.latin


def _fits(table: Fields, choice: Choice) -> None:
    """Notes a way that takes no product but names one, one that needs a product, and a false "undiluted"."""
    if choice.how in HERBICIDE_METHODS and not table.has("product"):
        table.add("choice.needs_product", "product", 'product = "glyphosate-4lb"', how=choice.how)
    if choice.how and choice.how not in HERBICIDE_METHODS and table.has("product"):
        table.add("choice.takes_no_product", "product", how=choice.how)
    share = choice.concentration_frac
    if bool(choice.partner) != (choice.partner_frac is not None):
        table.add("choice.partner", "partner", 'partner_concentration = "2 %"')
    if choice.partner and share is not None and share + (choice.partner_frac or 0.0) > 1 + SAME:
        table.add("choice.over_full", "partner_concentration", 'partner_concentration = "2 %"')
    if choice.carrier == "undiluted" and share is not None and share < 1 - SAME:
        table.add("choice.undiluted", "carrier", 'carrier = "water"')


def _once(tables: Sequence[Fields], choices: Sequence[Choice]) -> None:
    seen: dict[tuple[str, str, str], int] = {}
    for table, choice in zip(tables, choices, strict=True):
        target = (choice.patch, choice.species, choice.state)
        if not all(target):
            continue
        if target in seen:
            table.add("choice.twice", "", patch=target[0], species=target[1], first_line=seen[target])
        else:
            seen[target] = table.line() or 0
