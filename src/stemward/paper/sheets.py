"""The sheets for bottle and woods, and for the file: what to take, bottle labels, gate sign, record, afterward."""

from collections.abc import Mapping
from typing import Any

from stemward.say import Speaker, en

MOST_LABELS = 12
"""Labels printed at most; a mix of more batches repeats its last."""
RECORD_ROWS = 4


def take(speaker: Speaker, plan: Mapping[str, Any]) -> dict[str, Any]:
    """Equipment by person with label pages, gloves that every label allows, and the kit, to tick off."""
    gear = plan["gear"]
    words = en.sheets.TAKE
    if gear["gloves"]:
        gloves = words["gloves"].format(materials=", ".join(gear["gloves"]))
    else:
        gloves = words["gloves_none"] if gear["gloves_said"] else words["gloves_unread"]
    return {
        "heading": words["heading"],
        "saw_gloves": words["saw_gloves"],
        "people": [
            {"role": role, "items": [_item(speaker, item) for item in items]} for role, items in gear["by_role"].items()
        ],
        "nobody": "" if gear["by_role"] else words["nobody"],
        "gloves": gloves,
        "kit_heading": words["kit"],
        "kit": [item["item"] for item in gear["kit"]],
        "heat": words["heat"],
    }


def _item(speaker: Speaker, item: Mapping[str, Any]) -> str:
    return speaker.word("item_page", item=item["item"], page=item["page"]) if item["page"] else str(item["item"])


def labels(speaker: Speaker, plan: Mapping[str, Any]) -> list[dict[str, Any]]:
    """One label a batch that can be poured, to cut out and tape on the bottle before it is filled."""
    products = {product["id"]: product for product in plan["tract"]["products"]}
    found: list[dict[str, Any]] = []
    for mix in plan["mixes"]:
        used = [products[i] for i in (mix["product"], mix["partner"]) if i in products]
        for batch in mix["batches"]:
            if "refused" not in batch and len(found) < MOST_LABELS:
                found.append(_label(speaker, plan, mix, batch, used))
    return found


def _label(
    speaker: Speaker, plan: Mapping[str, Any], mix: Mapping[str, Any], batch: Mapping[str, Any], used: list[Any]
) -> dict[str, Any]:
    words = en.sheets.LABEL
    share = batch["concentration_frac"] / mix["concentration_frac"]
    patches = [t["patch_name"] for t in plan["treatments"] if t["id"] in mix["treatments"]]
    signal = max((s for p in used for s in p["signal"]), key=en.sheets.SIGNAL_ORDER.index, default="")
    waits = [float(p["entry_h"]) for p in used if p["entry_h"] is not None]
    recipe = " + ".join(
        f"{speaker.number('part_ml', part['ml'])} {speaker.part_name(part['what'], mix['carrier'])}"
        for part in batch["parts"]
    )
    ae = "; ".join(
        words["ae"].format(ingredient=name, strength=speaker.number("ae_g_l", grams * share))
        for name, grams in mix["ae_g_l"].items()
    )
    diluted = "undiluted" if mix["concentration_frac"] >= 1 else "diluted"
    return {
        "code": words["code"].format(code=plan["code"], batch=f"{mix['id'].removeprefix('m')}-{batch['number']}"),
        "signal": "" if signal == "none" else signal.upper(),
        "no_signal": words["no_signal"] if not signal else "",
        "name": "; ".join(words["number"].format(name=p["name"], number=p["number"]) for p in used),
        "what": words[diluted].format(share=speaker.number("share_frac", batch["concentration_frac"]), ae=ae),
        "recipe": words["recipe"].format(recipe=recipe),
        "for": words["for"].format(patches=", ".join(dict.fromkeys(patches))),
        "entry": words["entry"].format(hours=f"{max(waits):g}") if waits else words["entry_unread"],
        "first_aid": " ".join(dict.fromkeys(line for p in used for line in p["first_aid"])) or words["aid_unread"],
        "follow": words["follow"],
        "children": words["children"],
        "food": words["food"],
        "blanks": words["blanks"],
        "invented": speaker.word("invented") if plan["tract"]["invented"] else "",
    }


