"""English."""

from stemward.say.en import cautions, findings, handbook, paper, sheets, stages

__all__ = ["cautions", "findings", "handbook", "paper", "sheets", "stages"]
