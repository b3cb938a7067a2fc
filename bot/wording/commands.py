"""The few commands that are offered in a menu, by language and kind of chat; each is a plain word without the slash too.

A group is offered what concerns everybody in it; what is one person's own stays in the private chat.
"""

from typing import Final

_WORDS: Final = {
    None: {
        "plan": "The whole week on one page",
        "now": "What to do now",
        "batches": "Every batch under way",
        "safe": "Is it safe, and by which rule",
        "record": "Everything that was done, as a file to keep",
        "undo": "Take back the last thing said",
        "settings": "Units, hours, place: how to say them",
        "help": "What you can say here",
    },
    "de": {
        "plan": "Die ganze Woche auf einer Seite",
        "now": "Was jetzt zu tun ist",
        "batches": "Alles, was gerade läuft",
        "safe": "Ist es sicher, und nach welcher Regel",
        "record": "Alles, was getan wurde, als Datei",
        "undo": "Das zuletzt Gesagte zurücknehmen",
        "settings": "Einheiten, Zeiten, Ort: wie man sie sagt",
        "help": "Was man hier sagen kann",
    },
}
_OF_CHATS: Final = {
    "private": ("plan", "now", "batches", "safe", "record", "undo", "settings", "help"),
    "group": ("plan", "now", "batches", "safe", "record", "undo", "help"),
}
# language, kind of chat, commands with what they do
MENUS: Final = tuple(
    (language, chats, tuple((name, said[name]) for name in names))
    for chats, names in _OF_CHATS.items()
    for language, said in _WORDS.items()
)
