"""Words of the terminal itself, by the name of their place there."""

PLACES = {
    "welcome": "Type what you would message. «help» says what works here; «exit» or Ctrl-D leaves.",
    "goodbye": "Until next time. Your batches and their reminders are kept.",
    "prompt": "you> ",
    "picture": "picture: {path}\n{says}",
    "picture_lost": "The folder {folder} takes no picture, so in words: {says}",
    "document": "document: {path}",
    "document_lost": "The folder {folder} takes no document. {instead}",
    "no_button": "{said} is no button here; there is {labels}",
    "failed": "I could not take that just now, and nothing was changed. Please say it again.",
    "reminder": "[{time}]",
    "alert": "[{time}, now]",
}
LEAVE = frozenset({"exit", "quit", "bye"})
