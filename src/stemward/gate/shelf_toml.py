"""shelf/*.toml: what is in each jug, and what its label says."""

import datetime
import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal, Protocol, get_args

from stemward.gate.fields import MOST_SIGNS_LONG, YES_NO, Fields, once
from stemward.gate.names import FindSpecies, look_up
from stemward.gate.text import clean
from stemward.gate.tract_toml import cents, check_state, state_code
from stemward.kinds import (
    FORMULATIONS,
    STANDINGS,
    Container,
    Content,
    LabelFact,
    Product,
    Registration,
    Scope,
)
from stemward.kinds.product import Force, Reading, Standing
from stemward.label.facts import STAGES
from stemward.units import EXAMPLE, METRIC

ODD_STRENGTH_G_L = 800.0
"""Above this a strength is questioned; the strongest liquids hold about 720 g ae/L (from memory)."""

FORCES: tuple[Force, ...] = get_args(Force)
WORD_MEANS = {"plant": "plant", "state only": "state", "state excluded": "state"}
"""Kinds of fact whose words are plants or states, so that they meet the words used elsewhere."""


class FactKindLike(Protocol):
    """What is needed to know of a kind of label fact."""

    @property
    def name(self) -> str: ...
    @property
    def value(self) -> str: ...
    @property
    def dimension(self) -> str: ...
    @property
    def unit(self) -> str: ...
    @property
    def choices(self) -> tuple[str, ...]: ...
    @property
    def many(self) -> bool: ...
    @property
    def not_found(self) -> str: ...
    @property
    def no_limit(self) -> str: ...
    @property
    def not_apply(self) -> str: ...


@dataclass(frozen=True)
class Known:
    """What words in a label file are compared with. states: names by postal code."""

    find_species: FindSpecies
    kinds: Mapping[str, FactKindLike]
    states: Mapping[str, str]

    def choices(self, kind: str) -> tuple[str, ...]:
        """The words of a list kind; empty if there is no such kind or it takes any words."""
        return self.kinds[kind].choices if kind in self.kinds else ()


def read_product(top: Fields, known: Known) -> Product:
    """Read one product file."""
    product = Product(
        id=top.text("id", required=True, example="glyphosate-4lb", most=60),
        name=top.text("name", required=True, example="Glyphosate 4 lb"),
        invented=top.flag("invented"),
        number=top.text("number"),
        formulation=top.choice("formulation", FORMULATIONS, required=True),  # type: ignore[arg-type]
        contents=tuple(_content(table) for table in top.tables("ingredients", required=True)),
        facts=tuple(_fact(table, known) for table in top.tables("facts")),
        registrations=tuple(_registration(table, known) for table in top.tables("registered")),
        containers=_containers(top),
        edition_label=top.text("edition_label"),
        edition_jug=top.text("edition_jug"),
    )
    if top.has("ingredients") and top.data["ingredients"] == []:
        top.add("key.empty", "ingredients", "[[ingredients]]")
    top.done()
    return product


def _content(table: Fields) -> Content:
    name = table.text("ingredient", required=True, example="glyphosate").lower()
    strength, typed = table.quantity("strength", "strength", "g_l", required=True, low=0.01, high=1500.0)
    if strength is not None and strength > ODD_STRENGTH_G_L:
        table.ask("ask.strong", "strength", ingredient=name, strength_g_l=strength)
    form = table.text("form", required=True, example="isopropylamine salt")
    table.done()
    return Content(name, form, strength or 0.0, typed)


def _containers(top: Fields) -> tuple[Container, ...]:
    tables, jugs = top.tables("containers"), []
    for table in tables:
        ident = table.text("id", required=True, example="jug 1", most=40)
        holds_ul = table.volume_ul("holds")
        left_ml, _ = table.quantity("left", "volume", "ml", high=1e10)
        left_ul = None if left_ml is None else round(left_ml * 1000)
        if holds_ul is not None and left_ul is not None and left_ul > holds_ul:
            table.add("jug.more_than_holds", "left", 'left = "38 fl oz"', id=ident)
        price = cents(table, "price")
        table.done()
        jugs.append(Container(ident, holds_ul or 0, left_ul, price))
    once(zip(tables, (jug.id for jug in jugs), strict=True))
    return tuple(jugs)


