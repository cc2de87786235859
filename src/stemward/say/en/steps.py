"""The next step in words: per row a sentence that begins with a verb, the button, and why it comes first."""

ROWS: dict[str, tuple[str, str, str]] = {
    "cut_untreated": (
        "Say what became of {count} stems cut on {patch} {day} and not marked treated.",
        "Say what happened",
        "A cut that is not treated within minutes sprouts again, and nobody should treat it twice.",
    ),
    "mix_left": (
        "Account for {amount} of mix made {day}: used, kept in a labelled bottle, or disposed of.",
        "Account for it",
        "A bottle that nobody can account for is the one a child or neighbor finds.",
    ),
    "record_late": (
        "Finish the record of {day}: {missing}; it was due {left} days ago.",
        "Finish the record",
        "Records are due within days, and memory is shorter.",
    ),
    "record_today": (
        "Finish the record of {day} today: {missing}.",
        "Finish the record",
        "It is due today, and memory is short.",
    ),
    "record_open": (
        "Finish the record of {day}: {missing}; {left} days are left.",
        "Finish the record",
        "Records are due within days, and memory is shorter.",
    ),
    "marked_only": (
        "Write down the work of {day}: {count} plants were marked as treated on phones.",
        "Write it down",
        "Marks are no record yet: what was mixed, what is left and the weather are known best on the same day.",
    ),
    "hours_shut": (
        "Move the work day {day}: {reason}.",
        "See other hours",
        "Rain soon after treatment washes it off the plant and onto the ground.",
    ),
    "marks_differ": (
        "Settle {count} stems marked differently by two phones.",
        "Settle them",
        "Only one of the two can be true, and the next person will go by it.",
    ),
    "pack": ("Pack for {day} on {patch}.", "Open the packing list", "Nothing stands in the way of the work day."),
    "stopped": (
        "Change the way for {plants} on {patch}: stopped by {check}.",
        "See other ways",
        "A stop means that the label, a rule or the lie of the land is against it; no mix is made until it is gone.",
    ),
    "find_out_read": (
        "Read {places} places on the label of {product}, about {minutes} minutes.",
        "Read them",
        "The label decides, and the plan leans on these places; until they are read it stays a draft.",
    ),
    "find_out": (
        "Find out about {plants} on {patch}: {what}.",
        "See what to do",
        "A thing that nobody knows is not checked; until it is found out the plan stays a draft.",
    ),
    "revisit_due": (
        "Go back to {patch}: {count} {plants} treated {day}.",
        "Start the revisit",
        "Only going back shows what died and what sprouts again.",
    ),
    "count": (
        "Count or list the plants on {patch}.",
        "Count them",
        "Without plants there is nothing to choose a way for.",
    ),
    "count_none": (
        "Say where the first patch is and what kind of place.",
        "Add a patch",
        "The label must name the kind of place, and everything else stands on a patch.",
    ),
    "kept": (
        "Say what must not be harmed near {patch}.",
        "Say it",
        "Nothing listed is not the same as nothing there; ways are weighed by what they can reach.",
    ),
    "choose": (
        "Choose a way for {stems} {plants} on {patch}; {ways} are laid out.",
        "Choose",
        "Dose, mix and what to read on the label all follow from the way.",
    ),
    "changed": (
        "Look again at the packet: something changed since plan {code} was printed.",
        "Look again",
        "Printed pages that differ from the notebook send people out with old numbers.",
    ),
    "mix": (
        "Work out the mix for {plants}: {left} on the shelf, {need} needed.",
        "Work it out",
        "Half a batch is a second trip.",
    ),
    "pick_day": (
        "Pick a day for {patch}.",
        "Pick a day",
        "The way is chosen and the label is read; only hours are left.",
    ),
    "season": (
        "Nothing to do on {patch} until about {day}.",
        "See the year",
        "It is the wrong time of year for this way.",
    ),
    "nothing": ("Nothing is open here.", "Open the packet", "Everything that can be found from here has been found."),
}
STATES = {
    "not begun": "not begun", "begun": "begun", "needs you": "needs you", "changed since": "changed since",
    "done": "done",
}  # fmt: skip
STEPS = {
    "look": "Look", "choose": "Choose", "read the label": "Read the label", "mix": "Mix", "pick hours": "Pick hours",
    "work": "Work", "revisit": "Revisit",
}  # fmt: skip
TALLY = "Steps: {steps}."
NO_COPY = "No copy is kept elsewhere yet."
OLD_COPY = "Last copy kept elsewhere: {days} days ago."
