"""Make the pages that follow from the code: checks, formulae, commands, kinds of label facts, files of a tract folder.

    python tools/make_docs.py [--check]

With --check nothing is written; exit status 1 if a page is stale.
"""

import inspect
import io
import json
import sys
from contextlib import redirect_stdout, suppress
from pathlib import Path

from stemward.checks import ALL, RETIRED
from stemward.cli import COMMANDS, parser_for
from stemward.handbook import load
from stemward.kinds import ENTRY_KINDS, PLACES, SITE_QUESTIONS, TABLES
from stemward.label import KINDS
from stemward.plan.formulae import FORMULAE, VERSION
from stemward.plan.schema import plan_schema
from stemward.say import en
from stemward.say.en.records import FIELDS

DOCS = Path(__file__).parent.parent / "docs"
MADE = "<!-- Made by tools/make_docs.py; changes here are lost. -->\n"


def checks() -> str:
    """Every check: what it protects, what it needs, what it can say, and who says so."""
    parts = [MADE, "# Checks\n", "In order of what a mistake would cost. `{...}` stands for the plan's own figures.\n"]
    for check in ALL:
        doc = inspect.getdoc(inspect.getmodule(check.run)) or ""
        parts.append(f"## {check.id}\n\n{doc}\n")
        parts.append(f"Protects: {check.protects}. Needs: {', '.join(check.needs)}.\n")
        said = [(m, t, d) for m, (t, d) in en.findings.MESSAGES.items() if m.startswith(f"{check.id}.")]
        parts.append("".join(f"- `{m}`: {t}{f' **Do:** {d}.' if d else ''}\n" for m, t, d in said))
        parts.append("Sources: " + "; ".join(check.sources) + ".\n")
    parts.append("## Said by several checks\n")
    parts.append("".join(f"- `{m}`: {t} **Do:** {d}.\n" for m, (t, d) in en.findings.OPEN.items()))
    if RETIRED:
        parts.append("## Retired ids\n\n" + ", ".join(RETIRED) + "\n")
    return "\n".join(parts)


def formulae() -> str:
    """Every formula a plan may lean on."""
    parts = [MADE, "# Formulae\n", f"Version {VERSION}. `stemward verify` works them again from a plan's file.\n"]
    for name, function in FORMULAE.items():
        where = f"{function.__module__.removeprefix('stemward.')}.{function.__name__}"
        parts.append(f"## {name}\n\n`{where}{inspect.signature(function)}`\n\n{inspect.getdoc(function)}\n")
    return "\n".join(parts)


def commands() -> str:
    """The help of every command, as it is printed."""
    parts = [MADE, "# Commands\n"]
    for name in COMMANDS:
        out = io.StringIO()
        with redirect_stdout(out), suppress(SystemExit):
            parser_for([name]).parse_args([name, "--help"])
        parts.append(f"## stemward {name}\n\n```\n{out.getvalue().strip()}\n```\n")
    return "\n".join(parts)


def fact_kinds() -> str:
    """The closed list of label facts, as the end of the page on them."""
    rows = ["| kind | sense | value | unit | many | typed first |", "|---|---|---|---|---|---|"]
    for kind in KINDS.values():
        value = ", ".join(kind.choices) if kind.choices else kind.value
        unit = kind.unit.replace("_", "/") if kind.unit else ""
        many, typed = ("yes" if flag else "" for flag in (kind.many, kind.typed))
        rows.append(f"| {kind.name} | {kind.sense} | {value} | {unit} | {many} | {typed} |")
    return "\n".join(rows) + "\n"


