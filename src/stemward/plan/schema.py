"""The shape of a plan's JSON file as JSON Schema (draft 2020-12), from the value types and the tables below."""

import types
import typing
from dataclasses import fields, is_dataclass
from typing import Any, Literal, Union, get_args, get_origin

from stemward.kinds import Cited, Finding, Step, Weight

Schema = dict[str, Any]

TEXT: Schema = {"type": "string"}
NUMBER: Schema = {"type": "number"}
WHOLE: Schema = {"type": "integer"}
FLAG: Schema = {"type": "boolean"}
MAYBE: Schema = {"type": ["number", "null"]}
MAYBE_WHOLE: Schema = {"type": ["integer", "null"]}
VALUES: Schema = {"type": "object", "additionalProperties": {"type": ["string", "number", "integer"]}}


def record(properties: dict[str, Schema], optional: tuple[str, ...] = ()) -> Schema:
    """An object with these properties and no others."""
    return {
        "type": "object",
        "properties": properties,
        "required": sorted(set(properties) - set(optional)),
        "additionalProperties": False,
    }


def many(items: Schema) -> Schema:
    """A list of such things."""
    return {"type": "array", "items": items}


def of(kind: Any) -> Schema:
    """The schema of a value type of `kinds` or of a plain annotation. TypeError for a type it does not know."""
    if is_dataclass(kind):
        hints = typing.get_type_hints(kind)
        return record({f.name: of(hints[f.name]) for f in fields(kind)})
    origin, args = get_origin(kind), get_args(kind)
    if origin is Literal:
        return {"enum": list(args)}
    if origin in (Union, types.UnionType):
        return {"anyOf": [of(arg) for arg in args]}
    if origin is tuple:
        return many(of(args[0]))
    plain = {str: TEXT, float: NUMBER, int: WHOLE, bool: FLAG, type(None): {"type": "null"}}
    if kind not in plain:
        raise TypeError(f"no schema for {kind}")
    return plain[kind]


_WAY = {
    "how": TEXT, "first": TEXT, "product": TEXT, "concentration_frac": MAYBE, "carrier": TEXT, "tool": TEXT,
    "partner": TEXT, "partner_frac": MAYBE,
}  # fmt: skip
_OF_TEN = {"low": MAYBE_WHOLE, "high": MAYBE_WHOLE, "wide": FLAG, "trials": WHOLE, "evidence_kind": WHOLE,
           "own_dead": WHOLE, "own_seen": WHOLE, "books_low": MAYBE_WHOLE, "books_high": MAYBE_WHOLE}  # fmt: skip

WEIGHED = record(
    {
        **_WAY, **_OF_TEN, "stops": WHOLE, "to_find_out": WHOLE, "evidence_tier": WHOLE, "reach": WHOLE,
        "on_shelf": FLAG, "need_ml": NUMBER, "ae_g": NUMBER, "hours_low": NUMBER, "hours_high": NUMBER, "when": TEXT,
        "hours_days": WHOLE,
        "money_low_cents": MAYBE_WHOLE, "money_high_cents": MAYBE_WHOLE,
        "stopped_by": many(record({"check": TEXT, "message": TEXT, "values": VALUES})),
    }
)  # fmt: skip

BEHIND = record(
    {
        **_OF_TEN, "tier": WHOLE, "worth": NUMBER, "others_worth": NUMBER,
        "rows": many(record(dict.fromkeys(("id", "kind", "rating", "typed", "season", "source"), TEXT))),
    }
)  # fmt: skip

TREATMENT = record(
    {
        **_WAY, "id": TEXT, "patch": TEXT, "patch_name": TEXT, "species": TEXT, "common": TEXT, "state": TEXT,
        "product_name": TEXT, "partner_name": TEXT, "ring_cm": MAYBE, "chosen_by": {"enum": ["person", "rule"]},
        "ingredients": many(record({"ingredient": TEXT, "form": TEXT, "strength_ae_g_l": NUMBER, "typed": TEXT})),
        "rule": many(TEXT), "suggested": WEIGHED, "ways": many(WEIGHED), "behind": BEHIND,
        "laid_out": record(
            {
                "pinned": many(WHOLE), "more": WHOLE,
                "groups": many(record({"group": TEXT, "ways": many(WHOLE)})),
            }
        ),
        "cautions": TEXT, "verdict_months": WHOLE, "stems": WHOLE, "rows": WHOLE, "need_ml": NUMBER,
        "reckoned_h": NUMBER,
        "ae_g": {"type": "object", "additionalProperties": NUMBER},
        "need_low_ml": NUMBER, "need_high_ml": NUMBER, "least_ml": NUMBER, "most_ml": NUMBER, "rows_ml": NUMBER,
        "typical": record(
            {
                "id": TEXT, "diameter_cm": NUMBER, "mix_ml": NUMBER, "cuts": MAYBE_WHOLE, "wet_cm2": MAYBE,
                "height_m": MAYBE,
            }
        ),
        "stages": many(
            record(
                {"stage": TEXT, "wait_days": NUMBER, "minutes": NUMBER, "from": TEXT, "page": TEXT},
                ("wait_days", "minutes", "from", "page"),
            )
        ),
    },
    ("need_low_ml", "need_high_ml", "least_ml", "most_ml", "rows_ml", "typical"),
)  # fmt: skip

