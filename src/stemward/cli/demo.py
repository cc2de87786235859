"""stemward demo [FOLDER]: write the example tract."""

import argparse
from pathlib import Path


def add(parser: argparse.ArgumentParser) -> None:
    """The arguments of `stemward demo`."""
    parser.add_argument(
        "folder",
        type=Path,
        nargs="?",
        default=Path("quarry-hollow"),
        help="where to write it (default: quarry-hollow)",
    )


def run(args: argparse.Namespace) -> int:
    """Write Quarry Hollow into a new or empty folder."""
    from stemward.cli.common import say_unusable
    from stemward.gate.demo import texts
    from stemward.gate.folder_write import NotWritten, write_texts

    try:
        write_texts(texts(), args.folder)
    except NotWritten as error:
        return say_unusable(str(error))
    print(f"Quarry Hollow, an invented example, is in {args.folder}. Next: stemward plan {args.folder}")
    return 0
