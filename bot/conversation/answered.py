"""The answer that was given last, so that «why» and «wrong» can be said of it; a question that is open comes first."""

from core.service import wronged
from core.service.turn import Turn

SLOT = "answered"
UNKNOWN = "unknown"


def remember(turn: Turn, answer: str, question: str) -> None:
    """Keep which answer was given to what, unless the bot itself waits for an answer."""
    open_ = turn.open_question()
    if open_ is None or open_.get("slot") == SLOT:
        turn.ask({"slot": SLOT, "answer": answer, "question": question})


def forget(turn: Turn) -> None:
    """Something was done or read since: «wrong» is said of that."""
    if last(turn)[0]:
        turn.ask(None)


def last(turn: Turn) -> tuple[str, str]:
    """The name of the last answer and its question; empty where none is known."""
    open_ = turn.open_question() or {}
    return (open_["answer"], open_["question"]) if open_.get("slot") == SLOT else ("", "")


def wrong(turn: Turn, named: str) -> None:
    """An answer was called wrong: by its name on a button, or the last one."""
    answer, question = last(turn)
    wronged.keep(turn, named or answer or UNKNOWN, question if named in ("", answer) else "")