PART = record({"what": TEXT, "ml": NUMBER, "measure": TEXT, "mark_ml": NUMBER, "fills": WHOLE})
BATCH = record(
    {
        "number": WHOLE, "assigned_ml": NUMBER, "mixed_ml": NUMBER, "left_over_ml": NUMBER,
        "concentration_frac": NUMBER, "parts": many(PART), "refused": TEXT,
        "would_do": {"anyOf": [record({"name": TEXT, "mark_ml": NUMBER}), {"type": "null"}]},
    },
    ("mixed_ml", "left_over_ml", "concentration_frac", "parts", "refused", "would_do"),
)  # fmt: skip
MIX = record(
    {
        "id": TEXT, "product": TEXT, "product_name": TEXT, "concentration_frac": NUMBER, "lowest_frac": NUMBER,
        "highest_frac": NUMBER, "carrier": TEXT, "partner": TEXT, "partner_name": TEXT, "partner_frac": MAYBE,
        "surfactant": FLAG, "treatments": many(TEXT), "need_ml": NUMBER, "need_low_ml": NUMBER,
        "need_high_ml": NUMBER, "vessel": record({"id": TEXT, "capacity_ml": NUMBER}),
        "ae_g_l": {"type": "object", "additionalProperties": NUMBER}, "mixed_ml": NUMBER, "left_over_ml": NUMBER,
        "short_chance_frac": NUMBER, "expected_left_ml": NUMBER, "product_ml": NUMBER, "batches": many(BATCH),
        "learned": {
            "anyOf": [
                record({"factor": NUMBER, "batches": WHOLE, "people": WHOLE, "person": TEXT,
                        "each": many(record({"person": TEXT, "factor": NUMBER}))}),
                {"type": "null"},
            ]
        },
    }
)  # fmt: skip

GEAR = record(
    {
        "by_role": {"type": "object", "additionalProperties": many(record({"item": TEXT, "page": TEXT}))},
        "gloves": many(TEXT), "gloves_said": FLAG, "kit": many(record({"for": TEXT, "item": TEXT})),
    }
)  # fmt: skip


RANGE = record({"mean": NUMBER, "low": NUMBER, "high": NUMBER})
SURVEY = record(
    {
        "patch": TEXT, "patch_name": TEXT, "species": TEXT, "common": TEXT, "plots": WHOLE, "why_not": TEXT,
        "stems": {"anyOf": [RANGE, {"type": "null"}]}, "mix_ml": RANGE, "each_ml": NUMBER, "plots_needed": MAYBE_WHOLE,
    },
    ("mix_ml", "each_ml", "plots_needed"),
)  # fmt: skip


def _finding() -> Schema:
    """A finding; weight is a word and values an object in the file."""
    hints = typing.get_type_hints(Finding)
    own: dict[str, Schema] = {"weight": {"enum": [weight.word for weight in Weight]}, "values": VALUES}
    return record({f.name: own.get(f.name) or of(hints[f.name]) for f in fields(Finding)})


def _step() -> Schema:
    """A worked sum; inputs are an object in the file, and the value a number or a list with one for each stem."""
    own: dict[str, Schema] = {
        "inputs": {"type": "object", "additionalProperties": TEXT},
        "value": {"anyOf": [NUMBER, many(MAYBE)]},
    }
    return record({f.name: own.get(f.name, TEXT) for f in fields(Step)})


def plan_schema() -> Schema:
    """The schema of a whole plan."""
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "A plan drawn up by Stemward",
        **record(
            {
                "code": {"type": "string", "pattern": "^[0-9A-Z]{2}-[0-9A-Z]{2}$"},
                "as_of": {"type": "string", "format": "date"},
                "tract": {"type": "object", "required": ["name", "patches", "products", "spared", "people", "asked"]},
                "treatments": many(TREATMENT),
                "mixes": many(MIX),
                "findings": many(_finding()),
                "steps": many(_step()),
                "cited": many(of(Cited)),
                "columns": {"type": "object", "additionalProperties": {"type": "object"}},
                "numbers": {
                    "type": "object",
                    "additionalProperties": {"type": "object", "additionalProperties": NUMBER},
                },
                "hashes": {"type": "object", "additionalProperties": TEXT},
                "gear": GEAR,
                "surveys": many(SURVEY),
            }
        ),
    }
