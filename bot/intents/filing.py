"""Talk of files: the record of a batch in one of its forms, and everything that is kept of a person."""

from typing import Final

_WANT: Final = (
    r"(?:(?:i|we) (?:want|need|would like)|id like|(?:can|could|may) (?:i|we) (?:have|get|see)|(?:can|could) you)"
)
_VERB: Final = r"(?:send|show|give|make|print|export|get|download|exportiere|schick|zeig|druck)"
_GIVE: Final = rf"(?:please |bitte )?(?:{_WANT} )?(?:{_VERB}(?: me| mir)? )?"
_FORM: Final = r"(?:pdf|html|page|csv|rows|spreadsheet|json|file|document|seite|datei)"
_THE: Final = r"(?:the |a |my |das |die |ein )?"
_PLEASE: Final = r"(?: (?:please|pls|bitte))?$"

TOPICS: Final = (
    (
        "export",
        rf"^/?{_GIVE}(?:all )?(?:of )?(?:my|meine) (?:data|daten)" + _PLEASE
        + r"|\b(?:everything|all|what) (?:that )?you (?:know|have|keep|store) (?:of|about|on) me\b"
        r"|^/?export(?: (?:please|pls|everything|it all))?$"
        r"|^what (?:data )?do you (?:know|have|keep|store) (?:of|about|on) me$|^was weißt du (?:über|von) mich$",
    ),
    (
        "record",
        rf"^/?{_GIVE}{_THE}(?:last )?(?:batch )?(?:records?|report|chargenprotokoll|bericht|aufzeichnung)"
        r"(?: (?:of|for) (?:the |this |my )?(?:last one|last batch|batch|week))?"
        rf"(?: (?:(?:as|in|to|als) )?(?:an? )?{_FORM})?" + _PLEASE
        + rf"|^(?:(?:export|print) )?{_THE}(?:batch|log|history|protokoll) (?:as|in|to|als) (?:an? )?{_FORM}" + _PLEASE
        + r"|^(?:as (?:an? )?)?(?:pdf|csv|html|json)" + _PLEASE,
    ),
)  # fmt: skip
FORMS: Final = (("html", r"\b(?:html|page|seite)\b"), ("csv", r"\b(?:csv|rows|spreadsheet)\b"), ("json", r"\bjson\b"))
