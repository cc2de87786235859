"""stemward share: open the notebook here, and its phone page to phones on a private network."""

import argparse
import os
from pathlib import Path


def add(parser: argparse.ArgumentParser) -> None:
    """The arguments of `stemward share`."""
    parser.add_argument("--address", metavar="IP", help="this computer's address on the network (default: found)")
    parser.add_argument("--port", type=int, default=8718, metavar="N", help="port for phones (default: 8718)")
    parser.add_argument("--data", type=Path, metavar="DIR", help="folder of the notebook (default: Documents/Stemward)")
    parser.add_argument("--no-browser", action="store_true", help="open no browser; the link is printed")


def run(args: argparse.Namespace) -> int:
    """Serve until stopped. 0, or 2 where it cannot start."""
    from stemward.cli.common import say_unusable
    from stemward.field.authority import is_private
    from stemward.web.share import own_address

    address = args.address or own_address()
    if not address:
        return say_unusable("This computer's address on the network was not found. Name it: --address 192.168.1.20")
    if not is_private(address):
        return say_unusable(
            f"{address} is no address of a private network. Phones are let in on private networks only."
        )
    if args.data:
        os.environ["STEMWARD_DATA"] = str(args.data.expanduser().resolve())
    os.environ["STEMWARD_HOSTS"] = f"127.0.0.1,localhost,{address}"
    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "stemward.web.settings")
    from stemward.web.home import CannotStart, serve

    try:
        return int(serve(None, not args.no_browser, phones=(address, args.port)))
    except CannotStart as error:
        return say_unusable(str(error))
