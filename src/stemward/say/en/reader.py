"""Words of the reading of labels."""

NOT_READABLE = {
    "no_pdf": "This is no PDF, or its beginning is damaged.",
    "locked": "This PDF is locked with a password. Save it without one, then try again.",
    "no_pages": "This PDF has no pages.",
    "too_many_pages": "This PDF has more than 400 pages, which is more than a label.",
    "no_text": "The pages of this PDF are pictures without text (a scan), so nothing can be searched in it. "
    "Read it on paper and type what it says, or get the label as text from the maker or the state. "
    "Where the program Tesseract is installed the words are made out in the pictures, less surely.",
    "too_large": "The file is larger than the 64 MB that are read.",
    "no_page": "The label has no page of that number.",
    "damaged": "The file is damaged in a way that it cannot be read.",
    "slow": "The file took longer than a minute to read, so it was given up.",
}
SURE = {
    "sure": "found in plain words",
    "likely": "advice, or in other words",
    "unsure": "has a condition: read all of it",
}
HEAD = "{count} places proposed on {pages} pages. None is read: open each page and read it there."
PICTURES = "These pages are pictures. Their words were made out from the pictures, so every place is less sure."
NOTHING = "Nothing was found on {pages} pages. That does not mean that the label says nothing: read it."
LINE = "{kind}: {value}{scope}. Page {page}{also}; {sure}."
ALSO = ", again on {pages}"
WORDS = "    “{words}”"
