"""What is said while a file is brought in, and why a row of it was left out."""

BRING = {
    "comparing": "Comparing {count:,} rows with each other and with what is here",
    "outlines": "{count} patches with outlines",
    "kept": "{count} things to keep from harm",
    "no_origin": "The file's places are latitudes and longitudes, and where on the earth this land's drawing lies is "
    "not known yet. Give the latitude and longitude of its corner first: on the page Land, below the "
    "drawing, at “A picture or map under the drawing”.",
    "writing": "Writing: {done:,} of {of:,} stems",
}

LEFT = {
    "left.no_size": "it has no size",
    "left.no_place": "it has no place",
    "left.no_shape": "it has no shape that is read, or one in several parts",
    "left.no_area": "it is a point or a line and no area",
    "left.far": "it stands more than 1,000 km from the rest",
    "left.figure": "{column} is not understood or cannot be: {typed}",
    "left.word": "{column} is not understood, too long, or holds a sign that cannot be printed: {typed}",
    "left.species": "no plant of the name {typed} is known{near}",
    "left.patch": "there is no patch {typed}",
    "left.outside": "it stands outside the outline of {typed}",
    "left.id_there": "the id {typed} is used by a stem that is here already",
    "left.id_twice": "the id {typed} stands twice in the file",
    "left.twice_there": "a stem of the same plant and size stands there already",
    "left.twice": "a stem of the same plant and size stands on the same spot in the file",
}

BACKGROUND = {
    "degrees": "latitude and longitude, for example 43.1012, -90.2005",
    "east_north": "how far east and how far north of the land's corner, for example 0, 400",
    "not_understood": "Not understood: {typed}. Write {example}.",
    "no_file": "Choose a picture first.",
    "no_origin": "Where on the earth this land's drawing lies is not known yet. Give its latitude and longitude first, "
    "at the end of this page.",
    "address": "This is no address of map tiles. It begins with http:// or https:// and holds {z}, {x} and {y} where "
    "the numbers of a tile go.",
    "flat": "These corners lie on one line. Give the upper left and the lower right corner.",
}
