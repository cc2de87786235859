"""stemward serve: open the notebook in the browser."""

import argparse
import os
from pathlib import Path


def add(parser: argparse.ArgumentParser) -> None:
    """The arguments of `stemward serve`."""
    parser.add_argument("--port", type=int, metavar="N", help="port on this computer (default: a usual one, else any)")
    parser.add_argument("--data", type=Path, metavar="DIR", help="folder of the notebook (default: Documents/Stemward)")
    parser.add_argument("--no-browser", action="store_true", help="open no browser; the link is printed")
    parser.add_argument("--example", action="store_true", help="open on the invented example, put in if it is missing")


def run(args: argparse.Namespace) -> int:
    """Serve until stopped. 0, or 2 where it cannot start."""
    from stemward.cli.common import say_unusable

    if args.data:
        os.environ["STEMWARD_DATA"] = str(args.data.expanduser().resolve())
    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "stemward.web.settings")
    from stemward.web.home import CannotStart, serve

    try:
        return int(serve(args.port, not args.no_browser, args.example))
    except CannotStart as error:
        return say_unusable(str(error))
