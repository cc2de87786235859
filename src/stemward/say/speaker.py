"""A plan's values in words, for one language and one unit system."""

import re
from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from stemward.say import en
from stemward.say.numbers import OTHERS_TOLD, System, figure, figures
from stemward.say.problems import question_line, question_words

_URL = re.compile(r"\s*https?://\S+")
BAND_CM = 38.1
"""The usual band of basal bark, 15 in, as in the handbook's defaults."""
TOGETHER = ("unread", "proposed")
ORDER = ("stop", "find out", "know", "checked")


def _sentences(text: str) -> str:
    """Every sentence with a capital, whatever name it begins with."""
    return re.sub(r"(^|[.?!] )([a-z])", lambda m: m[1] + m[2].upper(), text)


def _two_digits(value: float) -> float:
    """A count to two figures: more would promise what plots do not give."""
    return float(f"{value:.2g}")


@dataclass(frozen=True, slots=True)
class Said:
    """A finding in words. `do` and `stands` are empty where there is nothing to do or no place to name.

    product, fact: on which product's label a person has to read what; both empty where it is no matter of reading.
    check: id of the check that says it.
    """

    weight: str
    word: str
    text: str
    do: str
    stands: str
    about: str
    product: str = ""
    fact: str = ""
    check: str = ""


def how_words(treatment: Mapping[str, Any]) -> str:
    """What is done, without the mix: "Cut stump on a fresh face"."""
    how = en.stages.HOW[treatment["how"]]
    pattern = en.stages.FIRST[treatment.get("first", "")]
    return pattern.format(how=how if pattern.startswith("{") else how.lower())


