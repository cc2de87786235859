"""English."""

from stemward.say.en import cautions, findings, paper, sheets, stages

__all__ = ["cautions", "findings", "paper", "sheets", "stages"]
