"""stemward label: read a label's PDF and print what it may say, with pages."""

import argparse
from pathlib import Path


def add(parser: argparse.ArgumentParser) -> None:
    """The arguments of `stemward label`."""
    parser.add_argument("file", help="the label as PDF, from its maker or the state's list")
    parser.add_argument("--json", action="store_true", help="print the proposed facts as data, with their places")
    parser.add_argument("--toml", metavar="FILE", help="write them as a shelf's facts, each as proposed and not read")


def run(args: argparse.Namespace) -> int:
    """Print the proposed facts by kind. 0, or 2 for a file that cannot be read."""
    from stemward.cli.common import say_unusable
    from stemward.gate.label_pdf import read_label
    from stemward.gate.proposed import as_json, as_toml
    from stemward.label.reader import NotReadable
    from stemward.say.en import reader as words
    from stemward.say.reader import fact_lines

    try:
        found = read_label(Path(args.file).read_bytes())
    except OSError as error:
        return say_unusable(f"{args.file} cannot be read: {error.strerror}.")
    except NotReadable as wrong:
        return say_unusable(f"{args.file}: {words.NOT_READABLE[wrong.message]}")
    if args.toml:
        try:
            Path(args.toml).write_text(as_toml(found.proposed), encoding="utf-8")
        except OSError as error:
            return say_unusable(f"{args.toml} cannot be written: {error.strerror}. Nothing was changed.")
    if args.json:
        print(as_json(found.proposed, found.pages))
    else:
        print("\n".join(fact_lines(found.proposed, found.pages, found.pictures)))
    return 0
