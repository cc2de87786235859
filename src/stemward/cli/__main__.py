"""`python -m stemward.cli` does what `stemward` does."""

from stemward.cli import main

raise SystemExit(main())
