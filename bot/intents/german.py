"""The German words that people use most, into the plain words that the readers know; English passes as it is."""

import re
from typing import Final

# longer phrases first: each is replaced as a whole; numbers, days and units are read in their own rooms
_PHRASES: Final = {
    "wann fertig": "when is it ready", "wann ist fertig": "when is it ready", "bei": "at", "was jetzt": "what now",
    "was nun": "what now", "was ist als nächstes dran": "what now", "als nächstes": "next step",
    "wie lange noch": "how much longer", "wann ist es fertig": "when is it ready", "ist es sicher": "is it safe",
    "zeig den plan": "plan", "zeig mir den plan": "plan", "in der lake": "in the brine",
    "in die lake": "into the brine",
    "im kühlschrank": "in the fridge", "in den kühlschrank": "into the fridge", "fleisch ist drauf": "meat is on",
    "ist drauf": "meat is on", "feuer brennt": "fire is lit", "feuer ist an": "fire is lit",
    "erinnere mich": "remind me", "erinner mich": "remind me",
    "zu salzig": "too salty", "heute morgen": "this morning", "heute früh": "this morning", "heute abend": "tonight",
    "gestern abend": "last night", "in alufolie": "in foil", "in folie": "in foil", "in papier": "in paper",
    "ist das sicher": "is it safe", "ist das noch sicher": "is it safe", "ist raus": "its out", "ist drin": "is in",
    "liegt drauf": "is on", "fleisch liegt drauf": "meat is on", "aufgegessen": "eaten", "gewickelt": "wrapped",
    "alles gegessen": "all eaten", "zeig mir die kurve": "show me the curve", "wieder da": "back again",
    "vom grill genommen": "off the grill", "vom feuer genommen": "off the fire", "was kannst du": "help",
    "ich habe": "i", "habe eben": "i", "habe": "i", "hab": "i", "eben": "just", "gerade": "just", "und": "and",
    "massiert": "massaged", "wendung": "flip", "aus der lake": "out of the brine", "genommen": "taken",
    "erledigt": "done", "fertig": "done", "gemacht": "done", "gewendet": "flipped", "umgedreht": "flipped",
    "gedreht": "flipped",
    "abgespült": "rinsed", "gespült": "rinsed", "gewässert": "soaked", "eingerieben": "rubbed", "angezündet": "lit",
    "eingewickelt": "wrapped", "aufgeschnitten": "sliced", "gegessen": "eaten", "aufgetaut": "thawed",
    "vergessen": "forgot",
    "rückgängig": "undo", "später": "later", "überspringen": "skip", "auslassen": "skip", "pausieren": "pause",
    "weiter": "carry on",
    "abbrechen": "cancel", "hilfe": "help", "danke": "thanks", "hallo": "hello", "servus": "hello", "moin": "hello",
    "kühlschrank": "fridge", "kerntemperatur": "core", "kern": "core", "garraum": "pit", "smoker": "smoker",
    "lake": "brine",
    "rinderbrust": "brisket", "fleisch": "meat", "dick": "thick", "trocken": "dry", "spritzen": "inject",
    "pökelsalz": "curing salt",
    "samstag": "saturday", "sonntag": "sunday", "montag": "monday", "dienstag": "tuesday", "mittwoch": "wednesday",
    "donnerstag": "thursday", "freitag": "friday", "morgen": "tomorrow", "übermorgen": "day after tomorrow",
    "gestern": "yesterday",
    "heute": "today", "mittags": "noon", "abendessen": "dinner", "mittagessen": "lunch", "frühstück": "breakfast",
    "abends": "evening",
    "früher": "earlier", "statt": "instead of", "bis": "until", "um": "at", "für": "for", "grad": "degrees",
    "nein": "no", "ja": "yes",
    "stunden": "hours", "stunde": "hour", "minuten": "minutes", "halb": "half", "grau": "grey", "beide": "both",
    "auch": "also",
    "nicht": "not", "verschieb": "move", "verschiebe": "move", "auf": "to", "ist": "is", "nach": "after",
    "noch": "still",
}  # fmt: skip
_WORDS: Final = re.compile(r"\b(?:" + "|".join(sorted(_PHRASES, key=len, reverse=True)) + r")\b")
# one of these makes a line German; the short words above are English ones too («um», «bis», «lake», «auf»)
_TELLS: Final = re.compile(
    r"[äöüß]|\b(?:jetzt|nun|ist|gewendet|fertig|erledigt|gemacht|umgedreht|gedreht|eingerieben|eingewickelt"
    r"|aufgeschnitten|vergessen|abbrechen|"
    r"hilfe|danke|hallo|servus|samstag|sonntag|montag|dienstag|mittwoch|donnerstag|freitag|morgen|gestern|heute"
    r"|abendessen|mittagessen|uhr|"
    r"rinderbrust|fleisch|nicht|nein|kern|kerntemperatur|garraum|wie|wann|stunden?|minuten|zeig|mir|mich|bei|salzig"
    r"|brennt|drauf|drin|raus|gegessen|aufgegessen|gewickelt|abgespült|wieder|genommen|grad|kurve|kannst"
    r"|grau|das|der|die|den)\b"
)
_SUNDAY: Final = re.compile(r"\bso\.? (?=\d{1,2}(?::\d\d| uhr))")  # the weekday, not the word


def english(text: str, language: str) -> str:
    """A plain line with its German words in English, where it is German by its words or by its speaker."""
    if not language.startswith("de") and not _TELLS.search(text):
        return text
    if language.startswith("de"):
        text = _SUNDAY.sub("sunday ", text)
    return _WORDS.sub(lambda found: _PHRASES[found[0]], text)
