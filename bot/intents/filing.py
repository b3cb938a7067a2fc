"""Talk of files: the record of a batch in one of its forms, and everything that is kept of a person."""

from typing import Final

_GIVE: Final = r"(?:(?:please )?(?:send|show|give|make|print|export|get|download)(?: me)? )?"
_FORM: Final = r"(?:pdf|html|page|csv|rows|spreadsheet|json|file|document)"
_PLEASE: Final = r"(?: (?:please|pls|bitte))?$"

TOPICS: Final = (
    (
        "export",
        r"^/?(?:please )?(?:export|download|send|give|get|show)(?: me)?(?: all)?(?: of)? my data" + _PLEASE
        + r"|^/?my data" + _PLEASE
        + r"|^what do you (?:know|have|keep|store) (?:of|about|on) me$|^(?:exportiere )?meine daten$",
    ),
    (
        "record",
        rf"^/?{_GIVE}(?:the |a |my )?(?:last )?(?:batch )?(?:record|report|chargenprotokoll)"
        r"(?: (?:of|for) (?:the |this |my )?(?:last one|last batch|batch|week))?"
        rf"(?: (?:(?:as|in|to|als) )?(?:an? )?{_FORM})?" + _PLEASE,
    ),
)  # fmt: skip
FORMS: Final = (("html", r"\b(?:html|page)\b"), ("csv", r"\b(?:csv|rows|spreadsheet)\b"), ("json", r"\bjson\b"))
