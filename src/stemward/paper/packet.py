"""A plan's plain data to the packet: words from `say`, pictures from `drawings`, laid out by Typst."""

import datetime
import math
from collections.abc import Mapping
from typing import Any, Literal

from stemward.paper import sheets
from stemward.paper.compile import to_pdf
from stemward.paper.pictures import Pictures
from stemward.paper.tick_sheets import tick_sheets
from stemward.say import Speaker, System, en

Paper = Literal["letter", "a4"]
TYPST_PAPER = {"letter": "us-letter", "a4": "a4"}
FIRST_PAGE = 9
"""Open findings and treatments that fit the first page together; the rest are counted there and stand behind."""
LEAST_OPEN, MOST_OPEN = 2, 5
"""Open findings shown on the first page, whatever the number of treatments."""

POUR_ORDER = ("carrier", "product", "partner", "surfactant", "dye")
"""Common practice, no source; the label decides."""
NEEDS = {"stop": 0, "find out": 1}


def packet(plan: Mapping[str, Any], units: System = "us", paper: Paper = "letter") -> bytes:
    """The packet as PDF/UA-1. The same plan, units and paper give the same bytes."""
    as_of = datetime.date.fromisoformat(plan["as_of"])
    return to_pdf("packet.typ", packet_data(plan, units, paper), as_of)


def packet_data(plan: Mapping[str, Any], units: System, paper: Paper) -> dict[str, Any]:
    """All that stands in the packet, as plain data for the template."""
    speaker = Speaker(plan, units)
    pictures = Pictures(speaker)
    said = speaker.findings()
    urgent = [f for f in said if f.weight in NEEDS]
    tract = plan["tract"]
    words = {key: text for key, text in en.paper.WORDS.items() if "{" not in text}
    shown = max(min(FIRST_PAGE - len(plan["treatments"]), MOST_OPEN), LEAST_OPEN)
    more = len(urgent) - shown
    return {
        "lang": "en",
        "paper": TYPST_PAPER[paper],
        "palette": pictures.palette(),
        "shapes": pictures.findings(),
        "weights": en.findings.WEIGHTS,
        "words": words,
        "title": speaker.word("title", tract=tract["name"], code=plan["code"]),
        "code": plan["code"],
        "footer": speaker.word("footer", tract=tract["name"], code=plan["code"], as_of=plan["as_of"]),
        "invented": tract["invented"],
        "draft": speaker.draft,
        "tract": {"name": tract["name"], "place": tract["place"]},
        "count_line": speaker.count_line(),
        "open": [_finding(f) for f in urgent[:shown]],
        "more_open": speaker.word("more_open", count=more) if more > 0 else "",
        "treatment_head": [words[k] for k in ("plants", "patch", "stems", "how", "mix_needed")],
        "treatment_rows": [_treatment_row(speaker, t) for t in plan["treatments"]],
        "surveys": [speaker.survey(item) for item in plan["surveys"]],
        "before": list(en.cautions.CAUTIONS["before"]),
        "emergency_line": speaker.emergency_line(),
        "treatments": [_treatment(speaker, pictures, plan, t) for t in plan["treatments"]],
        "mixes": [_mix(speaker, pictures, plan, m) for m in plan["mixes"]],
        "map": pictures.map(plan),
        "take": sheets.take(speaker, plan),
        "label_words": en.sheets.LABEL,
        "labels": sheets.labels(speaker, plan),
        "tick_words": en.sheets.TICKS,
        "ticks": tick_sheets(speaker, plan),
        "sign": sheets.sign(speaker, plan),
        "record": sheets.record(speaker, plan),
        "after": sheets.afterward(speaker, plan),
        "findings": _groups(said),
        "people_head": [words["person"], words["wears"]],
        "people": [
            [role, "; ".join(_with_page(speaker, item) for item in items)]
            for role, items in plan["gear"]["by_role"].items()
        ],
        "fact_head": [words[k] for k in ("fact", "says", "for", "page_word", "read_by")],
        "facts": [
            {"product": product["name"], "rows": [_fact(speaker, fact) for fact in _leaned_on(plan, product)]}
            for product in tract["products"]
        ],
        "source_head": [words[k] for k in ("number", "value", "source", "grade")],
        "sources": [_source(speaker, cited) for cited in plan["cited"]],
        "emergency": [*_address(tract), *en.cautions.EMERGENCY],
        "products": [_product(p) for p in tract["products"]],
        "doubts": speaker.doubts(),
    }


def _finding(said: Any) -> dict[str, str]:
    return {name: getattr(said, name) for name in ("weight", "word", "text", "do", "stands", "about")}


def _groups(said: list[Any]) -> list[dict[str, Any]]:
    """Findings by weight; what is said in the same words of several plants or products is said once."""
    groups = []
    for weight in ("stop", "find out", "know", "checked"):
        items: dict[tuple[str, str], dict[str, str]] = {}
        for found in (f for f in said if f.weight == weight):
            item = items.setdefault((found.text, found.do), _finding(found))
            for name in ("about", "stands"):
                new = getattr(found, name)
                if new and new not in item[name]:
                    item[name] = "; ".join(part for part in (item[name], new) if part)
        if items:
            groups.append({"weight": weight, "heading": en.findings.WEIGHTS[weight], "items": list(items.values())})
    return groups


