"""Which of a label's facts decide for one treatment: the one place where scopes are weighed."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from stemward.kinds import LabelFact, Scope
from stemward.label.facts import KINDS

Outcome = Literal["decided", "differ", "proposed", "unread"]


@dataclass(frozen=True, slots=True)
class Situation:
    """The treatment a fact may be for. Empty words mean: not known, so only unscoped facts cover it.

    stem_cm: least and greatest diameter of the stems treated. date: (month, day) or None.
    """

    method: str = ""
    carrier: str = ""
    site: str = ""
    state: str = ""
    part: str = ""
    plant: str = ""
    role: str = ""
    stem_cm: tuple[float, float] | None = None
    date: tuple[int, int] | None = None


@dataclass(frozen=True, slots=True)
class Resolved:
    """What a label says on one matter.

    outcome: decided (one standing and value), differ (facts of scopes that do not nest and disagree),
    proposed (only unread proposals), unread (nobody has looked). facts: those that decide, never empty when
    decided or differ.
    """

    outcome: Outcome
    facts: tuple[LabelFact, ...] = ()

    @property
    def fact(self) -> LabelFact | None:
        """The deciding fact, None unless decided."""
        return self.facts[0] if self.outcome == "decided" else None


_LISTS = (
    ("method", "method"),
    ("carrier", "carrier"),
    ("site", "site"),
    ("state", "state"),
    ("part", "part"),
    ("plants", "plant"),
    ("role", "role"),
)


def _date_in(date: tuple[int, int], span: tuple[tuple[int, int], tuple[int, int]]) -> bool:
    first, last = span
    if first <= last:
        return first <= date <= last
    return date >= first or date <= last


def covers(scope: Scope, situation: Situation) -> bool:
    """True if a fact of this scope is for this treatment.

    A scope that names something of which the situation knows nothing does not cover it. A scope of stem sizes
    covers if any stem treated falls within it: a limit for some of the stems is a limit here.
    """
    for in_scope, in_situation in _LISTS:
        wanted: tuple[str, ...] = getattr(scope, in_scope)
        if wanted and getattr(situation, in_situation) not in wanted:
            return False
    if scope.stem_cm is not None:
        if situation.stem_cm is None:
            return False
        if situation.stem_cm[0] > scope.stem_cm[1] or situation.stem_cm[1] < scope.stem_cm[0]:
            return False
    if scope.dates is not None:
        return situation.date is not None and _date_in(situation.date, scope.dates)
    return True


def nests(inner: Scope, outer: Scope) -> bool:
    """True if every treatment that `inner` covers is covered by `outer` as well."""
    for name, _ in _LISTS:
        inside, outside = set(getattr(inner, name)), set(getattr(outer, name))
        if outside and (not inside or not inside <= outside):
            return False
    if outer.stem_cm is not None:
        if inner.stem_cm is None:
            return False
        if inner.stem_cm[0] < outer.stem_cm[0] or inner.stem_cm[1] > outer.stem_cm[1]:
            return False
    return outer.dates is None or inner.dates == outer.dates


def _narrowest(facts: list[LabelFact]) -> list[LabelFact]:
    def beaten(fact: LabelFact) -> bool:
        return any(
            other is not fact and nests(other.scope, fact.scope) and not nests(fact.scope, other.scope)
            for other in facts
        )

    return [fact for fact in facts if not beaten(fact)]


def resolve(facts: Iterable[LabelFact], kind: str, situation: Situation, of: str | None = None) -> Resolved:
    """What the label says on one matter for one treatment.

    facts: all facts of one product. kind: a name of the closed list (KeyError otherwise). of: for lists, the
    word asked about ("wet" among the sites); a negative without a word counts for every word.
    The narrowest scope that covers the treatment wins; of scopes that do not nest all are given, and if they
    say different things the outcome is "differ", never the laxer. What is forbidden or required anywhere that
    covers the treatment stays so, however narrow another scope is. Only facts that a person has read decide.
    """
    many, sense = KINDS[kind].many, KINDS[kind].sense
    about = [f for f in facts if f.kind == kind and f.reading != "not what it says" and covers(f.scope, situation)]
    if many and of is not None:
        about = [f for f in about if f.value == of or (f.value is None and f.standing != "says")]
    read = [f for f in about if f.reading == "read"]
    if not read:
        return Resolved("proposed" if about else "unread", tuple(about))
    deciding = read if many and sense in ("forbidden", "required") else _narrowest(read)
    if many and any(f.standing == "says" for f in deciding):
        # "not found" as a whole means the list is empty; a word that was found is the better knowledge.
        deciding = [f for f in deciding if f.standing == "says"]
    said = {(f.standing, f.value, f.force) for f in deciding}
    if len(said) == 1 or (many and of is None):
        return Resolved("decided", tuple(deciding))
    return Resolved("differ", tuple(deciding))


def listed(facts: Iterable[LabelFact], kind: str, situation: Situation | None) -> tuple[LabelFact, ...]:
    """All read facts of a list kind that cover the treatment and say something, in the label's order.

    situation None: of the whole label, whatever treatment they are for.
    """
    return tuple(
        f
        for f in facts
        if f.kind == kind
        and f.reading == "read"
        and f.standing == "says"
        and (situation is None or covers(f.scope, situation))
    )
