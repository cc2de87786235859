"""What is asked about each piece of a tract, in one table: a form follows from it, and a piece from the form.

A field's path says where its words stand in the piece ("soil.texture"). An empty field takes the words away. Whether
what was typed can be read is decided by room `gate`, for pages and folders alike.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Literal

from django.http import QueryDict

from stemward.gate.tract_toml import DOES, WHO
from stemward.kinds import FORMULATIONS, PLACES, SITE_QUESTIONS
from stemward.kinds.columns import SPARED_KINDS
from stemward.kinds.plan import CARRIERS
from stemward.label.facts import EQUIPMENT, VESSELS
from stemward.say.en import findings
from stemward.say.en.forms import LABELS, OPTIONS

Kind = Literal["text", "choice", "many", "answer", "flag", "radio"]
ANSWERS = ("yes", "no", "unknown")


@dataclass(frozen=True, slots=True)
class Field:
    """One thing that is asked. path: dotted place in the piece. options: words to choose from.

    hint: an example or why it is asked. more: folded away behind "More".
    """

    path: str
    label: str
    kind: Kind = "text"
    options: tuple[str, ...] = ()
    hint: str = ""
    more: bool = False
    short: bool = False

    @property
    def name(self) -> str:
        """Name of the input."""
        return self.path

    def shown(self, option: str) -> str:
        """An option as it is shown."""
        return OPTIONS.get(option, option)


def _questions() -> tuple[Field, ...]:
    return tuple(
        Field(f"answers.{name}", findings.QUESTIONS.get(name, name.replace("_", " ")), "answer", ANSWERS, more=True)
        for name in SITE_QUESTIONS
    )


FORMS: dict[str, tuple[Field, ...]] = {
    "tract": (
        Field("name", "Name of the land", hint="Back forty"),
        Field("state", "State", hint="two letters: WI. Products are registered state by state.", short=True),
        Field("place", "County or nearest town"),
        Field("who", "Whose land is it, and who does the work?", "radio", WHO),
        Field("wage", "What an hour of work costs, in dollars", hint="18.50. Used for money bands only.", short=True, more=True),
        Field("time_zone", "Time zone", hint="America/Chicago", more=True),
        Field("emergency.where", "Where help should come, as one would say it on the phone", hint="123 Lane Road, gate on the left"),
        Field("emergency.directions", "Directions in words", more=True),
        Field("mixing_place.x", "Mixing place, east of the corner", hint="40 ft", more=True, short=True),
        Field("mixing_place.y", "Mixing place, north of the corner", hint="120 ft", more=True, short=True),
    ),
    "patch": (
        Field("name", "Name of the patch", hint="Back fence"),
        Field("places", "What kind of place is it?", "many", PLACES, hint="The label must name the kind of place."),
        Field("area", "Its area, if you know it", hint="1.5 ac, or 300 ft by 200 ft as 60000 ft2", short=True),
        *_questions(),
        Field("soil.texture", "Soil", hint="silt loam", more=True),
        Field("soil.organic_matter", "Organic matter", hint="3 %", more=True, short=True),
        Field("soil.over", "What lies under it", hint="deep clay; fractured rock", more=True),
    ),
    "person": (
        Field("role", "Who, by role", hint="owner; helper; crew 1. No names are needed."),
        Field("does", "Does", "many", DOES),
        Field("gear", "Wears or has", "many", EQUIPMENT),
        Field("certified", "Licensed or certified to apply pesticides?", "answer", ANSWERS),
    ),
    "vessel": (
        Field("id", "Name of the bottle or tank", hint="squirt bottle"),
        Field("capacity", "Holds", hint="24 fl oz", short=True),
        Field("lining", "Made of", "choice", VESSELS),
    ),
    "measure": (
        Field("id", "Name of the measure", hint="syringe. Nothing from the kitchen."),
        Field("mark", "Smallest mark", hint="0.2 mL", short=True),
        Field("capacity", "Holds", hint="5 mL", short=True),
    ),
    "calibration": (
        Field("tool", "Tool", hint="squirt bottle"),
        Field("per_stroke", "One squirt gives", hint="Count 20 squirts into a measure: 18 mL by 20 is 0.9 mL", short=True),
        Field("by", "Counted by"),
        Field("on", "On", hint="2026-09-12", short=True),
    ),
    "spared": (
        Field("properties.kind", "What is it?", "radio", SPARED_KINDS),
        Field("properties.species", "Which plant", hint="bur oak; empty for what is no plant"),
        Field("properties.dbh_in", "Inches across at breast height", hint="14", short=True),
        Field("properties.note", "Anything else"),
    ),
    "product": (
        Field("name", "What you call it", hint="the blue jug in the shed"),
        Field("number", "Number after EPA Reg. No.", hint="as it stands on the jug", short=True),
        Field("formulation", "What kind of liquid is it?", "radio", FORMULATIONS),
        Field("edition_label", "Edition or date on the label you read", hint="bottom corner", more=True),
        Field("edition_jug", "Edition or date on the jug", more=True),
    ),
    "choice": (
        Field("concentration", "Strength, product in finished mix", hint="50 %", short=True),
        Field("carrier", "Mixed in", "choice", CARRIERS),
        Field("tool", "With", hint="squirt bottle"),
        Field("ring", "Ring wetted, inside the bark", hint="2 in", short=True),
    ),
}  # fmt: skip
NUMBERS = ("properties.dbh_in",)
"""Paths whose words are numbers in the piece, since GeoJSON has numbers."""


def value_at(body: Mapping[str, Any], path: str) -> Any:
    """What stands at a path; None where nothing does."""
    found: Any = body
    for part in path.split("."):
        if not isinstance(found, Mapping) or part not in found:
            return None
        found = found[part]
    return found


def fields_of(kind: str, body: Mapping[str, Any], typed: QueryDict | None = None) -> list[dict[str, Any]]:
    """The fields of a piece for the form, with what stands there or what was typed and not taken."""
    return [_shown(field, body, typed) for field in FORMS[kind]]


def _shown(field: Field, body: Mapping[str, Any], typed: QueryDict | None) -> dict[str, Any]:
    if typed is not None:
        have = typed.getlist(field.name) if field.kind == "many" else typed.get(field.name, "")
    else:
        have = value_at(body, field.path)
    if field.kind == "many":
        chosen = [str(one) for one in have or ()]
    else:
        chosen = ["" if have is None else str(have)]
    return {
        "name": field.name,
        "id": f"f-{field.name.replace('.', '-')}",
        "label": LABELS.get(field.path, field.label),
        "kind": field.kind,
        "hint": field.hint,
        "more": field.more,
        "short": field.short,
        "value": chosen[0] if chosen else "",
        "options": [
            {
                "value": one,
                "words": field.shown(one),
                "on": one in chosen,
                "id": f"f-{field.name}-{n}".replace(".", "-"),
            }
            for n, one in enumerate(field.options)
        ],
    }


def body_from(kind: str, body: Mapping[str, Any], typed: QueryDict) -> dict[str, Any]:
    """A piece with what was typed put in, and the rest as it was. Fields that were not sent stay as they are."""
    made = _copied(body)
    for field in FORMS[kind]:
        if field.kind == "many":
            if f"{field.name}-asked" in typed:
                _put(made, field.path, [one for one in typed.getlist(field.name) if one in field.options] or None)
        elif field.name in typed:
            words = typed.get(field.name, "").strip()
            _put(made, field.path, _number(words) if words and field.path in NUMBERS else words or None)
    return made


def _number(words: str) -> float | str:
    try:
        return float(words)
    except ValueError:
        return words  # the reader says what is wrong with it


def _copied(value: Any) -> Any:
    if isinstance(value, Mapping):
        return {key: _copied(one) for key, one in value.items()}
    return list(value) if isinstance(value, list) else value


def _put(body: dict[str, Any], path: str, value: Any) -> None:
    *above, last = path.split(".")
    for part in above:
        if value is None and part not in body:
            return
        body = body.setdefault(part, {})
    if value is None:
        body.pop(last, None)
    else:
        body[last] = value
