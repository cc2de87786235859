"""The command line: one file a command, imported only when that command is used."""

import argparse
import importlib
import sys
from collections.abc import Sequence
from typing import Any

USABLE, UNUSABLE, STOPPED, INTERRUPTED = 0, 2, 3, 130

COMMANDS = {
    "plan": "plan a tract folder: ways, doses, mixes, checks, and paper",
    "dose": "quick sum: how much mix these stems take",
    "mix": "quick sum: how much goes into this bottle",
    "near": "quick sum: what may reach a plant that is to be kept",
    "hours": "which hours ahead are open for the work, and why not the others",
    "walk": "who walks where: the order of the plants for each person, with refills and lots",
    "revisits": "what was treated, when to look at it again, what was seen",
    "years": "what the years ahead take: strategies side by side, and where a sum of hours goes first",
    "label": "read a label's PDF: what it may say, with the page of each, for a person to read there",
    "handbook": "what is known of treating one plant, its months, what fails, and from where",
    "checks": "list every check, what it protects and who says so",
    "verify": "work a plan again from its JSON file alone",
    "serve": "open the notebook in the browser (also: stemward alone)",
    "share": "open the notebook here, and its phone page to phones on a private network",
    "phone-page": "write the page for phones into a folder, for any host with https",
    "copy": "copy the notebook to a file, or put a copy back",
    "demo": "write the example tract, Quarry Hollow, into a folder",
}

CAUTION = "Stemward advises and keeps records. The label, your state's rules and licensed practice decide."


class _Parser(argparse.ArgumentParser):
    """A parser whose complaints are one sentence and the way out."""

    def error(self, message: str) -> None:  # type: ignore[override]
        self.exit(UNUSABLE, f"Not understood: {message}. See: {self.prog} --help\n")


def _wanted(argv: Sequence[str]) -> str | None:
    return next((word for word in argv if word in COMMANDS), None)


def _module(name: str) -> Any:
    """The file of a command."""
    return importlib.import_module(f"stemward.cli.{name.replace('-', '_')}")


def parser_for(argv: Sequence[str]) -> argparse.ArgumentParser:
    """The parser; only the command that is used brings its own arguments, so that help starts at once."""
    parser = _Parser(prog="stemward", description="Plans the treatment of unwanted woody plants.", epilog=CAUTION)
    parser.add_argument("--version", action="store_true", help="print the version and stop")
    commands = parser.add_subparsers(dest="command", metavar="COMMAND", parser_class=_Parser)
    wanted = _wanted(argv)
    for name, summary in COMMANDS.items():
        sub = commands.add_parser(name, help=summary, description=summary[:1].upper() + summary[1:], epilog=CAUTION)
        if name == wanted:
            _module(name).add(sub)
    return parser


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command; returns the exit status: 0, 2 for unusable input, 3 when a finding stops."""
    words = list(sys.argv[1:] if argv is None else argv)
    args = parser_for(words or ["serve"]).parse_args(words or ["serve"])
    if args.version:
        from stemward import __version__

        print(f"stemward {__version__}")
        return USABLE
    if args.command is None:
        parser_for(words).print_help()
        return USABLE
    command = _module(args.command)
    try:
        return int(command.run(args))
    except KeyboardInterrupt:
        print("Stopped. Nothing was changed.", file=sys.stderr)
        return INTERRUPTED
    except BrokenPipeError:
        sys.stderr.close()
        return USABLE