def _registration(table: Fields, known: Known) -> Registration:
    registration = Registration(
        state=state_code(table, "state", known.states, required=True),
        registered=table.flag("registered", required=True),
        looked_by=table.text("looked_by", required=True, example="owner"),
        looked_on=table.day("looked_on", required=True) or datetime.date.min,
    )
    table.done()
    return registration


def _fact(table: Fields, known: Known) -> LabelFact:
    kind = known.kinds.get(table.choice("kind", known.kinds, required=True))
    standing: Standing | Literal[""] = table.choice("standing", STANDINGS)  # type: ignore[assignment]
    if not table.has("standing"):
        standing = "says"
    value, typed = (None, "")
    if kind is not None and standing:
        _standing_fits(table, kind, standing)
        value, typed = _value(table, kind, "says" if standing == "says" else "of", known)
    table.known |= {"says", "of"}
    reading, read_by, read_on = _reading(table, kind.name if kind else "")
    fact = LabelFact(
        kind=kind.name if kind else "",
        standing=standing or "says",
        value=value,
        reading=reading,
        scope=_scope(table.table("scope"), known),
        force=table.choice("force", FORCES, default="must"),  # type: ignore[arg-type]
        typed=typed,
        page=_page(table),
        words=table.text("words", most=MOST_SIGNS_LONG),
        read_by=read_by,
        read_on=read_on,
    )
    table.done()
    return fact


def _page(table: Fields) -> str:
    page = table.data.get("page")
    if isinstance(page, int) and not isinstance(page, bool) and table.has("page"):
        return str(page)
    return table.text("page")


def _standing_fits(table: Fields, kind: FactKindLike, standing: Standing) -> None:
    if standing == "says":
        if not table.has("says"):
            table.add("fact.nothing_said", "says", _example(kind), kind=kind.name)
        if table.has("of"):
            table.add("fact.of_one_only", "of", kind=kind.name)
        return
    if table.has("says"):
        table.add("fact.says_and_denies", "standing", kind=kind.name, standing=standing)
    means = {"not found": kind.not_found, "no limit": kind.no_limit, "does not apply": kind.not_apply}
    if not means[standing]:
        allowed = ", ".join(f'"{word}"' for word in means if means[word])
        table.add("fact.no_such_negative", "standing", allowed, kind=kind.name, standing=standing)
    if table.has("of") and not kind.many:
        table.add("fact.of_one_only", "of", kind=kind.name)


def _example(kind: FactKindLike) -> str:
    if kind.value == "number":
        return f'says = "{EXAMPLE[kind.dimension]}"'
    words = {"yes-no": "yes", "choice": next(iter(kind.choices), ""), "text": "…"}
    return f'says = "{words[kind.value]}"'


def _value(table: Fields, kind: FactKindLike, key: str, known: Known) -> tuple[float | str | None, str]:
    """The value of a fact and as typed; (None, "") where there is none."""
    raw = table.data.get(key)
    if raw is None:
        return None, ""
    if kind.value == "yes-no" and isinstance(raw, bool):
        raw = "yes" if raw else "no"
    if kind.dimension == "count" and isinstance(raw, int) and not isinstance(raw, bool):
        raw = str(raw)
    if kind.value == "number" and isinstance(raw, int | float) and not isinstance(raw, bool):
        table.add("fact.needs_unit", key, _example(kind), kind=kind.name, typed=clean(str(raw)))
        return None, ""
    if not isinstance(raw, str):
        table.add("key.wrong_type", key, _example(kind), wanted="text")
        return None, ""
    if not raw.strip():
        table.add("key.empty", key, _example(kind))
        return None, ""
    typed = table.fit(key, raw.strip(), MOST_SIGNS_LONG)
    return (_said(table, kind, key, typed, known) if typed else None), typed


def _said(table: Fields, kind: FactKindLike, key: str, typed: str, known: Known) -> float | str | None:
    if kind.value == "number":
        return _number(table, kind, key, typed)
    if kind.value == "yes-no":
        return table.one_of(key, typed, YES_NO) or None
    if kind.choices:
        return table.one_of(key, typed, kind.choices) or None
    if WORD_MEANS.get(kind.name) == "plant":
        return _plant(table, key, typed, known)
    if WORD_MEANS.get(kind.name) == "state":
        return check_state(table, key, typed, known.states) or None
    return typed