def sign(speaker: Speaker, plan: Mapping[str, Any]) -> dict[str, Any] | None:
    """A sign for the gate, where some label keeps people out; None where none was read to."""
    words = en.sheets.SIGN
    products = [p for p in plan["tract"]["products"] if p["entry_h"] is not None]
    if not products:
        return None
    hours = max(float(p["entry_h"]) for p in products)
    patches = dict.fromkeys(t["patch_name"] for t in plan["treatments"] if t["product"])
    return {
        "heading": words["heading"],
        "out": words["out"].format(hours=f"{hours:g}"),
        "where": words["where"].format(patches=", ".join(patches), tract=plan["tract"]["name"]),
        "products": [words["product"].format(name=p["name"], number=p["number"]) for p in products],
        "blanks": words["blanks"],
        "note": words["note"],
        "invented": speaker.word("invented") if plan["tract"]["invented"] else "",
    }


def record(speaker: Speaker, plan: Mapping[str, Any]) -> dict[str, Any]:
    """A form to fill by hand, one a product and day: what is known is filled in, the rest are lines."""
    words = en.sheets.RECORD
    forms = []
    for mix in plan["mixes"]:
        treatments = [t for t in plan["treatments"] if t["id"] in mix["treatments"]]
        number = next((p["number"] for p in plan["tract"]["products"] if p["id"] == mix["product"]), "")
        known = {
            "product": f"{mix['product_name']}, {number}",
            "ingredients": ", ".join(mix["ae_g_l"]),
            "place": f"{plan['tract']['name']}: " + ", ".join(dict.fromkeys(t["patch_name"] for t in treatments)),
            "plants": "; ".join(f"{t['common']}, {t['stems']} stems planned" for t in treatments),
            "method": "; ".join(dict.fromkeys(en.stages.HOW[t["how"]] for t in treatments)),
            "strength": speaker.number("share_frac", mix["concentration_frac"])
            + " "
            + en.stages.CARRIER.get(mix["carrier"], ""),
            "planned": speaker.number("mix_ml", mix["mixed_ml"]),
        }
        forms.append([[words["fields"][key], known.get(key, "")] for key in words["fields"]])
    return {"heading": words["heading"], "note": words["note"], "forms": forms, "same_day": words["same_day"]}


def afterward(speaker: Speaker, plan: Mapping[str, Any]) -> dict[str, Any]:
    """What is done with what is left, rinsing, washing, storing, and when to look again."""
    words = en.sheets.AFTER
    left = [
        words["left"].format(product=mix["product_name"], left=speaker.number("mix_ml", mix["left_over_ml"]))
        for mix in plan["mixes"]
        if mix["left_over_ml"] > 0
    ]
    said = [
        words["label_says"].format(name=p["name"], says=" ".join([*p["container"], *p["disposal"]]))
        for p in plan["tract"]["products"]
        if p["container"] or p["disposal"]
    ]
    year = int(plan["as_of"][:4])
    looks: dict[tuple[str, str], list[str]] = {}
    for item in plan["treatments"]:
        if not item["product"]:
            continue
        later = year + 2 if item["verdict_months"] > 12 else year + 1
        verdict = words["look_verdict"].format(months=item["verdict_months"])
        for what in ((f"{year + 1}-07-01", words["look_first"]), (f"{later}-09-15", verdict)):
            looks.setdefault(what, []).append(f"{item['common']}, {item['patch_name']}")
    return {
        "heading": words["heading"],
        "steps": [*left, *said, *words["steps"]],
        "look_heading": words["look_heading"],
        "look_head": [words["date"], words["what"]],
        "looks": [
            [day, f"{what} {'; '.join(dict.fromkeys(plants))}."] for (day, what), plants in sorted(looks.items())
        ],
        "lines": words["lines"],
    }
