"""stemward phone-page: write the phone's page into a folder, for any host with https."""

import argparse
from pathlib import Path


def add(parser: argparse.ArgumentParser) -> None:
    """The arguments of `stemward phone-page`."""
    parser.add_argument("folder", type=Path, help="the folder; made if it is missing")


def run(args: argparse.Namespace) -> int:
    """Write it. 0, or 2 where that cannot be."""
    from stemward.cli.common import say_unusable
    from stemward.field.files import version, write_page

    try:
        names = write_page(args.folder)
    except OSError as error:
        return say_unusable(f"{args.folder} cannot be written: {error.strerror}.")
    print(f"{len(names)} files, version {version()}. Put them on a host with https; they hold no plan and no marks.")
    return 0
