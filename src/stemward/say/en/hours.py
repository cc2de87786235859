"""Words of the hours ahead."""

STATES = {"open": "open", "shut": "not now", "find out": "find out"}
BY = {"label": "label", "practice": "common practice"}
PAGE = ", page {page}"
REASONS = {
    "raining": "rain",
    "rain behind": "rain within {limit} after it",
    "rain likely": "rain is likely within the hours that have to stay dry",
    "bark wet": "bark wet",
    "leaf wet": "leaves wet",
    "snow": "snow at the foot of the stems",
    "standing water": "water stands at the foot of the stems",
    "cold under": "colder than {limit}",
    "heat over": "hotter than {limit}",
    "heat coming": "hotter than {limit} then or within a day, and this ester rises as vapor",
    "wind over": "wind or gusts over {limit}",
    "wind under": "wind under {limit}, which turns and lies still",
    "gust over": "gusts over {limit}, with limbs that fall",
    "inversion": "air lies still under warmer air (inversion)",
    "air thirsty": "droplets dry before they land (wet bulb more than {limit} below the air)",
    "air damp": "droplets hang long (wet bulb less than {limit} below the air)",
    "bees": "bees fly, and something is in bloom",
    "label season": "the label forbids a time of year in words: compare it with what you see",
    "dark": "dark",
    "season": "a poor time of year for this way on this plant",
}
UNKNOWN = {
    "raining": "rain is not foretold",
    "rain behind": "the forecast does not reach {limit} past it",
    "bark wet": "rain is not known, so neither is the bark",
    "leaf wet": "dew point is not known",
    "cold under": "temperature is not known",
    "heat over": "temperature is not known",
    "heat coming": "temperature is not known",
    "wind over": "wind is not known",
    "wind under": "wind is not known",
    "gust over": "wind is not known",
    "inversion": "wind or cloud is not known",
    "air thirsty": "dew point is not known",
    "air damp": "dew point is not known",
    "snow": "snow is not known",
    "bees": "is anything in bloom there? Bees fly",
}
SPAN = "{day} {first} to {last}: {state}"
NOON, MIDNIGHT = "noon", "midnight"
DAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
WITH_CARE = "; mind: {reasons}"
DRY = "From {first}, dry for {hours} with {persistent} in 10 (between {least} and {most})."
DRY_BLOCK = "From {first}, dry for {hours} with {least} to {most} in 10; the forecast gives one chance for many hours."
NONE_OPEN = "No hour is open in this forecast."
OVER = "This forecast is over: get a newer one."
NEXT = "Open next: {span}."
UNREAD = "Nobody has read on the label: {kinds}. Common practice stands in; find it out before you work."
AGE = "The forecast was made {hours} ago."
AGE_UNKNOWN = "When the forecast was made is not known."
OLD = "It is {hours} old: get a newer one before you go."
WORK_SLOT = "{day} {first} to {last}: {work}. The time that has to stay dry ends {rain}."
WORK_LEFT = "{work}: up to {hours} find no open hours in this forecast."
WORK_NEED = "{work} takes {hours} with {people}."
WORK_NONE = "No work fits into the open hours of this forecast."
RAINS = (
    "If it rains on you: stop, close the bottle, cover what is open, write down the minute. What was treated less than "
    "the label's rain-free time before is looked at again; treat it once more only if the label allows it."
)
RAIN_TITLE = "The time that has to stay dry is over: {work}"
ODD_FILE = {
    "twice": "{count} hours stand there twice; the first is taken (line {rows}).",
    "out_of_reason": "{count} figures of {column} cannot be, for example {value}; they are left out (line {rows}).",
    "humidity_apart": "Humidity and dew point contradict each other in {count} hours; the dew point is taken "
    "(line {rows}).",
    "hours_missing": "{count} hours are missing; nothing is made up for them (after line {rows}).",
    "month_without_rain": "{month} has no rain at all: most likely it was not measured. Do not count on it.",
    "tenths": "Rain adds up to {sum} under a heading of millimeters; it is taken as tenths of a millimeter.",
    "mixed_spans": "{count} rows hold rain of several hours together; they are left out (line {rows}).",
    "rain_unknown": "Rain is not known in {count} hours.",
    "no_rain_at_all": "There is no rain in the whole file: most likely it was not measured. Do not count on it.",
    "layers_missing": "The forecast says nothing of: {layers}.",
    "time_not_understood": "{count} rows have a time that is not understood (line {rows}).",
}
WEEKS = "Weeks from {first} on: {days} of 7 days"
WEEKS_BAND = "{low} to {high}"
WEEKS_RUN = "{first} to {last}"
WEEKS_BEST = "Most working days within the best time of year, weeks from: {weeks}."
WEEKS_BEST_BY_WEATHER = "Most working days, weeks from: {weeks}. No best months are on record: this is weather alone."
WEEKS_NONE_FIT = "In the best time of year no week had a working day."
WEEKS_STRIP = ("Bar: days of 7. Whisker: how years differ.", "Thick line: best time of year.", "Broken line: poor.")
WEEKS_DAYS = (
    "From {years} years of days, {place}: days that are dry and neither too cold nor too hot. Which hours were open, "
    "days do not tell, so take it as the most there can be."
)
WEEKS_UNKNOWN = "Which weeks are open cannot be told: too few of the hours, or of their rain, are known."
WEEKS_NONE = "In no week of these years could it be done."
WEEKS_FROM = "From {years} years of hours, {place}; a day counts from {hours} open hours on."
WEEKS_ONE = (
    "From one year of hours, {place}: one year is one case, so take it as a hint. A day counts from {hours} open "
    "hours on."
)
WEEKS_TYPICAL = (
    "From a typical year, {place}, put together of months of several years: a hint, no count. A day counts from "
    "{hours} open hours on."
)
FLOW = (
    "Sap rises about {first} to {last} and leaves of maples and their like come out about {out} in these years, by "
    "daily temperatures (a rule from memory). What you see on the plant comes first."
)
NO_FLOW = "When sap rises and leaves come out cannot be told from these hours. What you see on the plant decides."
SEASONS = "{how} on {plant}: best {best}{poor}."
POOR = "; poor {poor}"
NO_PLANT = "No plant is named, so its best months are not in it."
NO_SEASONS = "No months are on record for {how} on {plant}."
SHEET = {
    "title": "The hours ahead: {tract}",
    "footer": "{tract}, hours ahead, printed {as_of}",
    "intro": "Each hour against the label and common practice. Filled: open. Stroke: find out. Empty: not now, or "
    "dark. Look at the sky as well; the label, your state's rules and licensed practice decide.",
    "alt": "Hours of {work} as boxes, a row a day. {next}",
    "days": "Work days",
}
NOT_GOT = "No forecast was got"
NOT_WEATHER = {
    "too_large": "The file is larger than what is read (64 MB; forecasts 16 MB).",
    "empty": "The file holds no weather.",
    "no_text": "This is no text file. Send a CSV, TMY3, EPW or ISD-Lite file, or the forecast as JSON.",
    "json": "This is no forecast of the National Weather Service: it holds no properties with hours.",
    "interval": "A time in the forecast is not understood. Get it again.",
    "layer": "A layer of the forecast is not as it should be. Get it again.",
    "period": "An hour of the forecast is not as it should be. Get it again.",
    "heads": "The first line has to name a time and at least one of: temp (F), dew point (F), humidity (%), "
    "wind (mph), gust (mph), rain (in), chance (%), cloud (%).",
    "times": "No row has a time that is understood. Write it like 2026-07-01 08:00.",
    "damaged": "The file breaks off or its columns are not those it should have.",
    "no_network": "The weather service cannot be reached. Is there a network?",
    "busy": "The weather service answers that it is busy or broken. Try again in a while.",
    "not_there": "The weather service has no forecast for this place. It serves the United States.",
    "odd_answer": "The weather service's answer is not understood.",
}
