"""Out of the cure, or onto the fire, before the plan: asked, and nothing done."""

from typing import Final

from core import patterns as re

PULLED_EARLY: Final = re.compile(
    r"\b(?:wanna|want to|gonna|going to|can i|could i|can we|need to|have to|like to|about to"
    r"|must) (?:just )?(?:pull|take|get"
    r"|fish|lift) (?:it|them|the (?:meat|flat|brisket|piece|belly|ham)) out(?: of the (?:brine|cure|bag|tub))?"
    r"(?: (?:now|today|tonight|early|already|tomorrow|on \w+day|a day early))*$"
    r"|^(?:so |and |ok )?(?:can|could|may|should|shall) (?:it|this|that|they|the (?:meat|flat|brisket|piece|belly|ham))"
    r" (?:come|be taken|be|go) out (?:of the (?:brine|cure|bag|tub) )?(?:on |by )?(?:(?:next|this) )?(?:mon|tue|wed|thu"
    r"|fri|sat|sun|tomorrow|today|tonight|now|early|earlier|sooner|already|an? day|one day|\d)[^,;]*$"
    r"|^(?:so |and )?(?:can|could|may|should|shall) (?:i|we|it|they) (?:just |both )*(?:pull|take|get|smoke|cook|put"
    r"|go)(?: (?:it|them|(?:with )?the \w+|out|on|off|too))*(?: \w+)? (?:today|now|already|tonight|tomorrow|early"
    r"|earlier|sooner|(?:an?|one|two|\d) days? (?:early|earlier|sooner))\b[^,;]*$"
)
