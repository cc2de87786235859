"""What is in a jug, and what its label says."""

import datetime
from dataclasses import dataclass
from typing import Literal

UL_PER_ML = 1000
"""Counted-out amounts are whole microlitres."""

Formulation = Literal["salt in water", "acid in water", "ester", "ready-to-use oil", "ready-to-use water", "dry"]
FORMULATIONS: tuple[Formulation, ...] = (
    "salt in water",
    "acid in water",
    "ester",
    "ready-to-use oil",
    "ready-to-use water",
    "dry",
)

Standing = Literal["says", "not found", "no limit", "does not apply"]
STANDINGS: tuple[Standing, ...] = ("says", "not found", "no limit", "does not apply")

Reading = Literal["proposed", "read", "not what it says"]

Force = Literal["must", "should", "avoid"]


@dataclass(frozen=True, slots=True)
class Scope:
    """What a label fact is for. An empty tuple or None means: for all.

    stem_cm: least and greatest stem diameter; dates: first and last (month, day), may wrap over New Year.
    """

    method: tuple[str, ...] = ()
    carrier: tuple[str, ...] = ()
    site: tuple[str, ...] = ()
    state: tuple[str, ...] = ()
    part: tuple[str, ...] = ()
    plants: tuple[str, ...] = ()
    role: tuple[str, ...] = ()
    stem_cm: tuple[float, float] | None = None
    dates: tuple[tuple[int, int], tuple[int, int]] | None = None


@dataclass(frozen=True, slots=True)
class LabelFact:
    """One thing a label says, with its place on the page and who read it.

    kind: a name from the closed list in `stemward.label.facts`. value: metric number, word, or None where the
    standing is not "says" and the kind takes no value. A fact counts only when reading is "read".
    """

    kind: str
    standing: Standing
    value: float | str | None
    reading: Reading
    scope: Scope = Scope()
    force: Force = "must"
    typed: str = ""
    page: str = ""
    words: str = ""
    read_by: str = ""
    read_on: datetime.date | None = None


@dataclass(frozen=True, slots=True)
class Content:
    """One ingredient of a product: its form and strength in grams of acid equivalent per litre."""

    ingredient: str
    form: str
    strength_ae_g_l: float
    typed: str = ""


@dataclass(frozen=True, slots=True)
class Registration:
    """Whether a state has the product on its list, who looked and when."""

    state: str
    registered: bool
    looked_by: str
    looked_on: datetime.date


@dataclass(frozen=True, slots=True)
class Container:
    """A jug on the shelf. Integer microlitres; left_ul None when nobody has looked. price_cents: of a full jug."""

    id: str
    capacity_ul: int
    left_ul: int | None
    price_cents: int | None = None


@dataclass(frozen=True, slots=True)
class Product:
    """What is in a jug: ingredients with form and strength, formulation, number, label facts, jugs."""

    id: str
    name: str
    invented: bool
    number: str
    formulation: Formulation
    contents: tuple[Content, ...]
    facts: tuple[LabelFact, ...] = ()
    registrations: tuple[Registration, ...] = ()
    containers: tuple[Container, ...] = ()
    edition_label: str = ""
    edition_jug: str = ""
