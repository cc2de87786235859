"""Was anything read that can be true but seldom is, such as a stem of six feet or a place in degrees?"""

from collections.abc import Iterator

from stemward.checks.case import Case, Check, finding
from stemward.kinds import Evidence, Finding, Weight

ID = "doubts"
NO_DOUBT = ("ask.not_read", "ask.kind_not_counted", "ask.choice_unused")
"""What is only said, because no number of the plan leans on it."""


def run(case: Case) -> Iterator[Finding]:
    """One finding a question that reading left open; the plan leans on what was read all the same."""
    for number, question in enumerate(case.tract.questions):
        if question.message in NO_DOUBT:
            continue
        line = f"line {question.line}" if question.line else ""
        where = Evidence("file", line, question.file)
        yield finding(ID, Weight.FIND_OUT, "doubtful", evidence=[where], number=number)


CHECK = Check(
    ID,
    "a plan worked out from the wrong unit or place",
    ("files read",),
    ("Common practice, no source: look twice at what is implausible",),
    run,
)
