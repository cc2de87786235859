"""Values to words: findings, steps, figures and errors, in one language and one unit system at a time."""

from stemward.say import en
from stemward.say.numbers import System, figure
from stemward.say.speaker import Said, Speaker

__all__ = ["Said", "Speaker", "System", "en", "figure"]
