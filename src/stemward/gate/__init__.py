"""Every foreign file comes in here, and hostile input stops here."""
