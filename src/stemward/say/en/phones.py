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

WHY = {
    "clock": "The phone's clock was {minutes} min {way} the notebook's.",
    "future": "Its time had not come yet when it arrived.",
    "stem_gone": "There is no stem {stem} on the list any more; what was done is kept.",
    "older_plan": "It follows an older plan ({plan}).",
    "anyway": "The plan stopped it; it was done anyway: {reason}",
    "late": "It was {late} min over the time from cut to treatment.",
}
"""What can be odd about a row that is taken."""
OTHER_BODY = "A row with this number came before and says something else. Both are kept; a person settles it."
NO_ROW = "This is no row."
NOT_FROM_A_PHONE = "A phone cannot write down rows of this kind."
TOO_LONG = "This row is too long."
NO_PHOTO = "A photo is a JPEG of at most 300 kB."
TOO_MANY = "At most {most} rows are taken at once."
NO_LAND = "This land is not there any more."
MARKS_OF = "{count} marks of {device}"
AHEAD, BEHIND = "ahead of", "behind"