def _number(table: Fields, kind: FactKindLike, key: str, typed: str) -> float | None:
    example = _example(kind)
    value = table.figure(key, typed, kind.dimension, kind.unit or METRIC[kind.dimension], example)
    if value is not None and kind.dimension == "fraction" and not 0 <= value <= 1:
        table.add("key.out_of_range", key, example, typed=clean(typed), low=0.0, high=1.0, unit="frac")
        return None
    return value


def _plant(table: Fields, key: str, typed: str, known: Known) -> str:
    """The Latin name of a plant on a label; words the handbook does not know stay as the label has them."""
    named = look_up(typed, known.find_species)
    if not named.latin:
        table.ask("ask.fact_plant", key, species=clean(typed), near=named.near)
    return named.latin or typed


def _reading(table: Fields, kind: str) -> tuple[Reading, str, datetime.date | None]:
    """How a fact came to be known: read by someone on a day, proposed, or found not to be what it says."""
    read_by, read_on = table.text("read_by"), table.day("read_on")
    proposed, denied = table.flag("proposed"), table.flag("not_what_it_says")
    by_person = table.has("read_by") or table.has("read_on")
    if denied and not proposed:
        return "not what it says", read_by, read_on
    if proposed != by_person and not denied and bool(read_by) == bool(read_on):
        return ("proposed" if proposed else "read"), read_by, read_on
    table.add("fact.reading", "", 'read_by = "owner", read_on = 2026-10-03', kind=kind)
    return "proposed", "", None


def _scope(table: Fields, known: Known) -> Scope:
    plants = tuple(_plant(table, "plants", name, known) for name in table.words("plants"))
    states = tuple(check_state(table, "state", code, known.states) for code in table.words("state"))
    scope = Scope(
        method=table.words("method", known.choices("method")),
        carrier=table.words("carrier", known.choices("carrier")),
        site=table.words("site", known.choices("site")),
        state=tuple(code for code in states if code),
        part=table.words("part"),
        plants=plants,
        role=table.words("role", STAGES),
        stem_cm=_stem(table),
        dates=_dates(table),
    )
    for key in ("method", "carrier", "site", "state", "part", "plants", "role"):
        # An empty list reads as "for none" to a person and would mean "for all" to the checks.
        if table.data.get(key) == []:
            table.add("key.empty", key)
    table.done()
    return scope


def _pair(table: Fields, key: str, expected: str) -> tuple[str, str] | None:
    value = table.raw(key, False, expected)
    if value is None:
        return None
    if isinstance(value, list) and len(value) == 2 and all(isinstance(one, str) for one in value):
        return value[0], value[1]
    table.add("key.wrong_type", key, expected, wanted="two, first and last")
    return None


def _stem(table: Fields) -> tuple[float, float] | None:
    expected = 'stem = ["0 in", "3 in"]'
    pair = _pair(table, "stem", expected)
    if pair is None:
        return None
    least, most = (table.figure("stem", typed, "length", "cm", expected) for typed in pair)
    if least is None or most is None:
        return None
    if least > most:
        table.add("fact.backward", "stem", expected, low=clean(pair[0]), high=clean(pair[1]))
        return None
    return least, most


def _dates(table: Fields) -> tuple[tuple[int, int], tuple[int, int]] | None:
    expected = 'dates = ["04-01", "07-31"]'
    pair = _pair(table, "dates", expected)
    if pair is None:
        return None
    first, last = (_month_day(typed) for typed in pair)
    if first is None or last is None:
        wrong = pair[0] if first is None else pair[1]
        table.add("key.not_a_day", "dates", expected, typed=clean(wrong))
        return None
    return first, last


def _month_day(typed: str) -> tuple[int, int] | None:
    if not re.fullmatch(r"[0-9]{2}-[0-9]{2}", typed):
        return None
    try:
        day = datetime.date.fromisoformat(f"2024-{typed}")  # a leap year, so that 02-29 is a day
    except ValueError:
        return None
    return day.month, day.day