def tract_folder() -> str:
    """The files of a tract folder, columns from their one declaration."""
    parts = [MADE, (DOCS / "tract-folder.head.md").read_text(encoding="utf-8")]
    for table in TABLES:
        parts.append(f"## Columns of {table.name}\n")
        rows = ["| column | needed | holds | example | also understood |", "|---|---|---|---|---|"]
        for c in table.columns:
            holds = c.meaning + (f": {', '.join(c.choices)}" if c.choices else "")
            rows.append(f"| {c.name} | {'yes' if c.required else ''} | {holds} | {c.example} | {', '.join(c.words)} |")
        for group in table.one_of:
            rows.append(f"\nOne of these is needed in each row: {', '.join(group)}.")
        parts.append("\n".join(rows) + "\n")
    parts.append("## Kinds of place\n\n" + ", ".join(PLACES) + "\n")
    parts.append("## Questions about a patch (yes, no or unknown)\n\n" + ", ".join(SITE_QUESTIONS) + "\n")
    return "\n".join(parts)


def records() -> str:
    """Kinds of entries with what each may hold, and the rule sets for application records with their sources."""
    parts = [MADE, (DOCS / "records.head.md").read_text(encoding="utf-8"), "## Kinds of entries\n"]
    for kind, body in ENTRY_KINDS.items():
        said = [f"{s.name}{'' if s.needed else '?'} ({', '.join(s.options) if s.options else s.sort})" for s in body]
        parts.append(f"- `{kind}`: {'; '.join(said)}.")
    parts.append("\n## Rule sets for application records\n")
    for rule in load().record_rules:
        asked = [FIELDS[w.field] for w in rule.wanted if w.always and not w.either and not w.when]
        either: dict[str, list[str]] = {}
        for one in rule.wanted:
            if one.either:
                either.setdefault(one.either.partition(":")[2], []).append(FIELDS[one.field])
        some = [FIELDS[w.field] + (f" ({w.when})" if w.when else "") for w in rule.wanted if w.when or not w.always]
        dates = " ".join(
            part
            for part in (f"From {rule.since}." if rule.since else "", f"Until {rule.until}." if rule.until else "")
            if part
        )
        within = (
            "no stated time"
            if rule.within_d is None
            else "the same day"
            if rule.within_d == 0
            else f"within {rule.within_d} days"
        )
        keep = "no stated time" if rule.keep_y is None else f"kept {rule.keep_y} years"
        parts.append(f"### {rule.name}\n")
        parts.append(f"{dates} Written: {within}; {keep}. {rule.also}".strip() + "\n")
        parts.append(f"Asks for: {'; '.join(asked)}.")
        if either:
            parts.append("Either of: " + " or ".join(" with ".join(names) for names in either.values()) + ".")
        if some:
            parts.append(f"In some cases: {'; '.join(some)}.")
        note = f" {rule.cited.note[:1].upper()}{rule.cited.note[1:]}." if rule.cited.note else ""
        parts.append(f"\nSource ({rule.cited.grade}): {rule.cited.source}.{note}\n")
    return "\n".join(parts)


def pages() -> dict[str, str]:
    """All pages by name."""
    label = (DOCS / "label-facts.md").read_text(encoding="utf-8")
    head = label.partition("\n## The closed list\n")[0].rstrip()
    return {
        "checks.md": checks(),
        "formulae.md": formulae(),
        "commands.md": commands(),
        "records.md": records(),
        "tract-folder.md": tract_folder(),
        "plan.schema.json": json.dumps(plan_schema(), indent=1, sort_keys=True) + "\n",
        "label-facts.md": f"{head}\n\n## The closed list\n\n{fact_kinds()}",
    }


def main() -> int:
    """Write the pages, or say which are stale."""
    stale = []
    for name, text in pages().items():
        path = DOCS / name
        if not path.exists() or path.read_text(encoding="utf-8") != text:
            stale.append(name)
            if "--check" not in sys.argv:
                path.write_text(text, encoding="utf-8")
    if stale:
        print(("stale: " if "--check" in sys.argv else "written: ") + ", ".join(stale))
    return 1 if stale and "--check" in sys.argv else 0


if __name__ == "__main__":
    raise SystemExit(main())
