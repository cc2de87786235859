"""Words about phones, on the computer."""

A_PHONE = "phone"
CHOOSE = "Choose a file with marks first."
NO_MARKS = "This is no file with marks of a phone. On the phone: Day, Save all marks as a file."
OTHER_LAND = "These marks are of another land. Open that one and bring them there."
NO_SUCH_MARK = "This mark was settled already."
SETTLED = "one of two marks of a stem, settled by hand"
MARK = "{device}: {what}, {at}"
NOTED = {"note": "Note", "missed one": "A plant that stands on no list", "photo": "Photo"}
PLACE = "at {latitude}, {longitude}"
READ = {
    "kept": "{count} marks are new.",
    "again": "{count} were here already.",
    "refused": "{count} were refused; they are kept below.",
    "wait": "{count} take back what is not here yet: bring the other phone's file as well, then this one again.",
}
NOT_WRITTEN = "{day}: {count} plants were marked as treated on phones{late} and stand in no record yet."
LATE = ", {late} of them late,"
