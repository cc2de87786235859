"""Lists and maps that a landowner brings: looked at, matched to our columns, taken over with what was left out and why.

Hostile input stops here: kinds are told by bytes, sizes are bounded, XML has no entities, and whatever needs the
geodata library is read in a child process that can open nothing else.
"""

from stemward.gate.foreign.layer import Layer
from stemward.gate.foreign.look import look
from stemward.gate.foreign.match import guess
from stemward.gate.foreign.picture import Picture, look_at_picture
from stemward.gate.foreign.taken import LeftOut, Taken, shape_in_metres, take_stems

__all__ = [
    "Layer", "LeftOut", "Picture", "Taken", "guess", "look", "look_at_picture", "shape_in_metres",
    "take_stems",
]  # fmt: skip