def _treatment_row(speaker: Speaker, item: Mapping[str, Any]) -> list[str]:
    need = speaker.number("need_ml", item["need_ml"]) if item["product"] else speaker.word("none")
    return [item["common"], item["patch_name"], str(item["stems"]), speaker.way(item), need]


def _concerns(plan: Mapping[str, Any], item: Mapping[str, Any]) -> bool:
    """True if a stop or an open question is about this treatment."""
    return any(
        f["weight"] in NEEDS
        and f["where"]["product"] in ("", item["product"])
        and f["where"]["patch"] in ("", item["patch"])
        and f["where"]["species"] in ("", item["species"])
        for f in plan["findings"]
    )


def _treatment(
    speaker: Speaker, pictures: Pictures, plan: Mapping[str, Any], item: Mapping[str, Any]
) -> dict[str, Any]:
    figures = []
    if item["product"]:
        spread = (speaker.number("mix_ml", item[k]) for k in ("need_low_ml", "need_high_ml"))
        figures = [
            [
                speaker.word("need"),
                speaker.number("need_ml", item["need_ml"]),
                speaker.word("between", **_ends(*spread)),
            ],
            [
                speaker.word("each"),
                speaker.word("from_to", **_ends(*(speaker.number("mix_ml", item[k]) for k in ("least_ml", "most_ml")))),
                speaker.word("by_size"),
            ],
            *_squirts(speaker, plan, item),
            *(
                [speaker.word("ae_of", ingredient=name), speaker.number("ae_g", grams), speaker.word("all_stems")]
                for name, grams in item["ae_g"].items()
            ),
        ]
    return {
        "heading": f"{item['common'][:1].upper()}{item['common'][1:]}, {item['patch_name']}",
        "where": speaker.word("treatment_line", stems=item["stems"], way=speaker.way(item)),
        "stopped": _concerns(plan, item),
        "why": speaker.why(item),
        "evidence": speaker.behind(item) if item["product"] else "",
        "then": en.stages.WHAT_THEN.get(item["how"], ""),
        "cautions": [c.format(**_caution_words(speaker, plan)) for c in en.cautions.CAUTIONS[item["how"]]],
        "plant_cautions": item["cautions"],
        "stages": [speaker.stage(s) for s in item["stages"]],
        "figure_head": [speaker.word("what_word"), speaker.word("about"), speaker.word("note")],
        "figures": figures,
        "drawing": pictures.treatment(item),
        "way_head": [speaker.word(k) for k in ("way", "of_ten", "against", "work_and_mix")],
        "ways": _ways(speaker, item),
        "ways_sort": speaker.word("ways_sort"),
        "ways_more": speaker.word("ways_more", count=item["laid_out"]["more"]) if item["laid_out"]["more"] else "",
    }


def _squirts(speaker: Speaker, plan: Mapping[str, Any], item: Mapping[str, Any]) -> list[list[str]]:
    """Squirts for a stem, where someone has counted what one gives."""
    for one in plan["tract"]["calibrations"]:
        if one["tool"] == item["tool"]:
            low, high = (str(math.ceil(item[k] / one["ml_per_stroke"] - 1e-9)) for k in ("least_ml", "most_ml"))
            counted = speaker.word("counted", ml=f"{one['ml_per_stroke']:g}", by=one["by"], on=one["on"])
            return [[speaker.word("squirts"), speaker.word("from_to", **_ends(low, high)), counted]]
    return []


def _ends(low: str, high: str) -> dict[str, str]:
    return {"low": low, "high": high}


def _ways(speaker: Speaker, item: Mapping[str, Any]) -> list[dict[str, Any]]:
    """The ways shown, group by group; the pinned ones first and without a heading."""
    laid, ways = item["laid_out"], item["ways"]
    groups = [{"heading": "", "rows": [_way(speaker, ways[n]) for n in laid["pinned"]]}]
    for group in laid["groups"]:
        heading = en.stages.GROUPS[group["group"]]
        groups.append({"heading": heading, "rows": [_way(speaker, ways[n]) for n in group["ways"]]})
    return groups


def _way(speaker: Speaker, way: Mapping[str, Any]) -> list[str]:
    work = speaker.work(way)
    if not way["product"]:
        return [speaker.way(way), speaker.of_ten(way), en.stages.WHAT_THEN[way["how"]], work]
    parts = []
    if way["stopped_by"]:
        parts.append(speaker.stopped_by(way))
    if way["to_find_out"]:
        parts.append(speaker.word("open_count", count=way["to_find_out"]))
    parts.append(speaker.word("reach_level", level=en.stages.LEVELS[way["reach"]]))
    parts.append(en.stages.WHEN[way["when"]])
    need = speaker.number("need_ml", way["need_ml"])
    return [speaker.way(way), speaker.of_ten(way), "; ".join(parts), f"{need}; {work}" if work else need]


