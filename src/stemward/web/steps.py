"""The next step of a tract as a page shows it: sentence, button, address, tally stick."""

import datetime
from typing import Any
from urllib.parse import quote

from django.urls import reverse
from django.utils.safestring import mark_safe

from stemward.drawings.tally import tally_stick
from stemward.handbook import load
from stemward.kinds import Tract
from stemward.notebook import worked
from stemward.notebook.entries import issued_code, set_aside
from stemward.notebook.models import Kept
from stemward.plan.next_step import ROWS, STEP_OF, STEPS, Matter, in_order, matters_of, step_states
from stemward.plan.open_work import open_work
from stemward.say import Speaker
from stemward.say.en import steps as words
from stemward.say.en.records import FIELDS
from stemward.say.en.stages import check_words
from stemward.say.numbers import System
from stemward.web import clock
from stemward.web.hours_taken import closed_by_forecast

MOST_OPEN = 20
LAST_COPY = "last copy elsewhere"
OLD_COPY_D = 30
"""A copy older than this is mentioned: engineering guess."""
ASIDE_D = 14
"""For how long a patch is set aside unless another day is given: engineering guess."""
CAN_WAIT = ROWS[ROWS.index("revisit_due") : ROWS.index("nothing")]
"""Rows 9 to 16 of the table: the ones before are answered, not put off."""
PLACE_OF = {"look": "land", "choose": "plan", "read the label": "shelf", "mix": "mix", "pick hours": "day",
            "work": "after", "revisit": "after"}  # fmt: skip


def step_of(tract_id: str, units: System, wait_s: float) -> dict[str, Any] | None:
    """The next step; None while the plan is not worked out."""
    land = worked.known(tract_id).land
    plan = worked.plan_of(tract_id, clock.today(land), wait_s)
    if plan is None:
        return None
    issued = issued_code(land)
    today = clock.today(land)
    shut = closed_by_forecast(tract_id, land, plan, units)
    mine = matters_of(land, plan, issued, set_aside(land, today))
    open_ = in_order([*mine, *open_work(land, load(), today), *shut])
    speaker = Speaker(plan, units)
    first = open_[0]
    sentence, button, why = _said(first, speaker)
    states = step_states(land, plan, issued)
    now = STEPS.index(STEP_OF[first.row]) if first.row != "nothing" else _first_open(states)
    said = [f"{words.STEPS[name].lower()}: {words.STATES[states[name]]}" for name in STEPS]
    return {
        "row": first.row,
        "sentence": sentence,
        "button": button,
        "address": _address(tract_id, first),
        "why": why,
        "aside": _aside(land, first),
        "open": [{"sentence": _said(one, speaker)[0], "address": _address(tract_id, one)} for one in open_[:MOST_OPEN]],
        "last_copy": _last_copy(),
        "tally": mark_safe(tally_stick([states[name] for name in STEPS], now)),
        "tally_words": words.TALLY.format(steps="; ".join(said)),
        "names": [
            {
                "words": words.STEPS[name],
                "state": "now" if n == now else states[name].replace(" ", "-"),
                "said": words.STATES[states[name]],
                "address": reverse(PLACE_OF[name], args=[tract_id]),
            }
            for n, name in enumerate(STEPS)
        ],
    }


def _aside(land: Tract, first: Matter) -> dict[str, str]:
    """The patch that can be set aside for a while instead, and until when as a rule; empty where it cannot."""
    patch = dict(first.about).get("patch", "")
    if first.row not in CAN_WAIT or not patch:
        return {}
    until = clock.today(land) + datetime.timedelta(days=ASIDE_D)
    return {"patch": patch, "name": land.patch(patch).name, "until": until.isoformat()}


def _last_copy() -> str:
    """When the notebook was last copied to be kept elsewhere, if that is long ago; or that it never was."""
    day = Kept.objects.filter(name=LAST_COPY).values_list("body", flat=True).first()
    if day is None:
        return words.NO_COPY
    days = (clock.today() - datetime.date.fromisoformat(day)).days
    return words.OLD_COPY.format(days=days) if days >= OLD_COPY_D else ""


def _first_open(states: dict[str, str]) -> int:
    return next((n for n, name in enumerate(STEPS) if states[name] != "done"), len(STEPS) - 1)


def _said(one: Matter, speaker: Speaker) -> tuple[str, str, str]:
    """Sentence, button and why of a matter."""
    values: dict[str, Any] = dict(one.values)
    key = one.row
    if key == "count" and not values.get("patch"):
        key = "count_none"
    if key == "find_out" and "places" in values:
        key = "find_out_read"
    elif key == "find_out":
        said = speaker.finding(speaker.plan["findings"][int(values["finding"])])
        values["what"] = said.do or said.text.rstrip(".")
    if "amount_ml" in values:
        values["amount"] = speaker.number("amount_ml", float(values["amount_ml"]))
    if "field" in values:
        left = int(values["left_d"])
        key = "record_late" if left < 0 else "record_today" if left == 0 else key
        values |= {"missing": lower_first(FIELDS[str(values["field"])]), "left": abs(left)}
    if "check" in values:
        values["check"] = check_words(str(values["check"]))
    sentence, button, why = words.ROWS[key]
    return sentence.format(**values), button, why


def lower_first(text: str) -> str:
    """Words within a sentence."""
    return text[:1].lower() + text[1:]


def _address(tract_id: str, one: Matter) -> str:
    about = dict(one.about)
    if one.row == "count":
        return (
            reverse("patch", args=[tract_id, about["patch"]]) + "#count"
            if about
            else reverse("add-patch", args=[tract_id])
        )
    if one.row == "kept":
        return reverse("patch", args=[tract_id, about["patch"]]) + "#kept"
    if one.row == "find_out" and about.get("product"):
        return reverse("label", args=[tract_id, about["product"]])
    if one.row in ("choose", "stopped", "find_out"):
        return reverse("ways", args=[tract_id, about["patch"], about["species"], about["state"]])
    if one.row == "cut_untreated":
        return reverse("evening", args=[tract_id])
    if one.row == "marked_only":
        return reverse("evening", args=[tract_id]) + f"?marked={about['day']}"
    if one.row == "marks_differ":
        return reverse("phones", args=[tract_id]) + "#unlike"
    if one.row == "revisit_due":
        return reverse("revisit", args=[tract_id]) + f"?of={quote(about['work'], safe='')}"
    if one.row == "mix_left":
        return reverse("after", args=[tract_id])
    if one.row == "record_open":
        return reverse("record-day", args=[tract_id, about["day"]])
    if one.row == "hours_shut":
        return reverse("hours", args=[tract_id])
    if one.row == "nothing":
        return reverse("packet", args=[tract_id])
    return reverse("mix" if one.row == "changed" else "plan", args=[tract_id])
