"""stemward copy: a whole copy of the notebook, or one put back."""

import argparse
import datetime
import os
from pathlib import Path


def add(parser: argparse.ArgumentParser) -> None:
    """The arguments of `stemward copy`."""
    parser.add_argument("file", type=Path, nargs="?", help="where to (default: stemward-DATE.sqlite3 here)")
    parser.add_argument("--data", type=Path, metavar="DIR", help="folder of the notebook (default: Documents/Stemward)")
    parser.add_argument("--put-back", action="store_true", help="put the copy FILE in the notebook's place")


def run(args: argparse.Namespace) -> int:
    """Copy, or put back. 0, or 2 where that cannot be done."""
    from stemward.cli.common import say_unusable
    from stemward.notebook.copies import NoCopy, copy_to, restore

    if args.data:
        os.environ["STEMWARD_DATA"] = str(args.data.expanduser().resolve())
    from stemward.web.home import CannotStart, hold
    from stemward.web.place import data_folder

    folder, now = data_folder(), datetime.datetime.now().astimezone()
    try:
        if not args.put_back:
            target = args.file or Path(f"stemward-{now:%Y-%m-%d}.sqlite3")
            copy_to(folder / "notebook.sqlite3", target)
            print(f"The notebook in {folder} is copied to {target}.")
            return 0
        if args.file is None:
            return say_unusable("Which copy? Name the file to put back.")
        with hold(folder):
            count = restore(args.file, folder / "notebook.sqlite3", now)
        print(f"Put back: {count} tracts. What was there before is copied in {folder / 'copies'}.")
    except (NoCopy, CannotStart) as error:
        return say_unusable(str(error))
    return 0