def _caution_words(speaker: Speaker, plan: Mapping[str, Any]) -> dict[str, str]:
    del plan
    return {"from_well": speaker.number("from_well_m", 30.48)}


def _mix(speaker: Speaker, pictures: Pictures, plan: Mapping[str, Any], mix: Mapping[str, Any]) -> dict[str, Any]:
    draft = any(_concerns(plan, t) for t in plan["treatments"] if t["id"] in mix["treatments"])
    names = [
        speaker.word("for_plants", stems=t["stems"], plants=t["common"], patch=t["patch_name"])
        for t in plan["treatments"]
        if t["id"] in mix["treatments"]
    ]
    spread = (speaker.number("mix_ml", mix[k]) for k in ("need_low_ml", "need_high_ml"))
    return {
        "heading": speaker.word("mix_sheet"),
        "draft": draft,
        "what": f"{speaker.mix_words(mix)}. {'; '.join(names)}.",
        "cautions": [c.format(**_caution_words(speaker, plan)) for c in en.cautions.CAUTIONS["mix"]],
        "weak": speaker.word("weak_number"),
        "chances": speaker.word(
            "chances",
            times=f"{10 * mix['short_chance_frac']:.0f}",
            left=speaker.number("mix_ml", mix["expected_left_ml"]),
        ),
        "range": speaker.word("need_range", need=speaker.number("mix_ml", mix["need_ml"]), **_ends(*spread))
        + speaker.learned(mix),
        "batches": [_batch(speaker, pictures, mix, batch) for batch in mix["batches"]],
    }


def _batch(speaker: Speaker, pictures: Pictures, mix: Mapping[str, Any], batch: Mapping[str, Any]) -> dict[str, Any]:
    heading = speaker.word("batch_of", number=batch["number"], count=len(mix["batches"]))
    if "refused" in batch:
        return {
            "heading": heading,
            "pour": [],
            "sum": speaker.batch(batch, mix["carrier"]),
            "strength": "",
            "ladder": None,
        }
    order = sorted(batch["parts"], key=lambda p: POUR_ORDER.index(p["what"]))
    # The strength of what is really poured, which may be a little under the one chosen.
    share = batch["concentration_frac"] / mix["concentration_frac"]
    strength = "; ".join(
        speaker.word("ae_per_volume", ingredient=n, grams=f"{g * share:.0f}") for n, g in mix["ae_g_l"].items()
    )
    return {
        "heading": heading,
        "pour": [
            {
                "amount": f"{speaker.number('mix_ml', p['ml'])} {speaker.part_name(p['what'], mix['carrier'])}",
                "how": speaker.word("fills", fills=p["fills"], measure=p["measure"], ml=f"{p['ml']:.1f}"),
            }
            for p in order
        ],
        "sum": speaker.word(
            "makes",
            mixed=speaker.number("mix_ml", batch["mixed_ml"]),
            share=speaker.number("share_frac", batch["concentration_frac"]),
            assigned=speaker.number("mix_ml", batch["assigned_ml"]),
            left=speaker.number("mix_ml", batch["left_over_ml"]),
        ),
        "strength": strength,
        "ladder": pictures.ladder(mix, batch, order),
    }


def _with_page(speaker: Speaker, item: Mapping[str, Any]) -> str:
    return speaker.word("item_page", item=item["item"], page=item["page"]) if item["page"] else str(item["item"])


def _fact(speaker: Speaker, fact: Mapping[str, Any]) -> list[str]:
    says = fact["typed"] or fact["value"] or ""
    if fact["standing"] != "says":
        says = speaker.word("standing", standing=fact["standing"], of=f" ({says})" if says else "")
    scope = "; ".join(", ".join(values) for values in fact["scope"].values()) or speaker.word("all")
    by = speaker.word("by_on", by=fact["read_by"], on=fact["read_on"]) if fact["reading"] == "read" else fact["reading"]
    return [fact["kind"], str(says), scope, fact["page"], by]


def _source(speaker: Speaker, cited: Mapping[str, Any]) -> list[str]:
    name = en.paper.number_name(cited["id"])
    value = f"{cited['value']:g} {cited['unit']}" if isinstance(cited["value"], int | float) else str(cited["value"])
    return [name, value.strip(), speaker.source(cited["source"]), en.paper.GRADES.get(cited["grade"], cited["grade"])]


def _leaned_on(plan: Mapping[str, Any], product: Mapping[str, Any]) -> list[Mapping[str, Any]]:
    """The facts of a product that findings lean on, and those that are proposed and not read."""
    named = {
        (evidence["what"], evidence["place"])
        for found in plan["findings"]
        if found["where"]["product"] == product["id"]
        for evidence in found["evidence"]
    }
    return [f for f in product["facts"] if (f["kind"], f["page"]) in named or f["reading"] == "proposed"]


def _address(tract: Mapping[str, Any]) -> list[str]:
    aid = tract["emergency"]
    return [aid[key] for key in ("where", "directions") if aid.get(key)]


def _product(product: Mapping[str, Any]) -> dict[str, str]:
    return {
        "name": product["name"],
        "signal": ", ".join(product["signal"]).upper(),
        "first_aid": " ".join(product["first_aid"]),
    }
