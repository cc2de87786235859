"""What past work teaches about the next: how much is really put on, and how long it really takes."""

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from stemward.kinds import Cited, Entry, Tract
from stemward.ledger import in_force
from stemward.reckon.use_rate import PRIOR, UseRate, learn, need_quantile_ml, start_from

Ratios = Mapping[str, tuple[float, ...]]
"""ln(used / reckoned) of each batch, by person."""
MIDDLE, LOW, HIGH = 0.5, 0.16, 0.84
"""The middle, and the ends between which two of three days fall, as far as one standard deviation."""


@dataclass(frozen=True, slots=True)
class Learned:
    """What is believed of one method, from how many batches or days of how many people. person: whose rate it is,
    "" where several people worked and the next one may be any. each: what is believed of each of several, as the
    middle factor on what is reckoned."""

    rate: UseRate
    count: int
    people: int
    person: str = ""
    each: tuple[tuple[str, float], ...] = ()

    def factor(self, share: float) -> float:
        """The factor on what is reckoned that this share of days stays under."""
        return need_quantile_ml(self.rate, 1.0, share)


def use_ratios(entries: Iterable[Entry], method: str) -> Ratios:
    """ln(used / reckoned) of every batch that a method used, by the person with the bottle, in order of time."""
    used: dict[tuple[str, str], list[float]] = {}
    for entry in in_force(entries):
        body = entry.body
        if entry.kind == "treated" and body.get("method") == method and body.get("mix_ml") and body.get("reckoned_ml"):
            key = (_person(entry), str(body.get("batch") or entry.id))
            have = used.setdefault(key, [0.0, 0.0])
            have[0] += body["mix_ml"]
            have[1] += body["reckoned_ml"]
    return _by_person({key: math.log(mix / reckoned) for key, (mix, reckoned) in used.items()})


def hour_ratios(entries: Iterable[Entry], method: str) -> Ratios:
    """ln(hours / reckoned hours) of every day that a method was worked, by person."""
    found: dict[tuple[str, str], float] = {}
    for entry in in_force(entries):
        body = entry.body
        if entry.kind == "work" and body.get("method") == method and body["person_h"] and body.get("reckoned_h"):
            found[(_person(entry), entry.id)] = math.log(body["person_h"] / body["reckoned_h"])
    return _by_person(found)


def _person(entry: Entry) -> str:
    people = entry.body.get("people") or [entry.by]
    return str(people[0])


def _by_person(found: Mapping[tuple[str, str], float]) -> Ratios:
    by: dict[str, list[float]] = {}
    for (person, _), ratio in found.items():
        by.setdefault(person, []).append(ratio)
    return {person: tuple(ratios) for person, ratios in by.items()}


def learned(ratios: Ratios) -> Learned | None:
    """What is believed of the next day of the one person who worked, or of someone beside several; None for nothing."""
    if not ratios:
        return None
    count = sum(map(len, ratios.values()))
    if len(ratios) == 1:
        ((person, own),) = ratios.items()
        return Learned(learn(PRIOR, own), count, 1, person)
    each = tuple((person, need_quantile_ml(of_person(ratios, person), 1.0, MIDDLE)) for person in ratios)
    return Learned(start_from(list(ratios.values())), count, len(ratios), each=each)


def of_person(ratios: Ratios, person: str) -> UseRate:
    """What is believed of one person's next day, from their own batches and those of the others."""
    return learn(start_from([own for name, own in ratios.items() if name != person]), ratios.get(person, ()))


def use_of(tract: Tract, method: str) -> Learned | None:
    """What past batches teach about how much a method takes here."""
    return learned(use_ratios(tract.entries, method))


def hours_of_days(tract: Tract, method: str) -> Learned | None:
    """What past days teach about how long a method takes here."""
    return learned(hour_ratios(tract.entries, method))


def cited(name: str, value: float, of: Learned) -> Cited:
    """A learned number as one that a plan leans on, with what stands behind it."""
    who = f"of {of.person}" if of.person else f"of {of.people} people"
    what = "batch" if of.count == 1 else "batches"
    return Cited(name, value, "", f"your own records: {of.count} {what} {who}", "", "own", "")
