"""In the place of the standard `re`: the same patterns, each tried only on a line that has the words that it needs.

Of a thousand patterns that a line is held against some twenty match it. What a pattern needs is read from the pattern
itself (`needed`), a line is taken apart into its words once (`line`), and a pattern whose words are not there is known
not to match without being tried. What matches, and what it finds, is the same. To look at the words of a line costs
what some thirty patterns do: where thousands of lines meet ten patterns each, `re` itself is the quicker.
"""

from re import (
    DOTALL,
    IGNORECASE,
    UNICODE,
    VERBOSE,
    Match,
    escape,
    findall,
    finditer,
    fullmatch,
    match,
    search,
    split,
    sub,
    subn,
)

from core.patterns.pattern import Pattern, Rules, either, forget, keep

compile = Pattern

__all__ = [
    "DOTALL",
    "IGNORECASE",
    "UNICODE",
    "VERBOSE",
    "Match",
    "Pattern",
    "Rules",
    "compile",
    "either",
    "escape",
    "findall",
    "finditer",
    "forget",
    "fullmatch",
    "keep",
    "match",
    "search",
    "split",
    "sub",
    "subn",
]
