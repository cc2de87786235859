"""Labels of invented products, printed from their facts: for the example, and to try the reading of labels on."""

import datetime
from dataclasses import dataclass
from typing import Any

from stemward.kinds import LabelFact, Product
from stemward.paper import press_words as words
from stemward.paper.compile import query, to_pdf


@dataclass(frozen=True, slots=True)
class Printed:
    """One fact as printed: its number in the product's facts, the page (from 1), and the sentence."""

    fact: int
    page: int
    sentence: str


@dataclass(frozen=True, slots=True)
class Pressed:
    """A label as PDF, and what stands where in it. pages: how many."""

    pdf: bytes
    printed: tuple[Printed, ...]
    pages: int


def press(product: Product, as_of: datetime.date) -> Pressed:
    """Print a label. ValueError for a product that is not marked invented: a real label is never made up."""
    if not product.invented:
        raise ValueError(f"{product.id} is not marked invented; only invented labels are printed.")
    data = _data(product)
    pdf = to_pdf("press.typ", data, as_of)
    marks = query("press.typ", data, "<printed>")
    sentences = _sentences(product)
    printed = tuple(Printed(mark["fact"], mark["page"], sentences[mark["fact"]]) for mark in marks)
    return Pressed(pdf, printed, max((one.page for one in printed), default=1))


def sentence(fact: LabelFact) -> str:
    """What a label prints for a fact; "" where the fact is that nothing stands there."""
    if fact.standing == "not found":
        return ""
    scope = _scope(fact)
    if fact.standing == "no limit":
        return words.NO_LIMIT.format(kind=fact.kind, **{"for": scope})
    if fact.standing == "does not apply":
        return words.DOES_NOT_APPLY.format(kind=fact.kind, **{"for": scope})
    it = (fact.typed or str(fact.value)).strip()
    if fact.kind == "signal word":
        it = it.upper()
    pattern = words.SAYS[fact.kind][1]
    return pattern.replace("{it}", it).replace("{for}", scope).replace("{force}", words.FORCE[fact.force])


def _sentences(product: Product) -> list[str]:
    return [sentence(fact) for fact in product.facts]


def _scope(fact: LabelFact) -> str:
    parts = [
        pattern.format(" or ".join(getattr(fact.scope, name)))
        for name, pattern in words.SCOPE.items()
        if getattr(fact.scope, name)
    ]
    if fact.scope.stem_cm is not None:
        low, high = (f"{end:g}" for end in fact.scope.stem_cm)
        parts.append(words.STEMS.format(low=low, high=high))
    return f", {' '.join(parts)}" if parts else ""


def _data(product: Product) -> dict[str, Any]:
    said = [
        {"fact": n, "text": text, "part": words.SAYS[fact.kind][0], "kind": fact.kind, "method": fact.scope.method}
        for n, (fact, text) in enumerate(zip(product.facts, _sentences(product), strict=True))
        if text
    ]
    signal = next((s for s in said if s["kind"] == "signal word"), None)
    parts = []
    for part in words.PARTS[1:]:
        own = [s for s in said if s["part"] == part]
        if own or part in ("directions", "hazards to people", "environment"):
            parts.append(_part(part, own))
    return {
        "title": product.name,
        "invented": words.INVENTED,
        "use": words.USE,
        "children": words.CHILDREN,
        "table_head": list(words.TABLE_HEAD),
        "ingredients": [
            [
                f"{content.ingredient}, {content.form}",
                words.EQUIVALENT.format(
                    ingredient=content.ingredient, form=content.form, strength=f"{content.strength_ae_g_l:.0f} g",
                    typed=content.typed,
                ),
            ]
            for content in product.contents
        ],
        "signal": signal,
        "front": [s for s in said if s["part"] == "front" and s is not signal],
        "parts": parts,
    }  # fmt: skip


def _part(part: str, own: list[dict[str, Any]]) -> dict[str, Any]:
    """A part with its sentences; those for one way stand under that way's name."""
    filler = {"hazards to people": words.FILLER[1], "environment": words.FILLER[2], "directions": words.FILLER[0]}
    by_method: dict[str, list[dict[str, Any]]] = {}
    for one in own:
        by_method.setdefault(", ".join(one["method"]) if part in ("ways", "mixing") else "", []).append(one)
    return {
        "heading": words.HEADINGS[part],
        "lead": words.MISUSE if part == "directions" else "",
        "sentences": by_method.pop("", []),
        "groups": [{"heading": name.upper(), "sentences": some} for name, some in by_method.items()],
        "filler": [filler[part]] if part in filler else [],
    }
