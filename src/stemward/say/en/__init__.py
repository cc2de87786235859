"""English."""

from stemward.say.en import cautions, findings, paper, stages

__all__ = ["cautions", "findings", "paper", "stages"]
