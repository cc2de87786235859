"""English."""

from stemward.say.en import cautions, field, findings, handbook, paper, sheets, stages

__all__ = ["cautions", "field", "findings", "handbook", "paper", "sheets", "stages"]