@dataclass(frozen=True)
class Speaker:
    """Words for one plan (as plain data). units: "us" or "metric". English is the only language so far."""

    plan: Mapping[str, Any]
    units: System = "us"

    def number(self, name: str, value: float) -> str:
        """A figure by the unit in its name, for example number("need_ml", 812.0)."""
        return figure(name, value, self.units)

    def learned(self, mix: Mapping[str, Any]) -> str:
        """From how many batches an amount is known, led by a blank; "" where none was written down."""
        known = mix["learned"]
        if known is None:
            return ""
        who = known["person"] or en.paper.WORDS["learned_people"].format(people=known["people"])
        key = "learned_one" if known["batches"] == 1 else "learned"
        text = en.paper.WORDS[key].format(batches=known["batches"], who=who, factor=f"{known['factor']:.2g}")
        alone = "; ".join(
            en.paper.WORDS["learned_each"].format(person=one["person"], factor=f"{one['factor']:.2g}")
            for one in known["each"]
        )
        return f" {text} {alone}." if alone else f" {text}"

    def cited(self, cited_id: str) -> float:
        """A number that the plan leans on; KeyError if it leans on none of that name."""
        return float({c["id"]: c["value"] for c in self.plan["cited"]}[cited_id])

    def common(self, latin: str) -> str:
        """The common name the plan uses for a species, else the Latin name."""
        names = {t["species"]: t["common"] for t in self.plan["treatments"]}
        names.update(self.plan["tract"].get("common_names", {}))
        return str(names.get(latin, latin))

    def patch(self, patch_id: str) -> str:
        """The name of a patch; "the tract" where a finding is about more than one."""
        names = {p["id"]: p["name"] for p in self.plan["tract"]["patches"]}
        return str(names.get(patch_id, "the tract"))

    def product(self, product_id: str) -> str:
        """The name of a product."""
        names = {**self.plan["tract"].get("shelf", {})}
        names.update({p["id"]: p["name"] for p in self.plan["tract"]["products"]})
        return str(names.get(product_id, product_id or "the product"))

    def kept(self, spared_id: str) -> str:
        """A plant or place that is kept from harm, with its kind: "bur oak oak-12"."""
        for spared in self.plan["tract"]["spared"]:
            if spared["id"] == spared_id:
                kind = self.common(spared["species"]) if spared["species"] else spared["kind"]
                return f"{kind} ({spared_id})" if spared_id != kind else str(kind)
        return spared_id

    def finding(self, found: Mapping[str, Any]) -> Said:
        """One finding in words. KeyError if a check says something there are no words for."""
        check, _, message = found["message"].partition(".")
        text, do = en.findings.MESSAGES.get(found["message"]) or en.findings.OPEN[message]
        words = figures(found["values"], self.units)
        where = found["where"]
        values = found["values"]
        words |= {
            "patch": self.patch(where["patch"]),
            "plant": self.common(str(values.get("plant") or where["species"])),
            "product": self.product(where["product"]),
        }
        words["about"] = self._about(words)
        if "site" in words:
            words["site"] = en.findings.PLACES.get(words["site"], words["site"])
        if "questions" in words:
            asked = words["questions"].split(", ")
            words["questions"] = "; ".join(en.findings.QUESTIONS.get(q, q) for q in asked)
        if "spared" in words:
            words["kept"] = self.kept(words["spared"])
            if check in ("water", "mixing-place", "falling"):
                words["spared"] = words["kept"]
        if check == "doubts":
            words["question"] = question_words(self.plan["tract"]["asked"][int(values["number"])])
        if message not in en.findings.OPEN and "ingredient" in words:
            words["ingredient"] = words["ingredient"][:1].upper() + words["ingredient"][1:]
        if check == "concentration":
            words["mix"] = words.get("mix", "")
        sentence = _sentences(text.format(**words))
        to_read = str(values.get("fact") or values.get("facts", "")).partition(", ")[0]
        reads = found["weight"] == "find out" and where["product"] and to_read
        return Said(
            found["weight"],
            en.findings.WEIGHTS[found["weight"]],
            sentence,
            do.format(**words),
            self._stands(found["evidence"]),
            self._where(where),
            where["product"] if reads else "",
            to_read if reads else "",
            str(found["check"]),
        )

    def _about(self, words: Mapping[str, str]) -> str:
        if "site" in words:
            return f" ({en.findings.PLACES.get(words['site'], words['site'])})"
        return f" ({words['how']})" if "how" in words else ""

    def _where(self, where: Mapping[str, Any]) -> str:
        parts = []
        if where["species"]:
            parts.append(self.common(where["species"]))
        if where["patch"]:
            parts.append(self.patch(where["patch"]))
        return ", ".join(parts)

    def _stands(self, evidence: list[dict[str, Any]]) -> str:
        parts: list[str] = []
        for item in evidence[:3]:
            if item["source"].startswith("label"):
                by = item["source"].removeprefix("label").strip(", ")
                page = f"page {item['place']}" if item["place"] else "page not written down"
                parts.append(f"Label, {page}" + (f", {by}" if by else ""))
            else:
                source = self.source(item["source"])
                parts.append(", ".join(p for p in (source, item["place"]) if p and "://" not in p))
        return "; ".join(dict.fromkeys(p for p in parts if p))

    def source(self, source: str) -> str:
        """Who says so, without addresses."""
        return _URL.sub("", source).strip(" |;,")

    def findings(self) -> list[Said]:
        """All findings in words, in the plan's order (heaviest first).

        What nobody has read yet on one label is one line with all that is to be read there.
        """
        unread: dict[tuple[str, str], list[Mapping[str, Any]]] = {}
        order: list[Mapping[str, Any] | tuple[str, str]] = []
        for found in self.plan["findings"]:
            key = (found["where"]["product"], found["message"].partition(".")[2])
            if key[1] not in TOGETHER or not key[0]:
                order.append(found)
                continue
            if key not in unread:
                order.append(key)
            unread.setdefault(key, []).append(found)
        return [self._to_read(unread[one]) if isinstance(one, tuple) else self.finding(one) for one in order]

    def _to_read(self, found: list[Mapping[str, Any]]) -> Said:
        """All that is to be read on one label as one line."""
        if len(found) == 1:
            return self.finding(found[0])
        facts: list[str] = []
        for one in found:
            names = str(one["values"].get("fact") or one["values"].get("facts", "")).split(", ")
            facts += [name for name in names if name not in facts]
        where = found[0]["where"]
        same = {key: where[key] if all(f["where"][key] == where[key] for f in found) else "" for key in where}
        first = {**found[0], "values": {"fact": ", ".join(facts)}, "where": same}
        text, do = en.findings.OPEN[found[0]["message"].partition(".")[2]]
        return replace(
            self.finding({**first, "message": f"site.{found[0]['message'].partition('.')[2]}", "evidence": []}),
            text=text.format(product=self.product(where["product"]), fact="; ".join(facts), about=""),
            do=do,
        )

    def count_line(self) -> str:
        """ "1 stop · 3 to find out · 5 to know · 31 checked"."""
        said = self.findings()
        tally = {word: sum(f.weight == word for f in said) for word in ORDER}
        shown = {"stop": "stop", "find out": "to find out", "know": "to know", "checked": "checked"}
        return " · ".join(f"{tally[word]} {shown[word]}" for word in ORDER)

    @property
    def draft(self) -> bool:
        """True if anything stops or is to be found out: the plan is no work order."""
        return any(f["weight"] in ("stop", "find out") for f in self.plan["findings"])

    def way(self, treatment: Mapping[str, Any]) -> str:
        """A way in a few words: "Cut stump, glyphosate 50 % in water"."""
        how = how_words(treatment)
        if not treatment["product"]:
            return how
        return f"{how}, {self.mix_words(treatment)}"

    def mix_words(self, item: Mapping[str, Any]) -> str:
        """What is in the bottle: "Example glyphosate ..., 50 % in water"."""
        share = item["concentration_frac"]
        name = self.product(item["product"])
        carrier = en.stages.CARRIER.get(item["carrier"], item["carrier"])
        if share is None:
            return name
        if share >= 1.0:
            return f"{name}, undiluted"
        if item.get("partner"):
            both = f"{self.number('share_frac', share)}, with {self.product(item['partner'])}"
            return f"{name}, {both}, {self.number('share_frac', item['partner_frac'])} {carrier}"
        return f"{name}, {self.number('share_frac', share)} {carrier}"

    def stage(self, stage: Mapping[str, Any]) -> str:
        """One step of a treatment as a sentence."""
        words = {k: str(v) for k, v in stage.items()}
        if "minutes" in stage:
            words["minutes"] = f"{stage['minutes']:g} minutes"
            words["from"] = en.stages.FROM[stage["from"]].format(page=stage.get("page", ""))
        if "wait_days" in stage:
            words["wait_days"] = f"{stage['wait_days']:g}"
        words["band"] = self.number("band_cm", BAND_CM)
        return en.stages.STAGES[stage["stage"]].format(**words)

    def why(self, treatment: Mapping[str, Any]) -> str:
        """Why this way was taken: by a person, or by the printed rule."""
        if treatment["chosen_by"] == "person":
            return en.stages.CHOSEN["person"]
        if treatment["how"] == "leave it":
            any_product = any(way["product"] for way in treatment["ways"])
            return en.stages.NOTHING_FITS if any_product else en.stages.NO_PRODUCT
        if treatment["how"] == "cut only":
            return en.stages.NO_SPROUT
        open_count = treatment["suggested"]["to_find_out"]
        return en.stages.once(open_count) + en.stages.RULE

    def of_ten(self, way: Mapping[str, Any]) -> str:
        """How many of ten stems die, as a range with what stands behind it; never one number."""
        if way["low"] is None:
            return en.stages.NO_TRIAL if way["product"] or way["how"] != "leave it" else ""
        low, high = way["low"], way["high"]
        words = en.stages.OF_TEN_ALL if low == high else en.stages.OF_TEN
        said = words.format(low=low, high=high, tier=en.stages.KINDS[way["evidence_kind"]])
        if way["own_seen"]:
            own = {"dead": way["own_dead"], "seen": way["own_seen"]}
            said = (en.stages.WITH_OWN if way["evidence_kind"] else en.stages.OWN).format(said=said, **own)
        return f"{said}. {en.stages.NOBODY_KNOWS}" if way["wide"] else said

    def behind(self, item: Mapping[str, Any]) -> str:
        """What stands behind the way taken, in one or two sentences."""
        seen = item["behind"]
        way = {**seen, "product": item["product"], "how": item["how"]}
        others = (
            f" {en.stages.OTHERS.format(stems=seen['others_worth'])}"
            if seen.get("others_worth", 0) >= OTHERS_TOLD
            else ""
        )
        return _sentences(f"{en.stages.BEHIND.format(what=self.evidence(seen['tier']))} {self.of_ten(way)}.{others}")

    def work(self, way: Mapping[str, Any]) -> str:
        """Hours, and money where prices are written down, as bands; empty where no pace is on record."""
        parts = []
        if way["hours_high"]:
            low, high = (f"{way[key]:g}" for key in ("hours_low", "hours_high"))
            words = en.stages.HOURS_UP_TO if low == "0" else en.stages.HOURS if low != high else en.stages.HOURS_ONE
            parts.append(words.format(low=low, high=high))
        if way["hours_days"]:
            days = en.stages.OWN_DAY if way["hours_days"] == 1 else en.stages.OWN_DAYS.format(days=way["hours_days"])
            parts[-1] = f"{parts[-1]} {days}"
        if way["money_high_cents"]:
            ends = {"low": way["money_low_cents"] // 100, "high": -(-way["money_high_cents"] // 100)}
            parts.append(en.stages.MONEY.format(**ends))
        return "; ".join(parts)

    def stopped_by(self, way: Mapping[str, Any]) -> str:
        """The first reason that stops a way, in a few words."""
        return en.stages.STOPPED.format(check=en.stages.check_words(way["stopped_by"][0]["check"]))

    def evidence(self, tier: int) -> str:
        """What stands behind a way, in words."""
        return en.stages.TIERS[tier]

    def batch(self, batch: Mapping[str, Any], carrier: str = "") -> str:
        """One batch as a line: what to pour, what it makes, what is left over."""
        if "refused" in batch:
            return self._refused(batch)
        parts = [
            f"{self.number('part_ml', p['ml'])} {self.part_name(p['what'], carrier)} ({p['fills']} x {p['measure']})"
            for p in batch["parts"]
        ]
        made = self.number("mixed_ml", batch["mixed_ml"])
        left = self.number("left_ml", batch["left_over_ml"])
        share = self.number("share_frac", batch["concentration_frac"])
        return f"Batch {batch['number']}: {' + '.join(parts)} makes {made} at {share}; {left} over by intent."

    def _refused(self, batch: Mapping[str, Any]) -> str:
        would = batch["would_do"]
        amount = self.number("assigned_ml", batch["assigned_ml"])
        if would is None:
            return f"Batch {batch['number']}: {amount} cannot be measured with the measures listed. Add a finer one."
        name = would["name"]
        return f"Batch {batch['number']}: {amount} can be measured only with {name} for herbicide and carrier alike."

    def survey(self, item: Mapping[str, Any]) -> str:
        """What sample plots say of plants too many to map, as a sentence; or why they say nothing."""
        words = {"plants": item["common"], "patch": item["patch_name"], "plots": item["plots"]}
        if item["stems"] is None:
            return _sentences(en.stages.SURVEY[item["why_not"]].format(**words))
        stems, mix = item["stems"], item["mix_ml"]
        words |= {f"{name}_stems": f"{_two_digits(stems[name]):,.0f}" for name in ("low", "mean", "high")}
        words |= {f"{name}_mix": self.number("mix_ml", mix[name]) for name in ("low", "mean", "high")}
        said = en.stages.SURVEY["estimate"].format(**words)
        if item["plots_needed"] and item["plots_needed"] > item["plots"]:
            said += en.stages.SURVEY["more_plots"].format(count=item["plots_needed"])
        return _sentences(said)

    def emergency_line(self) -> str:
        """Two numbers and the place, for the first page."""
        aid = self.plan["tract"]["emergency"]
        calls = en.cautions.EMERGENCY[:2]
        return " ".join([*calls, str(aid.get("where", ""))]).strip()

    def doubts(self) -> list[str]:
        """What was read but is doubtful, as lines."""
        return [question_line(q) for q in self.plan["tract"]["asked"]]

    def part_name(self, what: str, carrier: str = "") -> str:
        """Herbicide, the carrier by its name, or dye."""
        if what == "carrier" and carrier:
            return en.stages.CARRIER_NAME.get(carrier, carrier)
        return en.paper.WORDS.get(what, what)

    def word(self, key: str, **values: object) -> str:
        """A heading or small word of the packet."""
        return en.paper.WORDS[key].format(**values)
