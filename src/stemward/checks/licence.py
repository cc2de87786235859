"""Does this work need a licence here?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, finding
from stemward.kinds import Evidence, Finding, Weight

ID = "licence"
TOPIC = {"hire": "licence for hire", "public": "licence on public land", "adviser": "licence to advise"}


def run(case: Case) -> Iterator[Finding]:
    """One finding a plan that uses a product, by who does the work."""
    if not any(True for _ in case.treated):
        return
    who, state = case.tract.who, case.tract.state
    if who == "own":
        yield finding(ID, Weight.CHECKED, "own_land")
    elif who == "unknown":
        yield finding(ID, Weight.FIND_OUT, "who_unknown")
    else:
        rules = case.book.state_rules(state, TOPIC[who]) if state else ()
        seen = [Evidence(rule.cited.id, rule.cited.place, rule.cited.source) for rule in rules]
        values = {"state": state or "the state", "work": WORK[who], "rule": rules[0].what if rules else ""}
        yield finding(ID, Weight.FIND_OUT, "rule" if rules else "ask", None, seen, values=values)


WORK = {"hire": "work for pay", "public": "work on public land", "adviser": "advice for pay"}

CHECK = Check(
    ID,
    "people who do for pay, or on public land, what needs a licence",
    ("plan", "state rules"),
    ("State rules, each in its own dated row; federal certification is for restricted-use products only",),
    run,
)
