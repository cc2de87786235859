"""Memory: tracts, what was changed and what happened, kept in a database. Django lives here and above."""
