"""Words of a test patch."""

TITLE = "Test two ways first: {plants}, {patch}"
INTRO = (
    "Two arms, alike in size and place, each with a flag of its own; a coin decides which plant belongs to which. "
    "Treat each arm its own way, on the same day and by the same hand if you can, and look again: then the difference "
    "is that of the ways."
)
FLAGS = {"blue": "blue flag", "orange": "orange flag"}
EACH = "Plants in each arm"
EACH_HINT = "At most {most} here. The rest stays as it is, and can wait for the verdict."
APART = "With {each} in each, {dead} dead in one arm are told apart from {other} or fewer in the other, not from more."
APART_NONE = "With {each} in each, no difference could be told apart. Take more."
VERDICT = "Treated today, the verdict is due from {on} on; no plant is called dead before {months} months."
NEXT = (
    "Each arm is a patch of its own then, named after its flag: on the plan, the sheets, the phone, bottle labels and "
    "in the record. Hang the flags before the work. Undo puts it all back."
)
DO = "Make the two arms"
NOT_UNDERSTOOD = "How many in each arm? Write a whole number such as 20."
ARMS = "They were two arms marked out beforehand, alike in size and place."
