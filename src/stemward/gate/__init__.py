"""Every foreign file: hostile or mistaken input stops here, with a sentence's worth of facts about it."""
